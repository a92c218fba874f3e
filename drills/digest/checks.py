"""What checks came to: the outcome, apart from practice."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from drills.core.items import ItemSet
from drills.core.plans import ProbeSettings
from drills.core.records import Entry, SessionOpened, Trial, practice_day
from drills.measures import chance, dose
from drills.measures.accuracy import Share, count
from drills.measures.chance import Verdict
from drills.measures.intervals import Interval, wilson

ROLES = (ItemSet.PROBE, ItemSet.RELATED, ItemSet.CONTROL)


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckPoint:
    """One construction on one day.   interval: 95 %, of the share right.   verdict: on guessing."""

    day: date
    right: Share
    interval: Interval
    verdict: Verdict | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckLine:
    """One construction in what it stands for, from the first check on."""

    item_set: ItemSet
    name: str
    label: str
    points: tuple[CheckPoint, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Checks:
    """Checks up to the end of the range.

    minutes, sittings: of checks within the range, which are no practice.
    baseline_done: checks done, up to `baseline`, which the plan asks for before practice.
    """

    lines: tuple[CheckLine, ...]
    minutes: float
    sittings: int
    baseline_done: int
    baseline: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """What is known of checks.   trials: from the first on.   days: of those that were done."""

    trials: Sequence[Trial] = ()
    days: Sequence[date] = ()


def practice_apart(entries: Sequence[Entry]) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """The entries of practice, and those of sessions that only check."""
    checking = {
        entry.session
        for entry in entries
        if isinstance(entry, SessionOpened) and entry.check is not None
    }
    return (
        tuple(entry for entry in entries if entry.session not in checking),
        tuple(entry for entry in entries if entry.session in checking),
    )


def checks_of(
    checked: Checked,
    entries: Sequence[Entry],
    settings: ProbeSettings,
    labels: Mapping[str, str],
    *,
    last: date,
    turns_at_hour: int,
) -> Checks | None:
    """All checks up to `last`; None where there was none and the plan wants none.

    entries: of the sessions of the range that only check.
    """
    found: dict[tuple[ItemSet, str], dict[date, list[Trial]]] = {}
    for trial in checked.trials:
        day = practice_day(trial.started_at, turns_at_hour=turns_at_hour)
        if trial.asked.item_set in ROLES and trial.counts and day <= last:
            key = (trial.asked.item_set, trial.asked.target.name)
            found.setdefault(key, {}).setdefault(day, []).append(trial)
    if not found and not settings.on:
        return None
    done = dose.amount(dose.sittings(entries, day_turns_at_hour=turns_at_hour))
    return Checks(
        lines=tuple(
            CheckLine(
                item_set=item_set,
                name=name,
                label=labels.get(name, name),
                points=tuple(_point(day, days[day]) for day in sorted(days)),
            )
            for (item_set, name), days in sorted(
                found.items(), key=lambda each: ROLES.index(each[0][0])
            )
        ),
        minutes=done.minutes,
        sittings=done.sessions,
        baseline_done=min(settings.baseline, sum(day <= last for day in checked.days)),
        baseline=settings.baseline,
    )


def _point(day: date, trials: Sequence[Trial]) -> CheckPoint:
    right = count(trials).unaided
    chances = [1 / max(1, trial.asked.effective_k) for trial in trials]
    return CheckPoint(
        day=day,
        right=right,
        interval=wilson(right.right, right.of),
        verdict=chance.verdict(right.right, chances),
    )
