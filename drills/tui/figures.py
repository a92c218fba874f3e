"""Figures that stand each for itself, cut out of pictures in which two stand apart."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from drills.core.cells import Cell, Cells, Encoding
from drills.core.meanings import Act, Scene
from drills.tui.gallery import pictures

# Any two can be drawn standing so; which verb does not happen makes no difference.
_NO_ACT = "follow"


@lru_cache(maxsize=48)
def standing(
    figures: tuple[str, ...], *, columns: int, lines: int, encoding: Encoding
) -> tuple[Cells, ...]:
    """Each of two or more figures alone, at one common scale; every second one looks to the left.

    Safe to call from any thread.
    """
    pairs = [figures[at : at + 2] for at in range(0, len(figures), 2)]
    if len(pairs[-1]) == 1:
        pairs[-1] = (figures[-1], figures[0])
    scenes = tuple(
        Scene(meaning=Act(verb=_NO_ACT, doer=left, done_to=right, negated=True))
        for left, right in pairs
    )
    drawn = pictures(scenes, columns=2 * columns, lines=lines, encoding=encoding)
    return tuple(half for cells in drawn for half in _halves(cells, columns))[: len(figures)]


def _halves(cells: Cells, columns: int) -> tuple[Cells, Cells]:
    """The figure at the left and the one at the right, each in the middle of `columns`."""
    empty = [all(row[x] == row[0] for row in cells.rows) for x in range(cells.columns)]
    drawn = [x for x, is_empty in enumerate(empty) if not is_empty]
    if not drawn:
        return _middle(cells, 0, 0, columns), _middle(cells, 0, 0, columns)
    gaps = [(after - before, before, after) for before, after in pairwise(drawn)]
    width, before, after = max(gaps, default=(1, 0, 0))
    if width == 1:  # they touch
        before = drawn[0] + len(drawn) // 2 - 1
        after = before + 1
    return (
        _middle(cells, drawn[0], before + 1, columns),
        _middle(cells, after, drawn[-1] + 1, columns),
    )


def _middle(cells: Cells, first: int, end: int, columns: int) -> Cells:
    """Columns `first` to before `end`, with as much ground on both sides as makes `columns`."""
    spare = (end - first) - columns
    if spare > 0:
        first, end = first + spare // 2, first + spare // 2 + columns
    left = (columns - (end - first)) // 2
    right = columns - left - (end - first)

    def wide(row: Sequence[Cell]) -> tuple[Cell, ...]:
        return (*[row[0]] * left, *row[first:end], *[row[0]] * right)

    return Cells(rows=tuple(wide(row) for row in cells.rows))
