"""A plan that is being changed: settings as text and back, blocks, and what differs."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace
from difflib import SequenceMatcher
from enum import StrEnum
from itertools import pairwise
from types import MappingProxyType
from typing import Any

from drills.core.kinds import Kind
from drills.core.plans import BlockPlan, Plan
from drills.core.problems import BadInput
from drills.core.settings import LONGEST_NAME, LONGEST_NOTE, Section, Setting
from drills.digest.wording import KINDS

TOP = Section(
    name="",
    made=Plan,
    says="The plan itself: its name, the therapist, a note.",
    settings=(
        Setting(key="name", says="name of the plan", low=1, high=LONGEST_NAME),
        Setting(key="code", says="code of the person, never the name", high=20),
        Setting(key="therapist", says="the therapist", high=LONGEST_NAME),
        Setting(key="note", says="a note", high=LONGEST_NOTE),
        Setting(key="without_kin", says="relatives that are never said"),
    ),
)
"""What stands before the tables of a plan; the limits are those of the file."""

NONE = "none"


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """what: the setting and where it is.   before, after: as text."""

    what: str
    before: str
    after: str

    def __str__(self) -> str:
        return f"{self.what}: {self.before} -> {self.after}"


def value_of(plan: Plan, section: Section, setting: Setting) -> Any:
    return getattr(_table(plan, section), setting.key)


def with_value(plan: Plan, section: Section, setting: Setting, value: Any) -> Plan:
    """`plan` with one setting changed."""
    changed = replace(_table(plan, section), **{setting.key: value})
    return changed if section.name == "" else replace(plan, **{section.name: changed})


def _table(plan: Plan, section: Section) -> Any:
    return plan if section.name == "" else getattr(plan, section.name)


def told(value: object, labels: Mapping[str, str] = MappingProxyType({})) -> str:
    """A setting as people read it, and without `labels` as `read_value` reads it again.

    labels: key -> plain name, for lists of names.
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, float):
        short = f"{value:g}"
        return short if float(short) == value else repr(value)
    if isinstance(value, tuple) and any(each in labels for each in value):
        return "; ".join(labels.get(each, each) for each in value)
    if isinstance(value, tuple):
        return ", ".join(told(each) for each in value) or NONE
    return str(value) or NONE


def limits(setting: Setting, value: object) -> str:
    """`5 to 90`; empty where there are none."""
    if not setting.high:
        return ""
    span = f"{setting.low:g} to {setting.high:g}"
    return f"{span} letters" if isinstance(value, str) else span


def read_value(setting: Setting, before: object, text: str) -> Any:
    """What `text` sets, of the kind that stands there now.   Raises: BadInput, one sentence."""
    text = text.strip()
    if isinstance(before, tuple):
        parts = [] if text in ("", NONE) else [part.strip() for part in text.split(",")]
        if not setting.high:
            return tuple(parts)
        days = tuple(_whole(setting, part) for part in parts)
        if not days:
            raise BadInput("Write at least one number.")
        if any(later <= earlier for earlier, later in pairwise(days)):
            raise BadInput("Write the numbers in rising order, with a comma between them.")
        return days
    if isinstance(before, int):
        return _whole(setting, text)
    if isinstance(before, float):
        return _number(setting, text)
    if not setting.low <= len(text) <= setting.high:
        raise BadInput(f"Write {limits(setting, text)}; this is {len(text)}.")
    return text


def _whole(setting: Setting, text: str) -> int:
    number = _number(setting, text)
    if number != int(number):
        raise BadInput(f"{text!r} is not a whole number.")
    return int(number)


def _number(setting: Setting, text: str) -> float:
    try:
        number = float(text)
    except ValueError:
        number = math.nan
    if not math.isfinite(number):
        raise BadInput(f"{text!r} is no number. Write {limits(setting, 0)}.")
    if not setting.low <= number <= setting.high:
        raise BadInput(f"{text} is outside {limits(setting, 0)}.")
    return number


# Blocks


def block_line(block: BlockPlan, labels: Mapping[str, str]) -> str:
    """One line on a block: task, trials, names."""
    names = "; ".join(labels.get(name, name) for name in block.names) or "nothing yet"
    return f"{KINDS[block.kind]}, {block.trials} trials: {names}"


def with_block(plan: Plan, at: int, block: BlockPlan) -> Plan:
    """`plan` with another block at the place `at`, or one more after the last."""
    blocks = [*plan.blocks]
    blocks[at : at + 1] = [block]
    return replace(plan, blocks=tuple(blocks))


def without_block(plan: Plan, at: int) -> Plan:
    return replace(plan, blocks=(*plan.blocks[:at], *plan.blocks[at + 1 :]))


def raised(plan: Plan, at: int) -> Plan:
    """`plan` with the block at `at` one place further up; the first one stays."""
    if not 0 < at < len(plan.blocks):
        return plan
    blocks = [*plan.blocks]
    blocks[at - 1 : at + 1] = [blocks[at], blocks[at - 1]]
    return replace(plan, blocks=tuple(blocks))


def new_block(kind: Kind) -> BlockPlan:
    """A block that names nothing yet."""
    return BlockPlan(kind=kind, names=(), trials=10)


def of_kind(block: BlockPlan, kind: Kind, names: Sequence[str]) -> BlockPlan:
    """`block` for another task, with those of its names that the task has.   names: of the task."""
    if block.kind is kind:
        return block
    known = tuple(name for name in block.names if name in names)
    return replace(new_block(kind), names=known, trials=block.trials)


# What differs


def differences(before: Plan, after: Plan, labels: Mapping[str, str]) -> tuple[Difference, ...]:
    """Every setting that is another one now, in the order of the plan file; not the version."""
    found = []
    for field in fields(Plan):
        old, new = getattr(before, field.name), getattr(after, field.name)
        if field.name in ("version", "blocks") or old == new:
            continue
        if hasattr(old, "__dataclass_fields__"):
            found += [
                Difference(
                    what=f"{field.name}, {each.name}",
                    before=told(getattr(old, each.name), labels),
                    after=told(getattr(new, each.name), labels),
                )
                for each in fields(old)
                if getattr(old, each.name) != getattr(new, each.name)
            ]
        else:
            found.append(Difference(what=field.name, before=told(old), after=told(new)))
    return (*found, *_of_blocks(before.blocks, after.blocks, labels))


def _of_blocks(
    before: Sequence[BlockPlan], after: Sequence[BlockPlan], labels: Mapping[str, str]
) -> list[Difference]:
    """Blocks that stand in both are paired, so that one taken out moves no other."""
    found = []
    matcher = SequenceMatcher(a=before, b=after, autojunk=False)
    for tag, a1, a2, b1, b2 in matcher.get_opcodes():
        if tag == "equal":
            continue
        pairs = min(a2 - a1, b2 - b1)
        for step in range(pairs):
            found += _of_block(b1 + step + 1, before[a1 + step], after[b1 + step], labels)
        found += [
            Difference(what=f"block {at + 1}", before=block_line(before[at], labels), after=NONE)
            for at in range(a1 + pairs, a2)
        ]
        found += [
            Difference(what=f"block {at + 1}", before=NONE, after=block_line(after[at], labels))
            for at in range(b1 + pairs, b2)
        ]
    return found


def _of_block(
    number: int, before: BlockPlan, after: BlockPlan, labels: Mapping[str, str]
) -> list[Difference]:
    return [
        Difference(
            what=f"block {number}, {field.name}", before=told(old, labels), after=told(new, labels)
        )
        for field in fields(BlockPlan)
        for old, new in ((getattr(before, field.name), getattr(after, field.name)),)
        if old != new
    ]
