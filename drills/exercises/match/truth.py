"""Whether a picture makes a sentence true, worked out apart from how pictures are chosen."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Described,
    Meaning,
    Role,
    Undergone,
)
from drills.core.words import Lexicon

Fits = Callable[[Any, Any, Lexicon], bool]


def is_true_of(told: Meaning, construction: str, shown: Meaning, lexicon: Lexicon) -> bool:
    """Whether what is shown is as the sentence says, and shows all whom it names."""
    if construction == "subject-pronoun":
        return _pronouns_fit(told, shown, lexicon)
    if isinstance(told, Chain):
        return _chain(told, construction, shown)
    return _FITS.get(type(told), _looks_so)(told, shown, lexicon)


def _looks_so(told: Meaning, shown: Meaning, _: Lexicon) -> bool:
    return shown.drawn == told.drawn


def _act(told: Act, shown: Meaning, _: Lexicon) -> bool:
    """What does not happen is true of the same two at nothing, or at another act."""
    if not told.negated:
        return shown.drawn == told.drawn
    if not isinstance(shown, Act) or {shown.doer, shown.done_to} != {told.doer, told.done_to}:
        return False
    return shown.negated or (shown.verb, shown.doer) != (told.verb, told.doer)


def _pronouns_fit(told: Any, shown: Meaning, lexicon: Lexicon) -> bool:
    if not isinstance(shown, Act) or shown.negated or shown.verb != told.verb:
        return False
    nouns = lexicon.nouns
    return (nouns[shown.doer].sex, nouns[shown.done_to].sex) == (
        nouns[told.doer].sex,
        nouns[told.done_to].sex,
    )


def _undergone(told: Undergone, shown: Meaning, _: Lexicon) -> bool:
    return (
        isinstance(shown, Act)
        and not shown.negated
        and (shown.verb, shown.done_to) == (told.verb, told.done_to)
    )


def _asked(told: Asked, shown: Meaning, _: Lexicon) -> bool:
    """The arrow answers: it points at whoever does it to the one who is known."""
    if not isinstance(shown, Described) or shown.who is not told.asked:
        return False
    known = shown.act.done_to if told.asked is Role.DOER else shown.act.doer
    return (shown.act.verb, known) == (told.verb, told.known)


def _chain(told: Chain, construction: str, shown: Meaning) -> bool:
    """The arrow points at the one of two who is asked for."""
    if not isinstance(shown, Described) or shown.subject != told.outer:
        return False
    act = shown.act
    parts = (act.doer, act.done_to)
    wanted = (
        (told.outer, told.middle)
        if construction == "subject-question-which"
        else (told.middle, told.outer)
    )
    return act.verb == told.verb and parts == wanted


def _activity(told: Activity, shown: Meaning, _: Lexicon) -> bool:
    """Two and three have one plural."""
    return (
        isinstance(shown, Activity)
        and (shown.verb, shown.doer) == (told.verb, told.doer)
        and (shown.count == 1) == (told.count == 1)
    )


_FITS: Mapping[type[Meaning], Fits] = {
    Act: _act,
    Undergone: _undergone,
    Asked: _asked,
    Activity: _activity,
}
