"""Points, turns and mirrors for the shapes of a drawing."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace

from drills.pictures.shapes import Colour, Ellipse, Frame, Mark, Point, Polygon, Shape, Stroke

INK: Colour = (28, 26, 32)


def turn(vector: Point, degrees: float) -> Point:
    """`vector` turned clockwise on the screen."""
    angle = math.radians(degrees)
    sine, cosine = math.sin(angle), math.cos(angle)
    return (vector[0] * cosine - vector[1] * sine, vector[0] * sine + vector[1] * cosine)


def plus(point: Point, vector: Point, times: float = 1.0) -> Point:
    return (point[0] + vector[0] * times, point[1] + vector[1] * times)


def minus(a: Point, b: Point) -> Point:
    return (a[0] - b[0], a[1] - b[1])


def between(a: Point, b: Point, share: float = 0.5) -> Point:
    """The point `share` of the way from `a` to `b`."""
    return (a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share)


def distance(a: Point, b: Point) -> float:
    return math.hypot(a[0] - b[0], a[1] - b[1])


def unit(vector: Point) -> Point:
    """`vector` at length 1; straight down when it has no length."""
    size = math.hypot(*vector)
    return (vector[0] / size, vector[1] / size) if size > 1e-9 else (0.0, 1.0)


def slope(vector: Point) -> float:
    """The direction of `vector` in degrees, clockwise from the right."""
    return math.degrees(math.atan2(vector[1], vector[0]))


def shade(colour: Colour, factor: float) -> Colour:
    """`colour` darkened (factor < 1) or moved toward white (factor > 1)."""
    if factor <= 1:
        red, green, blue = (round(part * factor) for part in colour)
    else:
        red, green, blue = (round(part + (255 - part) * (factor - 1)) for part in colour)
    return (red, green, blue)


def edge(colour: Colour) -> Colour:
    """The outline that goes with a fill."""
    return shade(colour, 0.32)


def blob(
    centre: Point, radius_x: float, radius_y: float, fill: Colour, angle: float = 0
) -> Ellipse:
    return Ellipse(
        centre=centre, radii=(radius_x, radius_y), fill=fill, outline=edge(fill), angle=angle
    )


def area(fill: Colour, *points: Point) -> Polygon:
    return Polygon(points=points, fill=fill, outline=edge(fill))


def patch(fill: Colour, *points: Point) -> Polygon:
    """A polygon without an outline, for marks on cloth."""
    return Polygon(points=points, fill=fill)


def limb(fill: Colour, width: float, *points: Point) -> Stroke:
    return Stroke(points=points, width=width, fill=fill, outline=edge(fill))


def line(fill: Colour, width: float, *points: Point) -> Stroke:
    """A stroke without an outline, for thin signs."""
    return Stroke(points=points, width=width, fill=fill)


def mirrored(shape: Shape) -> Shape:
    """`shape` with left and right exchanged about x = 0."""
    match shape:
        case Ellipse():
            x, y = shape.centre
            return replace(shape, centre=(-x, y), angle=-shape.angle)
        case Polygon():
            return replace(shape, points=tuple((-x, y) for x, y in shape.points))
        case Stroke():
            return replace(shape, points=tuple((-x, y) for x, y in shape.points))
        case Mark():
            return replace(shape, at=(-shape.at[0], shape.at[1]))


def put(shapes: Iterable[Shape], x: float, y: float, size: float = 1.0) -> tuple[Shape, ...]:
    """Shapes made at (0, 0), at `size` and moved to (x, y)."""

    def at(point: Point) -> Point:
        return (x + point[0] * size, y + point[1] * size)

    moved: list[Shape] = []
    for shape in shapes:
        match shape:
            case Ellipse():
                radii = (shape.radii[0] * size, shape.radii[1] * size)
                moved.append(replace(shape, centre=at(shape.centre), radii=radii))
            case Polygon():
                moved.append(replace(shape, points=tuple(map(at, shape.points))))
            case Stroke():
                points = tuple(map(at, shape.points))
                moved.append(replace(shape, points=points, width=shape.width * size))
            case Mark():
                moved.append(replace(shape, at=at(shape.at)))
    return tuple(moved)


def _corners(shape: Shape) -> tuple[Point, ...]:
    match shape:
        case Ellipse():
            angle = math.radians(shape.angle)
            a, b = shape.radii
            wide = math.hypot(a * math.cos(angle), b * math.sin(angle))
            high = math.hypot(a * math.sin(angle), b * math.cos(angle))
            x, y = shape.centre
            return ((x - wide, y - high), (x + wide, y + high))
        case Polygon():
            return shape.points
        case Stroke():
            half = shape.width / 2
            return tuple(
                (x + side * half, y + side * half) for x, y in shape.points for side in (-1, 1)
            )
        case Mark():
            return (shape.at,)


def bounds(shapes: Iterable[Shape]) -> Frame:
    """The smallest frame that holds every shape, outlines left out."""
    corners = [corner for shape in shapes for corner in _corners(shape)]
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    top, bottom = min(y for _, y in corners), max(y for _, y in corners)
    return Frame(left=left, top=top, width=right - left, height=bottom - top)
