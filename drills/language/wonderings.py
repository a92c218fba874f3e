"""Order of questions that are a construction of their own: who or which, doer or done-to."""

from __future__ import annotations

from drills.core.meanings import Asked, Aspect, Chain
from drills.language.abstract import Phrase, definite, pronoun, which
from drills.language.predicates import inverted, predicate, where_and_when
from drills.language.roles import Role

_WHO = pronoun("who", Role.ASKED)


def subject_question(meaning: Asked) -> tuple[Phrase, ...]:
    """The doer is asked for: "Who pushed the cow"."""
    return (
        (
            _WHO,
            *predicate(meaning.verb, meaning.tense, meaning.aspect, Role.ASKED),
            *definite(meaning.known, Role.DONE_TO),
        ),
        *where_and_when(meaning),
    )


def object_question_who(meaning: Asked) -> tuple[Phrase, ...]:
    """The done-to is asked for: "Who did the nurse push"."""
    first, rest = inverted(meaning.verb, meaning.tense, meaning.aspect, Role.DOER)
    return (
        (_WHO, first, *definite(meaning.known, Role.DOER), *rest),
        *where_and_when(meaning),
    )


def subject_question_which(meaning: Chain) -> tuple[Phrase, ...]:
    """One of two is asked for, the doer: "Which nurse / pushed the baker"."""
    return (
        which(meaning.outer, Role.ASKED),
        (
            *predicate(meaning.verb, meaning.tense, Aspect.SIMPLE, Role.ASKED),
            *definite(meaning.middle, Role.DONE_TO),
        ),
        *where_and_when(meaning),
    )


def object_question_which(meaning: Chain) -> tuple[Phrase, ...]:
    """One of two is asked for, the done-to: "Which nurse / did the baker push"."""
    first, rest = inverted(meaning.verb, meaning.tense, Aspect.SIMPLE, Role.DOER)
    return (
        which(meaning.outer, Role.ASKED),
        (first, *definite(meaning.middle, Role.DOER), *rest),
        *where_and_when(meaning),
    )
