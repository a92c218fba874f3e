"""What verbs bring with them: tense, aspect, voice, "not", and the turn to a question."""

from __future__ import annotations

from functools import cache

from drills.core.meanings import Aspect, Meaning, Tense
from drills.core.words import AdjunctKind, Part
from drills.language.abstract import (
    Form,
    Phrase,
    Word,
    finite,
    finite_small,
    infinite,
    participle,
    small,
)
from drills.language.roles import Role

_KINDS = tuple(kind.value for kind in AdjunctKind)
_NOT = small("not", Part.NEGATION)
_BEING = Word(lemma="be", part=Part.AUXILIARY, form=Form.ING)


@cache
def predicate(
    verb: str,
    tense: Tense,
    aspect: Aspect,
    subject: Role,
    *,
    negated: bool = False,
) -> Phrase:
    """The verb in the active: "pulled", "was pulling", "did not pull"."""
    if aspect is Aspect.SIMPLE and not negated:
        return (finite(verb, tense, subject),)
    first, rest = inverted(verb, tense, aspect, subject)
    return (first, _NOT, *rest) if negated else (first, *rest)


@cache
def passive(verb: str, tense: Tense, aspect: Aspect, subject: Role) -> Phrase:
    """The verb in the passive: "was pulled", "was being pulled"."""
    be = finite_small("be", tense, subject)
    if aspect is Aspect.PROGRESSIVE:
        return (be, _BEING, participle(verb))
    return (be, participle(verb))


@cache
def inverted(verb: str, tense: Tense, aspect: Aspect, subject: Role) -> tuple[Word, Phrase]:
    """The small verb that goes before the subject, and what stays behind: "did", "pull"."""
    if aspect is Aspect.PROGRESSIVE:
        return finite_small("be", tense, subject), (infinite(verb, Form.ING),)
    return finite_small("do", tense, subject), (infinite(verb, Form.BASE),)


def where_and_when(meaning: Meaning) -> tuple[Phrase, ...]:
    """One phrase for where it is and one for when, as the meaning has them."""
    keys = [getattr(meaning, kind, None) for kind in _KINDS]
    return tuple([(small(key, Part.ADVERBIAL),) for key in keys if key is not None])
