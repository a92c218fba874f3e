"""When a target is due again, from how it went before.

Spacing over days follows a ladder of growing gaps: as the plan writes them, or fitted to this
person (`forgetting`). The evidence for growing gaps comes from words, not sentences; for sentences
it is an extrapolation, so every number is a setting of the plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Protocol

from drills.core.due import Due
from drills.core.kinds import Target
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Trial
from drills.schedule.forgetting import Forgetting, Recall, fit
from drills.schedule.rungs import Climb, Key, Rungs


class Gaps(Protocol):
    """A policy of spacing: how many days pass before a target comes back."""

    def days(self, rung: int) -> int:
        """Days to the next practice of a target on `rung`; -1 is before any success."""

    @property
    def told(self) -> str:
        """What is added to the reason of a due day; empty for the plan's own ladder."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LadderGaps:
    """The gaps that stand in the plan, which anyone can check by hand."""

    settings: SpacingSettings

    def days(self, rung: int) -> int:
        ladder = self.settings.ladder_days
        return ladder[min(max(rung, 0), len(ladder) - 1)]

    @property
    def told(self) -> str:
        return ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedGaps:
    """This person's own gaps, or the ladder's while the answers are few."""

    forgetting: Forgetting

    def days(self, rung: int) -> int:
        gaps = self.forgetting.gaps_days
        return gaps[min(max(rung, 0), len(gaps) - 1)]

    @property
    def told(self) -> str:
        if not self.forgetting.recalls:
            return " Gap by the ladder: too few answers yet to fit one."
        return f" Gap fitted to {self.forgetting.recalls} answers after a pause."


def standing(
    target: Target,
    trials: Sequence[Trial],
    *,
    settings: SpacingSettings,
    day_turns_at_hour: int,
    today: date,
) -> Due:
    """Where `target` stands today.   trials: as for `standings`."""
    (due,) = standings(
        (target,), trials, settings=settings, day_turns_at_hour=day_turns_at_hour, today=today
    )
    return due


def standings(
    targets: Iterable[Target],
    trials: Sequence[Trial],
    *,
    settings: SpacingSettings,
    day_turns_at_hour: int,
    today: date,
) -> tuple[Due, ...]:
    """Where each target stands, in the order of `targets`.

    trials: of any targets, in the order in which they were given; probes do not count, nor do
    trials without a first response.
    A trial dated after today, left by a clock that was wrong, counts as today's.
    """
    rungs = Rungs(settings, day_turns_at_hour=day_turns_at_hour, today=today)
    rungs.take(trials)
    return standings_of(rungs, targets, settings=settings, today=today)


def standings_of(
    rungs: Rungs, targets: Iterable[Target], *, settings: SpacingSettings, today: date
) -> tuple[Due, ...]:
    """The same from trials that are folded already, by the same settings and for the same day."""
    gaps = _gaps(rungs.recalls, settings)
    days_of = [gaps.days(rung) for rung in range(len(settings.ladder_days))]
    return _Told(days_of, gaps.told, today).of(rungs.climbs, dict.fromkeys(targets))


def _gaps(recalls: Iterable[Recall], settings: SpacingSettings) -> Gaps:
    if settings.policy is SpacingPolicy.LADDER:
        return LadderGaps(settings=settings)
    return FittedGaps(forgetting=fit(recalls, settings))


class _Told:
    """Makes each standing; days that many targets share are made once."""

    def __init__(self, gap_days: Sequence[int], told: str, today: date) -> None:
        self._gap_days = gap_days
        self._told = told
        self._today = today
        self._number = today.toordinal()
        self._dates: dict[int, date] = {}

    def of(self, climbs: Mapping[Key, Climb], targets: Iterable[Target]) -> tuple[Due, ...]:
        return tuple(
            self._due(target, climbs.get((target.kind, target.name, target.group)))
            for target in targets
        )

    def _due(self, target: Target, climb: Climb | None) -> Due:
        if climb is None:
            reason = "New: not met yet."
            return Due(target=target, day=self._today, rung=-1, run=0, last=None, reason=reason)
        rung, run, last = climb.rung, climb.run, climb.last
        due = last + self._gap_days[rung if rung > 0 else 0]
        how = _how(run, climb.right, self._number - last)
        whether = "Due" if due <= self._number else "Not yet due"
        return Due(
            target=target,
            day=self._dates.get(due) or self._date(due),
            rung=rung,
            run=run,
            last=self._dates.get(last) or self._date(last),
            reason=f"{whether}: {how}{self._told}",
        )

    def _date(self, number: int) -> date:
        self._dates[number] = made = date.fromordinal(number)
        return made


_ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")


def _how(run: int, right: bool, ago: int) -> str:
    """right: the newest first response, with help or without.   ago: days since it."""
    when = f"{ago} days ago" if ago > 1 else "yesterday" if ago else "today"
    if run >= 2:
        ordinal = _ORDINALS[run] if run < len(_ORDINALS) else f"number {run}"
        return f"last right alone {when}, {ordinal} in a row."
    if run == 1:
        return f"last right alone {when}."
    return f"last right with help {when}." if right else f"last missed {when}, so it comes sooner."
