"""Figures that stand each for itself, cut out of pictures in which two stand apart."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from itertools import pairwise

from drills.core.cells import Cell, Cells, Encoding
from drills.core.meanings import Act, Scene
from drills.tui.gallery import pictures

# Any two can be drawn standing so; which verb does not happen makes no difference.
_NO_ACT = "follow"

Column = tuple[Cell, ...]


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
    upright = list(zip(*cells.rows, strict=True))
    # Ground and sky are the same everywhere, so the commonest column has nobody in it.
    ground = Counter(upright).most_common(1)[0][0]
    drawn = [x for x, column in enumerate(upright) if column != ground]
    gaps = [(after - before, before + 1, after) for before, after in pairwise(drawn)]
    middle = cells.columns // 2
    # Two who touch are parted in the middle.
    width, end, start = max(gaps, default=(1, middle, middle))
    if width == 1:
        end = start = middle
    first, last = (drawn[0], drawn[-1]) if drawn else (0, cells.columns - 1)
    return (
        _middle(upright[first:end], ground, columns),
        _middle(upright[start : last + 1], ground, columns),
    )


def _middle(upright: Sequence[Column], ground: Column, columns: int) -> Cells:
    """The middle of what is drawn, with as much ground on both sides as makes `columns`."""
    spare = max(0, len(upright) - columns)
    kept = upright[spare // 2 : spare // 2 + columns]
    left = (columns - len(kept)) // 2
    right = columns - left - len(kept)
    wide = (*[ground] * left, *kept, *[ground] * right)
    return Cells(rows=tuple(zip(*wide, strict=True)))
