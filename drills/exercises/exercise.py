"""What every kind of exercise gives to the rest: names, targets, items."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from hashlib import sha256
from random import Random

from drills.core.items import Item, ItemSet, Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.core.problems import Problem

ID_LENGTH = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """Items to be made together, so that they can be balanced against each other."""

    targets: Sequence[Target]
    options: int
    material: Material
    rng: Random
    item_set: ItemSet = ItemSet.TREATED


def no_groups(_material: Material, _names: Sequence[str]) -> tuple[str, ...]:
    """Of a kind whose targets have no group."""
    return ()


def no_faults(_block: BlockPlan, _material: Material) -> tuple[Problem, ...]:
    """Of a kind that takes any block whose names and groups are known."""
    return ()


def no_refusal(_name: str) -> str:
    """Of a kind with no names that are known elsewhere and not here."""
    return ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exercise:
    """One kind of exercise.

    names: what a block may name.   groups: groups that a block with these names may name.
    faults: what else is wrong with a block whose names and groups are known.
    refuses: why a name that is known elsewhere is not asked here; empty for any other.
    """

    kind: Kind
    names: Callable[[Material], tuple[str, ...]]
    targets: Callable[[BlockPlan, Material], tuple[Target, ...]]
    make: Callable[[Batch], tuple[Item, ...]]
    groups: Callable[[Material, Sequence[str]], tuple[str, ...]] = no_groups
    faults: Callable[[BlockPlan, Material], tuple[Problem, ...]] = no_faults
    refuses: Callable[[str], str] = no_refusal


def with_id(item: Item) -> Item:
    """The item under an id that depends on nothing but its content."""
    row = dict(item.as_json())
    row["id"] = ""
    row["picture"] = None if item.picture is None else item.picture.side.value
    text = json.dumps(row, sort_keys=True, separators=(",", ":"), ensure_ascii=True)
    return replace(item, id=sha256(text.encode("ascii")).hexdigest()[:ID_LENGTH])
