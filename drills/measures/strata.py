"""Two shares compared name by name: whether one is lower, whatever is easy and what is hard.

Names that were given more often on one side would shift a share of all together; compared within
each name they do not.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import fsum, sqrt
from statistics import NormalDist

from drills.measures.accuracy import Share
from drills.measures.chance import TINY

# Beyond so many trials the exact spread is out of reach and its limit serves as well.
MOST_EXACT = 4000


@dataclass(frozen=True, slots=True, kw_only=True)
class Stratum:
    """One name: what is asked about, and what it is held against."""

    one: Share
    other: Share


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """points: `one` less `other`, -1 to 1, each name by its weight (Mantel and Haenszel's).

    lower, higher: chance that `one` has so few, or so many, right when within each name there is
    no difference.   one, other: of all names compared, together.
    """

    one: Share
    other: Share
    points: float
    lower: float
    higher: float

    @property
    def either(self) -> float:
        """Two-sided: twice the smaller one."""
        return min(1.0, 2 * min(self.lower, self.higher))


def compare(strata: Iterable[Stratum]) -> Comparison | None:
    """The strata with trials on both sides, together; None for none.

    Source: the exact conditional test of several fourfold tables (Agresti 1990, Categorical Data
    Analysis, 7.4, from memory); with one table it is Fisher's. Beyond `MOST_EXACT` trials the
    normal limit of Mantel and Haenszel 1959, with half a trial taken off (from memory).
    """
    kept = [each for each in strata if each.one.of and each.other.of]
    if not kept:
        return None
    one, other = _sum(each.one for each in kept), _sum(each.other for each in kept)
    weights = [each.one.of * each.other.of / (each.one.of + each.other.of) for each in kept]
    points = fsum(
        weight * (each.one.right / each.one.of - each.other.right / each.other.of)
        for weight, each in zip(weights, kept, strict=True)
    ) / fsum(weights)
    exact = one.of + other.of <= MOST_EXACT
    lower, higher = _exact(kept, one.right) if exact else _limit(kept, one.right)
    return Comparison(one=one, other=other, points=points, lower=lower, higher=higher)


def _sum(shares: Iterable[Share]) -> Share:
    all_of = list(shares)
    return Share(right=sum(each.right for each in all_of), of=sum(each.of for each in all_of))


def _exact(strata: Iterable[Stratum], right: int) -> tuple[float, float]:
    least, spread = 0, [1.0]
    for each in strata:
        first, own = _hypergeometric(each)
        least += first
        both = [0.0] * (len(spread) + len(own) - 1)
        for place, value in enumerate(spread):
            if value > TINY:
                for beside, chance in enumerate(own, place):
                    both[beside] += value * chance
        spread = both
    place = right - least
    return min(1.0, fsum(spread[: place + 1])), min(1.0, fsum(spread[place:]))


def _hypergeometric(stratum: Stratum) -> tuple[int, list[float]]:
    """The fewest that can be right of `one`, and the chance of it and of each number above."""
    right = stratum.one.right + stratum.other.right
    least, most = max(0, right - stratum.other.of), min(right, stratum.one.of)
    values = [1.0]
    for have in range(least, most):
        # Of the chance of `have` right of `one`, that of one more.
        more = (stratum.one.of - have) * (right - have)
        fewer = (have + 1) * (stratum.other.of - right + have + 1)
        values.append(values[-1] * more / fewer)
        if values[-1] > 1e200:
            values = [value / 1e200 for value in values]
    total = fsum(values)
    return least, [value / total for value in values]


def _limit(strata: Iterable[Stratum], right: int) -> tuple[float, float]:
    expected = variance = 0.0
    for each in strata:
        of = each.one.of + each.other.of
        total = each.one.right + each.other.right
        expected += each.one.of * total / of
        variance += each.one.of * each.other.of * total * (of - total) / (of * of * (of - 1))
    if not variance:
        return 1.0, 1.0
    normal, width = NormalDist(), sqrt(variance)
    lower = normal.cdf((right + 0.5 - expected) / width)
    return lower, 1 - normal.cdf((right - 0.5 - expected) / width)
