"""Pixels as terminal characters, each of two colours.

BLOCKS fits every cell by least squares: of twenty shapes of the Block Elements (U+2580 to
U+259F), and so of their complements by swapping ink and paper, it takes the one whose two mean
colours leave the smallest squared error.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from drills.pictures.cells import Cell, Cells, Encoding
from drills.pictures.palette import grey_of, reduced
from drills.pictures.raster import Pixels, majority, raster, spots
from drills.pictures.shapes import Colour, Drawing

GRID = 8
"""A cell is fitted on a grid of this many pixels each way; a pixel is twice as high as wide."""

BLANK = " "
UPPER_HALF = "\u2580"
_HALF = GRID // 2

Shape = NDArray[np.bool_]


def _boxes(*boxes: tuple[int, int, int, int]) -> Shape:
    """A shape that is inked in each box of left, top, right, bottom."""
    shape = np.zeros((GRID, GRID), dtype=np.bool_)
    for left, top, right, bottom in boxes:
        shape[top:bottom, left:right] = True
    return shape


_UPPER_LEFT = (0, 0, _HALF, _HALF)
_UPPER_RIGHT = (_HALF, 0, GRID, _HALF)
_LOWER_LEFT = (0, _HALF, _HALF, GRID)
_LOWER_RIGHT = (_HALF, _HALF, GRID, GRID)

FITTED: dict[str, Shape] = {
    BLANK: _boxes(),
    **{chr(0x2580 + n): _boxes((0, GRID - n, GRID, GRID)) for n in range(1, GRID)},
    **{chr(0x2590 - n): _boxes((0, 0, n, GRID)) for n in range(1, GRID)},
    "\u2596": _boxes(_LOWER_LEFT),
    "\u2597": _boxes(_LOWER_RIGHT),
    "\u2598": _boxes(_UPPER_LEFT),
    "\u259d": _boxes(_UPPER_RIGHT),
    "\u259a": _boxes(_UPPER_LEFT, _LOWER_RIGHT),
}
"""The twenty shapes that BLOCKS chooses from, by character; True where the ink is."""

DRAWN: dict[str, Shape] = {**FITTED, UPPER_HALF: _boxes((0, 0, GRID, _HALF))}
"""Every character that either encoding gives."""

_CHARACTERS = tuple(FITTED)
_MASKS = np.stack([shape.reshape(-1) for shape in FITTED.values()])
_INKED = _MASKS.sum(axis=1)
# A tie or a gain below one grey level in one pixel of the cell is not worth an edge.
_LEAST_GAIN = 1.0


def encode(drawing: Drawing, *, columns: int, lines: int, encoding: Encoding) -> Cells:
    """Draw into columns x lines cells; a cell is taken to be twice as high as wide."""
    if encoding is Encoding.SIXTEEN:
        return halves(majority(reduced(drawing), columns=columns, rows=lines * 2))
    if encoding is Encoding.GREY:
        return grey(encode(drawing, columns=columns, lines=lines, encoding=Encoding.BLOCKS))
    if encoding is Encoding.HALVES:
        return halves(
            raster(drawing, width=columns, height=lines * 2, supersample=GRID, outline=0.35)
        )
    pixels = raster(
        drawing,
        width=columns * GRID,
        height=lines * GRID,
        tall=2,
        # Each cell is fitted as a whole: its 128 painted points are fine enough.
        supersample=1,
        outline=0.5 * GRID,
        mark=(_HALF, _HALF),
    )
    marked = np.zeros((lines * 2, columns * 2), dtype=np.bool_)
    for spot in spots(drawing, columns=columns * 2, rows=lines * 2, tall=2.0):
        marked[spot.row, spot.column] = True
    return blocks(pixels, marked=marked)


def halves(pixels: Pixels) -> Cells:
    """Show one pixel in each half of a cell; exact.   pixels: columns wide, two rows a line."""
    rows = []
    for upper, lower in zip(pixels[::2].tolist(), pixels[1::2].tolist(), strict=True):
        rows.append(
            tuple(
                Cell(BLANK if ink == paper else UPPER_HALF, tuple(ink), tuple(paper))
                for ink, paper in zip(upper, lower, strict=True)
            )
        )
    return Cells(tuple(rows))


def grey(cells: Cells) -> Cells:
    """The same cells in greys of the same luminance."""
    return Cells(
        tuple(
            tuple(Cell(cell.character, grey_of(cell.ink), grey_of(cell.paper)) for cell in row)
            for row in cells.rows
        )
    )


def blocks(pixels: Pixels, *, marked: Shape | None = None) -> Cells:
    """Fit each cell of 8 x 8 pixels with the best of the Block Elements.

    marked: quarters of cells (two rows and two columns a cell) that hold a mark; such a cell
    shows its marked quarters as they are, whatever the rest of it would gain from.
    """
    lines, columns = pixels.shape[0] // GRID, pixels.shape[1] // GRID
    split = pixels.reshape(lines, GRID, columns, GRID, 3).swapaxes(1, 2)
    every = split.reshape(lines * columns, GRID * GRID, 3)
    first = every[:, :1]
    # Most of a picture is sky: a cell of one colour needs no fitting.
    edged = np.flatnonzero((every != first).any(axis=(1, 2)))
    cells = [Cell(BLANK, colour, colour) for colour in map(tuple, first[:, 0].tolist())]
    for index, cell in zip(edged.tolist(), _fitted(every[edged]), strict=True):
        cells[index] = cell
    if marked is not None:
        for at in sorted({(row // 2, column // 2) for row, column in np.argwhere(marked).tolist()}):
            line, column = at
            quarters = marked[line * 2 : line * 2 + 2, column * 2 : column * 2 + 2]
            cells[line * columns + column] = _show_mark(split[line, column], quarters)
    return Cells(tuple(tuple(cells[n : n + columns]) for n in range(0, len(cells), columns)))


def _fitted(pixels: Pixels) -> list[Cell]:
    """The best of the Block Elements for each cell.   pixels: cells x pixels x colours."""
    flat = pixels.astype(np.float64)
    mean = flat.mean(axis=1)
    # cells x shapes x colours: what the inked pixels add up to, away from the mean
    inked_sum = np.matmul(_MASKS.astype(np.float64), flat - mean[:, None, :])
    spread = np.zeros(len(_INKED))
    spread[1:] = 1 / _INKED[1:] + 1 / (GRID * GRID - _INKED[1:])
    gain = (inked_sum**2).sum(axis=2) * spread
    gain[:, 0] = _LEAST_GAIN
    best = gain.argmax(axis=1)
    ink_sum = inked_sum[np.arange(len(flat)), best]
    inked = _INKED[best][:, None]
    inks = _whole(mean + ink_sum / np.maximum(inked, 1))
    papers = _whole(mean - ink_sum / (GRID * GRID - inked))
    return [
        Cell(BLANK if ink == paper else _CHARACTERS[shape], ink, paper)
        for shape, ink, paper in zip(best.tolist(), inks, papers, strict=True)
    ]


def _show_mark(pixels: Pixels, quarters: Shape) -> Cell:
    """One cell in which the marked quarters stand against the mean of the rest."""
    wanted = quarters.repeat(_HALF, axis=0).repeat(_HALF, axis=1)
    marked = _mean(pixels[wanted])
    if quarters.all():
        return Cell(BLANK, marked, marked)
    rest = _mean(pixels[~wanted])
    for character, shape in FITTED.items():
        if (shape == wanted).all():
            return Cell(character, marked, rest)
        if (shape == ~wanted).all():
            return Cell(character, rest, marked)
    raise AssertionError("every set of quarters is a Block Element")


def _mean(pixels: Pixels) -> Colour:
    return _whole(pixels.astype(np.float64).mean(axis=0)[None, :])[0]


def _whole(colours: NDArray[np.float64]) -> list[Colour]:
    return [(r, g, b) for r, g, b in np.rint(colours).astype(np.int64).tolist()]
