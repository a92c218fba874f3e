"""Order of giving, with three parts."""

from __future__ import annotations

from drills.core.meanings import Transfer
from drills.core.words import Part
from drills.language.abstract import Phrase, definite, finite, small
from drills.language.predicates import where_and_when
from drills.language.roles import Role


def dative(meaning: Transfer) -> tuple[Phrase, ...]:
    """ "The sailor / showed the nurse / to the judge"."""
    return (
        definite(meaning.doer, Role.DOER),
        (
            finite(meaning.verb, meaning.tense, Role.DOER),
            *definite(meaning.given, Role.GIVEN),
        ),
        (small("to", Part.PREPOSITION), *definite(meaning.receiver, Role.RECEIVER)),
        *where_and_when(meaning),
    )
