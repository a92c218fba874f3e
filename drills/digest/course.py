"""The whole course in a few values: from the first record to today."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from drills.core.records import Trial, practice_day
from drills.digest.outcomes import Phase

# Days of practice at either end that are held against each other.
END_DAYS = 14


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """The first and the last days of practice, never overlapping, both ends included."""

    opening: tuple[date, date]
    closing: tuple[date, date]


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """Where the course stands; the digest's lines are of its last days against its first.

    phase: that `today` lies in; it says what kind of report this is.
    first_practice, last_practice: None before any.
    ends: None before there are two days of practice to compare.
    """

    phase: Phase
    first_practice: date | None
    last_practice: date | None
    practice_days: int
    ends: Ends | None


def course_of(phase: Phase, practised: Sequence[date]) -> Course:
    """practised: all days of practice, rising."""
    return Course(
        phase=phase,
        first_practice=practised[0] if practised else None,
        last_practice=practised[-1] if practised else None,
        practice_days=len(practised),
        ends=_ends(practised),
    )


def _ends(practised: Sequence[date]) -> Ends | None:
    if len(practised) < 2:
        return None
    first, last = practised[0], practised[-1]
    long = timedelta(days=min(END_DAYS, ((last - first).days + 1) // 2) - 1)
    return Ends(opening=(first, first + long), closing=(last - long, last))


def trials_in(
    trials: Sequence[Trial], days: tuple[date, date], *, turns_at_hour: int
) -> tuple[Trial, ...]:
    """Those that began on `days`, both ends included."""
    return tuple(
        trial
        for trial in trials
        if days[0] <= practice_day(trial.started_at, turns_at_hour=turns_at_hour) <= days[1]
    )
