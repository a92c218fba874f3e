"""Paradigms of the closed words that a noun or a subject chooses: by person, number, sex, case."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from drills.core.clauses import Determined, Party, Person, Thing
from drills.core.meanings import Tense
from drills.core.words import Lexicon, Sex

MODALS = ("can", "will", "would", "could", "should", "must", "might", "may")


class Case(StrEnum):
    """What a pronoun is in its clause."""

    SUBJECT = "subject"
    OBJECT = "object"
    POSSESSIVE = "possessive"
    REFLEXIVE = "reflexive"


_Forms = tuple[str, str, str, str]

_BY_PERSON: Mapping[tuple[Person, bool], _Forms] = MappingProxyType(
    {
        (Person.FIRST, False): ("I", "me", "my", "myself"),
        (Person.FIRST, True): ("we", "us", "our", "ourselves"),
        (Person.SECOND, False): ("you", "you", "your", "yourself"),
        (Person.SECOND, True): ("you", "you", "your", "yourselves"),
        (Person.THIRD, True): ("they", "them", "their", "themselves"),
    }
)
_BY_SEX: Mapping[Sex | None, _Forms] = MappingProxyType(
    {
        Sex.FEMALE: ("she", "her", "her", "herself"),
        Sex.MALE: ("he", "him", "his", "himself"),
        None: ("it", "it", "its", "itself"),
    }
)
_CASES = tuple(Case)

# The present of "be" by person; one who is spoken to takes the form of many.
_BE = {Person.FIRST: "am", Person.SECOND: "are", Person.THIRD: "is"}
_DEMONSTRATIVES = {
    (Determined.NEAR, False): "this",
    (Determined.NEAR, True): "these",
    (Determined.FAR, False): "that",
    (Determined.FAR, True): "those",
}


def is_many(party: Party) -> bool:
    """Whether the verb takes the form of many; of "one or the other" it takes the nearer's."""
    if party.also is not None and party.pair == "and":
        return True
    return party.count > 1


def pronoun_of(party: Party, case: Case, lexicon: Lexicon) -> str:
    """ "she", "me", "their": what stands for the party in this case."""
    if party.person is Person.THIRD and not is_many(party):
        forms = _BY_SEX[lexicon.nouns[party.noun].sex if party.noun else None]
    else:
        forms = _BY_PERSON[party.person, is_many(party)]
    return forms[_CASES.index(case)]


_INDEPENDENT = {"my": "mine", "your": "yours", "our": "ours", "their": "theirs", "her": "hers"}


def possessive_alone(owner: Party, lexicon: Lexicon) -> str:
    """ "mine": whose it is where no noun follows."""
    form = pronoun_of(owner, Case.POSSESSIVE, lexicon)
    return _INDEPENDENT.get(form, form)


def demonstrative(party: Party) -> str:
    """ "this", "these", "that", "those".   Raises: KeyError where the party is not pointed at."""
    return _DEMONSTRATIVES[party.determined, is_many(party)]


def be(party: Party, tense: Tense) -> str:
    """The form of "be" that goes with the party."""
    many = is_many(party) or party.person is Person.SECOND
    if tense is Tense.PAST:
        return "were" if many else "was"
    return "are" if many else _BE[party.person]


def takes_plain_form(party: Party) -> bool:
    """Whether another verb has no -s with the party: I wave, two nurses wave."""
    return is_many(party) or party.person is not Person.THIRD


def superlative(comparative: str) -> str:
    """ "tallest" from "taller"."""
    return f"{comparative.removesuffix('r')}st"


def thing_word(thing: Thing) -> str:
    return thing.value
