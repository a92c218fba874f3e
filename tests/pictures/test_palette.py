from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from rich.color import Color, ColorSystem

from drills.core.meanings import Act, Scene
from drills.pictures import PEOPLE_KEYS, Encoding, draw
from drills.pictures.cast import PEOPLE
from drills.pictures.contrast import lab
from drills.pictures.palette import BLACK, LIGHT_GREY, SIXTEEN, grey_of, nearest

colours = st.tuples(*[st.integers(0, 255)] * 3)


def test_each_of_the_sixteen_is_a_colour_of_the_terminal_s_own():
    # Independent reference: rich maps 24-bit colours to the nearest of the standard sixteen.
    shown = [Color.from_rgb(*one).downgrade(ColorSystem.STANDARD).number for one in SIXTEEN]
    # Red, green, brown, blue ... in the order of ECMA-48 SGR 30 to 37, then the light ones.
    assert shown == list(range(16))


@given(colours)
def test_every_colour_becomes_one_of_the_sixteen_and_never_the_card_s(colour):
    assert nearest(colour) in SIXTEEN
    assert nearest(colour) != LIGHT_GREY


@pytest.mark.parametrize("person", PEOPLE_KEYS)
def test_no_face_is_lost_on_the_card_or_under_its_eye(person):
    skin = nearest(PEOPLE[person].skin)
    face, card, eye = lab(np.array([skin, LIGHT_GREY, BLACK], dtype=float))
    assert np.linalg.norm(face - card) > 20
    assert np.linalg.norm(face - eye) > 20


def test_a_picture_in_sixteen_colours_uses_no_other():
    act = Act(verb="splash", doer="queen", done_to="farmer")
    (cells,) = draw([Scene(meaning=act)], columns=38, lines=15, encoding=Encoding.SIXTEEN)
    used = {colour for row in cells.rows for cell in row for colour in (cell.ink, cell.paper)}
    assert used <= set(SIXTEEN)
    assert len(used) >= 8


@given(colours)
def test_grey_keeps_lightness(colour):
    grey = grey_of(colour)
    assert len(set(grey)) == 1
    own, other = lab(np.array([colour, grey], dtype=float))
    assert abs(own[0] - other[0]) < 1.0


def test_a_grey_picture_has_no_colour():
    act = Act(verb="splash", doer="queen", done_to="farmer")
    (cells,) = draw([Scene(meaning=act)], columns=38, lines=9, encoding=Encoding.GREY)
    assert all(
        len(set(colour)) == 1
        for row in cells.rows
        for cell in row
        for colour in (cell.ink, cell.paper)
    )
