"""Text in lines that fit a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from drills.digest.plain import KEEP, inert

WIDTH = 78


def section(title: str, body: Iterator[str]) -> Iterator[str]:
    """A heading and what stands under it."""
    yield ""
    yield title
    yield "-" * len(title)
    yield from body


def fold(text: str, *, indent: int = 2, hang: int = 2) -> list[str]:
    """`text` in lines that fit, made inert; later lines are set in by `hang` more."""
    lines = wrap(
        inert(text),
        WIDTH,
        initial_indent=" " * indent,
        subsequent_indent=" " * (indent + hang),
    )
    return [line.replace(KEEP, " ") for line in lines]
