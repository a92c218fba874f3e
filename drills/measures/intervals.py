"""How sure a proportion is, and a difference of two.

Source: Newcombe 1998, Statistics in Medicine 17:857 (method 3, Wilson's score interval) and 17:873
(method 10, the hybrid of two score intervals).
"""

from __future__ import annotations

from dataclasses import dataclass
from math import sqrt
from statistics import NormalDist


@dataclass(frozen=True, slots=True, kw_only=True)
class Interval:
    low: float
    high: float


def wilson(right: int, of: int, *, confidence: float = 0.95) -> Interval:
    """The score interval of `right` out of `of`, within 0 to 1; all of it when nothing was asked.

    Raises: ValueError unless 0 <= right <= of.
    """
    _check(right, of)
    if of == 0:
        return Interval(low=0.0, high=1.0)
    z = NormalDist().inv_cdf((1 + confidence) / 2)
    middle = 2 * right + z * z
    spread = z * sqrt(z * z + 4 * right * (of - right) / of)
    below = 2 * (of + z * z)
    # At the ends the bound is exact; rounding may not push it past.
    return Interval(
        low=0.0 if right == 0 else (middle - spread) / below,
        high=1.0 if right == of else (middle + spread) / below,
    )


def newcombe_difference(
    right: int, of: int, earlier_right: int, earlier_of: int, *, confidence: float = 0.95
) -> Interval:
    """The interval of right/of - earlier_right/earlier_of, within -1 to 1.

    Raises: ValueError when either side was asked nothing.
    """
    if not of or not earlier_of:
        raise ValueError("a difference needs trials on both sides")
    now = wilson(right, of, confidence=confidence)
    earlier = wilson(earlier_right, earlier_of, confidence=confidence)
    p, q = right / of, earlier_right / earlier_of
    return Interval(
        low=p - q - sqrt((p - now.low) ** 2 + (earlier.high - q) ** 2),
        high=p - q + sqrt((now.high - p) ** 2 + (q - earlier.low) ** 2),
    )


def _check(right: int, of: int) -> None:
    if not 0 <= right <= of:
        raise ValueError(f"{right} right of {of} cannot be")
