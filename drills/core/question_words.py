"""What records of questions say beyond their options: yes or no, and the cell of the grid."""

from __future__ import annotations

from enum import StrEnum

from drills.core.words import Band

YES, NO = "yes", "no"
"""The two answers to a question that asks whether something is so."""

GRID = "grid"
"""The question form that sets the frequency of words against the grammar around them."""


class Grammar(StrEnum):
    """EASY: the doer first, no clause within another.   HARD: the doer second."""

    EASY = "easy"
    HARD = "hard"


def level_of(band: Band, grammar: Grammar) -> str:
    """The level of an item in one cell of the grid: "rare/hard"."""
    return f"{band.value}/{grammar.value}"


def cell_of(level: str) -> tuple[Band, Grammar] | None:
    """The cell that `level_of` wrote; None for any other level."""
    band, _, grammar = level.partition("/")
    try:
        return Band(band), Grammar(grammar)
    except ValueError:
        return None
