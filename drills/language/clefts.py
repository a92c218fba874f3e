"""Order of clefts: one player is lifted to the front by "it was ... that"."""

from __future__ import annotations

from drills.core.meanings import Act
from drills.core.words import Part
from drills.language.abstract import Phrase, definite, finite, finite_small, pronoun, small
from drills.language.roles import Role


def subject_cleft(meaning: Act) -> tuple[Phrase, ...]:
    """The doer is lifted: "It was the nurse / that pulled the baker"."""
    return (
        _lifted(meaning, meaning.doer, Role.DOER),
        (
            small("that", Part.RELATIVE),
            finite(meaning.verb, meaning.tense, Role.DOER),
            *definite(meaning.done_to, Role.DONE_TO),
        ),
    )


def object_cleft(meaning: Act) -> tuple[Phrase, ...]:
    """The done-to is lifted: "It was the baker / that the nurse pulled"."""
    return (
        _lifted(meaning, meaning.done_to, Role.DONE_TO),
        (
            small("that", Part.RELATIVE),
            *definite(meaning.doer, Role.DOER),
            finite(meaning.verb, meaning.tense, Role.DOER),
        ),
    )


def _lifted(act: Act, noun: str, role: Role) -> Phrase:
    return (
        pronoun("it", Role.IT),
        finite_small("be", act.tense, Role.IT),
        *definite(noun, role),
    )
