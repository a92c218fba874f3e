"""Words for names and meanings on the command line."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from drills.core.meaning_json import as_json
from drills.core.meanings import Act, Place, Scene


def nearest(name: str, known: Iterable[str]) -> str:
    """A sentence that offers the nearest known name, or all of them."""
    names = tuple(known)
    close = get_close_matches(name, names, n=1)
    return f"Did you mean {close[0]}?" if close else f"There are: {', '.join(names)}."


def in_words(scene: Scene) -> str:
    """The meaning of a scene as `drills picture` takes it, and where the doer stands."""
    meaning = scene.meaning
    if isinstance(meaning, Act):
        return f"{meaning.verb} {meaning.doer} {meaning.done_to}, doer {scene.side}"
    if isinstance(meaning, Place):
        return f"{meaning.thing} {meaning.relation} {meaning.landmark}"
    return ", ".join(f"{key} {value}" for key, value in as_json(meaning).items())
