"""Sentences of one act between two: active, clefts, passives, she and him."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import permutations
from random import Random

from drills.core.items import Foil
from drills.core.meanings import Act, Meaning, Undergone
from drills.core.words import Band, Lexicon, Sex, Sort
from drills.exercises.casting import Pair
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_doer, help_of_undergone
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import act_pairs, made_out, nouns_like, other_verbs, verbs_of
from drills.pictures import can_draw

_PRONOUNS_MEAN = ("woman", "man")


def verbs(lexicon: Lexicon, _construction: str, group: str, small: bool) -> tuple[str, ...]:
    return verbs_of(lexicon, group, small=small)


def pairs(lexicon: Lexicon, _construction: str, verb: str) -> tuple[Pair, ...]:
    return act_pairs(lexicon, verb)


def act_of(wish: Wish) -> Act:
    return Act(verb=wish.act, doer=wish.pair[0], done_to=wish.pair[1])


def exchanged(shown: Meaning) -> Wrong:
    return Wrong(shown=shown, foil=Foil.REVERSAL, why=WhyWrong.FALSE_ROLE)


def _cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    act = act_of(wish)
    yield Case(told=act, right=act, twin=exchanged(act.reversed()))


def other_act(_told: Meaning, base: Act, lexicon: Lexicon) -> Iterator[Wrong]:
    """The same two, another act."""
    for verb in other_verbs(lexicon, base.verb, base.doer, base.done_to):
        shown = replace(base, verb=verb)
        yield Wrong(shown=shown, foil=Foil.VERB, why=WhyWrong.FALSE_ACT)


def other_actor(_told: Meaning, base: Act, lexicon: Lexicon) -> Iterator[Wrong]:
    """The same act with another doer or another done-to."""
    for key in nouns_like(lexicon, base.doer):
        yield false_noun(replace(base, doer=key))
    for key in nouns_like(lexicon, base.done_to):
        yield false_noun(replace(base, done_to=key))


def false_noun(shown: Meaning) -> Wrong:
    return Wrong(shown=shown, foil=Foil.NOUN, why=WhyWrong.FALSE_NOUN)


ACTS = Family(
    constructions=("active", "subject-cleft", "full-passive", "object-cleft"),
    acts=verbs,
    pairs=pairs,
    cases=_cases,
    others=(other_act, other_actor),
    helps=help_of_doer,
)


def _undergone_cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    act = act_of(wish)
    told = Undergone(verb=act.verb, done_to=act.done_to)
    yield Case(told=told, right=act, twin=exchanged(act.reversed()))


def _other_than_named(told: Undergone, base: Act, lexicon: Lexicon) -> Iterator[Wrong]:
    """The one who is named gives way; the other is not told of and could be anyone."""
    named = told.done_to
    for key in nouns_like(lexicon, named):
        if base.done_to == named:
            yield false_noun(replace(base, done_to=key))
        else:
            yield false_noun(replace(base, doer=key))


UNDERGONE = Family(
    constructions=("short-passive",),
    acts=verbs,
    pairs=pairs,
    cases=_undergone_cases,
    others=(other_act, _other_than_named),
    helps=help_of_undergone,
)


def _pronoun_pairs(lexicon: Lexicon, _construction: str, verb: str) -> tuple[Pair, ...]:
    return tuple(pair for pair in act_pairs(lexicon, verb) if set(pair) == set(_PRONOUNS_MEAN))


def _pronoun_verbs(lexicon: Lexicon, construction: str, group: str, small: bool) -> tuple[str, ...]:
    known = tuple(
        verb for verb in verbs_of(lexicon, group) if _pronoun_pairs(lexicon, construction, verb)
    )
    return made_out(known) if small else known


@lru_cache(maxsize=128)
def _of_one_sex(lexicon: Lexicon, verb: str, sex: Sex) -> tuple[Pair, ...]:
    people = [
        noun.key
        for noun in lexicon.people
        if noun.sex is sex
        and noun.band == Band.EVERYDAY
        and noun.sort is Sort.PERSON
        and noun.key not in _PRONOUNS_MEAN
    ]
    return tuple(
        (one, other)
        for one, other in permutations(people, 2)
        if can_draw(Act(verb=verb, doer=one, done_to=other))
    )


_CASES = 4


def _pronoun_cases(wish: Wish, lexicon: Lexicon, rng: Random) -> Iterator[Case]:
    """For four pictures, two women and two men as well: "she" and "him" fit neither."""
    act = act_of(wish)
    case = Case(told=act, right=act, twin=exchanged(act.reversed()))
    if wish.options < 4:
        yield case
        return
    women = _of_one_sex(lexicon, wish.act, Sex.FEMALE)
    men = _of_one_sex(lexicon, wish.act, Sex.MALE)
    if not women or not men:
        return
    for _ in range(_CASES):
        same_sex: Sequence[Pair] = (rng.choice(women), rng.choice(men))
        yield replace(
            case,
            square=tuple(
                Wrong(
                    shown=Act(verb=wish.act, doer=one, done_to=other),
                    foil=Foil.WORD,
                    why=WhyWrong.FALSE_GENDER,
                )
                for one, other in same_sex
            ),
        )


PRONOUNS = Family(
    constructions=("subject-pronoun",),
    acts=_pronoun_verbs,
    pairs=_pronoun_pairs,
    cases=_pronoun_cases,
    others=(other_act,),
    helps=help_of_doer,
)
