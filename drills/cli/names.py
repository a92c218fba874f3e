"""Words for names and meanings on the command line."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from drills.cli.meaning_words import words_of
from drills.core.meanings import Act, Scene


def nearest(name: str, known: Iterable[str]) -> str:
    """A sentence that offers the nearest known name, or all of them."""
    names = tuple(known)
    close = get_close_matches(name, names, n=1)
    return f"Did you mean {close[0]}?" if close else f"There are: {', '.join(names)}."


def in_words(scene: Scene) -> str:
    """The meaning of a scene as `drills picture` takes it, and where the doer stands."""
    words = words_of(scene.meaning)
    return f"{words}, doer {scene.side}" if isinstance(scene.meaning, Act) else words
