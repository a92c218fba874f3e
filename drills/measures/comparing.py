"""Two shares side by side: how much they differ, and how sure that is."""

from __future__ import annotations

from dataclasses import dataclass

from drills.measures.accuracy import Share
from drills.measures.intervals import Interval, newcombe_difference
from drills.measures.missing import FEWEST_FOR_PERCENT, Lack, Missing, too_few


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """points: one share minus the other, -1 to 1.   interval: Newcombe's hybrid score."""

    one: Share
    other: Share
    points: float
    interval: Interval


def difference(
    one: Share,
    other: Share,
    *,
    confidence: float = 0.95,
    fewest: int = FEWEST_FOR_PERCENT,
) -> Difference | Missing:
    """`one` minus `other`.   Missing: fewer than `fewest` trials on either side.

    Source: Newcombe 1998, Statistics in Medicine 17:873, method 10.
    """
    lacking = too_few(Lack.TRIALS, min(one.of, other.of), max(fewest, 1))
    if lacking is not None:
        return lacking
    return Difference(
        one=one,
        other=other,
        points=one.right / one.of - other.right / other.of,
        interval=newcombe_difference(
            one.right, one.of, other.right, other.of, confidence=confidence
        ),
    )
