"""Large letters of half blocks."""

from __future__ import annotations

import string

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

from drills.tui.letters import lettered


def pixels(lines: tuple[str, ...], width: int) -> list[list[bool]]:
    rows = []
    for line in lines:
        padded = line.ljust(width)
        rows.append([sign in "▀█" for sign in padded])
        rows.append([sign in "▄█" for sign in padded])
    return rows


@pytest.mark.parametrize("letter", string.ascii_letters + string.digits)
def test_every_letter_is_the_fonts_own(letter: str) -> None:
    # Held against the bitmap font of Pillow (Pillow, ImageFont.load_default_imagefont).
    mask = ImageFont.load_default_imagefont().getmask(letter, mode="L")
    width, height = mask.size
    wanted = [[bool(mask.getpixel((x, y))) for x in range(width)] for y in range(height)]
    inked = [row for row in wanted if any(row)]
    first = wanted.index(inked[0])
    last = height - 1 - wanted[::-1].index(inked[-1])
    shown = pixels(lettered(letter), width)
    assert shown[: last - first + 1] == wanted[first : last + 1]


@given(st.text("abcdefghijklmnopqrstuvwxyz", min_size=2, max_size=6))
def test_no_two_letters_touch(text: str) -> None:
    width = max(map(len, lettered(text)))
    one = len(pixels(lettered("m"), 7)[0])
    rows = pixels(lettered(text), width)
    for edge in range(one - 1, width, one):
        assert not any(row[edge] for row in rows)


@pytest.mark.parametrize("text", ["", "  ", "naïve", "a\nb"])
def test_what_the_font_lacks_is_not_drawn(text: str) -> None:
    assert lettered(text) == ()
