"""First step: who plays which part in a meaning, checked against the lexicon."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from typing import Any

from drills.core.meanings import Act, Link, Meaning, Place, State
from drills.core.words import Lexicon


class Role(StrEnum):
    """A part in a meaning. `IT` and `ASKED` only hold a place: "it was ...", "who ...?"."""

    DOER = "doer"
    DONE_TO = "done to"
    THING = "thing"
    LANDMARK = "landmark"
    HOLDER = "holder"
    COMPLEMENT = "complement"
    IT = "it"
    ASKED = "asked"


MOST_COUNTED = 3


def check_roles(meaning: Meaning, lexicon: Lexicon) -> None:
    """Raises: ValueError when the meaning names no word of the lexicon, or one thing twice."""
    if isinstance(meaning, Act):
        _known(lexicon.verbs, meaning.verb, "verb")
        _two(meaning.doer, meaning.done_to, lexicon)
    elif isinstance(meaning, Place):
        _two(meaning.thing, meaning.landmark, lexicon)
    elif isinstance(meaning, State):
        _check_state(meaning, lexicon)
    else:
        raise ValueError(f"no construction says a {type(meaning).__name__.lower()} yet")


def _check_state(state: State, lexicon: Lexicon) -> None:
    _known(lexicon.nouns, state.subject, "noun")
    if not 1 <= state.count <= MOST_COUNTED:
        raise ValueError(f"a count is 1 to {MOST_COUNTED}, not {state.count}")
    if state.link is Link.BE:
        _known(lexicon.adjectives, state.complement, "adjective")
    else:
        _known(lexicon.nouns, state.complement, "noun")


def _two(one: str, other: str, lexicon: Lexicon) -> None:
    _known(lexicon.nouns, one, "noun")
    _known(lexicon.nouns, other, "noun")
    if one == other:
        raise ValueError(f"{one!r} cannot play both parts of a meaning")


def _known(words: Mapping[str, Any], key: str, what: str) -> None:
    if key not in words:
        raise ValueError(f"the lexicon has no {what} {key!r}")
