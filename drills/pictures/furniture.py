"""Furniture of the pictures, and what is used on it: bed, chairs, scale, easel, book, glass."""

from __future__ import annotations

from drills.pictures.geometry import area, between, blob, limb, line, patch, plus, shade, turn
from drills.pictures.shapes import Colour, Ellipse, Point, Shape, Stroke
from drills.pictures.signs import DARK, WATER
from drills.pictures.skeleton import Build

WOOD: Colour = (150, 98, 54)
CLOTH: Colour = (252, 250, 246)
SILVER: Colour = (178, 184, 196)


def bed(left: float, right: float, top: float) -> list[Shape]:
    """Mattress on a frame with four legs, a board at the head on the right."""
    thick = -top * 0.34
    return [
        limb(WOOD, 3.6, (right + 2, 0.0), (right + 2, top - 16)),
        limb(WOOD, 3.6, (left, 0.0), (left, top - 5)),
        area(CLOTH, (left, top), (right, top), (right, top + thick), (left, top + thick)),
        area(WOOD, (left, top + thick), (right, top + thick), (right, top + thick + 4.5),
             (left, top + thick + 4.5)),
    ]  # fmt: skip


def pillow(head: Point, radius: float, top: float) -> list[Shape]:
    return [
        blob((head[0] + radius * 0.35, top - radius * 0.25), radius * 1.25, radius * 0.55, CLOTH)
    ]


def blanket(foot: Point, edge: Point, girth: float, *, plain: bool = False) -> list[Shape]:
    """Over a body from above `foot` to its upper `edge`."""
    colour: Colour = (96, 128, 168) if plain else (226, 96, 40)
    x, top = foot
    fall = -top * 0.5
    body = (
        (x, top + fall), (x, top - girth * 1.5), (x + girth, top - girth * 1.75),
        (edge[0] - girth, edge[1]), edge, (edge[0] + girth * 0.3, top + fall),
    )  # fmt: skip
    shapes: list[Shape] = [area(colour, *body)]
    if not plain:
        stripe: Colour = (255, 222, 120)
        for share in (0.2, 0.5, 0.8):
            at = x + (edge[0] - x) * share
            shapes.append(
                patch(stripe, (at - 1.6, top + fall - 1), (at - 1.6, top - girth * 1.6),
                      (at + 1.6, top - girth * 1.7), (at + 1.6, top + fall - 1))
            )  # fmt: skip
    rim = shade(colour, 1.45)
    return [*shapes, limb(rim, 4.0, edge, (edge[0] + girth * 0.3, top + fall - 1))]


def spread(foot: Point, edge: Point, to: float, girth: float) -> list[Shape]:
    """A striped blanket held up at its upper `edge`, which falls to x = `to` on a body's top."""
    colour: Colour = (226, 96, 40)
    stripe: Colour = (255, 222, 120)
    x, top = foot
    low, over = top * 0.45, top - girth * 1.9
    left, right = (edge[0] - girth * 1.1, edge[1] + 1.0), (edge[0] + 4.0, edge[1])
    crest = ((x, low), (x, top - girth * 1.4), between((x, over), left, 0.45), left)
    bands: list[Shape] = []
    for share in (0.3, 0.62):
        start, end = between((x, low), (to, low), share), between(left, right, share)
        corners = ((start, -2.2), (end, -2.2), (end, 2.2), (start, 2.2))
        bands.append(patch(stripe, *(plus(at, (dx, 0.0)) for at, dx in corners)))
    fall = ((to, over), (to + 3.0, low))
    rim = limb((255, 244, 214), 4.6, left, right, *fall)
    return [area(colour, *crest, right, *fall), *bands, rim]


def snores(at: Point, size: float, *, one: bool = False) -> list[Shape]:
    """Two Zs, the sign of sleep; `one` where there is no room for both."""
    shapes: list[Shape] = []
    for dx, dy, big in ((0.6, -0.6, 1.5),) if one else ((0.0, 0.0, 0.8), (1.6, -1.2, 1.15)):
        x, y = at[0] + dx * size, at[1] + dy * size
        half = size * big * 0.75
        shapes.append(
            Stroke(
                points=((x - half, y - half), (x + half, y - half), (x - half, y + half),
                        (x + half, y + half)),
                width=size * 0.42, fill=(44, 60, 130),
            )
        )  # fmt: skip
    return shapes


def armchair(x: float, seat: float, build: Build, facing: int = -1) -> list[Shape]:
    """Its back away from `facing`."""
    cloth: Colour = (86, 120, 92)
    half = build.girth * 1.25
    high = seat + build.torso * 0.8
    return [
        limb(WOOD, 3.0, (x - half, 0.0), (x - half, -seat)),
        limb(WOOD, 3.0, (x + half, 0.0), (x + half, -seat)),
        limb(
            cloth,
            5.0,
            (x - facing * (half + 1), -seat + 1),
            (x - facing * (half + build.torso * 0.32), -high),
        ),
        limb(cloth, 4.6, (x - half, -seat + 1), (x + half, -seat + 1)),
    ]


def scale(column: float, plate: tuple[float, float], high: float, top: float) -> list[Shape]:
    """A platform and the column of its dial."""
    left, right = plate
    return [
        limb(SILVER, 4.0, (column, -high), (column, top)),
        area((96, 100, 116), (left, -high), (right, -high), (right + 2, 0.0), (left - 2, 0.0)),
    ]


def dial(at: Point, size: float, angle: float) -> list[Shape]:
    """A round dial with marks and a red pointer."""
    ticks = [
        line(
            DARK, 1.3, plus(at, turn((0.0, -size * 0.84), a)), plus(at, turn((0.0, -size * 0.6), a))
        )
        for a in range(-120, 121, 40)
    ]
    return [
        blob(at, size * 1.12, size * 1.12, (70, 90, 130)),
        Ellipse(centre=at, radii=(size * 0.92, size * 0.92), fill=CLOTH),
        *ticks,
        line((214, 30, 40), size * 0.2, at, plus(at, turn((0.0, -size * 0.74), angle))),
    ]


def easel(canvas: Point, size: float) -> list[Shape]:
    x, y = canvas
    return [
        limb(WOOD, 2.4, (x, y - size * 1.3), (x - size * 0.75, 0.0)),
        limb(WOOD, 2.4, (x, y - size * 1.3), (x + size * 0.75, 0.0)),
        limb(WOOD, 2.4, (x - size * 0.95, y + size * 1.05), (x + size * 0.95, y + size * 1.05)),
        area((255, 236, 186), (x - size * 0.85, y - size), (x + size * 0.85, y - size),
             (x + size * 0.85, y + size), (x - size * 0.85, y + size)),
    ]  # fmt: skip


def portrait(canvas: Point, size: float, skin: Colour, hat: Colour, top: Colour) -> list[Shape]:
    """Head, hat and shoulders on a canvas."""
    x, y = canvas
    return [
        area(top, (x - size * 0.6, y + size * 0.9), (x - size * 0.4, y + size * 0.35),
             (x + size * 0.4, y + size * 0.35), (x + size * 0.6, y + size * 0.9)),
        blob((x, y - size * 0.05), size * 0.36, size * 0.42, skin),
        *(Ellipse(centre=(x + side * size * 0.15, y), radii=(size * 0.07, size * 0.08), fill=DARK)
          for side in (-1, 1)),
        area(hat, (x - size * 0.46, y - size * 0.2), (x - size * 0.34, y - size * 0.72),
             (x + size * 0.34, y - size * 0.72), (x + size * 0.46, y - size * 0.2)),
    ]  # fmt: skip


def palette(hand: Point, size: float) -> list[Shape]:
    x, y = hand
    dabs: tuple[tuple[float, Colour], ...] = (
        (-0.7, (210, 40, 50)), (0.0, (250, 210, 40)), (0.7, (40, 100, 210)),
    )  # fmt: skip
    return [
        blob((x + size * 0.6, y - size * 0.3), size * 1.5, size * 0.6, (196, 150, 96)),
        *(
            Ellipse(
                centre=(x + size * (0.6 + dx), y - size * 0.35),
                radii=(size * 0.28, size * 0.24),
                fill=colour,
            )
            for dx, colour in dabs
        ),
    ]


def brush(hand: Point, tip: Point, width: float) -> list[Shape]:
    return [
        limb((120, 80, 40), width, hand, between(hand, tip, 0.75)),
        limb((210, 40, 50), width * 1.7, between(hand, tip, 0.8), tip),
    ]


def plain_chair(x: float, seat: float, build: Build) -> list[Shape]:
    """Wooden, for somebody who faces right."""
    half = build.girth * 1.1
    high = seat + build.torso * 0.85
    return [
        limb(shade(WOOD, 0.75), 2.6, (x + half * 0.7, 0.0), (x + half * 0.7, -seat)),
        limb(WOOD, 3.0, (x - half, 0.0), (x - half - 1, -high)),
        limb(WOOD, 3.0, (x + half, 0.0), (x + half, -seat)),
        limb(WOOD, 4.0, (x - half, -seat), (x + half, -seat)),
        limb(WOOD, 4.6, (x - half - 1, -high + 1), (x - half, -high + build.torso * 0.3)),
    ]


def large_book(at: Point, size: float) -> list[Shape]:
    """Held open before a face that looks down; two leaves and a red cover."""
    x, y = at
    cover: Colour = (176, 44, 52)
    paper: Colour = (254, 250, 236)
    return [
        area(cover, (x - size * 0.75, y - size * 0.45), (x, y + size * 0.75),
             (x + size * 1.0, y - size * 0.1), (x + size * 0.3, y - size * 1.3)),
        area(paper, (x - size * 0.55, y - size * 0.5), (x + size * 0.02, y + size * 0.45),
             (x + size * 0.42, y), (x - size * 0.1, y - size * 0.95)),
        area(paper, (x - size * 0.05, y - size * 0.95), (x + size * 0.44, y),
             (x + size * 0.85, y - size * 0.2), (x + size * 0.28, y - size * 1.15)),
    ]  # fmt: skip


def glass(rim: Point, size: float, angle: float, wide: float = 0.5) -> list[Shape]:
    """A glass of something orange; `angle` tips it towards the left.   wide: half its mouth."""

    def at(across: float, up: float) -> Point:
        return plus(rim, turn((across * wide * size, -up * size), -angle))

    return [
        area((240, 246, 252), at(-1.0, 0.1), at(1.0, 0.1), at(0.8, -1.6), at(-0.8, -1.6)),
        patch((240, 110, 20), at(-0.96, -0.1), at(0.96, -0.4), at(0.8, -1.4), at(-0.8, -1.4)),
    ]


def music_note(at: Point, size: float) -> list[Shape]:
    x, y = at
    return [
        line(DARK, size * 0.26, (x, y), (x, y - size * 1.8), (x + size * 0.8, y - size * 1.4)),
        Ellipse(centre=(x - size * 0.35, y), radii=(size * 0.5, size * 0.38), fill=DARK),
    ]


def trough(x: float, half: float) -> list[Shape]:
    return [
        Ellipse(centre=(x, -6.5), radii=(half * 0.95, 2.6), fill=WATER),
        area((150, 154, 166), (x - half, -6.5), (x + half, -6.5), (x + half * 0.75, 0.0),
             (x - half * 0.75, 0.0)),
    ]  # fmt: skip


def stool(x: float, height: float, half: float) -> list[Shape]:
    """A plain stool whose seat is `height` units up."""
    wood: Colour = (150, 98, 54)
    return [
        limb(shade(wood, 0.8), 2.6, (x - half * 0.7, -height), (x - half * 0.95, -1.3)),
        limb(shade(wood, 0.8), 2.6, (x + half * 0.7, -height), (x + half * 0.95, -1.3)),
        limb(wood, 3.6, (x - half, -height), (x + half, -height)),
    ]


def alarm(x: float, top: float, size: float) -> list[Shape]:
    """A ringing alarm clock on a stand beside a bed whose top is at `top`."""
    y = top - size * 1.3
    case: Colour = (214, 60, 50)
    ring = [
        line(
            DARK,
            1.6,
            (x + side * size * 1.35, y - size * 0.7),
            (x + side * size * 1.8, y - size * 1.2),
        )
        for side in (-1, 1)
    ]
    return [
        area(WOOD, (x - size, top), (x + size, top), (x + size * 0.8, 0.0), (x - size * 0.8, 0.0)),
        blob((x - size * 0.6, y - size), size * 0.4, size * 0.34, case),
        blob((x + size * 0.6, y - size), size * 0.4, size * 0.34, case),
        blob((x, y), size * 1.1, size * 1.1, case),
        Ellipse(centre=(x, y), radii=(size * 0.78, size * 0.78), fill=CLOTH),
        line(DARK, size * 0.22, (x, y - size * 0.6), (x, y), (x + size * 0.45, y)),
        *ring,
    ]


def pedestal(x: float, top: float, half: float) -> list[Shape]:
    """A plain stand on which a thing is shown."""
    stone: Colour = (236, 232, 224)
    return [
        area(stone, (x - half * 0.6, top), (x + half * 0.6, top), (x + half * 0.7, 0.0),
             (x - half * 0.7, 0.0)),
        limb(stone, 4.0, (x - half, top + 2.0), (x + half, top + 2.0)),
    ]  # fmt: skip
