"""When a check (a probe session) is due, and which list it takes. Pure."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from drills.core.kinds import ItemSet
from drills.core.plans import ProbeSettings
from drills.core.records import Trial, practice_day

LETTERS = ("A", "B", "C")


class Phase(StrEnum):
    BASELINE = "baseline"
    WEEKLY = "weekly"
    MAINTENANCE = "maintenance"


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckList:
    """letter: its order.   half: 0 or 1 for a short check, None for all of it."""

    letter: str
    half: int | None = None

    def __str__(self) -> str:
        return self.letter if self.half is None else f"{self.letter}{self.half + 1}"

    @classmethod
    def parse(cls, text: str) -> CheckList:
        """What `str` wrote.   Raises: ValueError."""
        letter, half = text[:1], text[1:]
        if letter not in LETTERS or half not in ("", "1", "2"):
            raise ValueError(f"{text!r} is no list")
        return cls(letter=letter, half=int(half) - 1 if half else None)


@dataclass(frozen=True, slots=True, kw_only=True)
class DueCheck:
    """number: checks done before it.   day: from which it is due."""

    phase: Phase
    number: int
    day: date
    list: CheckList


def check_days(
    trials: Iterable[Trial], settings: ProbeSettings, *, whole: int, day_turns_at_hour: int
) -> tuple[date, ...]:
    """The practice days on which a check was done, oldest first.

    whole: items of a whole check. A day counts from half of what was asked on: of a whole check in
    the baseline, of a short one after it. Two checks of one day are one.
    """
    answered = Counter(
        practice_day(trial.started_at, turns_at_hour=day_turns_at_hour)
        for trial in trials
        if trial.asked.item_set is not ItemSet.TREATED and trial.counts
    )
    days: list[date] = []
    for day in sorted(answered):
        asked = whole if len(days) < settings.baseline else whole // 2
        if 2 * answered[day] >= asked:
            days.append(day)
    return tuple(days)


def next_check(
    done: Sequence[date], settings: ProbeSettings, *, last_practice: date | None, today: date
) -> DueCheck | None:
    """The check that is due next, today or later; None where none is wanted.

    done: days of the checks so far, rising.   last_practice: None before the first.
    Baseline checks come a day apart at least and before practice; once practice has begun they are
    not made up for. A whole check is due after each of the maintenance weeks without practice.
    """
    number = len(done)
    after_last = done[-1] + timedelta(days=1) if done else today
    if last_practice is None:
        if number >= settings.baseline:
            return None
        return _due(Phase.BASELINE, number, max(after_last, today), settings)
    wanted = [last_practice + timedelta(weeks=weeks) for weeks in settings.maintenance_weeks]
    missed = [day for day in wanted if not done or done[-1] < day]
    has_stopped = today >= last_practice + timedelta(weeks=settings.maintenance_weeks[0])
    if has_stopped:
        # Only the newest of those that went by: one check cannot stand for two times.
        over = [day for day in missed if day <= today]
        to_come = [day for day in missed if day > today]
        then = over[-1] if over else to_come[0] if to_come else None
        return None if then is None else _due(Phase.MAINTENANCE, number, then, settings)
    if not settings.weekly_days:
        return None
    since = done[-1] if done else last_practice
    return _due(Phase.WEEKLY, number, since + timedelta(days=settings.weekly_days), settings)


def list_for(phase: Phase, number: int, settings: ProbeSettings) -> CheckList:
    """A, B, C by turns; short checks take one half and the other by turns."""
    letter = LETTERS[number % len(LETTERS)]
    if phase is Phase.WEEKLY:
        return CheckList(letter=letter, half=(number - settings.baseline) % 2)
    return CheckList(letter=letter)


def _due(phase: Phase, number: int, day: date, settings: ProbeSettings) -> DueCheck:
    return DueCheck(phase=phase, number=number, day=day, list=list_for(phase, number, settings))
