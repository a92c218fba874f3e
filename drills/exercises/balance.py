"""Chance that comes out even: every value equally often, in an order nobody can foresee."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random
from typing import TypeVar

T = TypeVar("T")

# Each pass mends most runs that are too long; a batch that still holds one is shuffled anew.
_PASSES = 20
_SHUFFLES = 20


def spread(rng: Random, groups: Sequence[str], values: Sequence[T]) -> list[T]:
    """One value for each entry of `groups`: each equally often in a group and in all, within one.

    Groups are taken in a random order, so no group is favoured by the remainder.
    """
    members: dict[str, list[int]] = {}
    for index, group in enumerate(groups):
        members.setdefault(group, []).append(index)
    runs = list(members.values())
    rng.shuffle(runs)
    cycle = list(values)
    rng.shuffle(cycle)
    dealt: list[T] = [cycle[0]] * len(groups)
    count = 0
    for run in runs:
        rng.shuffle(run)
        for index in run:
            dealt[index] = cycle[count % len(cycle)]
            count += 1
    return dealt


def spread_within(
    rng: Random, groups: Sequence[str], crossed: Sequence[object], values: Sequence[T]
) -> list[T]:
    """Like `spread`, and each value equally often with each entry of `crossed` too."""
    return spread(
        rng, [f"{group}|{other}" for group, other in zip(groups, crossed, strict=True)], values
    )


def without_runs(
    rng: Random, groups: Sequence[str], dealt: Sequence[T], *, longest: int
) -> list[T]:
    """The same values in each group, exchanged until none comes more than `longest` times running.

    A batch that allows no such order is returned as near to it as was found.
    """
    best = list(dealt)
    for _ in range(_SHUFFLES):
        order = _mended(rng, groups, best, longest)
        if not _runs(order, longest):
            return order
        best = _shuffled(rng, groups, order)
    return order


def _shuffled(rng: Random, groups: Sequence[str], dealt: Sequence[T]) -> list[T]:
    members: dict[str, list[int]] = {}
    for index, group in enumerate(groups):
        members.setdefault(group, []).append(index)
    order = list(dealt)
    for indices in members.values():
        values = [dealt[index] for index in indices]
        rng.shuffle(values)
        for index, value in zip(indices, values, strict=True):
            order[index] = value
    return order


def _mended(rng: Random, groups: Sequence[str], dealt: Sequence[T], longest: int) -> list[T]:
    order = list(dealt)
    for _ in range(_PASSES):
        broken = _runs(order, longest)
        if not broken:
            break
        for index in broken:
            if not _run_ends_at(order, index, longest):
                continue
            others = [
                other
                for other, group in enumerate(groups)
                if group == groups[index] and order[other] != order[index]
            ]
            rng.shuffle(others)
            for other in others:
                order[index], order[other] = order[other], order[index]
                near = (
                    *range(index, min(len(order), index + longest + 1)),
                    *range(other, min(len(order), other + longest + 1)),
                )
                if not any(_run_ends_at(order, at, longest) for at in near):
                    break
                order[index], order[other] = order[other], order[index]
    return order


def _run_ends_at(order: Sequence[T], index: int, longest: int) -> bool:
    return index >= longest and all(
        order[index - back] == order[index] for back in range(1, longest + 1)
    )


def _runs(order: Sequence[T], longest: int) -> list[int]:
    return [index for index in range(len(order)) if _run_ends_at(order, index, longest)]
