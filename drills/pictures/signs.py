"""Tools and signs that make an act plain: rope, sponge, spoon, tape, drops, footprints."""

from __future__ import annotations

from drills.pictures.geometry import (
    area,
    between,
    blob,
    limb,
    line,
    minus,
    patch,
    plus,
    put,
    shade,
    turn,
    unit,
)
from drills.pictures.shapes import Colour, Ellipse, Point, Shape, Stroke
from drills.pictures.skeleton import Build, Limb

DARK: Colour = (46, 46, 60)
WATER: Colour = (30, 110, 225)
# Lighter than the pail it comes from, so that the two part without colour as well.
GUSH: Colour = (44, 126, 238)
FOAM: Colour = (252, 252, 255)
ROPE: Colour = (205, 160, 84)


def rope(*points: Point) -> list[Shape]:
    return [limb(ROPE, 2.6, *points)]


def curve(start: Point, middle: Point, end: Point, steps: int = 6) -> tuple[Point, ...]:
    """Points of the bow from `start` to `end` that is drawn towards `middle`."""
    return tuple(
        between(between(start, middle, k / steps), between(middle, end, k / steps), k / steps)
        for k in range(1, steps + 1)
    )


def knot(at: Point, size: float) -> list[Shape]:
    return [blob(at, size, size, shade(ROPE, 0.85))]


def drops(*places: Point, size: float = 2.6) -> list[Shape]:
    return [
        Ellipse(centre=place, radii=(size * 0.8, size), fill=WATER, outline=None)
        for place in places
    ]


def speed_lines(x: float, length: float, *heights: float) -> list[Shape]:
    """Level strokes from `x` leftward."""
    return [line(DARK, 2.0, (x, y), (x - length, y)) for y in heights]


def footprints(start: float, end: float, size: float) -> list[Shape]:
    """Prints on the ground from `start` to `end`."""
    count = max(3, round(abs(end - start) / (size * 3.2)))
    shapes: list[Shape] = []
    for step in range(count):
        x = start + (end - start) * (step + 0.5) / count
        y = size * (0.6 if step % 2 else 1.2)
        shapes.append(Ellipse(centre=(x, y), radii=(size, size * 0.55), fill=(78, 58, 36)))
    return shapes


def heart(centre: Point, size: float) -> list[Shape]:
    x, y = centre
    red: Colour = (222, 36, 64)
    half = size / 2
    return [
        area(red, (x - size, y - half * 0.5), (x + size, y - half * 0.5), (x, y + size)),
        blob((x - half, y - half * 0.7), half * 1.02, half * 0.95, red),
        blob((x + half, y - half * 0.7), half * 1.02, half * 0.95, red),
        patch(
            red,
            (x - size * 0.8, y - half * 0.5),
            (x + size * 0.8, y - half * 0.5),
            (x, y + size * 0.7),
        ),
    ]


def taps(at: Point, size: float) -> list[Shape]:
    """Two short strokes that fly off a touch, above the hand; an arc looks like a leash."""
    return [
        Stroke(
            points=(
                plus(at, turn((0.0, -size * 1.5), angle)),
                plus(at, turn((0.0, -size * 2.8), angle)),
            ),
            width=size * 0.4,
            fill=DARK,
        )
        for angle in (-28, -62)
    ]


def finger(hand: Point, tip: Point, build: Build, skin: Colour) -> list[Shape]:
    """One finger held out from `hand` to `tip`."""
    return [limb(skin, build.hand * 0.8, hand, tip)]


def bubbles(*places: tuple[float, float, float]) -> list[Shape]:
    """x, y, radius of each."""
    shapes: list[Shape] = []
    for x, y, radius in places:
        shapes.append(
            Ellipse(centre=(x, y), radii=(radius, radius), fill=FOAM, outline=(110, 140, 180))
        )
    return shapes


def wiggles(at: Point, size: float) -> list[Shape]:
    """Two short wavy lines beside a tickled place."""
    shapes: list[Shape] = []
    for column in (-0.5, 0.5):
        points = tuple(
            plus(at, (size * (column + (0.25 if step % 2 else -0.25)), -size * step * 0.5))
            for step in range(4)
        )
        shapes.append(Stroke(points=points, width=1.7, fill=DARK))
    return shapes


def bare_foot(leg: Limb, skin: Colour, build: Build) -> list[Shape]:
    """The shin and foot of a leg held out, without stocking or shoe; toes up."""
    along = unit(minus(leg.end, leg.joint))
    up = (0.0, -1.0)
    width = build.leg_width * 0.72
    size = width * (1.25 if build.leg > 25 else 1.35)
    ball = plus(leg.end, along, width * 0.2)
    return [
        limb(skin, width, between(leg.joint, leg.end, 0.2), ball),
        limb(skin, size * 0.8, ball, plus(ball, up, size * 1.1)),
        blob(plus(plus(ball, along, -size * 0.25), up, size * 1.55), size * 0.36, size * 0.4, skin),
    ]


def shadow(x: float, half: float) -> list[Shape]:
    return [Ellipse(centre=(x, 2.5), radii=(half, 2.8), fill=(64, 88, 48))]


def water(mouth: Point, hit: Point, thick: float) -> Shape:
    """A gush from `mouth` to `hit`."""
    crest = between(mouth, hit)
    crest = (crest[0], min(mouth[1], hit[1]) - thick * 0.6)
    return area(
        GUSH, plus(mouth, (0, -thick)), plus(crest, (0, -thick)), plus(hit, (0, -thick * 1.4)),
        plus(hit, (0, thick * 1.4)), plus(crest, (0, thick)), plus(mouth, (0, thick)),
    )  # fmt: skip


def raised(shapes: list[Shape], up: float) -> tuple[Shape, ...]:
    return put(shapes, 0.0, -up)


def arrow(start: Point, length: float) -> list[Shape]:
    """A short arrow to the right."""
    x, y = start
    head = length * 0.3
    return [
        line(DARK, length * 0.2, (x, y), (x + length * 0.6, y)),
        patch(DARK, (x + length * 0.55, y - head), (x + length, y), (x + length * 0.55, y + head)),
    ]
