"""Order of sentences of place."""

from __future__ import annotations

from drills.core.meanings import Place
from drills.core.words import Part
from drills.language.abstract import Phrase, definite, finite_small, small
from drills.language.predicates import where_and_when
from drills.language.roles import Role


def locative(meaning: Place) -> tuple[Phrase, ...]:
    """The located thing leads: "The cup / is in front of the box"."""
    return (
        definite(meaning.thing, Role.THING),
        (
            finite_small("be", meaning.tense, Role.THING),
            small(meaning.relation.value, Part.PREPOSITION),
            *definite(meaning.landmark, Role.LANDMARK),
        ),
        *where_and_when(meaning),
    )
