"""Clothed bodies: bones and a row of the cast become shapes, in layers."""

from __future__ import annotations

from dataclasses import dataclass

from drills.pictures.cast import WHITE, Person
from drills.pictures.clothes import skirt
from drills.pictures.geometry import (
    area,
    between,
    blob,
    limb,
    minus,
    plus,
    shade,
    slope,
    turn,
    unit,
)
from drills.pictures.heads import behind_head, head
from drills.pictures.livery import dress
from drills.pictures.shapes import Ellipse, Shape
from drills.pictures.skeleton import Bones, Build, Limb, Pose, path_along, solve


@dataclass(frozen=True, slots=True, kw_only=True)
class Figure:
    """A painted body: `body` first, then whatever it touches, then the `near_arm` on top."""

    bones: Bones
    body: tuple[Shape, ...]
    near_arm: tuple[Shape, ...]

    @property
    def shapes(self) -> tuple[Shape, ...]:
        return self.body + self.near_arm


def figure(person: Person, build: Build, pose: Pose) -> Figure:
    """Paint `person` in `pose`."""
    bones = solve(build, pose, person.girth)
    body: list[Shape] = [
        *_arm(person, bones, bones.far_arm, 0.72),
        *behind_head(person, bones),
        *_leg(person, bones, bones.far_leg, 0.75),
        *_leg(person, bones, bones.near_leg, 1.0),
        *_neck(person, bones),
        *_trunk(person, bones),
        *skirt(person, bones),
        *dress(person, bones),
        *head(person, bones),
    ]
    return Figure(
        bones=bones, body=tuple(body), near_arm=tuple(_arm(person, bones, bones.near_arm, 1.16))
    )


def _arm(person: Person, bones: Bones, arm: Limb, light: float) -> list[Shape]:
    build = bones.build
    skin = shade(person.skin, min(light, 1.0))
    sleeve = shade(person.top, light if person.top[0] + person.top[1] > 110 else light + 0.1)
    if person.top == WHITE or min(person.top) > 180:
        sleeve = shade(person.top, 0.94 if light > 1 else 0.74)
    shapes: list[Shape] = [limb(skin, build.arm_width * 0.82, arm.root, arm.joint, arm.end)]
    if person.sleeve > 0:
        cloth = path_along(arm, 0.0, person.sleeve * 0.9)
        shapes.append(limb(sleeve, build.arm_width, *cloth))
        if person.wide_sleeves:
            across = turn(unit(minus(arm.end, arm.joint)), 90)
            cuff = between(arm.joint, arm.end, 0.85)
            wide = build.arm_width * 0.95
            shapes.append(
                area(sleeve, arm.joint, plus(cuff, across, wide), plus(cuff, across, -wide))
            )
    shapes.append(blob(arm.end, build.hand, build.hand, skin))
    return shapes


def _leg(person: Person, bones: Bones, leg: Limb, light: float) -> list[Shape]:
    build, facing = bones.build, bones.pose.facing
    cloth = shade(person.bottom, light)
    shapes: list[Shape] = []
    # A foot in the air points on from the shin; a foot on the ground lies flat.
    down = unit(minus(leg.end, leg.joint))
    aloft = leg.end[1] < -build.ankle - 1.5
    toe = turn(down, -70 * facing) if aloft else (float(facing), 0.0)
    shoe = shade(person.shoes, light)
    length = build.leg_width * 0.78
    ankle = plus(leg.end, toe, length * 0.35)
    sole = (0.0, build.ankle * 0.1) if toe[1] == 0 else (0.0, 0.0)
    angle = 0.0 if toe[1] == 0 else slope(toe)
    shapes.append(
        Ellipse(
            centre=plus(ankle, sole),
            radii=(length, build.ankle * 0.95),
            fill=shoe,
            outline=shade(shoe, 0.32),
            angle=angle,
        )
    )
    bare = 0.0 < person.skirt < 0.9
    stocking = shade(person.skin, light) if bare else cloth
    shapes.append(
        limb(stocking, build.leg_width * (0.68 if bare else 0.92), *path_along(leg, 0, 0.97))
    )
    if person.shorts:
        shapes.append(
            limb(shade(person.skin, light), build.leg_width * 0.74, *path_along(leg, 0, 0.97))
        )
        shapes.append(limb(cloth, build.leg_width, *path_along(leg, 0, person.shorts * 0.95)))
    if person.boots:
        shapes.append(limb(shoe, build.leg_width * 0.98, *path_along(leg, 0.62, 0.99)))
    if bare:
        shapes.append(limb(cloth, build.leg_width, *path_along(leg, 0, person.skirt * 0.85)))
    if person.bell:
        across = turn(down, 90)
        hem, wide = plus(leg.end, down, build.ankle * 0.2), build.leg_width * 0.74
        shapes.append(
            area(
                cloth,
                plus(leg.joint, across, wide * 0.45),
                plus(hem, across, wide),
                plus(hem, across, -wide),
                plus(leg.joint, across, -wide * 0.45),
            )
        )
    return shapes


def _neck(person: Person, bones: Bones) -> list[Shape]:
    return [
        limb(person.skin, bones.build.head * 0.75, bones.trunk(0.95, 0.05), bones.face(-0.15, -0.5))
    ]


def _trunk(person: Person, bones: Bones) -> list[Shape]:
    belly = 1.12 if person.girth > 1.2 else 0.92
    waist = 0.78 if person.skirt or person.girth < 0.9 else 0.9
    points = [
        bones.trunk(0.0, -0.9),
        bones.trunk(0.4, -waist),
        bones.trunk(0.85, -1.0),
        bones.trunk(1.08, -0.55),
        bones.trunk(1.1, 0.45),
        bones.trunk(0.85, 1.0),
        bones.trunk(0.35, belly if person.girth > 1.2 else waist),
        bones.trunk(0.0, 0.92),
    ]
    hips = bones.hip
    return [
        blob(hips, bones.girth * 0.92, bones.build.leg_width * 0.55, person.bottom),
        area(person.top, *points),
    ]
