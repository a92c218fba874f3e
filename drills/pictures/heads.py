"""Heads: face, hair, beard and hat, in profile or looking out of the picture."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from drills.pictures.cast import WHITE, Beard, Hair, Hat, Person
from drills.pictures.geometry import INK, area, blob, limb, patch, shade
from drills.pictures.shapes import Colour, Mark, Point, Polygon, Shape, Stroke
from drills.pictures.skeleton import Bones, Mouth

LIPS: Colour = (158, 40, 44)

# Points are (forward, up) in head radii.
_PROFILE: tuple[Point, ...] = (
    (0.0, 1.02), (0.48, 0.92), (0.8, 0.6), (0.9, 0.2), (0.88, 0.04), (1.2, -0.24), (0.95, -0.36),
    (0.99, -0.55), (0.88, -0.68), (0.9, -0.92), (0.62, -1.08), (0.1, -0.95), (-0.45, -0.72),
    (-0.84, -0.4), (-0.98, 0.05), (-0.86, 0.55), (-0.48, 0.9),
)  # fmt: skip
_SIDE_HAIR: tuple[Point, ...] = (
    (0.62, 0.62), (0.86, 0.62), (0.6, 0.98), (0.1, 1.14), (-0.5, 1.04), (-0.95, 0.64),
    (-1.08, 0.05), (-0.92, -0.5), (-0.55, -0.6), (-0.42, -0.1), (-0.22, 0.1), (-0.02, 0.56),
)  # fmt: skip
_FRONT_HAIR: tuple[Point, ...] = (
    (-0.95, 0.0), (-1.05, 0.45), (-0.75, 0.95), (0.0, 1.16), (0.75, 0.95), (1.05, 0.45),
    (0.95, 0.0), (0.78, 0.4), (0.4, 0.62), (-0.4, 0.62), (-0.78, 0.4),
)  # fmt: skip


def _at(bones: Bones, points: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(bones.face(*point) for point in points)


def _ball(bones: Bones, at: Point, wide: float, high: float, fill: Colour, angle: float = 0) -> Shape:
    radius = bones.build.head
    return blob(
        bones.face(*at),
        wide * radius,
        high * radius,
        fill,
        bones.head_angle - angle * bones.head_facing,
    )


def behind_head(person: Person, bones: Bones) -> list[Shape]:
    """What hangs behind the trunk: long hair, a veil, ribbons."""
    shapes: list[Shape] = []
    hair, radius = person.hair_colour, bones.build.head
    back = bones.trunk(0.55, -1.35)
    if person.hair is Hair.LONG:
        shapes.append(area(hair, *_at(bones, ((0.2, 0.9), (-1.1, 0.5))), back, bones.trunk(0.6, 0.0)))
    if person.hair is Hair.TAIL:
        tip = bones.face(-1.75, -0.95)
        shapes.append(limb(hair, radius * 0.55, bones.face(-0.8, 0.2), bones.face(-1.5, -0.1), tip))
    if person.hat is Hat.VEIL:
        hem = bones.trunk(-0.75, -2.3)
        shapes.append(
            area(
                person.hat_colour,
                *_at(bones, ((0.1, 1.25), (-0.75, 1.05), (-1.3, 0.4))),
                bones.trunk(0.4, -2.0),
                hem,
                bones.trunk(-0.7, -0.6),
                bones.trunk(0.6, 0.0),
            )
        )
    return shapes


def head(person: Person, bones: Bones) -> list[Shape]:
    """The head itself, painted over the trunk."""
    if bones.pose.to_viewer:
        return [*_front_face(person, bones), *_hat(person, bones), *_front_eyes(bones)]
    shapes: list[Shape] = [area(person.skin, *_at(bones, _PROFILE))]
    shapes += _beard(person, bones)
    shapes += _mouth(person, bones)
    shapes += _side_hair(person, bones)
    shapes += _hat(person, bones)
    shapes.append(Mark(at=bones.face(0.52, 0.06), fill=INK))
    return shapes


def _side_hair(person: Person, bones: Bones) -> list[Shape]:
    hair = person.hair_colour
    shapes: list[Shape] = [area(hair, *_at(bones, _SIDE_HAIR))]
    match person.hair:
        case Hair.BUN:
            shapes.insert(0, _ball(bones, (-1.12, -0.28), 0.5, 0.5, hair))
        case Hair.TOP_KNOT:
            shapes.insert(0, _ball(bones, (-0.35, 1.3), 0.46, 0.44, hair))
            shapes.append(_ball(bones, (-0.25, 0.98), 0.3, 0.13, person.top))
        case Hair.UP:
            shapes.insert(0, _ball(bones, (-0.72, 0.5), 0.55, 0.6, hair))
        case Hair.LONG:
            shapes.append(
                area(hair, *_at(bones, ((-0.2, 0.4), (-1.05, 0.4), (-1.15, -1.2), (-0.45, -1.15))))
            )
        case Hair.CURLS:
            for up in (-1.25, -0.85, -0.4, 0.05, 0.5):
                shapes.append(_ball(bones, (-0.72, up), 0.5, 0.3, hair))
            shapes.append(_ball(bones, (0.1, 0.9), 0.75, 0.32, hair))
        case _:
            pass
    if person.hair is not Hair.CURLS:
        shapes.append(_ball(bones, (-0.3, -0.12), 0.16, 0.24, shade(person.skin, 0.9)))
    return shapes


def _beard(person: Person, bones: Bones) -> list[Shape]:
    hair = person.hair_colour
    match person.beard:
        case Beard.FULL:
            points = (
                (-0.3, 0.0), (0.05, -0.3), (0.6, -0.32), (1.0, -0.36), (0.95, -0.5), (1.08, -0.75),
                (0.9, -1.35), (0.4, -1.4), (-0.3, -0.9),
            )  # fmt: skip
            return [area(hair, *_at(bones, points))]
        case Beard.MOUSTACHE:
            return [area(hair, *_at(bones, ((0.45, -0.32), (1.1, -0.3), (1.12, -0.5), (0.4, -0.58))))]
        case Beard.POINTED:
            points = ((0.35, -0.82), (0.92, -0.68), (1.08, -1.05), (0.9, -1.5), (0.5, -1.1))
            return [
                area(hair, *_at(bones, points)),
                patch(hair, *_at(bones, ((0.5, -0.38), (1.08, -0.34), (1.05, -0.48), (0.55, -0.5)))),
            ]
        case _:
            return []


def _mouth(person: Person, bones: Bones) -> list[Shape]:
    radius = bones.build.head
    lips = LIPS if person.skin[0] > 150 else (120, 24, 34)
    match bones.pose.mouth:
        case Mouth.OPEN:
            return [
                Polygon(
                    points=_at(bones, ((0.4, -0.6), (0.7, -0.42), (1.02, -0.44), (0.9, -0.88), (0.6, -0.86))),
                    fill=(104, 10, 22),
                )
            ]
        case Mouth.LAUGH:
            points = ((0.28, -0.36), (1.02, -0.4), (0.9, -0.84), (0.55, -0.82))
            teeth = ((0.34, -0.36), (1.02, -0.4), (0.98, -0.52), (0.42, -0.5))
            return [
                Polygon(points=_at(bones, points), fill=(104, 10, 22)),
                Polygon(points=_at(bones, teeth), fill=WHITE),
            ]
        case Mouth.KISS:
            return [_ball(bones, (1.04, -0.54), 0.2, 0.2, (214, 50, 70))]
        case Mouth.SMILE:
            points = ((0.4, -0.42), (0.62, -0.6), (0.96, -0.56))
            return [Stroke(points=_at(bones, points), width=radius * 0.17, fill=lips)]
        case _:
            points = ((0.58, -0.58), (0.96, -0.56))
            return [Stroke(points=_at(bones, points), width=radius * 0.16, fill=lips)]


def _front_face(person: Person, bones: Bones) -> list[Shape]:
    radius, hair, skin = bones.build.head, person.hair_colour, person.skin
    shapes: list[Shape] = []
    if person.hair is Hair.LONG:
        shapes.append(area(hair, *_at(bones, ((-0.9, 0.7), (0.9, 0.7), (1.1, -1.3), (-1.1, -1.3)))))
    if person.hair is Hair.CURLS:
        for up in (-1.1, -0.65, -0.2, 0.25):
            shapes += [_ball(bones, (side, up), 0.4, 0.3, hair) for side in (-0.95, 0.95)]
    if person.hair is Hair.BUN:
        shapes.append(_ball(bones, (-0.95, -0.45), 0.4, 0.4, hair))
    if person.hair is Hair.TOP_KNOT:
        shapes.append(_ball(bones, (0, 1.35), 0.46, 0.44, hair))
    if person.hair is Hair.UP:
        shapes += [_ball(bones, (side, 0.45), 0.4, 0.5, hair) for side in (-0.72, 0.72)]
    oval = ((0, 1.0), (0.62, 0.82), (0.92, 0.3), (0.88, -0.3), (0.55, -0.85), (0.15, -1.04),
            (-0.15, -1.04), (-0.55, -0.85), (-0.88, -0.3), (-0.92, 0.3), (-0.62, 0.82))  # fmt: skip
    shapes.append(area(skin, *_at(bones, oval)))
    if person.beard is Beard.FULL:
        points = ((-0.9, 0.0), (-0.6, -0.3), (0.6, -0.3), (0.9, 0.0), (0.8, -0.8), (0.3, -1.4),
                  (-0.3, -1.4), (-0.8, -0.8))  # fmt: skip
        shapes.append(area(hair, *_at(bones, points)))
    elif person.beard is Beard.POINTED:
        shapes.append(area(hair, *_at(bones, ((-0.4, -0.8), (0.4, -0.8), (0.0, -1.5)))))
    if person.beard in (Beard.MOUSTACHE, Beard.POINTED):
        points = ((-0.55, -0.5), (0.0, -0.28), (0.55, -0.5), (0.0, -0.42))
        shapes.append(patch(hair, *_at(bones, points)))
    smile = ((-0.36, -0.5), (0.0, -0.68), (0.36, -0.5))
    shapes.append(Stroke(points=_at(bones, smile), width=radius * 0.18, fill=LIPS))
    shapes.append(area(hair, *_at(bones, _FRONT_HAIR)))
    return shapes


def _front_eyes(bones: Bones) -> list[Shape]:
    return [Mark(at=bones.face(side, 0.08), fill=INK) for side in (-0.36, 0.42)]


def _nurse_cap(person: Person, bones: Bones) -> list[Shape]:
    hat = ((-0.8, 0.78), (0.62, 0.86), (0.9, 1.62), (-1.05, 1.56))
    band = ((-0.85, 1.0), (0.72, 1.08), (0.8, 1.3), (-0.92, 1.24))
    return [area(person.hat_colour, *_at(bones, hat)), patch(person.top, *_at(bones, band))]


def _crown(person: Person, bones: Bones) -> list[Shape]:
    points = ((-0.78, 0.72), (0.78, 0.78), (1.0, 1.75), (0.42, 1.22), (0.04, 1.9), (-0.4, 1.2),
              (-1.0, 1.68))  # fmt: skip
    jewels = [_ball(bones, (side, 0.96), 0.13, 0.13, (196, 30, 60)) for side in (-0.4, 0.05, 0.5)]
    return [area(person.hat_colour, *_at(bones, points)), *jewels]


def _veil(person: Person, bones: Bones) -> list[Shape]:
    veil = ((0.35, 1.02), (0.2, 1.3), (-0.7, 1.2), (-1.35, 0.4), (-1.5, -0.9), (-0.9, -0.9),
            (-0.75, 0.3), (-0.4, 0.8))  # fmt: skip
    shapes: list[Shape] = [area(person.hat_colour, *_at(bones, veil))]
    flowers = ((-0.3, 1.0), (0.1, 1.1), (0.5, 0.94))
    return [*shapes, *(_ball(bones, at, 0.2, 0.2, person.trim) for at in flowers)]


def _hard_hat(person: Person, bones: Bones) -> list[Shape]:
    dome = ((-1.08, 0.5), (-1.0, 1.0), (-0.55, 1.42), (0.1, 1.5), (0.7, 1.24), (0.98, 0.6))
    rib = ((-0.35, 1.46), (-0.15, 1.62), (0.3, 1.56), (0.45, 1.36))
    brim = _at(bones, ((-1.1, 0.5), (1.0, 0.56), (1.5, 0.44)))
    return [
        area(person.hat_colour, *_at(bones, rib)),
        area(person.hat_colour, *_at(bones, dome)),
        limb(shade(person.hat_colour, 0.9), bones.build.head * 0.2, *brim),
    ]


def _baker_hat(person: Person, bones: Bones) -> list[Shape]:
    white = person.hat_colour
    stem = ((-0.82, 0.62), (0.82, 0.68), (0.86, 1.7), (-0.86, 1.7))
    return [
        area(white, *_at(bones, stem)),
        _ball(bones, (-0.62, 2.0), 0.66, 0.52, white),
        _ball(bones, (0.62, 2.02), 0.66, 0.52, white),
        _ball(bones, (0.0, 2.22), 0.72, 0.5, white),
        patch(white, *_at(bones, ((-0.72, 1.5), (0.72, 1.5), (0.7, 2.2), (-0.7, 2.2)))),
        patch(shade(white, 0.82), *_at(bones, ((-0.3, 1.1), (-0.2, 1.1), (-0.25, 1.9), (-0.35, 1.9)))),
        patch(shade(white, 0.82), *_at(bones, ((0.25, 1.1), (0.35, 1.1), (0.4, 1.9), (0.3, 1.9)))),
    ]


def _straw_hat(person: Person, bones: Bones) -> list[Shape]:
    straw = person.hat_colour
    crown = ((-0.78, 0.72), (0.78, 0.72), (0.66, 1.5), (-0.66, 1.5))
    band = ((-0.8, 0.78), (0.8, 0.78), (0.76, 1.02), (-0.76, 1.02))
    return [
        area(straw, *_at(bones, crown)),
        patch((150, 40, 36), *_at(bones, band)),
        _ball(bones, (0.0, 0.68), 1.62, 0.2, shade(straw, 0.95)),
    ]


def _sailor_hat(person: Person, bones: Bones) -> list[Shape]:
    ribbon = shade(person.trim, 0.8)
    shapes: list[Shape] = []
    if not bones.pose.to_viewer:
        for end in ((-1.75, -0.35), (-1.45, -0.65)):
            shapes.append(limb(ribbon, bones.build.head * 0.2, *_at(bones, ((-0.85, 0.7), end))))
    band = ((-0.92, 0.55), (0.9, 0.6), (0.92, 0.92), (-0.94, 0.88))
    return [
        *shapes,
        _ball(bones, (-0.05, 1.1), 1.3, 0.34, person.hat_colour, 6),
        area(person.trim, *_at(bones, band)),
        _ball(bones, (-0.05, 1.48), 0.2, 0.2, RED_POMPON),
    ]


RED_POMPON: Colour = (200, 40, 50)


def _beret(person: Person, bones: Bones) -> list[Shape]:
    felt = person.hat_colour
    body = ((0.8, 0.66), (0.72, 1.08), (0.1, 1.4), (-0.8, 1.3), (-1.5, 0.82), (-1.5, 0.46), (-0.9, 0.42))
    stalk = _at(bones, ((-0.25, 1.3), (-0.2, 1.62)))
    return [limb(felt, bones.build.head * 0.16, *stalk), area(felt, *_at(bones, body))]


_HATS: dict[Hat, Callable[[Person, Bones], list[Shape]]] = {
    Hat.NURSE_CAP: _nurse_cap,
    Hat.CROWN: _crown,
    Hat.VEIL: _veil,
    Hat.HARD_HAT: _hard_hat,
    Hat.BAKER_HAT: _baker_hat,
    Hat.STRAW_HAT: _straw_hat,
    Hat.SAILOR_HAT: _sailor_hat,
    Hat.BERET: _beret,
}


def _hat(person: Person, bones: Bones) -> list[Shape]:
    paint = _HATS.get(person.hat)
    return [] if paint is None else paint(person, bones)


