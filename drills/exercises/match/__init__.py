"""Match: hear a sentence, choose its picture.

Two pictures, the right one and its twin, cannot be told apart without the sentence: the twin
shows the same words with other grammar. With three, a picture with another verb or noun is put
beside them, made from the right one in half of the items and from the twin in the other half;
with four, one from each. Where four pictures can all show the same words (places, him and
himself, she and him, giving) they make a square, each as like the others as any. So whoever
compares the pictures finds the right one no oftener than by chance, which is 1 / `effective_k`.

Every foil is told from the right picture at the size they are shown, or its meaning is dealt anew.
A family of constructions a module; families.py lists them, making.py makes items, rules.py and
truth.py judge them.   tests/exercises/match.
"""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.core.meanings import Act
from drills.core.plans import BlockPlan
from drills.exercises.exercise import Exercise
from drills.exercises.match.families import FAMILIES, NOT_SHOWN
from drills.exercises.match.helping import named_done_to
from drills.exercises.match.making import make
from drills.exercises.match.rules import LONGEST_RUN, MATCH_RULES
from drills.exercises.scenes import verb_groups
from drills.language import CONSTRUCTIONS

__all__ = [
    "FAMILIES",
    "LONGEST_RUN",
    "MATCH",
    "MATCH_RULES",
    "NOT_SHOWN",
    "act_constructions",
    "named_done_to",
]


def act_constructions() -> tuple[str, ...]:
    """Those that name both the doer and the done-to of a reversible act."""
    return tuple(
        name
        for name in ("active", "subject-cleft", "full-passive", "object-cleft")
        if CONSTRUCTIONS[name].meaning_type is Act
    )


def _names(_material: Material) -> tuple[str, ...]:
    return tuple(FAMILIES)


def _groups(material: Material, names: Sequence[str]) -> tuple[str, ...]:
    lexicon = material.lexicon
    return tuple(
        group
        for group in verb_groups(lexicon)
        if any(
            FAMILIES[name].grouped and FAMILIES[name].acts(lexicon, name, group, False)
            for name in names
        )
    )


def _targets(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    lexicon = material.lexicon
    found: list[Target] = []
    for name in block.names:
        family = FAMILIES[name]
        groups = verb_groups(lexicon) if family.grouped else ("",)
        found += [
            Target(kind=Kind.MATCH, name=name, group=group)
            for group in groups
            if family.acts(lexicon, name, group, False)
            and (not block.groups or not family.grouped or group in block.groups)
        ]
    return tuple(found)


def _why_not(name: str) -> str:
    return NOT_SHOWN.get(name, "")


MATCH = Exercise(
    kind=Kind.MATCH,
    names=_names,
    groups=_groups,
    targets=_targets,
    make=make,
    refuses=_why_not,
)
