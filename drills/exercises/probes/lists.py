"""Probe lists: the same items in three fixed orders, every half even."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from random import Random

from drills.core.items import Item, Kind, Target
from drills.core.material import Material
from drills.core.plans import Probed
from drills.exercises.exercise import Batch, with_id
from drills.exercises.match.making import make_of
from drills.exercises.probes.choosing import SPARES, Exemplar, chosen_for

ORDERS = ("A", "B", "C")
LONGEST_RUN = 3
"""Most times running for a construction, and for the place of the right picture."""

_TRIES = 200


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
    """The items of every construction asked, without any help.

    Raises: ValueError when the reserve has too few exemplars, BadInput when too few of them have
    pictures that can be told apart.
    """
    halves: tuple[list[Item], list[Item]] = ([], [])
    names = tuple(each.construction for each in asked)
    for number, each in enumerate(asked):
        chosen = chosen_for(
            each.construction, material.lexicon, items=items, seed=seed, after=names[:number]
        )
        for which, half in enumerate(chosen.halves):
            spares = chosen.spares[which * SPARES : (which + 1) * SPARES]
            wanted = [(_target(each, one), one.act, one.pair) for one in (*half, *spares)]
            batch = Batch(
                targets=[target for target, _, _ in wanted[: len(half)]],
                options=options,
                material=material,
                rng=Random(f"{seed} {each.construction} {which} of {items}, {options}"),
                item_set=each.item_set,
            )
            halves[which].extend(map(_without_help, make_of(batch, wanted)))
    return ProbeItems(halves=(tuple(halves[0]), tuple(halves[1])))


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
