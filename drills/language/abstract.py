"""Words before they are inflected, and the small phrases that every family builds from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drills.core.meanings import Tense
from drills.core.words import Part
from drills.language.roles import Role


class Number(StrEnum):
    SINGULAR = "singular"
    PLURAL = "plural"


class Form(StrEnum):
    """What a verb is asked to be; a finite one also needs a tense and its subject's number."""

    FINITE = "finite"
    PAST_PARTICIPLE = "past participle"
    ING = "ing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """One word on its way to a form.

    lemma: a key of the lexicon for nouns, verbs and adjectives; else the word itself.
    role: whom it names; a finite verb agrees with the word of role `subject`.
    """

    lemma: str
    part: Part
    number: Number | None = None
    role: Role | None = None
    form: Form | None = None
    tense: Tense | None = None
    subject: Role | None = None


Phrase = tuple[Word, ...]
"""Words said in one breath; a pause may stand between phrases."""


def definite(noun: str, role: Role) -> Phrase:
    """The listener knows which one: "the nurse"."""
    return (
        Word(lemma="the", part=Part.DETERMINER),
        Word(lemma=noun, part=Part.NOUN, number=Number.SINGULAR, role=role),
    )


def indefinite(noun: str, role: Role) -> Phrase:
    """Any one of its kind: "a bell". Spelling chooses between a and an."""
    return (
        Word(lemma="a", part=Part.DETERMINER),
        Word(lemma=noun, part=Part.NOUN, number=Number.SINGULAR, role=role),
    )


def counted(count: int, noun: str, role: Role) -> Phrase:
    """So many of them: "two sailors"."""
    number = Number.SINGULAR if count == 1 else Number.PLURAL
    return (
        Word(lemma=str(count), part=Part.NUMERAL),
        Word(lemma=noun, part=Part.NOUN, number=number, role=role),
    )


def finite(verb: str, tense: Tense, subject: Role) -> Word:
    """The verb that carries tense and agrees."""
    return Word(lemma=verb, part=Part.VERB, form=Form.FINITE, tense=tense, subject=subject)


def finite_small(verb: str, tense: Tense, subject: Role) -> Word:
    """A finite form of `be` or `have`.

    Counted among the small words even where it is the only verb: it carries number and tense
    and little else, which is what is lost.
    """
    return Word(lemma=verb, part=Part.AUXILIARY, form=Form.FINITE, tense=tense, subject=subject)


def participle(verb: str) -> Word:
    return Word(lemma=verb, part=Part.VERB, form=Form.PAST_PARTICIPLE)


def small(text: str, part: Part) -> Word:
    """A word that has one form only."""
    return Word(lemma=text, part=part)


def pronoun(text: str, role: Role) -> Word:
    """ "It" or "who": singular to the verb."""
    return Word(lemma=text, part=Part.PRONOUN, number=Number.SINGULAR, role=role)
