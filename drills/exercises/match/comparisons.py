"""Taller, shorter, bigger, smaller."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from random import Random

from drills.core.meanings import Comparison, Meaning
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.match.acts import exchanged, false_noun
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_comparison
from drills.exercises.match.pooling import drawn_pairs
from drills.exercises.scenes import nouns_like


@lru_cache(maxsize=16)
def _compared(lexicon: Lexicon) -> dict[str, tuple[Pair, ...]]:
    """Quality -> who has more of it and who has less."""
    return drawn_pairs("comparative", lexicon, lambda each: (each.quality, (each.more, each.less)))


def _qualities(lexicon: Lexicon, _construction: str, _group: str, _small: bool) -> tuple[str, ...]:
    return tuple(_compared(lexicon))


def _pairs(lexicon: Lexicon, _construction: str, quality: str) -> tuple[Pair, ...]:
    return _compared(lexicon)[quality]


def _cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    more, less = wish.pair
    told = Comparison(quality=wish.act, more=more, less=less)
    yield Case(told=told, right=told, twin=exchanged(told.reversed()))


def _other_compared(_told: Meaning, base: Comparison, lexicon: Lexicon) -> Iterator[Wrong]:
    for key in nouns_like(lexicon, base.more):
        yield false_noun(replace(base, more=key))
    for key in nouns_like(lexicon, base.less):
        yield false_noun(replace(base, less=key))


COMPARISONS = Family(
    constructions=("comparative",),
    acts=_qualities,
    pairs=_pairs,
    cases=_cases,
    others=(_other_compared,),
    helps=help_of_comparison,
    grouped=False,
)
