"""Images of cells and of drawings."""

import numpy as np
import pytest

from drills.pictures.cells import Cell, Cells
from drills.pictures.encode import DRAWN
from drills.pictures.png import CELL_HEIGHT, CELL_WIDTH, picture, smooth
from drills.pictures.shapes import Drawing, Frame, Mark, Polygon

INK, PAPER = (250, 10, 20), (0, 60, 120)


@pytest.mark.parametrize("character", DRAWN)
def test_a_character_inks_its_share_of_the_cell(character: str) -> None:
    pixels = np.asarray(picture(Cells(((Cell(character, INK, PAPER),),))))
    inked = (pixels == INK).all(axis=2)
    assert pixels.shape == (CELL_HEIGHT, CELL_WIDTH, 3)
    assert (inked | (pixels == PAPER).all(axis=2)).all()
    # Eighths of 10 and 20 pixels are not whole pixels: half a pixel column off at most.
    assert inked.mean() == pytest.approx(DRAWN[character].mean(), abs=0.051)


def test_cells_stand_where_they_are_in_their_row_and_line() -> None:
    colours = [[(line * 50, column * 50, 7) for column in range(3)] for line in range(2)]
    cells = Cells(tuple(tuple(Cell(" ", INK, colour) for colour in row) for row in colours))
    image = picture(cells)
    assert image.size == (30, 40)
    for line, row in enumerate(colours):
        for column, colour in enumerate(row):
            assert image.getpixel((column * 10 + 5, line * 20 + 10)) == colour


def test_a_smooth_picture_has_the_size_and_colours_asked() -> None:
    drawing = Drawing(
        shapes=(
            Polygon(points=((0, 0), (10, 0), (10, 10), (0, 10)), fill=INK),
            Mark(at=(15, 5), fill=(9, 9, 9)),
        ),
        frame=Frame(left=0, top=0, width=20, height=10),
        sky=PAPER,
        ground=None,
    )
    image = smooth(drawing, width=400, height=200)
    assert image.size == (400, 200)
    assert image.getpixel((100, 100)) == INK
    assert image.getpixel((350, 100)) == PAPER
    assert image.getpixel((301, 101)) == (9, 9, 9)
