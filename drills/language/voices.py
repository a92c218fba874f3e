"""Order of the active and the passive voice, and of what is not so."""

from __future__ import annotations

from drills.core.meanings import Act, Undergone
from drills.core.words import Part
from drills.language.abstract import Form, Phrase, definite, small, standing_for
from drills.language.predicates import passive, predicate, where_and_when
from drills.language.roles import Role


def active(meaning: Act) -> tuple[Phrase, ...]:
    """The doer leads: "The nurse / pulled the baker"; negated, "The nurse / did not pull ..."."""
    return (
        definite(meaning.doer, Role.DOER),
        (
            *predicate(
                meaning.verb, meaning.tense, meaning.aspect, Role.DOER, negated=meaning.negated
            ),
            *definite(meaning.done_to, Role.DONE_TO),
        ),
        *where_and_when(meaning),
    )


def full_passive(meaning: Act) -> tuple[Phrase, ...]:
    """The done-to leads: "The baker / was pulled / by the nurse"."""
    return (
        definite(meaning.done_to, Role.DONE_TO),
        passive(meaning.verb, meaning.tense, meaning.aspect, Role.DONE_TO),
        (small("by", Part.PREPOSITION), *definite(meaning.doer, Role.DOER)),
        *where_and_when(meaning),
    )


def short_passive(meaning: Undergone) -> tuple[Phrase, ...]:
    """The done-to stands alone: "The baker / was pulled"."""
    return (
        definite(meaning.done_to, Role.DONE_TO),
        passive(meaning.verb, meaning.tense, meaning.aspect, Role.DONE_TO),
        *where_and_when(meaning),
    )


def subject_pronoun(meaning: Act) -> tuple[Phrase, ...]:
    """Case and sex tell who: "She pulled him"."""
    return (
        (
            standing_for(meaning.doer, Form.SUBJECT, Role.DOER),
            *predicate(meaning.verb, meaning.tense, meaning.aspect, Role.DOER),
            standing_for(meaning.done_to, Form.OBJECT, Role.DONE_TO),
        ),
        *where_and_when(meaning),
    )
