"""Whether the answers can be told from guessing, on either side of it.

Below chance is information too: most often a habit of taking the first noun for the doer.
"""

from __future__ import annotations

from collections.abc import Sequence
from enum import StrEnum
from math import fsum


class Verdict(StrEnum):
    ABOVE = "above"
    SAME = "not distinguishable"
    BELOW = "below"


def upper_tail(right: int, chances: Sequence[float]) -> float:
    """Chance of `right` or more when each trial is guessed with its own chance."""
    return min(1.0, fsum(_spread(chances)[max(right, 0) :]))


def lower_tail(right: int, chances: Sequence[float]) -> float:
    """Chance of `right` or fewer when each trial is guessed with its own chance."""
    return min(1.0, fsum(_spread(chances)[: max(right + 1, 0)]))


def verdict(right: int, chances: Sequence[float], *, level: float = 0.05) -> Verdict | None:
    """On which side of guessing `right` lies, tested both ways with half of `level` each.

    None where there is nothing to guess: no trials, or words alone decide every one.
    """
    if all(chance >= 1 for chance in chances):
        return None
    if upper_tail(right, chances) <= level / 2:
        return Verdict.ABOVE
    if lower_tail(right, chances) <= level / 2:
        return Verdict.BELOW
    return Verdict.SAME


def least_above(of: int, chance: float, *, level: float = 0.05) -> int | None:
    """The least number right that guessing reaches in less than `level`, tested one way.

    None when not even all right would do.
    """
    chances = [chance] * of
    return next((k for k in range(of + 1) if upper_tail(k, chances) < level), None)


def chance_corrected(right: int, of: int, chance: float) -> float:
    """The share right beyond guessing: 0 is guessing, 1 all right; below 0 is not clipped.

    Raises: ValueError without trials, or when guessing is always right.
    """
    if not of or not 0 <= chance < 1:
        raise ValueError(f"{right} of {of} cannot be held against a chance of {chance}")
    return (right / of - chance) / (1 - chance)


def _spread(chances: Sequence[float]) -> list[float]:
    """Chance of each number right, 0 to all: one trial after the other."""
    spread = [1.0]
    for chance in chances:
        miss = [value * (1 - chance) for value in spread] + [0.0]
        hit = [0.0] + [value * chance for value in spread]
        spread = [a + b for a, b in zip(miss, hit, strict=True)]
    return spread
