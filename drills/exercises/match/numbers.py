"""One or two: who are doing something, who are or have something."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from random import Random

from drills.core.items import Foil
from drills.core.meanings import Activity, Link, Meaning, State
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.match.acts import false_noun
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_count
from drills.exercises.match.pooling import drawn_pairs
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import nouns_like

_COUNTS = (1, 2)


def _other_number(told: Activity | State) -> Case:
    count = _COUNTS[told.count == 1]
    shown = replace(told, count=count)
    return Case(
        told=told,
        right=told,
        twin=Wrong(shown=shown, foil=Foil.WORD, why=WhyWrong.AGREEMENT),
    )


@lru_cache(maxsize=16)
def _who_does(lexicon: Lexicon) -> dict[str, tuple[Pair, ...]]:
    """Verb -> who does it; the number is dealt apart, so a word is its own partner."""
    return drawn_pairs("number", lexicon, lambda each: (each.verb, (each.doer, each.doer)))


def _verbs(lexicon: Lexicon, _construction: str, _group: str, _small: bool) -> tuple[str, ...]:
    return tuple(_who_does(lexicon))


def _doers(lexicon: Lexicon, _construction: str, verb: str) -> tuple[Pair, ...]:
    return _who_does(lexicon)[verb]


def _activities(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    told = Activity(verb=wish.act, doer=wish.pair[0], count=_COUNTS[wish.turn])
    yield _other_number(told)


def _other_activity(_told: Meaning, base: Activity, lexicon: Lexicon) -> Iterator[Wrong]:
    for verb, doers in _who_does(lexicon).items():
        if verb != base.verb and (base.doer, base.doer) in doers:
            shown = replace(base, verb=verb)
            yield Wrong(shown=shown, foil=Foil.VERB, why=WhyWrong.FALSE_ACT)


def _other_doer(_told: Meaning, base: Activity, lexicon: Lexicon) -> Iterator[Wrong]:
    for key in nouns_like(lexicon, base.doer):
        yield false_noun(replace(base, doer=key))


NUMBERS = Family(
    constructions=("number",),
    acts=_verbs,
    pairs=_doers,
    cases=_activities,
    others=(_other_activity, _other_doer),
    helps=help_of_count,
    grouped=False,
)


@lru_cache(maxsize=16)
def _who_is(lexicon: Lexicon) -> dict[str, tuple[Pair, ...]]:
    """What one is or has -> who is or has it."""
    return drawn_pairs(
        "agreement", lexicon, lambda each: (each.complement, (each.subject, each.subject))
    )


def _complements(
    lexicon: Lexicon, _construction: str, _group: str, _small: bool
) -> tuple[str, ...]:
    return tuple(_who_is(lexicon))


def _subjects(lexicon: Lexicon, _construction: str, complement: str) -> tuple[Pair, ...]:
    return _who_is(lexicon)[complement]


def _states(wish: Wish, lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    link = Link.BE if wish.act in lexicon.adjectives else Link.HAVE
    told = State(subject=wish.pair[0], count=_COUNTS[wish.turn], link=link, complement=wish.act)
    yield _other_number(told)


def _other_complement(_told: Meaning, base: State, lexicon: Lexicon) -> Iterator[Wrong]:
    """In another state, or with another thing."""
    is_thing = base.link is Link.HAVE
    for complement, subjects in _who_is(lexicon).items():
        alike = (complement in lexicon.adjectives) != is_thing
        if alike and complement != base.complement and (base.subject, base.subject) in subjects:
            shown = replace(base, complement=complement)
            if is_thing:
                yield false_noun(shown)
            else:
                yield Wrong(shown=shown, foil=Foil.VERB, why=WhyWrong.FALSE_STATE)


def _other_subject(_told: Meaning, base: State, lexicon: Lexicon) -> Iterator[Wrong]:
    for key in nouns_like(lexicon, base.subject):
        yield false_noun(replace(base, subject=key))


STATES = Family(
    constructions=("agreement",),
    acts=_complements,
    pairs=_subjects,
    cases=_states,
    others=(_other_complement, _other_subject),
    helps=help_of_count,
    grouped=False,
)
