"""Chance that comes out even: every value equally often, in an order nobody can foresee."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Sequence
from random import Random
from typing import TypeVar

T = TypeVar("T")

# A pass mends most runs that are too long; a deal that still holds one is dealt anew.
_PASSES = 20
_DEALS = 40


def spread(
    rng: Random,
    groups: Sequence[Hashable],
    values: Sequence[T],
    *,
    crossed: Sequence[Hashable] | None = None,
) -> list[T]:
    """One value for each entry of `groups`: each equally often, within one.

    That holds in all, in each group, and for each entry of `crossed` within a group, so that a
    value tells nothing of what it is crossed with.
    """
    cells: dict[Hashable, dict[Hashable, list[int]]] = {}
    for index, group in enumerate(groups):
        cell = None if crossed is None else crossed[index]
        cells.setdefault(group, {}).setdefault(cell, []).append(index)
    cycle = list(values)
    rng.shuffle(cycle)
    dealt: list[T] = [cycle[0]] * len(groups)
    # Dealing round and round keeps any stretch even: the whole, a group, a cell. Their order is
    # left to chance, so that the remainder favours none of them.
    order = [index for group in _shuffled(rng, cells) for index in _members(rng, cells[group])]
    for count, index in enumerate(order):
        dealt[index] = cycle[count % len(cycle)]
    return dealt


def _members(rng: Random, cells: dict[Hashable, list[int]]) -> list[int]:
    return [index for cell in _shuffled(rng, cells) for index in _shuffled(rng, cells[cell])]


def _shuffled(rng: Random, values: Iterable[T]) -> list[T]:
    order = list(values)
    rng.shuffle(order)
    return order


def without_runs(
    rng: Random, groups: Sequence[Hashable], deal: Callable[[], list[T]], *, longest: int
) -> list[T]:
    """What `deal` gives, with no value more than `longest` times running.

    Values are exchanged within their group only, so each group keeps its own. A batch that
    allows no such order comes back as it was dealt last.
    """
    order: list[T] = []
    for _ in range(_DEALS):
        order = _mended(rng, groups, deal(), longest)
        if not runs(order, longest=longest):
            break
    return order


def runs(order: Sequence[object], *, longest: int) -> list[int]:
    """Where a value stands for the time after `longest` times running."""
    return [index for index in range(len(order)) if _run_ends_at(order, index, longest)]


def _mended(rng: Random, groups: Sequence[Hashable], dealt: list[T], longest: int) -> list[T]:
    order = list(dealt)
    for _ in range(_PASSES):
        broken = runs(order, longest=longest)
        if not broken:
            break
        for index in broken:
            if _run_ends_at(order, index, longest):
                _exchange(rng, groups, order, index, longest)
    return order


def _exchange(
    rng: Random, groups: Sequence[Hashable], order: list[T], index: int, longest: int
) -> None:
    """Exchange `index` with another of its group such that no run ends near either."""
    others = [
        other
        for other, group in enumerate(groups)
        if group == groups[index] and order[other] != order[index]
    ]
    for other in _shuffled(rng, others):
        order[index], order[other] = order[other], order[index]
        near = (*_after(order, index, longest), *_after(order, other, longest))
        if not any(_run_ends_at(order, at, longest) for at in near):
            return
        order[index], order[other] = order[other], order[index]


def _after(order: Sequence[object], index: int, longest: int) -> range:
    return range(index, min(len(order), index + longest + 1))


def _run_ends_at(order: Sequence[object], index: int, longest: int) -> bool:
    return index >= longest and all(
        order[index - back] == order[index] for back in range(1, longest + 1)
    )
