"""Sixteen colours for terminals that have no more, and grey for those that want none.

The values are those of the IBM VGA text palette, which text libraries take for the standard 16.
"""

from __future__ import annotations

import colorsys
from dataclasses import replace
from functools import cache

import numpy as np

from drills.pictures.contrast import lab
from drills.pictures.shapes import Colour, Drawing, Mark, Shape

BLACK: Colour = (0, 0, 0)
BROWN: Colour = (170, 85, 0)
LIGHT_RED: Colour = (255, 85, 85)
LIGHT_GREY: Colour = (170, 170, 170)
GREEN: Colour = (0, 170, 0)
SIXTEEN: tuple[Colour, ...] = (
    BLACK, (170, 0, 0), GREEN, BROWN, (0, 0, 170), (170, 0, 170), (0, 170, 170), LIGHT_GREY,
    (85, 85, 85), LIGHT_RED, (85, 255, 85), (255, 255, 85), (85, 85, 255), (255, 85, 255),
    (85, 255, 255), (255, 255, 255),
)  # fmt: skip

# Light grey is the card behind everything, so nothing on it is light grey.
_FIGURES = tuple(colour for colour in SIXTEEN if colour != LIGHT_GREY)


@cache
def nearest(colour: Colour) -> Colour:
    """The figure's colour that looks most like `colour`; skin and wood are brown or light red."""
    red, green, blue = (part / 255 for part in colour)
    hue, light, _ = colorsys.rgb_to_hls(red, green, blue)
    top, spread = max(red, green, blue), max(red, green, blue) - min(red, green, blue)
    # The nearest of the sixteen to a brown skin is a red or a grey: no face has that colour.
    if 12 / 360 < hue < 36 / 360 and 0.18 < spread / (top or 1) < 0.72 and top > 0.3:
        return LIGHT_RED if light > 0.68 else BROWN
    # What has a colour keeps one: navy is a blue, not a dark grey.
    coloured = spread > 0.22
    choices = [c for c in _FIGURES if not coloured or max(c) - min(c) > 0]
    own, *others = lab(np.array([colour, *choices], dtype=np.float64))
    distances = [float(np.linalg.norm(own - other)) for other in others]
    return choices[distances.index(min(distances))]


def _recoloured(shape: Shape) -> Shape:
    if isinstance(shape, Mark):
        return replace(shape, fill=nearest(shape.fill))
    outline = None if shape.outline is None else BLACK
    return replace(shape, fill=nearest(shape.fill), outline=outline)


def reduced(drawing: Drawing) -> Drawing:
    """`drawing` in the sixteen colours."""
    return replace(
        drawing,
        shapes=tuple(map(_recoloured, drawing.shapes)),
        sky=LIGHT_GREY,
        earth=GREEN if drawing.earth[1] > drawing.earth[0] else BROWN,
    )


@cache
def grey_of(colour: Colour) -> Colour:
    """The grey of the same luminance.   Source: IEC 61966-2-1."""
    linear = [
        part / 255 / 12.92 if part <= 10 else ((part / 255 + 0.055) / 1.055) ** 2.4
        for part in colour
    ]
    bright = 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    level = bright * 12.92 if bright <= 0.0031308 else 1.055 * bright ** (1 / 2.4) - 0.055
    value = round(level * 255)
    return (value, value, value)
