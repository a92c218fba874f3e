"""The [[set]] tables of a plan: which exemplars checks ask, read and written."""

from __future__ import annotations

import re
from collections.abc import Sequence

from drills.catalogue.fields import Fields
from drills.catalogue.toml_lines import Block
from drills.core.plans import ProbeSettings
from drills.core.probe_sets import SET_ROLES, ProbeSet, SetExemplar

SET_KEYS = ("role", "construction", "exemplars")
SAYS = (
    "# What checks ask, made by `drills plan sets`. Once checks have begun, keep it.",
    "# role: treated (new sentences of what is practised), related, or control.",
    '# exemplars: "verb: who does it, to whom", each verb and pair of words once in all sets.',
)


def read_sets(found: Sequence[Fields], probes: ProbeSettings) -> tuple[ProbeSet, ...]:
    """The sets in the order of the file, their form checked and no more."""
    sets: list[ProbeSet] = []
    taken: dict[tuple[str, frozenset[str]], str] = {}
    for fields in found:
        made = _set(fields)
        sets.append(made)
        if any(each.construction == made.construction for each in sets[:-1]):
            fields.note(
                f'There is a set of "{made.construction}" already.',
                "Leave one of them out.",
                key="construction",
            )
        # Also those that are told of already, as no exemplars.
        has = len(fields.block.values["exemplars"]) if made.exemplars else 0
        if made.exemplars and has != probes.items:
            fields.note(
                f"This set has {has} exemplars, and `items` under [probes] is {probes.items}.",
                "Make both the same, or make the sets anew: drills plan sets FILE.",
                key="exemplars",
            )
        for each in made.exemplars:
            key = (each.act, frozenset((each.first, each.second)))
            if key in taken:
                fields.note(
                    f'"{each}" is asked already, as "{taken[key]}".',
                    "Use another pair.",
                    key="exemplars",
                )
            taken[key] = str(each)
    return tuple(sets)


def line_of_exemplar(text: str, blocks: Sequence[Block], key: str) -> int | None:
    """The line of "set 2, push: nurse, farmer", or of the second set for "set 2"."""
    number, _, exemplar = key.removeprefix("set ").partition(", ")
    sets = [block for block in blocks if block.name == "set"]
    block = sets[int(number) - 1]
    begins = block.line_of("exemplars") if exemplar else block.line
    if begins is None or not exemplar:
        return begins
    # However it is spaced.
    words = r"\s*".join(re.escape(part) for part in re.split(r"(?<=[:,]) ", exemplar))
    written = re.compile(rf"[\"']\s*{words}\s*[\"']")
    lines = text.splitlines()
    found = (at for at in range(begins, len(lines) + 1) if written.search(lines[at - 1]))
    return next(found, begins)


def _set(fields: Fields) -> ProbeSet:
    role = fields.one_of("role", tuple(SET_ROLES))
    exemplars: list[SetExemplar] = []
    construction = fields.text("construction")
    for text in fields.texts("exemplars"):
        try:
            exemplars.append(SetExemplar.parse(text))
        except ValueError:
            fields.note(
                f'"{text[:60]}" is no exemplar.',
                'Write a verb and two words, like "push: nurse, farmer".',
                key="exemplars",
            )
    fields.close()
    return ProbeSet(item_set=SET_ROLES[role], construction=construction, exemplars=tuple(exemplars))
