"""A picture as terminal cells."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

Colour = tuple[int, int, int]
"""Red, green and blue, each 0 to 255."""


class Encoding(StrEnum):
    """How colours become characters.

    BLOCKS: Block Elements, crisper.   HALVES: half blocks, safe everywhere.   SIXTEEN: half blocks
    in a palette of 16 colours.   GREY: Block Elements without colour.
    """

    BLOCKS = "blocks"
    HALVES = "halves"
    SIXTEEN = "sixteen"
    GREY = "grey"


@dataclass(frozen=True, slots=True)
class Cell:
    character: str
    ink: Colour
    paper: Colour


@dataclass(frozen=True, slots=True)
class Cells:
    """rows[y][x]; every row has the same length."""

    rows: tuple[tuple[Cell, ...], ...]

    @property
    def columns(self) -> int:
        return len(self.rows[0]) if self.rows else 0

    @property
    def lines(self) -> int:
        return len(self.rows)
