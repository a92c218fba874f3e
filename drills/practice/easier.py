"""Easier targets among what the plan prescribes."""

from __future__ import annotations

import re
from collections.abc import Sequence
from random import Random

from drills.core.items import Item, Target
from drills.core.material import Material
from drills.core.plans import Plan
from drills.exercises import make_items, targets_of
from drills.language import CONSTRUCTIONS


def difficulty(target: Target) -> tuple[str, int] | None:
    """What the target may be compared with, and how hard it is among these; None for no order.

    A construction has its rank, also within a question; a numbered level its number. Both orders
    are common practice, no source.
    """
    form, _, name = target.name.rpartition(":")
    if name in CONSTRUCTIONS:
        return form, CONSTRUCTIONS[name].rank
    if level := re.fullmatch("([A-Z]+)([0-9]+)", name):
        return f"{form}:{level[1]}", int(level[2])
    return None


def easier_than(target: Target, plan: Plan, material: Material) -> tuple[Target, ...]:
    """The targets of the plan that are the next easier ones of the same kind; none for none."""
    own = difficulty(target)
    if own is None:
        return ()
    ranked: dict[Target, int] = {}
    for block in plan.blocks:
        if block.kind is target.kind:
            for other in targets_of(block, material):
                found = difficulty(other)
                if found is not None and found[0] == own[0] and found[1] < own[1]:
                    ranked[other] = found[1]
    nearest = max(ranked.values(), default=0)
    return tuple(other for other, rank in ranked.items() if rank == nearest)


def is_as_hard(target: Target, other: Target) -> bool:
    """Whether `target` is at least as hard as `other`, where the two can be compared."""
    own, others = difficulty(target), difficulty(other)
    return own is not None and others is not None and own[0] == others[0] and own[1] >= others[1]


class EasierItems:
    """Makes easier items in place of what is too hard. The same seed makes the same items."""

    def __init__(self, plan: Plan, material: Material, *, seed: int) -> None:
        self._plan = plan
        self._material = material
        self._seed = seed

    def has_any(self, target: Target) -> bool:
        return bool(easier_than(target, self._plan, self._material))

    def instead_of(
        self, items: Sequence[Item], *, failed: Target, options: int
    ) -> tuple[Item, ...]:
        """`items` with an easier one for each that is as hard as `failed`."""
        easier = easier_than(failed, self._plan, self._material)
        places = [place for place, item in enumerate(items) if is_as_hard(item.target, failed)]
        if not easier or not places:
            return tuple(items)
        rng = Random(f"{self._seed} easier than {failed}, {len(items)} to come")
        shuffled = list(easier)
        rng.shuffle(shuffled)
        made = make_items(
            [shuffled[number % len(shuffled)] for number in range(len(places))],
            options=options,
            material=self._material,
            rng=rng,
        )
        changed = list(items)
        for place, item in zip(places, made, strict=True):
            changed[place] = item
        return tuple(changed)
