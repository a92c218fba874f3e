"""Who and what can play in a construction, as acts with their pairs."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from drills.core.meanings import Aspect, Tense
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.language import meanings_of
from drills.pictures import can_draw


def drawn_pairs(
    construction: str, lexicon: Lexicon, parts: Callable[[Any], tuple[str, Pair]]
) -> dict[str, tuple[Pair, ...]]:
    """Act -> its pairs, of every balanced meaning that can be drawn.

    parts: the act and the pair of a meaning.
    """
    found: dict[str, dict[Pair, None]] = {}
    # One form is enough: no picture shows tense.
    for meaning in meanings_of(construction, lexicon, forms=((Tense.PRESENT, Aspect.PROGRESSIVE),)):
        if can_draw(meaning):
            act, pair = parts(meaning)
            found.setdefault(act, {})[pair] = None
    return {act: tuple(pairs) for act, pairs in found.items()}
