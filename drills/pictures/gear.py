"""Tools of the first acts: sponge and tub, spoon and bowl, feather, camera, bucket, tape, book."""

from __future__ import annotations

import math

from drills.pictures import signs
from drills.pictures.geometry import (
    area,
    between,
    blob,
    distance,
    limb,
    line,
    minus,
    patch,
    plus,
    shade,
    turn,
    unit,
)
from drills.pictures.shapes import Colour, Ellipse, Point, Shape
from drills.pictures.signs import DARK

STEEL: Colour = (150, 156, 170)


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
    return [*shapes, *signs.bubbles(*foam)]


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
    """A large white plume, notched and bent, on a bare quill held at `hand`; `tip` touches."""
    axis = unit(minus(tip, hand))
    across = turn(axis, 90)
    length = distance(hand, tip)
    white: Colour = (252, 250, 255)

    def at(along: float, out: float) -> Point:
        bend = -0.35 * wide * math.sin(math.pi * along)
        return plus(plus(hand, axis, along * length), across, bend + out * wide)

    upper = ((0.3, -0.15), (0.38, -0.75), (0.5, -1.0), (0.56, -0.6), (0.62, -1.05), (0.8, -0.9),
             (0.93, -0.4))  # fmt: skip
    lower = ((0.92, 0.35), (0.78, 0.85), (0.66, 1.0), (0.6, 0.55), (0.5, 0.95), (0.36, 0.7),
             (0.28, 0.15))  # fmt: skip
    quill = tuple(at(along, 0.0) for along in (0.0, 0.25, 0.5, 0.75, 0.92))
    return [
        area(white, *(at(*p) for p in upper), tip, *(at(*p) for p in lower)),
        patch((190, 190, 214), *(at(*p) for p in lower), at(0.5, 0.0), at(0.8, 0.0)),
        line((96, 60, 40), 1.8, plus(hand, axis, -wide), *quill),
    ]


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

    pail: Colour = (160, 34, 36)
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


def open_book(at: Point, size: float) -> list[Shape]:
    """Both leaves of a large book, lines on them, towards the viewer; `at` is its lower spine."""
    x, y = at
    cover: Colour = (176, 44, 52)
    paper: Colour = (254, 250, 236)
    shapes: list[Shape] = []
    for side in (-1, 1):
        outer, inner = x + side * size, x + side * size * 0.06
        shapes += [
            area(cover, (x, y + 2.5), (outer + side * 2.0, y - size * 0.15),
                 (outer + side * 2.0, y - size * 1.2), (x, y - size * 1.0)),
            patch(paper, (inner, y), (outer, y - size * 0.25), (outer, y - size * 1.15),
                  (inner, y - size * 0.95)),
        ]  # fmt: skip
    return shapes


def rule(x: float, top: float, width: float) -> list[Shape]:
    """A tall yellow rule on a foot, marked from the ground to `top`."""
    yellow: Colour = (252, 214, 40)
    half, step = width * 0.5, min(width, 12.0) * 1.15
    marks: list[Shape] = []
    for n in range(int((-top - step) / step)):
        y, right = top + step * (n + 0.5), x + half * (1.0 if n % 3 == 2 else 0.5)
        low = y + step * 0.5
        marks.append(patch(DARK, (x - half, y), (right, y), (right, low), (x - half, low)))
    return [
        limb(STEEL, 4.0, (x - width * 1.4, -1.0), (x + width * 1.4, -1.0)),
        area(yellow, (x - half, top), (x + half, top), (x + half, 0.0), (x - half, 0.0)),
        *marks,
    ]


def slide(at: Point, grip: Point, length: float, width: float) -> list[Shape]:
    """The sleeve of a rule, from `at` down to `grip`, and its plate to the right over a head."""
    x, y = at
    half, thick = min(width * 0.62, 6.5), 4.0
    return [
        area((66, 70, 104), (x - half, y - thick), (x + length, y - thick), (x + length, y),
             (x + half, y), (x + half, grip[1] + thick), (x - half, grip[1] + thick)),
    ]  # fmt: skip
