"""Hats, each the mark of one person."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from drills.pictures.cast import Hat, Person
from drills.pictures.geometry import area, blob, limb, line, patch, shade
from drills.pictures.shapes import Colour, Point, Shape
from drills.pictures.skeleton import Bones


def at(bones: Bones, points: Sequence[Point]) -> tuple[Point, ...]:
    """Points given as (forward, up) in head radii, on the page."""
    return tuple(bones.face(*point) for point in points)


def ball(
    bones: Bones, where: Point, wide: float, high: float, fill: Colour, *, angle: float = 0
) -> Shape:
    """An ellipse on the head; place and radii in head radii."""
    radius = bones.build.head
    return blob(
        bones.face(*where),
        wide * radius,
        high * radius,
        fill,
        bones.head_angle - angle * bones.head_facing,
    )


def _nurse_cap(person: Person, bones: Bones) -> list[Shape]:
    hat = ((-0.8, 0.78), (0.62, 0.86), (0.9, 1.62), (-1.05, 1.56))
    band = ((-0.85, 1.0), (0.72, 1.08), (0.8, 1.3), (-0.92, 1.24))
    return [area(person.hat_colour, *at(bones, hat)), patch(person.top, *at(bones, band))]


def _crown(person: Person, bones: Bones) -> list[Shape]:
    points = ((-0.78, 0.72), (0.78, 0.78), (1.0, 1.75), (0.42, 1.22), (0.04, 1.9), (-0.4, 1.2),
              (-1.0, 1.68))  # fmt: skip
    jewels = [ball(bones, (side, 0.96), 0.13, 0.13, (196, 30, 60)) for side in (-0.4, 0.05, 0.5)]
    return [area(person.hat_colour, *at(bones, points)), *jewels]


def _veil(person: Person, bones: Bones) -> list[Shape]:
    veil = ((0.35, 1.02), (0.2, 1.3), (-0.7, 1.2), (-1.35, 0.4), (-1.5, -0.9), (-0.9, -0.9),
            (-0.75, 0.3), (-0.4, 0.8))  # fmt: skip
    shapes: list[Shape] = [area(person.hat_colour, *at(bones, veil))]
    flowers = ((-0.3, 1.0), (0.1, 1.1), (0.5, 0.94))
    return [*shapes, *(ball(bones, where, 0.2, 0.2, person.trim) for where in flowers)]


def _hard_hat(person: Person, bones: Bones) -> list[Shape]:
    dome = ((-1.08, 0.5), (-1.0, 1.0), (-0.55, 1.42), (0.1, 1.5), (0.7, 1.24), (0.98, 0.6))
    rib = ((-0.35, 1.46), (-0.15, 1.62), (0.3, 1.56), (0.45, 1.36))
    brim = at(bones, ((-1.1, 0.5), (1.0, 0.56), (1.5, 0.44)))
    return [
        area(person.hat_colour, *at(bones, rib)),
        area(person.hat_colour, *at(bones, dome)),
        limb(shade(person.hat_colour, 0.9), bones.build.head * 0.2, *brim),
    ]


def _baker_hat(person: Person, bones: Bones) -> list[Shape]:
    white = person.hat_colour
    stem = ((-0.82, 0.62), (0.82, 0.68), (0.86, 1.7), (-0.86, 1.7))
    return [
        area(white, *at(bones, stem)),
        ball(bones, (-0.62, 2.0), 0.66, 0.52, white),
        ball(bones, (0.62, 2.02), 0.66, 0.52, white),
        ball(bones, (0.0, 2.22), 0.72, 0.5, white),
        patch(white, *at(bones, ((-0.72, 1.5), (0.72, 1.5), (0.7, 2.2), (-0.7, 2.2)))),
        patch(
            shade(white, 0.82), *at(bones, ((-0.3, 1.1), (-0.2, 1.1), (-0.25, 1.9), (-0.35, 1.9)))
        ),
        patch(shade(white, 0.82), *at(bones, ((0.25, 1.1), (0.35, 1.1), (0.4, 1.9), (0.3, 1.9)))),
    ]


def _straw_hat(person: Person, bones: Bones) -> list[Shape]:
    straw = person.hat_colour
    crown = ((-0.78, 0.72), (0.78, 0.72), (0.66, 1.5), (-0.66, 1.5))
    band = ((-0.8, 0.78), (0.8, 0.78), (0.76, 1.02), (-0.76, 1.02))
    return [
        area(straw, *at(bones, crown)),
        patch((150, 40, 36), *at(bones, band)),
        ball(bones, (0.0, 0.68), 1.62, 0.2, shade(straw, 0.95)),
    ]


def _sailor_hat(person: Person, bones: Bones) -> list[Shape]:
    ribbon = shade(person.trim, 0.8)
    shapes: list[Shape] = []
    if not bones.pose.to_viewer:
        for end in ((-1.75, -0.35), (-1.45, -0.65)):
            shapes.append(limb(ribbon, bones.build.head * 0.2, *at(bones, ((-0.85, 0.7), end))))
    band = ((-0.92, 0.55), (0.9, 0.6), (0.92, 0.92), (-0.94, 0.88))
    return [
        *shapes,
        ball(bones, (-0.05, 1.1), 1.3, 0.34, person.hat_colour, angle=6),
        area(person.trim, *at(bones, band)),
        ball(bones, (-0.05, 1.48), 0.2, 0.2, (200, 40, 50)),
    ]


def _beret(person: Person, bones: Bones) -> list[Shape]:
    felt = person.hat_colour
    body = (
        (0.8, 0.66),
        (0.72, 1.08),
        (0.1, 1.4),
        (-0.8, 1.3),
        (-1.5, 0.82),
        (-1.5, 0.46),
        (-0.9, 0.42),
    )
    stalk = at(bones, ((-0.25, 1.3), (-0.2, 1.62)))
    return [limb(felt, bones.build.head * 0.16, *stalk), area(felt, *at(bones, body))]


def _sun_hat(person: Person, bones: Bones) -> list[Shape]:
    """Wide and soft; the brim droops at both ends."""
    straw = person.hat_colour
    crown = ((-0.82, 0.6), (0.8, 0.66), (0.6, 1.3), (0.0, 1.5), (-0.62, 1.28))
    brim = ((-1.95, 0.1), (-1.3, 0.72), (0.0, 0.96), (1.3, 0.78), (1.85, 0.36), (1.0, 0.5),
            (-0.9, 0.42))  # fmt: skip
    band = ((-0.86, 0.74), (0.84, 0.8), (0.74, 1.1), (-0.76, 1.04))
    return [
        area(straw, *at(bones, crown)),
        patch(person.trim, *at(bones, band)),
        area(straw, *at(bones, brim)),
        ball(bones, (-0.6, 0.95), 0.24, 0.24, (230, 80, 110)),
    ]


def _helmet(person: Person, bones: Bones) -> list[Shape]:
    """A cyclist's: low, pointed behind, with slots and a strap."""
    shell = ((1.12, 0.52), (0.9, 1.05), (0.2, 1.44), (-0.6, 1.36), (-1.5, 0.86), (-1.1, 0.5))
    shapes: list[Shape] = []
    if not bones.pose.to_viewer:
        strap = at(bones, ((-0.05, 0.5), (0.0, -0.3), (0.35, -0.95)))
        shapes.append(line((50, 50, 60), bones.build.head * 0.11, *strap))
    shapes.append(area(person.hat_colour, *at(bones, shell)))
    for start in (-0.95, -0.35, 0.25):
        slot = ((start, 0.78), (start + 0.34, 0.8), (start + 0.5, 1.12), (start + 0.2, 1.12))
        shapes.append(patch((250, 246, 240), *at(bones, slot)))
    return shapes


_HATS: dict[Hat, Callable[[Person, Bones], list[Shape]]] = {
    Hat.NURSE_CAP: _nurse_cap,
    Hat.CROWN: _crown,
    Hat.VEIL: _veil,
    Hat.HARD_HAT: _hard_hat,
    Hat.BAKER_HAT: _baker_hat,
    Hat.STRAW_HAT: _straw_hat,
    Hat.SAILOR_HAT: _sailor_hat,
    Hat.BERET: _beret,
    Hat.SUN_HAT: _sun_hat,
    Hat.HELMET: _helmet,
}


def hat(person: Person, bones: Bones) -> list[Shape]:
    """What the person wears on the head; nothing for a bare one."""
    paint = _HATS.get(person.hat)
    return [] if paint is None else paint(person, bones)
