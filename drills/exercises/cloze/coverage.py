"""Which small words of spoken English some item asks for, and how much of speech they make up."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.exercises.frames.endings import ENDINGS

_ENDINGS = tuple(frame.name for frame in ENDINGS)
_ENDING_WORDS = ("'s",)
"""Endings that are counted as words of their own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Coverage:
    """asked: word -> a target with an item whose answer it is.   share: of all such words said.

    missing: the words no item asks for, with their shares, the commonest first.
    """

    asked: Mapping[str, Target]
    share: float
    missing: Mapping[str, float]


def words_asked_for(material: Material) -> Mapping[str, Target]:
    """Word in small letters -> the first target whose contrast has it.

    Every word of a contrast is right as often as the others, so each has its item.
    """
    asked: dict[str, Target] = {}
    for level in material.cloze.values():
        for each in level.sets:
            for group, words in each.contrasts.items():
                for word in words:
                    if each.frame not in _ENDINGS or word in _ENDING_WORDS:
                        target = Target(kind=Kind.CLOZE, name=level.key, group=group)
                        asked.setdefault(word.lower(), target)
    return asked


def coverage(material: Material, shares: Mapping[str, float]) -> Coverage:
    """shares: word -> its part of all closed-class words, 0 to 1."""
    asked = words_asked_for(material)
    return Coverage(
        asked={word: asked[word] for word in shares if word in asked},
        share=sum(share for word, share in shares.items() if word in asked),
        missing={word: share for word, share in shares.items() if word not in asked},
    )
