"""Choosing a small set that is like a large one: an exchange search on standardised differences.

Pure and general: it knows rows of figures and strata, and nothing of sentences.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import sqrt
from random import Random

STARTS = 6
"""Searches from different beginnings; the best of them counts."""
STARTS_TOGETHER = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One candidate.

    stratum: so many are taken of each.   figures: what the means are matched on.
    tags: words that should each come as seldom as can be; they decide between equal matches.
    """

    stratum: str
    figures: tuple[float, ...]
    tags: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Spread:
    """Mean and variance (n - 1) of one figure."""

    mean: float
    variance: float


def spread_of(values: Sequence[float]) -> Spread:
    """Raises: ValueError for no values; of one value the variance is 0."""
    if not values:
        raise ValueError("there are no values")
    mean = sum(values) / len(values)
    of = max(1, len(values) - 1)
    return Spread(mean=mean, variance=sum((value - mean) ** 2 for value in values) / of)


def difference(one: Spread, other: Spread) -> float:
    """The standardised mean difference: over the root of the mean of both variances.

    Source: Austin 2009, Statistics in Medicine 28:3083, where less than 0.1 either way is taken
    for balance (so the manual of SAS/STAT's PSMATCH, which names 0.25 as the wider bound of Rubin
    2001). Equal means give 0, also without any variance; unequal ones without variance infinity.
    """
    apart = one.mean - other.mean
    if abs(apart) < 1e-12:
        return 0.0
    scale = sqrt((one.variance + other.variance) / 2)
    return apart / scale if scale else float("inf") * (1 if apart > 0 else -1)


def quotas(counts: Mapping[str, int], wanted: int) -> dict[str, int]:
    """`wanted` places shared out as the counts are, by largest remainders; ties by name.

    Raises: ValueError for nothing to share among.
    """
    total = sum(counts.values())
    if total < 1:
        raise ValueError("there is nothing to share among")
    exact = {name: wanted * count / total for name, count in counts.items()}
    shares = {name: int(share) for name, share in exact.items()}
    rest = sorted(exact, key=lambda name: (shares[name] - exact[name], name))
    for name in rest[: wanted - sum(shares.values())]:
        shares[name] += 1
    return shares


def choose(
    rows: Sequence[Row],
    like: Sequence[Spread],
    taken: Mapping[str, int],
    rng: Random,
    *,
    starts: int = STARTS,
) -> tuple[int, ...]:
    """Indices of the rows whose figures come nearest to `like`, in rising order.

    taken: how many of each stratum.   Raises: ValueError where a stratum has too few.
    """
    pools = {
        name: [index for index, row in enumerate(rows) if row.stratum == name] for name in taken
    }
    short = [name for name, count in taken.items() if len(pools[name]) < count]
    if short:
        raise ValueError(f"too few rows in {', '.join(short)}")
    best: tuple[float, tuple[int, ...]] | None = None
    for _ in range(starts):
        chosen = [
            index for name, count in taken.items() for index in rng.sample(pools[name], count)
        ]
        found = _climbed(rows, (like,), pools, chosen)
        if best is None or found < best:
            best = found
    return best[1] if best else ()


def choose_together(
    pools: Sequence[Sequence[Row]],
    like: Sequence[Spread],
    taken: Sequence[Mapping[str, int]],
    rng: Random,
    *,
    anchored: Sequence[bool],
    starts: int = STARTS_TOGETHER,
) -> tuple[tuple[int, ...], ...]:
    """One choice of each pool, near to each other; indices in rising order.

    anchored: which are to be near to `like` too; one at the least.
    From several beginnings, each is exchanged by turns against all others, as long as the sum of
    squared differences falls. No two choices share all their tags.
    Raises: ValueError where a stratum has too few.
    """
    best: tuple[float, tuple[tuple[int, ...], ...]] | None = None
    for start in range(starts):
        chosen: list[tuple[int, ...]] = []
        for rows, wanted in zip(pools, taken, strict=True):
            free = _free(pools, chosen, rows)
            kept = [rows[index] for index in free]
            # The first beginning is the best of each alone, the others are by chance.
            begun = choose(kept, like if start == 0 else (), wanted, rng, starts=1)
            chosen.append(tuple(free[at] for at in begun))
        now = cost_together(pools, like, chosen, anchored)
        while True:
            for place, rows in enumerate(pools):
                others = [
                    _spreads(pools[at], each, len(like))
                    for at, each in enumerate(chosen)
                    if at != place
                ]
                open_rows = _free(pools, chosen, rows, apart_from=place)
                by_stratum = {
                    name: [at for at in open_rows if rows[at].stratum == name]
                    for name in taken[place]
                }
                likes = (like, *others) if anchored[place] else tuple(others)
                chosen[place] = _climbed(rows, likes, by_stratum, chosen[place])[1]
            left = cost_together(pools, like, chosen, anchored)
            if left > now - _LEAST_GAIN:
                break
            now = left
        found = (now, tuple(chosen))
        if best is None or found < best:
            best = found
    return best[1] if best else ()


def cost_together(
    pools: Sequence[Sequence[Row]],
    like: Sequence[Spread],
    chosen: Sequence[Sequence[int]],
    anchored: Sequence[bool],
) -> float:
    """How far choices are from each other, and the anchored ones from `like`: squared differences.

    How often tags repeat is added, as in `cost`.
    """
    spreads = [_spreads(rows, each, len(like)) for rows, each in zip(pools, chosen, strict=True)]
    between = sum(
        difference(one, other) ** 2
        for mine, theirs in combinations(spreads, 2)
        for one, other in zip(mine, theirs, strict=True)
    )
    alone = [
        cost(rows, like if near else (), each)
        for rows, each, near in zip(pools, chosen, anchored, strict=True)
    ]
    return between + sum(alone)


def _spreads(rows: Sequence[Row], chosen: Sequence[int], figures: int) -> tuple[Spread, ...]:
    return tuple(spread_of([rows[index].figures[at] for index in chosen]) for at in range(figures))


def _free(
    pools: Sequence[Sequence[Row]],
    chosen: Sequence[Sequence[int]],
    rows: Sequence[Row],
    *,
    apart_from: int | None = None,
) -> list[int]:
    """Rows whose tags no other choice has all of."""
    used = {
        frozenset(pools[at][index].tags)
        for at, each in enumerate(chosen)
        if at != apart_from
        for index in each
    }
    return [index for index, row in enumerate(rows) if frozenset(row.tags) not in used]


def cost(rows: Sequence[Row], like: Sequence[Spread], chosen: Sequence[int]) -> float:
    """How far a choice is from `like`: squared differences, then how often tags repeat."""
    apart = sum(
        difference(spread, wanted) ** 2
        for spread, wanted in zip(_spreads(rows, chosen, len(like)), like, strict=True)
    )
    uses = Counter(tag for index in chosen for tag in rows[index].tags)
    repeats = sum(count * (count - 1) for count in uses.values())
    return apart + _PER_REPEAT * repeats


# A word more or less often weighs about as much as a difference of 0.03.
_PER_REPEAT = 0.001
_LEAST_GAIN = 1e-9


class _Choice:
    """A choice under change: sums are kept, so that an exchange costs no more than its figures."""

    def __init__(
        self, rows: Sequence[Row], likes: Sequence[Sequence[Spread]], start: Sequence[int]
    ) -> None:
        like = likes[0]
        self._rows, self._like = rows, like
        self._wanted = list(zip(*likes, strict=True))
        self.indices = list(start)
        self._sums = [sum(rows[index].figures[at] for index in start) for at in range(len(like))]
        # Around the wanted mean, so that little is lost to rounding.
        self._squares = [
            sum((rows[index].figures[at] - wanted.mean) ** 2 for index in start)
            for at, wanted in enumerate(like)
        ]
        self._uses = Counter(tag for index in start for tag in rows[index].tags)
        self._repeats = sum(count * (count - 1) for count in self._uses.values())

    def cost_with(self, place: int, other: int) -> float:
        """The cost if `other` stood in this place."""
        old, new, count = self._rows[self.indices[place]], self._rows[other], len(self.indices)
        apart = 0.0
        for at, wanted in enumerate(self._like):
            was, comes = old.figures[at] - wanted.mean, new.figures[at] - wanted.mean
            off = (self._sums[at] + new.figures[at] - old.figures[at]) / count - wanted.mean
            squares = self._squares[at] - was * was + comes * comes
            variance = max(0.0, squares - count * off * off) / max(1, count - 1)
            one = Spread(mean=wanted.mean + off, variance=variance)
            for each in self._wanted[at]:
                apart += difference(one, each) ** 2
        repeats = self._repeats
        gone = set(old.tags)
        for tag in old.tags:
            repeats -= 2 * (self._uses[tag] - 1)
        for tag in new.tags:
            repeats += 2 * (self._uses[tag] - (tag in gone))
        return apart + _PER_REPEAT * repeats


def _climbed(
    rows: Sequence[Row],
    likes: Sequence[Sequence[Spread]],
    pools: Mapping[str, Sequence[int]],
    start: Sequence[int],
) -> tuple[float, tuple[int, ...]]:
    """The start, exchanged one by one for what is nearer to all of `likes` until nothing is."""
    choice = _Choice(rows, likes, start)
    now = choice.cost_with(0, start[0]) if start else 0.0
    moved = True
    while moved:
        moved = False
        for place in range(len(start)):
            inside = set(choice.indices)
            found = min(
                (
                    (choice.cost_with(place, other), other)
                    for other in pools[rows[choice.indices[place]].stratum]
                    if other not in inside
                ),
                default=(now, -1),
            )
            if found[0] < now - _LEAST_GAIN:
                now, moved = found[0], True
                choice = _Choice(
                    rows, likes, [*choice.indices[:place], found[1], *choice.indices[place + 1 :]]
                )
    return now, tuple(sorted(choice.indices))
