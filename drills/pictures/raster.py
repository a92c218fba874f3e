"""A drawing as pixels: painted too large, then reduced by area averaging."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from math import cos, floor, hypot, radians, sin

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from drills.pictures.shapes import Colour, Drawing, Ellipse, Mark, Point, Polygon, Stroke

Pixels = NDArray[np.uint8]
_CURVE_STEPS = 48
_CIRCLE = tuple(
    (cos(radians(360 * step / _CURVE_STEPS)), sin(radians(360 * step / _CURVE_STEPS)))
    for step in range(_CURVE_STEPS)
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How drawing units become pixels: `pixel = (unit - origin) * scale`, the same both ways."""

    left: float
    top: float
    scale: float

    def place(self, point: Point) -> Point:
        return ((point[0] - self.left) * self.scale, (point[1] - self.top) * self.scale)


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A mark on the grid of sub-pixels.   column, row: counted in marks, not in pixels."""

    column: int
    row: int
    fill: Colour


def fit(drawing: Drawing, *, width: float, height: float) -> Fit:
    """Fit the drawing's frame whole and centred into square pixels."""
    frame = drawing.frame
    scale = min(width / frame.width, height / frame.height)
    return Fit(
        left=frame.left + frame.width / 2 - width / scale / 2,
        top=frame.top + frame.height / 2 - height / scale / 2,
        scale=scale,
    )


def raster(
    drawing: Drawing,
    *,
    width: int,
    height: int,
    tall: int = 1,
    supersample: int = 2,
    outline: float = 1.0,
    mark: tuple[int, int] = (1, 1),
) -> Pixels:
    """Paint the drawing as an array of height x width x 3 bytes.

    tall: how many times as high as wide a pixel is shown; the geometry stays square.
    supersample: how many times finer the drawing is painted before it is averaged.
    outline: width of an edge line, in widths of a pixel.   mark: a mark's size in pixels.
    """
    image = _painted(
        drawing, width * supersample, height * tall * supersample, outline * supersample
    )
    reduced = image.reduce((supersample, supersample * tall))
    pixels = np.array(reduced, dtype=np.uint8)
    mark_width, mark_height = mark
    for spot in spots(
        drawing,
        columns=width // mark_width,
        rows=height // mark_height,
        tall=tall * mark_height / mark_width,
    ):
        top, left = spot.row * mark_height, spot.column * mark_width
        pixels[top : top + mark_height, left : left + mark_width] = spot.fill
    return pixels


def _painted(drawing: Drawing, width: int, height: int, edge: float) -> Image.Image:
    place = fit(drawing, width=width, height=height)
    image = Image.new("RGB", (width, height), drawing.sky)
    brush = ImageDraw.Draw(image)
    if drawing.ground is not None:
        earth_top = place.place((0.0, drawing.ground))[1]
        if earth_top < height:
            brush.rectangle((0, earth_top, width, height), fill=drawing.earth)
    for shape in drawing.shapes:
        if isinstance(shape, Ellipse):
            _paint_ellipse(brush, shape, place, edge)
        elif isinstance(shape, Polygon):
            _paint_polygon(brush, shape, place, edge)
        elif isinstance(shape, Stroke):
            _paint_stroke(brush, shape, place, edge)
    return image


_FINE = 6


def majority(drawing: Drawing, *, columns: int, rows: int) -> Pixels:
    """Paint square pixels of whole colours: each shows the colour that most of it has."""
    image = _painted(drawing, columns * _FINE, rows * _FINE, 0.3 * _FINE)
    fine = np.array(image, dtype=np.int64).reshape(rows, _FINE, columns, _FINE, 3)
    codes = (fine << np.array([16, 8, 0])).sum(axis=-1).swapaxes(1, 2).reshape(rows, columns, -1)
    known = np.unique(codes)
    counts = np.stack([(codes == code).sum(axis=-1) for code in known], axis=-1)
    best = known[counts.argmax(axis=-1)]
    pixels = np.stack([best >> 16, best >> 8 & 255, best & 255], axis=-1).astype(np.uint8)
    for spot in spots(drawing, columns=columns, rows=rows, tall=1.0):
        pixels[spot.row, spot.column] = spot.fill
    return pixels


def spots(drawing: Drawing, *, columns: int, rows: int, tall: float) -> Iterator[Spot]:
    """Snap each mark that is inside the picture to a grid of columns x rows.

    tall: how many times as high as wide one field of the grid is shown.
    """
    place = fit(drawing, width=columns, height=rows * tall)
    for shape in drawing.shapes:
        if isinstance(shape, Mark):
            x, y = place.place(shape.at)
            column, row = floor(x), floor(y / tall)
            if 0 <= column < columns and 0 <= row < rows:
                yield Spot(column=column, row=row, fill=shape.fill)


def ellipse_points(shape: Ellipse, *, grown: float = 0.0) -> tuple[Point, ...]:
    """The edge of a turned ellipse, `grown` units further out."""
    turn = radians(shape.angle)
    cosine, sine = cos(turn), sin(turn)
    across, down = shape.radii[0] + grown, shape.radii[1] + grown
    x, y = shape.centre
    return tuple(
        (
            x + across * along * cosine - down * over * sine,
            y + across * along * sine + down * over * cosine,
        )
        for along, over in _CIRCLE
    )


def _paint_ellipse(brush: ImageDraw.ImageDraw, shape: Ellipse, place: Fit, edge: float) -> None:
    if shape.outline is not None:
        _fill_ellipse(brush, shape, place, edge / place.scale, shape.outline)
    _fill_ellipse(brush, shape, place, 0.0, shape.fill)


def _fill_ellipse(
    brush: ImageDraw.ImageDraw, shape: Ellipse, place: Fit, grown: float, colour: Colour
) -> None:
    if shape.angle:
        points = ellipse_points(shape, grown=grown)
        brush.polygon([place.place(point) for point in points], fill=colour)
    else:
        x, y = place.place(shape.centre)
        across, down = ((radius + grown) * place.scale for radius in shape.radii)
        brush.ellipse((x - across, y - down, x + across, y + down), fill=colour)


def _paint_polygon(brush: ImageDraw.ImageDraw, shape: Polygon, place: Fit, edge: float) -> None:
    points = [place.place(point) for point in shape.points]
    if shape.outline is not None:
        _fill_stroke(brush, [*points, points[0]], edge, shape.outline)
    brush.polygon(points, fill=shape.fill)


def _paint_stroke(brush: ImageDraw.ImageDraw, shape: Stroke, place: Fit, edge: float) -> None:
    points = [place.place(point) for point in shape.points]
    radius = shape.width * place.scale / 2
    if shape.outline is not None:
        _fill_stroke(brush, points, radius + edge, shape.outline)
    _fill_stroke(brush, points, radius, shape.fill)


def _fill_stroke(
    brush: ImageDraw.ImageDraw, points: list[Point], radius: float, colour: Colour
) -> None:
    # One box a segment and one disc a point: Pillow's own wide lines gap at sharp joints.
    for x, y in points:
        brush.ellipse((x - radius, y - radius, x + radius, y + radius), fill=colour)
    for (x0, y0), (x1, y1) in pairwise(points):
        length = hypot(x1 - x0, y1 - y0)
        if length:
            across, down = -(y1 - y0) / length * radius, (x1 - x0) / length * radius
            brush.polygon(
                [
                    (x0 + across, y0 + down),
                    (x1 + across, y1 + down),
                    (x1 - across, y1 - down),
                    (x0 - across, y0 - down),
                ],
                fill=colour,
            )
