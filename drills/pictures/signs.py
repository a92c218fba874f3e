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
    shade,
    turn,
    unit,
)
from drills.pictures.shapes import Colour, Ellipse, Point, Shape, Stroke

DARK: Colour = (46, 46, 60)
WATER: Colour = (30, 110, 225)
FOAM: Colour = (252, 252, 255)
ROPE: Colour = (205, 160, 84)
STEEL: Colour = (150, 156, 170)


def rope(*points: Point) -> list[Shape]:
    return [limb(ROPE, 2.6, *points)]


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


def taps(at: Point, facing: int, size: float) -> list[Shape]:
    """Two small arcs behind and below a touch, where no face is."""
    shapes: list[Shape] = []
    for grow in (1.3, 2.3):
        points = tuple(
            plus(at, turn((0.0, -size * grow), angle * facing))
            for angle in (-176, -158, -140, -122)
        )
        shapes.append(Stroke(points=points, width=size * 0.42, fill=DARK))
    return shapes


def sponge(at: Point, size: float) -> list[Shape]:
    x, y = at
    yellow: Colour = (250, 206, 40)
    return [
        area(
            yellow,
            (x - size * 0.7, y - size),
            (x + size * 0.7, y - size),
            (x + size * 0.7, y + size),
            (x - size * 0.7, y + size),
        ),
        Ellipse(centre=(x, y - size * 0.4), radii=(1.1, 1.1), fill=shade(yellow, 0.75)),
        Ellipse(centre=(x - 1, y + size * 0.5), radii=(1.1, 1.1), fill=shade(yellow, 0.75)),
    ]


def bubbles(*places: tuple[float, float, float]) -> list[Shape]:
    """x, y, radius of each."""
    shapes: list[Shape] = []
    for x, y, radius in places:
        shapes.append(
            Ellipse(centre=(x, y), radii=(radius, radius), fill=FOAM, outline=(110, 140, 180))
        )
    return shapes


def tub(x: float, half: float, height: float) -> list[Shape]:
    """A wooden tub standing on the ground, foam on its rim."""
    wood: Colour = (176, 118, 66)
    shapes: list[Shape] = [
        area(
            wood,
            (x - half, -height),
            (x + half, -height),
            (x + half * 0.86, 0),
            (x - half * 0.86, 0),
        ),
        line(STEEL, 2.6, (x - half * 0.96, -height * 0.68), (x + half * 0.96, -height * 0.68)),
        line(STEEL, 2.6, (x - half * 0.88, -height * 0.18), (x + half * 0.88, -height * 0.18)),
    ]
    foam = [(x + half * share, -height - 1.0, 3.6 + (index % 2)) for index, share in
            enumerate((-0.85, -0.5, -0.15, 0.2, 0.55, 0.86))]  # fmt: skip
    return [*shapes, *bubbles(*foam)]


def spoon(hand: Point, tip: Point) -> list[Shape]:
    return [
        limb(STEEL, 1.8, hand, tip),
        blob(tip, 3.0, 1.8, shade(STEEL, 1.3)),
    ]


def bowl(centre: Point, half: float) -> list[Shape]:
    x, y = centre
    rim: Colour = (60, 120, 200)
    return [
        Ellipse(centre=(x, y - half * 0.42), radii=(half * 0.86, half * 0.36), fill=(226, 160, 70)),
        area(
            (250, 248, 240),
            (x - half, y - half * 0.4),
            (x + half, y - half * 0.4),
            (x + half * 0.5, y + half * 0.6),
            (x - half * 0.5, y + half * 0.6),
        ),
        line(rim, 1.8, (x - half, y - half * 0.35), (x + half, y - half * 0.35)),
    ]


def feather(hand: Point, tip: Point, wide: float) -> list[Shape]:
    """A large plume on a bare quill held at `hand`; `tip` touches."""
    axis = unit(minus(tip, hand))
    across = turn(axis, 90)
    plume: Colour = (255, 196, 226)
    outline = (
        (0.4, 0.1),
        (0.5, 0.85),
        (0.62, 0.7),
        (0.68, 1.0),
        (0.8, 0.7),
        (0.86, 0.8),
        (0.95, 0.4),
    )
    upper = [plus(between(hand, tip, along), across, -wide * out) for along, out in outline]
    lower = [plus(between(hand, tip, along), across, wide * out) for along, out in outline]
    return [
        line((110, 66, 40), 2.4, plus(hand, axis, -wide), between(hand, tip, 0.5)),
        area(plume, *upper, tip, *reversed(lower)),
        patch((236, 96, 164), *lower, tip),
        line((110, 66, 40), 1.2, between(hand, tip, 0.4), between(hand, tip, 0.88)),
    ]


def wiggles(at: Point, facing: int, size: float) -> list[Shape]:
    """Two short wavy lines beside a tickled place, on the side that `facing` gives."""
    shapes: list[Shape] = []
    for row in (-1.1, 1.1):
        points = tuple(
            plus(at, (facing * size * step * 0.45, size * (row + (0.22 if step % 2 else -0.22))))
            for step in range(4)
        )
        shapes.append(Stroke(points=points, width=1.7, fill=DARK))
    return shapes


def camera(lens: Point, size: float) -> list[Shape]:
    """A film camera on three legs, lens to the right; two reels on top."""
    x, y = lens
    body: Colour = (60, 62, 74)
    left = x - size * 1.5
    reel: Colour = (150, 154, 168)
    return [
        limb(DARK, 1.8, (left + size * 0.6, y + size * 0.4), (left - size * 0.9, 0)),
        limb(DARK, 1.8, (left + size * 0.6, y + size * 0.4), (left + size * 2.1, 0)),
        limb(DARK, 1.8, (left + size * 0.6, y + size * 0.4), (left + size * 0.6, -1.5)),
        blob((left + size * 0.15, y - size * 0.95), size * 0.52, size * 0.52, reel),
        blob((left + size * 1.05, y - size * 0.95), size * 0.52, size * 0.52, reel),
        area(
            body,
            (x - size * 0.35, y - size * 0.22),
            (x + size * 0.25, y - size * 0.5),
            (x + size * 0.25, y + size * 0.5),
            (x - size * 0.35, y + size * 0.22),
        ),
        area(
            body,
            (left - size * 0.2, y - size * 0.55),
            (left + size * 1.3, y - size * 0.55),
            (left + size * 1.3, y + size * 0.5),
            (left - size * 0.2, y + size * 0.5),
        ),
        Ellipse(centre=(left + size * 0.95, y - size * 0.2), radii=(1.9, 1.9), fill=(240, 40, 40)),
    ]


def bucket(handle: Point, angle: float, size: float) -> list[Shape]:
    """A pail; `angle` turns its mouth, 0 is up, 90 is right."""

    def at(across: float, up: float) -> Point:
        return plus(handle, turn((across * size, -up * size), angle))

    pail: Colour = (206, 60, 50)
    return [
        area(pail, at(-0.75, 0.9), at(0.75, 0.9), at(0.55, -0.8), at(-0.55, -0.8)),
        line(shade(pail, 1.45), 1.8, at(-0.7, 0.3), at(0.7, 0.3)),
        Ellipse(
            centre=at(0, 0.9),
            radii=(size * 0.8, size * 0.3),
            fill=(70, 150, 235),
            outline=DARK,
            angle=angle,
        ),
    ]


def stool(x: float, height: float, half: float) -> list[Shape]:
    """A plain stool whose seat is `height` units up."""
    wood: Colour = (150, 98, 54)
    return [
        limb(shade(wood, 0.8), 2.6, (x - half * 0.7, -height), (x - half * 0.95, -1.3)),
        limb(shade(wood, 0.8), 2.6, (x + half * 0.7, -height), (x + half * 0.95, -1.3)),
        limb(wood, 3.6, (x - half, -height), (x + half, -height)),
    ]


def tape(start: Point, end: Point, width: float) -> list[Shape]:
    """A yellow measuring tape with dark ticks."""
    yellow: Colour = (255, 222, 40)
    across = turn(unit(minus(end, start)), 90)
    shapes: list[Shape] = [limb(yellow, width, start, end)]
    shapes.append(blob(between(start, end, 0.62), width * 1.0, width * 1.0, (186, 40, 48)))
    ticks = 8
    for step in range(1, ticks):
        at = between(start, end, step / ticks)
        long = 0.45 if step % 2 else 0.1
        shapes.append(
            line(
                (40, 36, 30),
                width * 0.38,
                plus(at, across, -width * 0.4),
                plus(at, across, width * long),
            )
        )
    return shapes


def shadow(x: float, half: float) -> list[Shape]:
    return [Ellipse(centre=(x, 2.5), radii=(half, 2.2), fill=(98, 126, 70))]
