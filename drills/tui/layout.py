"""Where lines of large text break."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Sequence

# Clinical brief: at most 40 characters a line.
LINE_WIDTH = 40


def lines_of(text: str, phrases: Sequence[str] = (), *, width: int) -> tuple[str, ...]:
    """`text` in lines of at most `width`, broken between `phrases` where that can be.

    phrases: what is said aloud; those in it that make up `text` are its phrases.
    """
    if len(text) <= width:
        return (text,) if text else ()
    for first in range(len(phrases)):
        for last in range(first + 1, len(phrases) + 1):
            if " ".join(phrases[first:last]) == text:
                return _packed(phrases[first:last], width)
    return _wrapped(text, width)


def short_lines(text: str) -> tuple[str, ...]:
    """Sentences for a patient, each whole on a line where that can be."""
    return lines_of(text, re.split(r"(?<=[.?])\s+", text), width=LINE_WIDTH)


def _packed(phrases: Sequence[str], width: int) -> tuple[str, ...]:
    lines: list[str] = []
    for phrase in phrases:
        if lines and len(lines[-1]) + 1 + len(phrase) <= width:
            lines[-1] += " " + phrase
        else:
            lines.extend(_wrapped(phrase, width))
    return tuple(lines)


def _wrapped(text: str, width: int) -> tuple[str, ...]:
    return tuple(textwrap.wrap(text, max(width, 1), break_long_words=True)) or ("",)
