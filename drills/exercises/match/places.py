"""Where one thing is to another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random

from drills.core.items import Foil
from drills.core.meanings import Meaning, Place, Relation
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.match.acts import false_noun
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_place
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import REVERSIBLE, nouns_like, reversible_places


def _relations(lexicon: Lexicon, _construction: str, _group: str, _small: bool) -> tuple[str, ...]:
    return tuple(each for each in REVERSIBLE if reversible_places(lexicon, each))


def _pairs(lexicon: Lexicon, _construction: str, relation: str) -> tuple[Pair, ...]:
    return reversible_places(lexicon, relation)


def _cases(wish: Wish, lexicon: Lexicon, rng: Random) -> Iterator[Case]:
    """For four pictures, the two things elsewhere, both ways round."""
    thing, landmark = wish.pair
    place = Place(relation=Relation(wish.act), thing=thing, landmark=landmark)
    twin = Wrong(shown=place.reversed(), foil=Foil.REVERSAL, why=WhyWrong.FALSE_PLACE)
    case = Case(told=place, right=place, twin=twin)
    if wish.options < 4:
        yield case
        return
    relations = [each for each in REVERSIBLE if wish.pair in reversible_places(lexicon, each)]
    rng.shuffle(relations)
    for relation in relations:
        elsewhere = replace(place, relation=relation)
        if elsewhere.drawn not in (place.drawn, place.reversed().drawn):
            yield replace(
                case,
                square=tuple(
                    Wrong(shown=shown, foil=Foil.WORD, why=WhyWrong.FALSE_PLACE)
                    for shown in (elsewhere, elsewhere.reversed())
                ),
            )


def _other_thing(_told: Meaning, base: Place, lexicon: Lexicon) -> Iterator[Wrong]:
    """Another thing or another landmark, that could be so the other way round as well."""
    fitting = reversible_places(lexicon, base.relation)
    for key in nouns_like(lexicon, base.thing):
        if (key, base.landmark) in fitting:
            yield false_noun(replace(base, thing=key))
    for key in nouns_like(lexicon, base.landmark):
        if (base.thing, key) in fitting:
            yield false_noun(replace(base, landmark=key))


PLACES = Family(
    constructions=("locative",),
    acts=_relations,
    pairs=_pairs,
    cases=_cases,
    others=(_other_thing,),
    helps=help_of_place,
    grouped=False,
)
