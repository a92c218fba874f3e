"""Checks of a plan: with which items they ask, how long they take, and how a session runs them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache

from drills.core.items import Item, Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, CueSettings, Plan, Probed, SessionRules, ShowText
from drills.core.problems import BadInput
from drills.exercises.probes import (
    ProbeItems,
    asked_in,
    differences,
    exemplars_of,
    ordered,
    probe_items,
)
from drills.practice.dealing import Block
from drills.practice.probed import asked_of
from drills.schedule.checks import CheckList

PART = 20
"""Most items between two rests."""
OPTIONS = 2


def items_of_check(plan: Plan, material: Material, chosen: CheckList) -> tuple[Item, ...]:
    """The items of a check in their order.

    A half holds the same items in each order, so that short checks ask all by turns.
    Raises: BadInput when there are too few exemplars, or nothing to check.
    """
    asked = asked_of(plan)
    if not asked:
        raise BadInput("This plan practises nothing that can be checked.")
    items = _items(asked, _Words(material), plan.probes.items, plan.probes.seed)
    halves = ordered(items, chosen.letter, seed=plan.probes.seed)
    if chosen.half is not None:
        wanted = set(items.halves[chosen.half])
        return next(half for half in halves if wanted.issuperset(half))
    return tuple(item for half in halves for item in half)


def likeness(plan: Plan, material: Material) -> dict[str, dict[str, float]]:
    """Construction -> standardised mean differences between what is probed and what is practised.

    Of letters, of frequency, and of the share of each verb group or relation.
    """
    items = items_of_check(plan, material, CheckList(letter="A"))
    lexicon = material.lexicon
    return {
        asked.construction: differences(
            asked_in([item for item in items if item.construction == asked.construction], lexicon),
            exemplars_of(asked.construction, lexicon, reserved=False),
        )
        for asked in asked_of(plan)
    }


def check_blocks(plan: Plan, material: Material, chosen: CheckList) -> tuple[Block, ...]:
    """The items in parts with rests between."""
    items = items_of_check(plan, material, chosen)
    parts = -(-len(items) // PART)
    size = -(-len(items) // parts)
    return tuple(
        Block(kind=Kind.MATCH, items=items[at : at + size]) for at in range(0, len(items), size)
    )


def plan_of_check(plan: Plan, blocks: Sequence[Block]) -> Plan:
    """The plan for a session that only checks: no help, and no rule that changes it."""
    text = next((block.text for block in plan.blocks if block.kind is Kind.MATCH), ShowText.SHOWN)
    names = tuple(dict.fromkeys(item.construction for block in blocks for item in block.items))
    return replace(
        plan,
        blocks=tuple(
            BlockPlan(kind=Kind.MATCH, names=names, trials=len(block.items), text=text)
            for block in blocks
        ),
        cues=replace(CueSettings(), wait_seconds=0),
        session_rules=SessionRules(
            errors_to_full_help=0,
            errors_to_easier=0,
            perseverations_to_change=0,
            fall_points=0,
            slower_times=0,
        ),
    )


class _Words:
    """Material that is told apart by its content and its words alone."""

    def __init__(self, material: Material) -> None:
        self.material = material

    def __hash__(self) -> int:
        return hash(self.material.content_hash)

    def __eq__(self, other: object) -> bool:
        return (
            isinstance(other, _Words)
            and self.material.content_hash == other.material.content_hash
            and self.material.lexicon == other.material.lexicon
        )


@lru_cache(maxsize=8)
def _items(asked: tuple[Probed, ...], words: _Words, items: int, seed: int) -> ProbeItems:
    # Drawing a hundred pictures twice to tell them apart takes some seconds.
    try:
        return probe_items(asked, words.material, items=items, options=OPTIONS, seed=seed)
    except ValueError as error:
        raise BadInput(f"A check cannot be made: {error}, and {items} are wanted.") from error
