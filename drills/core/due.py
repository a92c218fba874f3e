"""When a target is to be practised next, and why."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from drills.core.kinds import Target


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """Where a target stands.

    rung: index in the ladder of days, -1 before any success.   run: unaided successes in a row.
    day: when it is due; a day in the past is overdue.   last: practised last; None for never.
    reason: one plain sentence.
    """

    target: Target
    day: date
    rung: int
    run: int
    last: date | None
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PutOff:
    """A target that is due on a day and has no place in it.   reason: one plain sentence."""

    target: Target
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class PlannedDay:
    """One practice day to come, as it stands now.

    minutes: expected for all its sessions, rests included.
    own_pace: the minutes rest on how long this person took, for at least one kind of exercise.
    given: targets with how often each is given, in the order of the plan.
    """

    day: date
    sessions: int
    minutes: float
    own_pace: bool
    given: tuple[tuple[Target, int], ...]
    put_off: tuple[PutOff, ...]
