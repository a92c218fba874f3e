"""Terminal cells, or the drawing itself, as an image."""

from __future__ import annotations

import numpy as np
from PIL import Image

from drills.pictures.cells import Cells
from drills.pictures.encode import DRAWN, GRID
from drills.pictures.raster import raster
from drills.pictures.shapes import Drawing

CELL_WIDTH = 10
CELL_HEIGHT = 20

_ACROSS = (np.arange(CELL_WIDTH) * 2 + 1) * GRID // (2 * CELL_WIDTH)
_DOWN = (np.arange(CELL_HEIGHT) * 2 + 1) * GRID // (2 * CELL_HEIGHT)
_STENCILS = {
    character: shape[np.ix_(_DOWN, _ACROSS)][:, :, None] for character, shape in DRAWN.items()
}


def picture(cells: Cells) -> Image.Image:
    """Draw the cells as a terminal shows them, 10 x 20 pixels each."""
    size = (cells.lines * CELL_HEIGHT, cells.columns * CELL_WIDTH, 3)
    pixels = np.zeros(size, dtype=np.uint8)
    for line, row in enumerate(cells.rows):
        for column, cell in enumerate(row):
            top, left = line * CELL_HEIGHT, column * CELL_WIDTH
            pixels[top : top + CELL_HEIGHT, left : left + CELL_WIDTH] = np.where(
                _STENCILS[cell.character], np.array(cell.ink), np.array(cell.paper)
            )
    return Image.fromarray(pixels)


def smooth(drawing: Drawing, *, width: int, height: int) -> Image.Image:
    """Draw without cells, for print; width and height are pixels."""
    line = max(1.0, width / 320)
    mark = max(1, round(width / 100))
    return Image.fromarray(
        raster(drawing, width=width, height=height, outline=line, mark=(mark, mark))
    )
