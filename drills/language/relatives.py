"""Order of relative clauses: one of two is singled out by what happened between them."""

from __future__ import annotations

from drills.core.meanings import Described, Tense
from drills.core.words import Part
from drills.language.abstract import Number, Phrase, Word, definite, finite, finite_small, small
from drills.language.clefts import that_did, that_was_done
from drills.language.predicates import where_and_when
from drills.language.roles import Role

# "I" takes the form of the verb that many take: "I see", "they see".
_I = Word(lemma="I", part=Part.PRONOUN, number=Number.PLURAL, role=Role.SPEAKER)


def subject_relative(meaning: Described) -> tuple[Phrase, ...]:
    """The doer is singled out: "The goat / that chased the cow / was wet"."""
    return (
        definite(meaning.act.doer, Role.DOER),
        that_did(meaning.act),
        *where_and_when(meaning.act),
        _was_so(meaning, Role.DOER),
    )


def object_relative_centre(meaning: Described) -> tuple[Phrase, ...]:
    """The done-to is singled out, mid-sentence: "The cow / that the goat chased / was wet"."""
    return (
        definite(meaning.act.done_to, Role.DONE_TO),
        that_was_done(meaning.act),
        *where_and_when(meaning.act),
        _was_so(meaning, Role.DONE_TO),
    )


def object_relative_right(meaning: Described) -> tuple[Phrase, ...]:
    """The done-to is singled out, at the end: "I see the cow / that the goat chased"."""
    return (
        (
            _I,
            finite("see", Tense.PRESENT, Role.SPEAKER),
            *definite(meaning.act.done_to, Role.DONE_TO),
        ),
        that_was_done(meaning.act),
        *where_and_when(meaning.act),
    )


def _was_so(meaning: Described, role: Role) -> Phrase:
    return (
        finite_small("be", meaning.act.tense, role),
        small(str(meaning.state), Part.ADJECTIVE),
    )
