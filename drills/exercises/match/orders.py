"""Before and after: two things that one does, one after the other."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from random import Random

from drills.core.items import Foil
from drills.core.meanings import Meaning, Order
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.match.acts import false_noun
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_order
from drills.exercises.match.pooling import drawn_pairs
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import nouns_like


@lru_cache(maxsize=16)
def _what_one_does(lexicon: Lexicon, construction: str) -> dict[str, tuple[Pair, ...]]:
    """Doer -> what is done earlier and what later."""
    return drawn_pairs(construction, lexicon, lambda each: (each.doer, (each.earlier, each.later)))


def _doers(lexicon: Lexicon, construction: str, _group: str, _small: bool) -> tuple[str, ...]:
    return tuple(_what_one_does(lexicon, construction))


def _pairs(lexicon: Lexicon, construction: str, doer: str) -> tuple[Pair, ...]:
    return _what_one_does(lexicon, construction)[doer]


def _cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    earlier, later = wish.pair
    told = Order(doer=wish.act, earlier=earlier, later=later)
    twin = Wrong(shown=told.reversed(), foil=Foil.WORD, why=WhyWrong.FALSE_ORDER)
    yield Case(told=told, right=told, twin=twin)


def _other_event(_told: Meaning, base: Order, lexicon: Lexicon) -> Iterator[Wrong]:
    had = (base.earlier, base.later)
    for verb in lexicon.alone:
        if verb not in had:
            for shown in (replace(base, earlier=verb), replace(base, later=verb)):
                yield Wrong(shown=shown, foil=Foil.VERB, why=WhyWrong.FALSE_ACT)


def _other_doer(_told: Meaning, base: Order, lexicon: Lexicon) -> Iterator[Wrong]:
    for key in nouns_like(lexicon, base.doer):
        yield false_noun(replace(base, doer=key))


ORDERS = Family(
    constructions=("before-in-order", "after-in-order", "before-reversed", "after-reversed"),
    acts=_doers,
    pairs=_pairs,
    cases=_cases,
    others=(_other_event, _other_doer),
    helps=help_of_order,
    grouped=False,
)
