"""Giving, showing, bringing: who, what, and to whom.

Two errors are possible: doer and receiver exchanged, and receiver and what is given exchanged. The
second needs somebody who is shown or brought, since nothing is given to a cup.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from itertools import permutations
from random import Random

from drills.core.meanings import Meaning, Transfer
from drills.core.words import Band, Lexicon, Sort
from drills.exercises.casting import Pair
from drills.exercises.match.acts import exchanged, false_noun
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_doer
from drills.exercises.scenes import nouns_like
from drills.pictures import can_draw

_CASES = 4


@lru_cache(maxsize=16)
def _pairs(lexicon: Lexicon, _construction: str, verb: str) -> tuple[Pair, ...]:
    """Doers and receivers of one size that something can be passed on between."""
    people = [noun for noun in lexicon.people if noun.band == Band.EVERYDAY]
    return tuple(
        (doer.key, receiver.key)
        for doer, receiver in permutations(people, 2)
        if doer.size == receiver.size and _given(lexicon, verb, (doer.key, receiver.key))
    )


@lru_cache(maxsize=1024)
def _given(lexicon: Lexicon, verb: str, pair: Pair) -> tuple[str, ...]:
    """What or who can be drawn between the two, whichever of them is the doer."""
    doer, receiver = pair
    return tuple(
        noun.key
        for noun in lexicon.nouns.values()
        if noun.band == Band.EVERYDAY
        and noun.key not in pair
        and can_draw(told := Transfer(verb=verb, doer=doer, given=noun.key, receiver=receiver))
        and can_draw(told.reversed())
    )


def _verbs(lexicon: Lexicon, construction: str, _group: str, _small: bool) -> tuple[str, ...]:
    return tuple(verb for verb in lexicon.transfers if _pairs(lexicon, construction, verb))


def _cases(wish: Wish, lexicon: Lexicon, rng: Random) -> Iterator[Case]:
    """By turns doer and receiver are exchanged, or receiver and given; of four pictures, both."""
    doer, receiver = wish.pair
    given = list(_given(lexicon, wish.act, wish.pair))
    rng.shuffle(given)
    with_three = wish.turn == 1 or wish.options == 4
    if with_three:
        given = [key for key in given if lexicon.nouns[key].sort is Sort.PERSON]
    for key in given[:_CASES]:
        told = Transfer(verb=wish.act, doer=doer, given=key, receiver=receiver)
        by_doer = told.reversed()
        if not with_three:
            yield Case(told=told, right=told, twin=exchanged(by_doer))
            continue
        by_given = replace(told, given=receiver, receiver=key)
        both = replace(told, doer=key, given=receiver, receiver=doer)
        if not all(map(can_draw, (by_doer, by_given, both))):
            continue
        one, other = (by_doer, by_given) if wish.turn == 0 else (by_given, by_doer)
        square = (exchanged(other), exchanged(both)) if wish.options == 4 else ()
        yield Case(told=told, right=told, twin=exchanged(one), square=square)


def _other_one(_told: Meaning, base: Transfer, lexicon: Lexicon) -> Iterator[Wrong]:
    """Another doer, receiver, or other thing given."""
    changed = (
        *(replace(base, doer=key) for key in nouns_like(lexicon, base.doer)),
        *(replace(base, given=key) for key in nouns_like(lexicon, base.given)),
        *(replace(base, receiver=key) for key in nouns_like(lexicon, base.receiver)),
    )
    for shown in changed:
        if len({shown.doer, shown.given, shown.receiver}) == 3:
            yield false_noun(shown)


TRANSFERS = Family(
    constructions=("dative",),
    acts=_verbs,
    pairs=_pairs,
    cases=_cases,
    others=(_other_one,),
    helps=help_of_doer,
    grouped=False,
)
