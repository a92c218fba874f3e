"""Whether the answers can be told from guessing, on either side of it.

Below chance is information too: most often a habit of taking the first noun for the doer.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate
from math import fsum

from drills.measures.missing import Lack, Missing

# Outcomes rarer than this are left out where two sets of trials are put together.
TINY = 1e-30
# Two outcomes count as equally likely when rounding alone tells them apart.
ROUNDING = 1e-7


class Verdict(StrEnum):
    ABOVE = "above"
    SAME = "not distinguishable"
    BELOW = "below"


@dataclass(frozen=True, slots=True, kw_only=True)
class ChanceBand:
    """Numbers right, both included, that cannot be told from guessing."""

    low: int
    high: int


def upper_tail(right: int, chances: Sequence[float]) -> float:
    """Chance of `right` or more when each trial is guessed with its own chance."""
    return min(1.0, fsum(_spread(chances)[max(right, 0) :]))


def lower_tail(right: int, chances: Sequence[float]) -> float:
    """Chance of `right` or fewer when each trial is guessed with its own chance."""
    return min(1.0, fsum(_spread(chances)[: max(right + 1, 0)]))


def two_sided(right: int, of: int, chance: float) -> float:
    """Chance of a number right that is no likelier than `right`, when all is guessed.

    Source: the exact test with the smallest probabilities (Sterne 1954, Biometrika 41:275, from
    memory).   Raises: ValueError unless 0 <= right <= of and 0 <= chance <= 1.
    """
    if not 0 <= right <= of or not 0 <= chance <= 1:
        raise ValueError(f"{right} right of {of} cannot be held against a chance of {chance}")
    spread = _binomial(of, chance)
    most = spread[right] * (1 + ROUNDING)
    return min(1.0, fsum(value for value in spread if value <= most))


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


def chance_band(chances: Sequence[float], *, level: float = 0.05) -> ChanceBand | Missing:
    """The numbers right of which `verdict` says that they cannot be told from guessing.

    Missing: there is nothing to guess.
    """
    if all(chance >= 1 for chance in chances):
        return Missing(lack=Lack.TRIALS, have=0, need=1)
    spread = _spread(chances)
    below = sum(tail <= level / 2 for tail in accumulate(spread))
    above = sum(tail <= level / 2 for tail in accumulate(reversed(spread)))
    return ChanceBand(low=below, high=len(spread) - 1 - above)


def least_above(of: int, chance: float, *, level: float = 0.05) -> int | None:
    """The least number right that guessing reaches in less than `level`, tested one way.

    None when not even all right would do.
    """
    beyond = sum(tail < level for tail in accumulate(reversed(_binomial(of, chance))))
    return of + 1 - beyond if beyond else None


def most_below(of: int, chance: float, *, level: float = 0.05) -> int | None:
    """The greatest number right that guessing falls to in less than `level`, tested one way.

    None when not even none right would do.
    """
    beyond = sum(tail < level for tail in accumulate(_binomial(of, chance)))
    return beyond - 1 if beyond else None


def chance_corrected(right: int, of: int, chance: float) -> float:
    """The share right beyond guessing: 0 is guessing, 1 all right; below 0 is not clipped.

    Raises: ValueError without trials, or when guessing is always right.
    """
    if not of or not 0 <= chance < 1:
        raise ValueError(f"{right} of {of} cannot be held against a chance of {chance}")
    return (right / of - chance) / (1 - chance)


def _spread(chances: Sequence[float]) -> list[float]:
    """Chance of each number right, 0 to all."""
    spread = [1.0]
    for chance, of in Counter(chances).items():
        spread = _together(spread, _binomial(of, chance))
    return spread


def _binomial(of: int, chance: float) -> list[float]:
    """Chance of each number right, 0 to `of`: from the likeliest outward, so nothing overflows."""
    if chance <= 0 or chance >= 1:
        sure = of if chance >= 1 else 0
        return [float(right == sure) for right in range(of + 1)]
    odds = chance / (1 - chance)
    likeliest = min(of, int((of + 1) * chance))
    values = [0.0] * (of + 1)
    values[likeliest] = 1.0
    for right in range(likeliest, of):
        values[right + 1] = values[right] * odds * (of - right) / (right + 1)
    for right in range(likeliest, 0, -1):
        values[right - 1] = values[right] / odds * right / (of - right + 1)
    total = fsum(values)
    return [value / total for value in values]


def _together(one: Sequence[float], other: Sequence[float]) -> list[float]:
    """Chance of each number right over two sets of trials."""
    if len(one) == 1:
        return list(other)
    likely = [right for right, value in enumerate(other) if value > TINY]
    first, kept = likely[0], other[likely[0] : likely[-1] + 1]
    both = [0.0] * (len(one) + len(other) - 1)
    for right, value in enumerate(one, first):
        if value > TINY:
            for place, beside in enumerate(kept, right):
                both[place] += value * beside
    return both
