"""Weeks side by side: how much was practised, and with how much help."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import accumulate

from drills.core.kinds import Kind
from drills.core.plans import Plan
from drills.core.records import Trial, practice_day
from drills.digest.weeks import days_between
from drills.measures import cues, dose
from drills.measures.cues import CueUse
from drills.measures.dose import Sitting

WEEKS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Week:
    """Seven days, both ends included."""

    first: date
    last: date


@dataclass(frozen=True, slots=True, kw_only=True)
class DoseWeek:
    """What was done in one week against what the plan in force asks for; minutes of sessions.

    minutes_share: of what was asked for, at most 1; None when nothing was.
    hours: of sessions from the first of these weeks to the end of this one.
    """

    first: date
    last: date
    minutes: float
    minutes_planned: float
    minutes_share: float | None
    active_minutes: float
    sessions: int
    sessions_planned: float
    trials: int
    hours: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CueWeek:
    first: date
    last: date
    use: CueUse


@dataclass(frozen=True, slots=True, kw_only=True)
class CueWeeks:
    """One name in one task over the weeks, those without trials too."""

    kind: Kind
    name: str
    label: str
    weeks: tuple[CueWeek, ...]


def weeks_to(last: date, *, begun: date, least: int = WEEKS) -> tuple[Week, ...]:
    """The weeks that end on `last`, the oldest first.

    begun: no week ends before it, and where it lies far back there are `least` weeks.
    """
    found = [
        Week(first=last - timedelta(days=7 * back + 6), last=last - timedelta(days=7 * back))
        for back in range(least)
    ]
    return tuple(week for week in reversed(found) if week.last >= begun)


def weeks_from(first: date, last: date) -> tuple[Week, ...]:
    """The weeks from the Monday on or before `first` that reach to `last`."""
    monday = first - timedelta(days=first.weekday())
    return tuple(
        Week(first=start, last=start + timedelta(days=6))
        for start in days_between(monday, last)[::7]
    )


def dose_weeks_of(
    weeks: Sequence[Week], sittings: Sequence[Sitting], plan: Plan, *, asked: tuple[date, date]
) -> tuple[DoseWeek, ...]:
    """The dose of each week.   asked: the days between which the plan asks for practice."""
    amounts = [
        dose.amount([each for each in sittings if week.first <= each.day <= week.last])
        for week in weeks
    ]
    hours = accumulate(amount.minutes / 60 for amount in amounts)
    return tuple(
        _dose_week(week, amount, plan, days=_shared(week, asked), hours=so_far)
        for week, amount, so_far in zip(weeks, amounts, hours, strict=True)
    )


def _shared(week: Week, asked: tuple[date, date]) -> int:
    return max(0, (min(week.last, asked[1]) - max(week.first, asked[0])).days + 1)


def _dose_week(week: Week, done: dose.Amount, plan: Plan, *, days: int, hours: float) -> DoseWeek:
    sessions_planned = plan.dose.sessions_per_week * days / 7
    minutes_planned = sessions_planned * plan.dose.minutes_per_session
    return DoseWeek(
        first=week.first,
        last=week.last,
        minutes=done.minutes,
        minutes_planned=minutes_planned,
        minutes_share=dose.adherence(done.minutes, minutes_planned),
        active_minutes=done.active_minutes,
        sessions=done.sessions,
        sessions_planned=sessions_planned,
        trials=done.trials,
        hours=hours,
    )


def cue_weeks_of(
    weeks: Sequence[Week],
    trials: Sequence[Trial],
    labels: Mapping[str, str],
    *,
    turns_at_hour: int,
) -> tuple[CueWeeks, ...]:
    """Help over the weeks of each name that had any to take.   trials: of practice."""
    found: dict[tuple[Kind, str], dict[int, list[Trial]]] = {}
    for trial in trials:
        if not trial.asked.top_level:
            continue
        day = practice_day(trial.started_at, turns_at_hour=turns_at_hour)
        # All weeks follow each other.
        number = (day - weeks[0].first).days // 7 if weeks else -1
        if 0 <= number < len(weeks):
            of_name = found.setdefault((trial.asked.kind, trial.asked.target.name), {})
            of_name.setdefault(number, []).append(trial)
    return tuple(
        CueWeeks(
            kind=kind,
            name=name,
            label=labels.get(name, name),
            weeks=tuple(
                CueWeek(
                    first=week.first, last=week.last, use=cues.summarise(of_name.get(number, ()))
                )
                for number, week in enumerate(weeks)
            ),
        )
        for (kind, name), of_name in found.items()
    )
