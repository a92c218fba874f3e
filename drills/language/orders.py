"""Order of two acts of one person: clauses that follow the events, or turn them round."""

from __future__ import annotations

from dataclasses import replace

from drills.core.meanings import Aspect, Order
from drills.core.words import Part
from drills.language.abstract import Form, Phrase, Word, definite, small, standing_for
from drills.language.predicates import predicate, where_and_when
from drills.language.roles import Role

_BEFORE = small("before", Part.CONJUNCTION)
_AFTER = small("after", Part.CONJUNCTION)


def before_in_order(meaning: Order) -> tuple[Phrase, ...]:
    """ "The sailor waved / before he sat"."""
    return (*_first(meaning, meaning.earlier), _second(meaning, meaning.later, _BEFORE))


def after_in_order(meaning: Order) -> tuple[Phrase, ...]:
    """ "After the sailor waved, / he sat"."""
    return (*_first(meaning, meaning.earlier, _AFTER), _second(meaning, meaning.later))


def before_reversed(meaning: Order) -> tuple[Phrase, ...]:
    """ "Before the sailor sat, / he waved"."""
    return (*_first(meaning, meaning.later, _BEFORE), _second(meaning, meaning.earlier))


def after_reversed(meaning: Order) -> tuple[Phrase, ...]:
    """ "The sailor sat / after he waved"."""
    return (*_first(meaning, meaning.later), _second(meaning, meaning.earlier, _AFTER))


def _first(meaning: Order, verb: str, *link: Word) -> tuple[Phrase, ...]:
    """The clause that names the doer; where and when go before it, so that they hold of both."""
    words = (
        *link,
        *definite(meaning.doer, Role.DOER),
        *predicate(verb, meaning.tense, Aspect.SIMPLE, Role.DOER),
    )
    around = where_and_when(meaning)
    if link:
        words = (*words[:-1], replace(words[-1], mark=","))
        around = tuple((replace(phrase[-1], mark=","),) for phrase in around)
    return (*around, words)


def _second(meaning: Order, verb: str, *link: Word) -> Phrase:
    return (
        *link,
        standing_for(meaning.doer, Form.SUBJECT, Role.DOER),
        *predicate(verb, meaning.tense, Aspect.SIMPLE, Role.DOER),
    )
