"""How one is: wet, dirty, happy, tired, cold; as marks on a figure, or a pose."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Any

from drills.pictures import signs, tools
from drills.pictures.cast import Person
from drills.pictures.geometry import area, between, line, plus
from drills.pictures.people import figure
from drills.pictures.poses import hand_at, stance
from drills.pictures.shapes import Colour, Ellipse, Point, Shape
from drills.pictures.skeleton import Build, Mouth, Pose, on_long_legs, solve
from drills.pictures.stage import Body

_MUD: Colour = (92, 62, 30)

STATES = ("wet", "dirty", "happy", "tired", "cold")
"""What a figure alone can be seen to be."""

SEEN_ON_ANIMALS = ("wet", "dirty")
SINGLED_OUT = ("wet", "dirty")
"""What one of two figures in an act can be seen to be; a face close by is read as a thought."""


def wet_marks(of: Body) -> list[Shape]:
    """Drops from head and body, a puddle below."""
    (x, y), r = of.head, of.head_radius
    size = max(2.4, r * 0.3)
    hip = of.hip
    places = (
        (x - r * 1.45, y - r * 0.1),
        (x + r * 1.45, y + r * 0.2),
        (x - r * 1.6, y + r * 1.3),
        (x + r * 1.5, y + r * 1.6),
        (hip[0] - r * 1.5, hip[1] + r * 0.3),
        (hip[0] + r * 1.4, hip[1] + r * 0.6),
        (x - r * 0.4, y - r * 0.2),
        (x + r * 0.1, y + r * 0.6),
    )
    return [*tools.puddle(hip[0], r * 1.9), *signs.drops(*places, size=size)]


def dirty_marks(of: Body) -> list[Shape]:
    """Mud on face, trunk and legs, and a patch of it on the ground."""
    r = of.head_radius
    chest = between(of.hip, of.head, 0.5)
    places = (
        (plus(of.head, (-r * 0.35, r * 0.5)), 0.26), (plus(of.head, (r * 0.3, -r * 0.35)), 0.22),
        (plus(chest, (r * 0.4, -r * 0.1)), 0.4), (plus(chest, (-r * 0.45, r * 0.5)), 0.42),
        (plus(of.hip, (r * 0.5, r * 0.1)), 0.42), (plus(of.hip, (-r * 0.5, r * 0.9)), 0.44),
        (plus(of.hip, (r * 0.3, r * 1.6)), 0.38),
    )  # fmt: skip
    ground = Ellipse(centre=(of.hip[0], 1.5), radii=(r * 1.9, 3.0), fill=_MUD)
    spots = [Ellipse(centre=at, radii=(size * r, size * r * 0.8), fill=_MUD) for at, size in places]
    return [ground, *spots]


MARKS: Mapping[str, Callable[[Body], list[Shape]]] = MappingProxyType(
    {"wet": wet_marks, "dirty": dirty_marks}
)


def pointer(of: Body, hat: float) -> list[Shape]:
    """A large arrow from above to one head.   hat: room for a hat, in head radii."""
    (x, y), r = of.head, of.head_radius
    tip = y - r * (1.25 + hat)
    red: Colour = (206, 20, 44)
    neck, top = tip - r * 0.85, tip - r * 1.75
    return [
        area(red, (x, tip), (x - r * 0.95, neck), (x - r * 0.34, neck), (x - r * 0.34, top),
             (x + r * 0.34, top), (x + r * 0.34, neck), (x + r * 0.95, neck)),
    ]  # fmt: skip


def _plain(build: Build, **more: Any) -> Pose:
    return stance(build, near=(0.1, 0.0), far=(-0.12, 0.0), **more)


def in_state(person: Person, build: Build, state: str) -> list[Shape]:
    """Somebody who stands and is wet, dirty, happy, tired or cold."""
    build = on_long_legs(build)
    match state:
        case "happy":
            # Longer arms, wide apart: beside a large head, hands look clutched to it.
            wide = 1.0 if build.leg > 33 else 1.3
            build = replace(build, upper_arm=build.upper_arm * wide, forearm=build.forearm * wide)
            pose = _plain(build, to_viewer=True, mouth=Mouth.LAUGH)
            pose = replace(
                pose,
                far_hand=hand_at(build, pose, 0.75, 0.55), far_elbow=-1,
                near_hand=hand_at(build, pose, -0.78, 0.4), near_elbow=1,
            )  # fmt: skip
            made = figure(person, build, pose)
            # The near arm is painted first: it goes up behind the head.
            return [*made.near_arm, *made.body, *_beams(made.bones.head, build)]
        case "tired":
            # Bent over, both hands on the knees, as after hard work.
            pose = stance(
                build, near=(0.2, 0.0), far=(-0.12, 0.0), lean=46 / build.sway, tilt=-4,
                height=0.9, asleep=True, mouth=Mouth.OPEN,
            )  # fmt: skip
            bones = solve(build, pose, person.girth)
            knees = (bones.near_leg.joint, bones.far_leg.joint)
            pose = replace(pose, near_hand=knees[0], far_hand=knees[1], near_elbow=-1, far_elbow=-1)
            made = figure(person, build, pose)
            x, y = made.bones.head
            r = build.head
            sweat = signs.drops(
                (x - r * 1.0, y - r * 1.3), (x + r * 1.5, y - r * 0.4), (x + r * 1.2, y + r * 1.4),
                size=r * 0.3,
            )  # fmt: skip
            return [*made.shapes, *sweat]
        case "cold":
            pose = _plain(build, lean=6, tilt=8, height=0.95, mouth=Mouth.OPEN)
            made = figure(person, build, pose)
            pose = replace(
                pose, near_hand=made.bones.trunk(0.85, 0.7), far_hand=made.bones.trunk(0.7, 0.9)
            )
            made = figure(person, build, pose)
            return [*made.shapes, *_cold(made.bones.head, build)]
        case _:
            pose = _plain(build, tilt=6)
            pose = replace(
                pose,
                near_hand=hand_at(build, pose, -0.35, -0.8),
                far_hand=hand_at(build, pose, 0.5, -0.75),
            )
            made = figure(person, build, pose)
            body = Body(hip=made.bones.hip, head=made.bones.head, head_radius=build.head, hands=())
            return [*made.shapes, *MARKS[state](body)]


def _beams(at: Point, build: Build) -> list[Shape]:
    (x, y), r = at, build.head
    return [
        line((250, 170, 20), r * 0.2, (x + dx * r * 1.9, y + dy * r * 1.9),
             (x + dx * r * 2.4, y + dy * r * 2.4))
        for dx, dy in ((-1.0, 0.1), (1.0, 0.25))
    ]  # fmt: skip


def _cold(at: Point, build: Build) -> list[Shape]:
    """A scarf of frost lines, and snow."""
    (x, y), r = at, build.head
    flakes: list[Shape] = []
    for dx, dy in ((-1.9, -0.6), (1.9, -0.8), (-1.7, 1.5), (2.1, 1.4), (1.8, 3.2), (-1.9, 3.4)):
        centre = (x + dx * r, y + dy * r)
        for arm in ((1.0, 0.0), (0.5, 0.87), (-0.5, 0.87)):
            flake = (plus(centre, arm, r * 0.34), plus(centre, arm, -r * 0.34))
            flakes.append(line((255, 255, 255), r * 0.2, *flake))
    shiver = [
        line(
            (40, 70, 170),
            1.7,
            (x + side * r * 1.25, y + r * 1.6),
            (x + side * r * 1.4, y + r * 1.9),
            (x + side * r * 1.25, y + r * 2.2),
            (x + side * r * 1.4, y + r * 2.5),
        )
        for side in (-1, 1)
    ]
    return [*flakes, *shiver]
