"""Why a number is not given.

A measure that rests on too little, or is not defined for what it was given, says so in place of a
number. The least counts are common practice, no source but where one stands beside them; each is an
argument of its measure.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

FEWEST_FOR_PERCENT = 5
FEWEST_BASELINE = 3
FEWEST_IN_PHASE = 3
FEWEST_PAIRS = 20
FEWEST_FOR_TREND = 3


class Lack(StrEnum):
    """What is too little or too uniform for a number."""

    TRIALS = "trials"
    ERRORS = "errors"
    BASELINE = "baseline points"
    POINTS = "points in a phase"
    SESSIONS = "sessions"
    PAIRS = "pairs of scores"
    RATED = "things rated"
    ITEMS = "items asked both times"
    SPREAD = "spread"


@dataclass(frozen=True, slots=True, kw_only=True)
class Missing:
    """No number.   have, need: counts of what is lacking; both 0 for Lack.SPREAD.

    Lack.SPREAD: every value is the same, so that the measure divides by nothing.
    """

    lack: Lack
    have: int = 0
    need: int = 0

    def __str__(self) -> str:
        if self.lack is Lack.SPREAD:
            return "every value is the same"
        return f"{self.have} {self.lack.value}, {self.need} are needed"


NO_SPREAD = Missing(lack=Lack.SPREAD)


def too_few(lack: Lack, have: int, need: int) -> Missing | None:
    """The reason, or None when there is enough."""
    return Missing(lack=lack, have=have, need=need) if have < need else None
