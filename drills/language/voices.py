"""Order of the active and the passive voice."""

from __future__ import annotations

from drills.core.meanings import Act
from drills.core.words import Part
from drills.language.abstract import Phrase, definite, finite, finite_small, participle, small
from drills.language.roles import Role


def active(meaning: Act) -> tuple[Phrase, ...]:
    """The doer leads: "The nurse / pulled the baker"."""
    return (
        definite(meaning.doer, Role.DOER),
        (
            finite(meaning.verb, meaning.tense, Role.DOER),
            *definite(meaning.done_to, Role.DONE_TO),
        ),
    )


def full_passive(meaning: Act) -> tuple[Phrase, ...]:
    """The done-to leads: "The baker / was pulled / by the nurse"."""
    return (
        definite(meaning.done_to, Role.DONE_TO),
        (finite_small("be", meaning.tense, Role.DONE_TO), participle(meaning.verb)),
        (small("by", Part.PREPOSITION), *definite(meaning.doer, Role.DOER)),
    )
