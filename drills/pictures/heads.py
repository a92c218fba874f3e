"""Heads: face, hair, beard and hat, in profile or looking out of the picture."""

from __future__ import annotations

from drills.pictures.cast import WHITE, Beard, Hair, Hat, Person
from drills.pictures.geometry import INK, area, limb, patch, shade
from drills.pictures.hats import at, ball, hat
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
_CROPPED_HAIR: tuple[Point, ...] = (
    (0.66, 0.66), (0.84, 0.7), (0.5, 1.04), (0.0, 1.12), (-0.55, 0.98), (-0.96, 0.55),
    (-1.0, 0.0), (-0.82, -0.3), (-0.6, 0.1), (-0.3, 0.3), (0.0, 0.66),
)  # fmt: skip
_FRONT_HAIR: tuple[Point, ...] = (
    (-0.95, 0.0), (-1.05, 0.45), (-0.75, 0.95), (0.0, 1.16), (0.75, 0.95), (1.05, 0.45),
    (0.95, 0.0), (0.78, 0.4), (0.4, 0.62), (-0.4, 0.62), (-0.78, 0.4),
)  # fmt: skip


def behind_head(person: Person, bones: Bones) -> list[Shape]:
    """What hangs behind the trunk: long hair, a veil, ribbons."""
    shapes: list[Shape] = []
    hair, radius = person.hair_colour, bones.build.head
    back = bones.trunk(0.55, -1.35)
    if person.hair is Hair.LONG:
        shapes.append(
            area(hair, *at(bones, ((0.2, 0.9), (-1.1, 0.5))), back, bones.trunk(0.6, 0.0))
        )
    if person.hair is Hair.TAIL:
        tip = bones.face(-1.75, -0.95)
        shapes.append(limb(hair, radius * 0.55, bones.face(-0.8, 0.2), bones.face(-1.5, -0.1), tip))
    if person.hair is Hair.PIGTAILS:
        tip = bones.face(-1.5, -1.15)
        shapes.append(limb(hair, radius * 0.5, bones.face(-0.7, 0.1), bones.face(-1.35, -0.3), tip))
    if person.hat is Hat.VEIL:
        hem = bones.trunk(-0.75, -2.3)
        shapes.append(
            area(
                person.hat_colour,
                *at(bones, ((0.1, 1.25), (-0.75, 1.05), (-1.3, 0.4))),
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
        return [*_front_face(person, bones), *hat(person, bones), *_front_eyes(bones)]
    shapes: list[Shape] = [area(person.skin, *at(bones, _PROFILE))]
    shapes += _beard(person, bones)
    shapes += _mouth(person, bones)
    shapes += _side_hair(person, bones)
    shapes += hat(person, bones)
    if bones.pose.asleep:
        lid = at(bones, ((0.32, 0.02), (0.74, 0.0)))
        shapes.append(Stroke(points=lid, width=bones.build.head * 0.14, fill=INK))
    shapes.append(Mark(at=bones.face(0.52, 0.06), fill=INK))
    return shapes


def _side_hair(person: Person, bones: Bones) -> list[Shape]:
    hair = person.hair_colour
    outline = _CROPPED_HAIR if person.hair is Hair.CROPPED else _SIDE_HAIR
    shapes: list[Shape] = [area(hair, *at(bones, outline))]
    match person.hair:
        case Hair.BUN:
            shapes.insert(0, ball(bones, (-1.12, -0.28), 0.5, 0.5, hair))
        case Hair.TOP_KNOT:
            shapes.insert(0, ball(bones, (-0.35, 1.3), 0.46, 0.44, hair))
            shapes.append(ball(bones, (-0.25, 0.98), 0.3, 0.13, person.top))
        case Hair.UP:
            shapes.insert(0, ball(bones, (-0.72, 0.5), 0.55, 0.6, hair))
        case Hair.LONG:
            shapes.append(
                area(hair, *at(bones, ((-0.2, 0.4), (-1.05, 0.4), (-1.15, -1.2), (-0.45, -1.15))))
            )
        case Hair.CURLS:
            for up in (-1.25, -0.85, -0.4, 0.05, 0.5):
                shapes.append(ball(bones, (-0.72, up), 0.5, 0.3, hair))
            shapes.append(ball(bones, (0.1, 0.9), 0.75, 0.32, hair))
        case Hair.BOB:
            shapes.append(
                area(hair, *at(bones, ((-0.1, 0.4), (-1.1, 0.4), (-1.12, -0.75), (-0.3, -0.7))))
            )
        case Hair.PIGTAILS:
            shapes.append(ball(bones, (-0.85, 0.0), 0.22, 0.22, person.trim))
        case _:
            pass
    if person.hair not in (Hair.CURLS, Hair.BOB):
        shapes.append(ball(bones, (-0.3, -0.12), 0.16, 0.24, shade(person.skin, 0.9)))
    return shapes


def _beard(person: Person, bones: Bones) -> list[Shape]:
    hair = person.hair_colour
    points: tuple[Point, ...]
    match person.beard:
        case Beard.FULL:
            points = (
                (-0.3, 0.0), (0.05, -0.3), (0.6, -0.32), (1.0, -0.36), (0.95, -0.5), (1.08, -0.75),
                (0.9, -1.35), (0.4, -1.4), (-0.3, -0.9),
            )  # fmt: skip
            return [area(hair, *at(bones, points))]
        case Beard.MOUSTACHE:
            return [
                area(hair, *at(bones, ((0.45, -0.32), (1.1, -0.3), (1.12, -0.5), (0.4, -0.58))))
            ]
        case Beard.POINTED:
            points = ((0.35, -0.82), (0.92, -0.68), (1.08, -1.05), (0.9, -1.5), (0.5, -1.1))
            return [
                area(hair, *at(bones, points)),
                patch(hair, *at(bones, ((0.5, -0.38), (1.08, -0.34), (1.05, -0.48), (0.55, -0.5)))),
            ]
        case _:
            return []


def _mouth(person: Person, bones: Bones) -> list[Shape]:
    radius = bones.build.head
    points: tuple[Point, ...]
    lips = LIPS if person.skin[0] > 150 else (120, 24, 34)
    match bones.pose.mouth:
        case Mouth.OPEN:
            return [
                Polygon(
                    points=at(
                        bones,
                        ((0.4, -0.6), (0.7, -0.42), (1.02, -0.44), (0.9, -0.88), (0.6, -0.86)),
                    ),
                    fill=(104, 10, 22),
                )
            ]
        case Mouth.LAUGH:
            points = ((0.28, -0.36), (1.02, -0.4), (0.9, -0.84), (0.55, -0.82))
            teeth = ((0.34, -0.36), (1.02, -0.4), (0.98, -0.52), (0.42, -0.5))
            return [
                Polygon(points=at(bones, points), fill=(104, 10, 22)),
                Polygon(points=at(bones, teeth), fill=WHITE),
            ]
        case Mouth.KISS:
            return [ball(bones, (1.04, -0.54), 0.2, 0.2, (214, 50, 70))]
        case Mouth.SMILE:
            points = ((0.4, -0.42), (0.62, -0.6), (0.96, -0.56))
            return [Stroke(points=at(bones, points), width=radius * 0.17, fill=lips)]
        case _:
            points = ((0.58, -0.58), (0.96, -0.56))
            return [Stroke(points=at(bones, points), width=radius * 0.16, fill=lips)]


def _front_face(person: Person, bones: Bones) -> list[Shape]:
    # Hair that hangs is kept to the far side, so that the near cheek stays bare.
    hair, skin = person.hair_colour, person.skin
    points: tuple[Point, ...]
    shapes: list[Shape] = []
    if person.hair is Hair.LONG:
        shapes.append(area(hair, *at(bones, ((-0.9, 0.7), (0.9, 0.7), (1.25, -1.3), (-0.2, -1.3)))))
    if person.hair is Hair.CURLS:
        for up in (-1.1, -0.65, -0.2, 0.25):
            shapes.append(ball(bones, (0.98, up), 0.42, 0.3, hair))
    if person.hair is Hair.BUN:
        shapes.append(ball(bones, (0.98, -0.4), 0.42, 0.42, hair))
    if person.hair is Hair.TOP_KNOT:
        shapes.append(ball(bones, (0, 1.35), 0.46, 0.44, hair))
    if person.hair is Hair.BOB:
        shapes.append(area(hair, *at(bones, ((-0.6, 0.8), (0.9, 0.7), (1.18, -0.8), (0.0, -0.7)))))
    if person.hair is Hair.PIGTAILS:
        shapes += [ball(bones, (side, -0.75), 0.3, 0.6, hair) for side in (-1.1, 1.1)]
    if person.hair is Hair.UP:
        shapes += [ball(bones, (side, 0.45), 0.4, 0.5, hair) for side in (-0.72, 0.72)]
    oval = ((0, 1.0), (0.62, 0.82), (0.92, 0.3), (0.88, -0.3), (0.55, -0.85), (0.15, -1.04),
            (-0.15, -1.04), (-0.55, -0.85), (-0.88, -0.3), (-0.92, 0.3), (-0.62, 0.82))  # fmt: skip
    shapes.append(area(skin, *at(bones, oval)))
    if person.beard is Beard.FULL:
        points = ((-0.9, 0.0), (-0.6, -0.3), (0.6, -0.3), (0.9, 0.0), (0.8, -0.8), (0.3, -1.4),
                  (-0.3, -1.4), (-0.8, -0.8))  # fmt: skip
        shapes.append(area(hair, *at(bones, points)))
    elif person.beard is Beard.POINTED:
        shapes.append(area(hair, *at(bones, ((-0.4, -0.8), (0.4, -0.8), (0.0, -1.5)))))
    if person.beard in (Beard.MOUSTACHE, Beard.POINTED):
        points = ((-0.55, -0.5), (0.0, -0.28), (0.55, -0.5), (0.0, -0.42))
        shapes.append(patch(hair, *at(bones, points)))
    shapes += _front_mouth(bones)
    shapes.append(area(hair, *at(bones, _FRONT_HAIR)))
    return shapes


def _front_mouth(bones: Bones) -> list[Shape]:
    radius = bones.build.head
    points: tuple[Point, ...]
    match bones.pose.mouth:
        case Mouth.OPEN:
            return [ball(bones, (0.0, -0.6), 0.22, 0.24, (104, 10, 22))]
        case Mouth.LAUGH:
            points = ((-0.46, -0.4), (0.46, -0.4), (0.3, -0.76), (-0.3, -0.76))
            teeth = ((-0.42, -0.4), (0.42, -0.4), (0.38, -0.52), (-0.38, -0.52))
            return [
                Polygon(points=at(bones, points), fill=(104, 10, 22)),
                Polygon(points=at(bones, teeth), fill=WHITE),
            ]
        case Mouth.CLOSED:
            points = ((-0.3, -0.58), (0.3, -0.58))
        case _:
            points = ((-0.36, -0.5), (0.0, -0.68), (0.36, -0.5))
    return [Stroke(points=at(bones, points), width=radius * 0.18, fill=LIPS)]


def _front_eyes(bones: Bones) -> list[Shape]:
    if bones.pose.asleep:
        lids = (((side - 0.2, 0.04), (side + 0.2, 0.04)) for side in (-0.36, 0.42))
        strokes = [
            Stroke(points=at(bones, lid), width=bones.build.head * 0.14, fill=INK) for lid in lids
        ]
        return [*strokes, *(Mark(at=bones.face(side, 0.04), fill=INK) for side in (-0.36, 0.42))]
    return [Mark(at=bones.face(side, 0.08), fill=INK) for side in (-0.36, 0.42)]
