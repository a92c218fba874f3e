"""Cells become terminal lines."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from drills.pictures.cells import Cell, Cells
from drills.tui.widgets.picture import strips_of

COLOUR = st.sampled_from([(0, 0, 0), (255, 255, 255), (178, 212, 250), (12, 200, 7)])
CELL = st.builds(Cell, st.sampled_from(" ▀▄█▖▚"), COLOUR, COLOUR)


@given(st.integers(1, 12).flatmap(lambda n: st.lists(st.lists(CELL, min_size=n, max_size=n))))
def test_every_cell_keeps_its_place_character_and_colours(rows: list[list[Cell]]) -> None:
    strips = strips_of(Cells(rows=tuple(tuple(row) for row in rows)))
    assert len(strips) == len(rows)
    for row, strip in zip(rows, strips, strict=True):
        assert strip.cell_length == len(row)
        shown = [
            Cell(character, tuple(style.color.triplet), tuple(style.bgcolor.triplet))
            for text, style, _ in strip
            for character in text
        ]
        assert shown == row


def test_neighbours_of_the_same_colours_are_one_segment() -> None:
    cell = Cell("▀", (1, 2, 3), (4, 5, 6))
    (strip,) = strips_of(Cells(rows=((cell,) * 38,)))
    assert len(list(strip)) == 1
