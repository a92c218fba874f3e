"""Order of kinship: whose relative, by "'s" or by "of", which turn the nouns round."""

from __future__ import annotations

from drills.core.meanings import Kin
from drills.core.words import Part
from drills.language.abstract import Form, Number, Phrase, Word, finite_small, pronoun, small
from drills.language.predicates import where_and_when
from drills.language.roles import Role

_MY = small("my", Part.DETERMINER)


def possessive_kinship(meaning: Kin) -> tuple[Phrase, ...]:
    """The one who is meant comes last: "My aunt's brother / is in the garden"."""
    return _told(meaning, by_ending(meaning.terms))


def of_kinship(meaning: Kin) -> tuple[Phrase, ...]:
    """The one who is meant comes first: "The brother of my aunt / is in the garden"."""
    return _told(meaning, by_of(meaning.terms))


def by_ending(terms: tuple[str, ...]) -> Phrase:
    """ "my aunt's brother"."""
    *owners, head = terms
    return (_MY, *(_relative(term, Form.POSSESSIVE) for term in owners), _relative(head))


def by_of(terms: tuple[str, ...]) -> Phrase:
    """ "the brother of my aunt"."""
    first, *others = terms
    phrase: Phrase = (_MY, _relative(first))
    for term in others:
        phrase = (
            small("the", Part.DETERMINER),
            _relative(term),
            small("of", Part.PREPOSITION),
            *phrase,
        )
    return phrase


def _told(meaning: Kin, named: Phrase) -> tuple[Phrase, ...]:
    be = finite_small("be", meaning.tense, Role.RELATIVE)
    around = where_and_when(meaning)
    if meaning.where is None:
        shown = (pronoun("this", Role.IT), finite_small("be", meaning.tense, Role.IT))
        return ((*shown, *named), *around)
    return (named, (be, *around[0]), *around[1:])


def _relative(term: str, form: Form | None = None) -> Word:
    number = None if form is Form.POSSESSIVE else Number.SINGULAR
    role = None if form is Form.POSSESSIVE else Role.RELATIVE
    return Word(lemma=term, part=Part.NOUN, number=number, role=role, form=form)
