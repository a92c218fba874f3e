"""Order of clefts: one player is lifted to the front by "it was ... that"."""

from __future__ import annotations

from drills.core.meanings import Act
from drills.core.words import Part
from drills.language.abstract import Phrase, definite, finite_small, pronoun, small
from drills.language.predicates import predicate, where_and_when
from drills.language.roles import Role


def subject_cleft(meaning: Act) -> tuple[Phrase, ...]:
    """The doer is lifted: "It was the nurse / that pulled the baker"."""
    return (
        _lifted(meaning, meaning.doer, Role.DOER),
        that_did(meaning),
        *where_and_when(meaning),
    )


def object_cleft(meaning: Act) -> tuple[Phrase, ...]:
    """The done-to is lifted: "It was the baker / that the nurse pulled"."""
    return (
        _lifted(meaning, meaning.done_to, Role.DONE_TO),
        that_was_done(meaning),
        *where_and_when(meaning),
    )


def that_did(act: Act) -> Phrase:
    """The clause that lacks its doer: "that pulled the baker"."""
    return (
        small("that", Part.RELATIVE),
        *predicate(act.verb, act.tense, act.aspect, Role.DOER),
        *definite(act.done_to, Role.DONE_TO),
    )


def that_was_done(act: Act) -> Phrase:
    """The clause that lacks its done-to: "that the nurse pulled"."""
    return (
        small("that", Part.RELATIVE),
        *definite(act.doer, Role.DOER),
        *predicate(act.verb, act.tense, act.aspect, Role.DOER),
    )


def _lifted(act: Act, noun: str, role: Role) -> Phrase:
    return (
        pronoun("it", Role.IT),
        finite_small("be", act.tense, Role.IT),
        *definite(noun, role),
    )
