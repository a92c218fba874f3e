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
