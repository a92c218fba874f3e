"""A drawing as a list of plain shapes, before any raster.

Coordinates are floats in drawing units: x to the right, y *down*, square units. The raster fits
a `Frame` of units into cells. Colours are (red, green, blue), 0 to 255. An `outline` of None
means no edge line. A `Mark` (an eye) is set after reduction, as a whole sub-pixel, so that it
never blurs away.
"""

from __future__ import annotations

from dataclasses import dataclass

Colour = tuple[int, int, int]
Point = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Ellipse:
    """centre, radii in units; angle: degrees, clockwise on the screen."""

    centre: Point
    radii: Point
    fill: Colour
    outline: Colour | None = None
    angle: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Polygon:
    points: tuple[Point, ...]
    fill: Colour
    outline: Colour | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A thick line through the points, with round ends and joints.   width: units."""

    points: tuple[Point, ...]
    width: float
    fill: Colour
    outline: Colour | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """An eye or other point that must survive reduction; one or more whole sub-pixels."""

    at: Point
    fill: Colour


Shape = Ellipse | Polygon | Stroke | Mark


@dataclass(frozen=True, slots=True, kw_only=True)
class Frame:
    """The part of the drawing that is shown: `left`, `top` and size in units."""

    left: float
    top: float
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """Shapes painted in order over `sky`; `earth` below y = `ground`, or nowhere when None."""

    shapes: tuple[Shape, ...]
    frame: Frame
    sky: Colour = (178, 212, 250)
    earth: Colour = (139, 172, 98)
    ground: float | None = 0.0
