"""Words for a name that is not known."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(name: str, known: Iterable[str]) -> str:
    """A sentence that offers the nearest known name, or all of them."""
    names = tuple(known)
    close = get_close_matches(name, names, n=1)
    return f"Did you mean {close[0]}?" if close else f"There are: {', '.join(names)}."
