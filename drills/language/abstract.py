"""Words before they are inflected, and the small phrases that every family builds from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from functools import cache

from drills.core.meanings import Tense
from drills.core.words import Part
from drills.language.roles import Role


class Number(StrEnum):
    SINGULAR = "singular"
    PLURAL = "plural"


class Form(StrEnum):
    """What a word is asked to be; a finite verb also needs a tense and its subject's number.

    The last four are of nouns: "he", "him", "himself", "the boy's".
    """

    FINITE = "finite"
    BASE = "base"
    PAST_PARTICIPLE = "past participle"
    ING = "ing"
    COMPARATIVE = "comparative"
    SUBJECT = "subject"
    OBJECT = "object"
    REFLEXIVE = "reflexive"
    POSSESSIVE = "possessive"


@dataclass(frozen=True, slots=True, kw_only=True)
class Word:
    """One word on its way to a form.

    lemma: a key of the lexicon for nouns, verbs, adjectives and adjuncts, and for a pronoun that
    has a form, the key of the noun it stands for; else the word itself.
    role: whom it names; a finite verb agrees with the word of role `subject`.
    mark: what is printed close behind it.
    """

    lemma: str
    part: Part
    number: Number | None = None
    role: Role | None = None
    form: Form | None = None
    tense: Tense | None = None
    subject: Role | None = None
    mark: str = ""


Phrase = tuple[Word, ...]
"""Words said in one breath; a pause may stand between phrases."""

# The same small phrases come back in sentence after sentence, and never change once made.


@cache
def definite(noun: str, role: Role, number: Number = Number.SINGULAR) -> Phrase:
    """The listener knows which one: "the nurse"."""
    return (
        Word(lemma="the", part=Part.DETERMINER),
        Word(lemma=noun, part=Part.NOUN, number=number, role=role),
    )


@cache
def indefinite(noun: str, role: Role) -> Phrase:
    """Any one of its kind: "a bell". Spelling chooses between a and an."""
    return (
        Word(lemma="a", part=Part.DETERMINER),
        Word(lemma=noun, part=Part.NOUN, number=Number.SINGULAR, role=role),
    )


@cache
def which(noun: str, role: Role) -> Phrase:
    """One of several of its kind: "which nurse"."""
    return (
        Word(lemma="which", part=Part.DETERMINER),
        Word(lemma=noun, part=Part.NOUN, number=Number.SINGULAR, role=role),
    )


@cache
def counted(count: int, noun: str, role: Role) -> Phrase:
    """So many of them: "two sailors"."""
    number = Number.SINGULAR if count == 1 else Number.PLURAL
    return (
        Word(lemma=str(count), part=Part.NUMERAL),
        Word(lemma=noun, part=Part.NOUN, number=number, role=role),
    )


@cache
def finite(verb: str, tense: Tense, subject: Role) -> Word:
    """The verb that carries tense and agrees."""
    return Word(lemma=verb, part=Part.VERB, form=Form.FINITE, tense=tense, subject=subject)


@cache
def finite_small(verb: str, tense: Tense, subject: Role) -> Word:
    """A finite form of `be`, `have` or `do`.

    Counted among the small words even where it is the only verb: it carries number and tense
    and little else, which is what is lost.
    """
    return Word(lemma=verb, part=Part.AUXILIARY, form=Form.FINITE, tense=tense, subject=subject)


@cache
def participle(verb: str) -> Word:
    return Word(lemma=verb, part=Part.VERB, form=Form.PAST_PARTICIPLE)


@cache
def infinite(verb: str, form: Form) -> Word:
    """A verb that does not agree: "pull", "pulling"."""
    return Word(lemma=verb, part=Part.VERB, form=form)


@cache
def small(text: str, part: Part) -> Word:
    """A word that has one form only."""
    return Word(lemma=text, part=part)


@cache
def pronoun(text: str, role: Role) -> Word:
    """ "It" or "who": singular to the verb."""
    return Word(lemma=text, part=Part.PRONOUN, number=Number.SINGULAR, role=role)


@cache
def standing_for(noun: str, form: Form, role: Role) -> Word:
    """The pronoun of a noun, by its sex: "she", "him", "himself"."""
    return Word(lemma=noun, part=Part.PRONOUN, number=Number.SINGULAR, role=role, form=form)
