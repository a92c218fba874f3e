"""Whether scores rise from session to session, and how fast."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations
from math import sqrt
from statistics import median

from drills.measures.missing import FEWEST_FOR_TREND, NO_SPREAD, Lack, Missing, too_few


@dataclass(frozen=True, slots=True, kw_only=True)
class Trend:
    """tau: Kendall's tau-b, -1 to 1.   slope: Theil and Sen's, score a unit of time.

    tau: Missing where every score is the same, though the slope is then 0.
    """

    of: int
    tau: float | Missing
    slope: float


def kendall_s(x: Sequence[float], y: Sequence[float]) -> int:
    """Pairs that go the same way less pairs that go the other way.

    Source: Kendall 1970, Rank Correlation Methods, 4th edition, chapter 1 (from memory).
    Raises: ValueError for lists of different length.
    """
    return sum(
        _sign(x_after - x_before) * _sign(y_after - y_before)
        for (x_before, y_before), (x_after, y_after) in combinations(zip(x, y, strict=True), 2)
    )


def kendall_tau_b(x: Sequence[float], y: Sequence[float]) -> float | Missing:
    """Rank correlation with ties, -1 to 1.

    Source: Kendall 1970, chapter 3.   Missing: fewer than two pairs, or no spread on a side.
    Raises: ValueError for lists of different length.
    """
    s = kendall_s(x, y)
    lacking = too_few(Lack.SESSIONS, len(x), 2)
    if lacking is not None:
        return lacking
    untied = _untied(x) * _untied(y)
    # Rounding of the root may not push a perfect order past 1.
    return max(-1.0, min(1.0, s / sqrt(untied))) if untied else NO_SPREAD


def theil_sen(x: Sequence[float], y: Sequence[float]) -> float | Missing:
    """The median slope of all pairs with different `x`, in y a unit of x.

    Source: Sen 1968, Journal of the American Statistical Association 63:1379 (from memory).
    Missing: fewer than two pairs, or one `x` only.   Raises: ValueError for different lengths.
    """
    slopes = [
        (y_after - y_before) / (x_after - x_before)
        for (x_before, y_before), (x_after, y_after) in combinations(zip(x, y, strict=True), 2)
        if x_after != x_before
    ]
    lacking = too_few(Lack.SESSIONS, len(x), 2)
    if lacking is not None:
        return lacking
    return median(slopes) if slopes else NO_SPREAD


def trend(
    times: Sequence[float], scores: Sequence[float], *, fewest: int = FEWEST_FOR_TREND
) -> Trend | Missing:
    """Tau-b and slope of session scores.

    times: numbers of sessions, or days.   Missing: fewer than `fewest`, or one time only.
    Neighbouring sessions resemble each other, so that no p is given.
    """
    lacking = too_few(Lack.SESSIONS, len(scores), max(fewest, 2))
    if lacking is not None:
        return lacking
    slope = theil_sen(times, scores)
    if isinstance(slope, Missing):
        return slope
    return Trend(of=len(scores), tau=kendall_tau_b(times, scores), slope=slope)


def _sign(value: float) -> int:
    return (value > 0) - (value < 0)


def _untied(values: Sequence[float]) -> int:
    return sum(one != other for one, other in combinations(values, 2))
