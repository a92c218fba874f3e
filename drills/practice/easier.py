"""Easier targets among what the plan prescribes."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from dataclasses import replace
from random import Random

from drills.core.items import Item, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.exercises import check_block, make_items, names_of, targets_of
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


def easier_than(
    target: Target, plan: Plan, material: Material, *, opened: Collection[Target] | None = None
) -> tuple[Target, ...]:
    """The targets of the plan that are the next easier ones of the same kind; none for none.

    opened: those that may be given by now; None for all.
    """
    own = difficulty(target)
    if own is None:
        return ()
    ranked: dict[Target, int] = {}
    for block in plan.blocks:
        if block.kind is target.kind:
            for other in targets_of(block, material):
                found = difficulty(other)
                if found is None or (opened is not None and other not in opened):
                    continue
                if found[0] == own[0] and found[1] < own[1]:
                    ranked[other] = found[1]
    nearest = max(ranked.values(), default=0)
    return tuple(other for other, rank in ranked.items() if rank == nearest)


def harder_than(block: BlockPlan, name: str, plan: Plan, material: Material) -> str | None:
    """The next harder name of the same kind that could take its place in the block.

    None of what the plan practises already, nor of what it keeps for checks.
    """
    own = difficulty(Target(kind=block.kind, name=name))
    if own is None:
        return None
    taken = {each for other in plan.blocks if other.kind is block.kind for each in other.names}
    taken |= {*plan.probes.finished, *plan.probes.related, *plan.probes.control}
    ranked = sorted(
        (found[1], other)
        for other in names_of(block.kind, material)
        if other not in taken
        and _says_the_same(name, other)
        and (found := difficulty(Target(kind=block.kind, name=other))) is not None
        and found[0] == own[0]
        and found[1] > own[1]
    )
    return next(
        (other for _, other in ranked if not check_block(replace(block, names=(other,)), material)),
        None,
    )


def _says_the_same(name: str, other: str) -> bool:
    """Both are about acts, or both about places and so on; levels always are."""
    one, two = (CONSTRUCTIONS.get(each.rpartition(":")[2]) for each in (name, other))
    return one is None or two is None or one.meaning_type == two.meaning_type


def is_as_hard(target: Target, other: Target) -> bool:
    """Whether `target` is at least as hard as `other`, where the two can be compared."""
    own, others = difficulty(target), difficulty(other)
    return own is not None and others is not None and own[0] == others[0] and own[1] >= others[1]


class EasierItems:
    """Makes easier items in place of what is too hard. The same seed makes the same items.

    opened: the targets that may be given by now, by the order of each block; None for all.
    """

    def __init__(
        self,
        plan: Plan,
        material: Material,
        *,
        seed: int,
        opened: Collection[Target] | None = None,
    ) -> None:
        self._plan = plan
        self._material = material
        self._seed = seed
        self._opened = opened

    def has_any(self, target: Target) -> bool:
        return bool(self._easier(target))

    def instead_of(
        self, items: Sequence[Item], *, failed: Target, options: int
    ) -> tuple[Item, ...]:
        """`items` with an easier one for each that is as hard as `failed`."""
        easier = self._easier(failed)
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

    def _easier(self, target: Target) -> tuple[Target, ...]:
        return easier_than(target, self._plan, self._material, opened=self._opened)
