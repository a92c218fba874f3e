"""Probe lists: the same items in three fixed orders, every half even."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from functools import partial
from random import Random

from drills.core.items import Item, Kind, Target
from drills.core.material import Material
from drills.core.plans import Probed
from drills.core.problems import BadInput
from drills.exercises.exercise import Batch, with_id
from drills.exercises.match.making import make_of
from drills.exercises.probes.choosing import SPARES, Chosen, Exemplar, chosen_for
from drills.exercises.probes.sets import read_exemplars

ORDERS = ("A", "B", "C")
LONGEST_RUN = 3
"""Most times running for a construction, and for the place of the right picture."""

_TRIES = 200
_ORDERS_TRIED = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeItems:
    """All probe items of a plan in two halves, each even within every construction."""

    halves: tuple[tuple[Item, ...], tuple[Item, ...]]

    @property
    def all(self) -> tuple[Item, ...]:
        return (*self.halves[0], *self.halves[1])


def probe_items(
    asked: Sequence[Probed], material: Material, *, items: int, options: int, seed: int
) -> ProbeItems:
    """The items of every construction asked, without any help: of its set, or as the seed chooses.

    Raises: ValueError when the reserve has too few exemplars, BadInput when too few of them have
    pictures that can be told apart.
    """
    halves: tuple[list[Item], list[Item]] = ([], [])
    names: tuple[str, ...] = ()
    for each in asked:
        if each.exemplars:
            both = items_of_set(each, material, options=options, seed=seed)
        else:
            chosen = chosen_for(
                each.construction, material.lexicon, items=items, seed=seed, after=names
            )
            names = (*names, each.construction)
            both = items_of_choice(each, chosen, material, options=options, seed=seed)
        for half, made in zip(halves, both, strict=True):
            half.extend(made)
    return ProbeItems(halves=(tuple(halves[0]), tuple(halves[1])))


Halves = tuple[tuple[Item, ...], tuple[Item, ...]]


def items_of_choice(
    asked: Probed, chosen: Chosen, material: Material, *, options: int, seed: int
) -> Halves:
    """Both halves; a spare comes in for what cannot be told apart.   Raises: BadInput."""
    one, other = (
        _half(
            asked,
            (*half, *chosen.spares[which * SPARES : (which + 1) * SPARES]),
            material,
            size=len(half),
            options=options,
            rng=_rng_of(seed, asked, which, len(chosen.exemplars), options),
        )
        for which, half in enumerate(chosen.halves)
    )
    return one, other


def items_of_set(asked: Probed, material: Material, *, options: int, seed: int) -> Halves:
    """Both halves of a set that stands in the plan: these very exemplars and no others.

    The first is dealt what chance deals first, and so on, so that the doer's side goes with the
    place in the set; only where pictures cannot be told apart so are others tried.
    Raises: BadInput when they cannot be told apart at all.
    """
    exemplars = read_exemplars(asked, material.lexicon)
    size = len(exemplars) // 2
    one, other = (
        _half_of_set(
            asked,
            exemplars[which * size : (which + 1) * size],
            material,
            options,
            partial(_rng_of, seed, asked, which, len(exemplars), options),
        )
        for which in range(2)
    )
    return one, other


def _half_of_set(
    asked: Probed,
    exemplars: Sequence[Exemplar],
    material: Material,
    options: int,
    draw: Callable[[], Random],
) -> tuple[Item, ...]:
    order = list(exemplars)
    for tried in range(_ORDERS_TRIED):
        try:
            return _half(asked, order, material, size=len(order), options=options, rng=draw())
        except BadInput:
            # Who comes first is dealt the first side that suits.
            Random(f"{asked.construction} {tried}").shuffle(order)
    raise BadInput(
        f"The set of {asked.construction} has pairs whose pictures cannot be told apart any more. "
        "Make the sets anew: drills plan sets FILE."
    )


def _rng_of(seed: int, asked: Probed, which: int, items: int, options: int) -> Random:
    return Random(f"{seed} {asked.construction} {which} of {items}, {options}")


def _half(
    asked: Probed,
    exemplars: Sequence[Exemplar],
    material: Material,
    *,
    size: int,
    options: int,
    rng: Random,
) -> tuple[Item, ...]:
    """As many items as `size`.   exemplars: in the order in which they are dealt, spares last."""
    wanted = [(_target(asked, one), one.act, one.pair) for one in exemplars]
    batch = Batch(
        targets=[target for target, _, _ in wanted[:size]],
        options=options,
        material=material,
        rng=rng,
        item_set=asked.item_set,
    )
    return tuple(map(_without_help, make_of(batch, wanted)))


def ordered(items: ProbeItems, order: str, *, seed: int) -> tuple[tuple[Item, ...], ...]:
    """Both halves of a list, in the order of their letter; B begins with the second half.

    No construction and no place of the right picture comes more than three times running, as far
    as there are others; no verb comes twice running where it can be helped.
    Raises: ValueError for an unknown order.
    """
    rng = Random(f"{seed} order {ORDERS.index(order)}")
    halves = [_in_order(half, rng) for half in items.halves]
    return tuple(halves[::-1] if order == "B" else halves)


def faults_of_order(items: Sequence[Item]) -> int:
    """How often a run is too long or a word of the item before comes again."""
    constructions = len({item.construction for item in items})
    faults = 0
    for index, item in enumerate(items):
        before = items[max(0, index - LONGEST_RUN) : index]
        if len(before) == LONGEST_RUN:
            faults += all(each.answer == item.answer for each in before) * _GRAVE
            if constructions > 1:
                faults += all(each.construction == item.construction for each in before) * _GRAVE
        if before:
            faults += item.words[0] == before[-1].words[0]
            faults += len(set(item.words) & set(before[-1].words)) > 0
    return faults


_GRAVE = 1000


def _in_order(half: Sequence[Item], rng: Random) -> tuple[Item, ...]:
    """The half in an order by chance, exchanged by twos while that leaves fewer faults."""
    order = list(half)
    rng.shuffle(order)
    faults = faults_of_order(order)
    for _ in range(_TRIES * len(order)):
        if not faults:
            break
        one, other = rng.randrange(len(order)), rng.randrange(len(order))
        order[one], order[other] = order[other], order[one]
        left = faults_of_order(order)
        if left <= faults:
            faults = left
        else:
            order[one], order[other] = order[other], order[one]
    return tuple(order)


def _target(asked: Probed, exemplar: Exemplar) -> Target:
    return Target(kind=Kind.MATCH, name=asked.construction, group=exemplar.group)


def _without_help(item: Item) -> Item:
    return with_id(replace(item, cues=()))
