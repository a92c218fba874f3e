"""The order of a block's trials: mixed, so that no simple habit answers them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from itertools import combinations, groupby
from random import Random

from drills.core.items import Target

MOST_OF_A_NAME_RUNNING = 3

# In this order of weight: a habit of names is worst, then one verb group twice, then one target.
_NAME_RUNS_ON = 100_000
_TARGET_TWICE = 1
_GROUP_TWICE = 100
# Fresh starts of the search; short blocks can afford more, and are where one start may get stuck.
_STARTS_TIMES_TRIALS = 400


def runs_are_short(order: Sequence[Target], *, names: int) -> bool:
    """No name more than three times running; with one name there is nothing to mix."""
    return names < 2 or all(
        sum(1 for _ in run) <= MOST_OF_A_NAME_RUNNING
        for _, run in groupby(order, key=lambda target: target.name)
    )


def arrange(
    counts: Mapping[Target, int],
    *,
    first: Target | None,
    last: Target | None,
    names: int,
    rng: Random,
) -> tuple[Target, ...]:
    """Each target as often as `counts` says, in a mixed order, the earlier in `counts` the earlier.

    first, last: kept at the ends, unless a name would then run on.   names: in the whole block.
    """
    best = _search(counts, first, last, names, rng)
    if not runs_are_short(best, names=names):
        best = min(
            best, _search(counts, None, None, names, rng), key=lambda order: _cost(order, names)
        )
    return tuple(best)


def _search(
    counts: Mapping[Target, int],
    first: Target | None,
    last: Target | None,
    names: int,
    rng: Random,
) -> list[Target]:
    """The best order found: from an even spread, then from shuffles, by swapping pairs."""
    inner = dict(counts)
    for end in (first, last):
        if end is not None:
            inner[end] -= 1
    middle = _spread(inner)
    floor = _least_cost(counts)
    head = [] if first is None else [first]
    tail = [] if last is None else [last]
    found: list[list[Target]] = []
    for _ in range(max(6, _STARTS_TIMES_TRIALS // max(1, sum(counts.values())))):
        order = _improve([*head, *middle, *tail], len(head), len(tail), names, floor)
        found.append(order)
        if _cost(order, names) <= floor:
            break
        rng.shuffle(middle)
    return min(found, key=lambda order: _cost(order, names))


def _spread(counts: Mapping[Target, int]) -> list[Target]:
    """One of each in turn, until each is given as often as it should be."""
    order: list[Target] = []
    for turn in range(max(counts.values(), default=0)):
        order += [target for target, count in counts.items() if count > turn]
    return order


def _improve(
    order: list[Target], fixed_head: int, fixed_tail: int, names: int, floor: int
) -> list[Target]:
    """Swap pairs as long as that makes the order better."""
    cost = _cost(order, names)
    better = True
    while better and cost > floor:
        better = False
        for i, j in combinations(range(fixed_head, len(order) - fixed_tail), 2):
            if order[i] == order[j]:
                continue
            order[i], order[j] = order[j], order[i]
            swapped = _cost(order, names)
            if swapped < cost:
                cost, better = swapped, True
            else:
                order[i], order[j] = order[j], order[i]
    return order


def _cost(order: Sequence[Target], names: int) -> int:
    cost = running = 0
    before: Target | None = None
    for target in order:
        running = running + 1 if before is not None and before.name == target.name else 1
        if names > 1 and running > MOST_OF_A_NAME_RUNNING:
            cost += _NAME_RUNS_ON
        if before is not None and before.group and before.group == target.group:
            cost += _GROUP_TWICE
        if before == target:
            cost += _TARGET_TWICE
        before = target
    return cost


def _least_cost(counts: Mapping[Target, int]) -> int:
    """A cost that no order can go below: what is more than half of a block must meet itself."""
    trials = sum(counts.values())
    groups: Counter[str] = Counter()
    for target, count in counts.items():
        if target.group:
            groups[target.group] += count
    meet = [max(0, 2 * count - trials - 1) for count in groups.values()]
    same = [max(0, 2 * count - trials - 1) for count in counts.values()]
    return _GROUP_TWICE * max(meet, default=0) + _TARGET_TWICE * max(same, default=0)
