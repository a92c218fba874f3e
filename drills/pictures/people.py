"""Clothed bodies: bones and a row of the cast become shapes, in layers."""

from __future__ import annotations

from dataclasses import dataclass

from drills.pictures.cast import BLACK, GOLD, WHITE, Extra, Person
from drills.pictures.geometry import (
    area,
    between,
    blob,
    distance,
    limb,
    minus,
    patch,
    plus,
    shade,
    turn,
    unit,
)
from drills.pictures.heads import behind_head, head
from drills.pictures.shapes import Colour, Ellipse, Point, Shape
from drills.pictures.skeleton import Bones, Build, Limb, Pose, solve


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
        *_skirt(person, bones),
        *_dress(person, bones),
        *head(person, bones),
    ]
    return Figure(
        bones=bones, body=tuple(body), near_arm=tuple(_arm(person, bones, bones.near_arm, 1.16))
    )


def _along(bones: Limb, share: float) -> Point:
    """The point `share` of the way down a limb, along its bones."""
    upper = distance(bones.root, bones.joint)
    total = upper + distance(bones.joint, bones.end)
    walked = share * total
    if walked <= upper:
        return between(bones.root, bones.joint, walked / upper)
    return between(bones.joint, bones.end, (walked - upper) / (total - upper))


def _path(bones: Limb, start: float, end: float) -> list[Point]:
    points = [_along(bones, start)]
    upper = distance(bones.root, bones.joint)
    middle = upper / (upper + distance(bones.joint, bones.end))
    if start < middle < end:
        points.append(bones.joint)
    return [*points, _along(bones, end)]


def _arm(person: Person, bones: Bones, arm: Limb, light: float) -> list[Shape]:
    build = bones.build
    skin = shade(person.skin, min(light, 1.0))
    sleeve = shade(person.top, light if person.top[0] + person.top[1] > 110 else light + 0.1)
    if person.top == WHITE or min(person.top) > 180:
        sleeve = shade(person.top, 0.94 if light > 1 else 0.74)
    shapes: list[Shape] = [limb(skin, build.arm_width * 0.82, arm.root, arm.joint, arm.end)]
    if person.sleeve > 0:
        cloth = _path(arm, 0.0, person.sleeve * 0.9)
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
    if leg.end[1] < -build.ankle - 1.5:
        toe = turn(down, -70 * facing)
    else:
        toe = (float(facing), 0.0)
    shoe = shade(person.shoes, light)
    length = build.leg_width * 0.78
    ankle = plus(leg.end, toe, length * 0.35)
    sole = (0.0, build.ankle * 0.1) if toe[1] == 0 else (0.0, 0.0)
    angle = 0.0 if toe[1] == 0 else _angle(toe)
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
    shapes.append(limb(stocking, build.leg_width * (0.68 if bare else 0.92), *_path(leg, 0, 0.97)))
    if bare:
        shapes.append(limb(cloth, build.leg_width, *_path(leg, 0, person.skirt * 0.85)))
    if person.bell:
        across = turn(down, 90)
        hem, wide = plus(leg.end, down, build.ankle * 0.2), build.leg_width * 0.95
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


def _angle(vector: Point) -> float:
    import math

    return math.degrees(math.atan2(vector[1], vector[0]))


def _neck(person: Person, bones: Bones) -> list[Shape]:
    return [limb(person.skin, bones.build.head * 0.75, bones.trunk(0.95, 0.05), bones.face(-0.15, -0.5))]


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


def _skirt(person: Person, bones: Bones) -> list[Shape]:
    if not person.skirt:
        return []
    hems = [_along(leg, person.skirt * 0.97) for leg in (bones.near_leg, bones.far_leg)]
    middle = between(*hems)
    axis = unit(minus(middle, bones.hip))
    across = turn(axis, 90)
    offsets = [
        (hem[0] - bones.hip[0]) * across[0] + (hem[1] - bones.hip[1]) * across[1] for hem in hems
    ]
    reach = max(
        (hem[0] - bones.hip[0]) * axis[0] + (hem[1] - bones.hip[1]) * axis[1] for hem in hems
    ) + (bones.build.ankle * 0.7 if person.skirt >= 0.9 else 1.0)
    spread = bones.build.leg_width * 0.6 + person.flare * bones.girth
    low, high = min(offsets) - spread, max(offsets) + spread
    hem = plus(bones.hip, axis, reach)
    waist = bones.girth * 0.85
    cloth = person.bottom
    shapes: list[Shape] = [
        area(
            cloth,
            plus(bones.trunk(0.18, 0.0), across, -waist),
            plus(bones.trunk(0.18, 0.0), across, waist),
            plus(hem, across, high),
            plus(hem, across, low),
        )
    ]
    if person.skirt >= 0.9:
        for share in (0.3, 0.68):
            fold = plus(hem, across, low + (high - low) * share)
            shapes.append(
                patch(
                    shade(cloth, 0.86 if min(cloth) > 100 else 1.14),
                    between(bones.hip, fold, 0.3),
                    plus(fold, across, 1.5),
                    plus(fold, across, -1.5),
                )
            )
    if person.flare > 1:
        for share_low, share_high in ((0.0, 1.0),):
            start = plus(hem, across, low + (high - low) * share_low)
            end = plus(hem, across, low + (high - low) * share_high)
            shapes.append(limb(person.trim, 2.4, plus(start, axis, -1.5), plus(end, axis, -1.5)))
    return shapes


def _dress(person: Person, bones: Bones) -> list[Shape]:
    shapes: list[Shape] = []
    for extra in person.extras:
        shapes += _EXTRAS[extra](person, bones)
    return shapes


def _quad(bones: Bones, fill: Colour, *corners: Point) -> Shape:
    return patch(fill, *(bones.trunk(*corner) for corner in corners))


def _apron(person: Person, bones: Bones) -> list[Shape]:
    lower = between(bones.near_leg.joint, bones.far_leg.joint)
    front = minus(bones.trunk(0, 1), bones.trunk(0, 0))
    return [
        area(
            shade(WHITE, 0.97),
            bones.trunk(0.3, 0.2),
            bones.trunk(0.3, 1.08),
            plus(lower, front, 1.0),
            plus(lower, front, -0.15),
        ),
        limb(shade(WHITE, 0.8), 1.6, bones.trunk(0.3, -0.9), bones.trunk(0.3, 1.05)),
        _quad(bones, person.trim, (0.9, 0.1), (1.12, 0.45), (0.8, 1.0), (0.75, 0.5)),
        _quad(bones, BLACK, (0.55, 0.5), (0.55, 0.65), (0.65, 0.65), (0.65, 0.5)),
    ]


def _dungarees(person: Person, bones: Bones) -> list[Shape]:
    return [
        area(
            person.bottom,
            bones.trunk(-0.02, -0.95),
            bones.trunk(0.3, -0.9),
            bones.trunk(0.36, 0.1),
            bones.trunk(0.72, 0.2),
            bones.trunk(0.72, 0.96),
            bones.trunk(-0.02, 1.0),
        ),
        limb(person.bottom, 2.4, bones.trunk(0.7, 0.3), bones.trunk(1.08, -0.1)),
        _quad(bones, GOLD, (0.62, 0.45), (0.62, 0.65), (0.72, 0.65), (0.72, 0.45)),
    ]


def _vest(person: Person, bones: Bones) -> list[Shape]:
    orange: Colour = (250, 122, 24)
    return [
        area(
            orange,
            bones.trunk(0.05, -1.0),
            bones.trunk(0.85, -1.02),
            bones.trunk(1.08, -0.55),
            bones.trunk(1.08, 0.4),
            bones.trunk(0.85, 1.02),
            bones.trunk(0.05, 1.0),
        ),
        _quad(bones, person.trim, (0.28, -0.98), (0.46, -0.98), (0.46, 0.98), (0.28, 0.98)),
        _quad(bones, person.trim, (0.46, 0.15), (1.06, -0.05), (1.06, 0.3), (0.46, 0.5)),
        limb((104, 66, 36), 3.0, bones.trunk(0.0, -0.95), bones.trunk(0.0, 0.98)),
    ]


def _sash(person: Person, bones: Bones) -> list[Shape]:
    return [
        _quad(bones, (238, 236, 232), (1.05, -0.6), (1.1, 0.1), (0.2, 0.85), (0.12, 0.3)),
        limb(person.trim, 2.6, bones.trunk(0.16, -0.8), bones.trunk(0.16, 0.8)),
        blob(bones.trunk(0.98, 0.55), 1.8, 1.8, GOLD),
    ]


def _sailor_collar(person: Person, bones: Bones) -> list[Shape]:
    return [
        area(
            person.trim,
            bones.trunk(0.6, -1.3),
            bones.trunk(1.1, -0.6),
            bones.trunk(1.1, 0.5),
            bones.trunk(0.62, 0.6),
            bones.trunk(0.92, -0.1),
            bones.trunk(0.62, -0.35),
        ),
        _quad(bones, person.trim, (0.2, -0.9), (0.3, -0.9), (0.3, 0.9), (0.2, 0.9)),
    ]


def _bands(person: Person, bones: Bones) -> list[Shape]:
    return [area(WHITE, bones.trunk(1.08, 0.3), bones.trunk(0.98, 0.75), bones.trunk(0.5, 1.1), bones.trunk(0.5, 0.5))]


def _smock(person: Person, bones: Bones) -> list[Shape]:
    thighs = [_along(leg, 0.42) for leg in (bones.near_leg, bones.far_leg)]
    low = min(thighs, key=lambda point: point[0])
    high = max(thighs, key=lambda point: point[0])
    facing = bones.pose.facing
    back, front = (low, high) if facing > 0 else (high, low)
    depth = minus(bones.trunk(0, 1), bones.trunk(0, 0))
    back_hem, front_hem = plus(back, depth, -0.95), plus(front, depth, 0.95)
    shapes: list[Shape] = [
        area(
            person.top,
            bones.trunk(0.8, -0.98),
            bones.trunk(0.8, 0.98),
            front_hem,
            back_hem,
        ),
        _quad(bones, person.trim, (0.86, -0.2), (1.15, -0.3), (1.15, 0.5), (0.7, 0.9)),
    ]
    dabs: tuple[tuple[float, float, Colour], ...] = (
        (0.45, 0.5, (40, 100, 200)),
        (0.1, -0.1, (230, 160, 30)),
        (-0.25, 0.6, (200, 50, 60)),
        (-0.3, -0.6, (40, 150, 80)),
    )
    for along, forward, colour in dabs:
        shapes.append(Ellipse(centre=bones.trunk(along, forward), radii=(2.0, 1.7), fill=colour))
    return shapes


def _tutu(person: Person, bones: Bones) -> list[Shape]:
    axis = _angle(minus(bones.trunk(0, 1), bones.trunk(0, -1)))
    wide = bones.build.girth * (2.3 if abs(bones.pose.lean) < 45 else 1.4)
    return [
        blob(bones.trunk(0.02, 0), wide, 4.6, person.trim, axis),
        Ellipse(centre=bones.trunk(0.1, 0), radii=(wide * 0.8, 1.7), fill=person.top, angle=axis),
    ]


def _watch(person: Person, bones: Bones) -> list[Shape]:
    return [
        _quad(bones, WHITE, (0.95, 0.3), (1.1, 0.5), (0.85, 1.0), (0.78, 0.8)),
        limb(shade(person.top, 0.6), 1.8, bones.trunk(0.2, -0.85), bones.trunk(0.2, 0.85)),
    ]


def _bodice(person: Person, bones: Bones) -> list[Shape]:
    return [
        limb(person.trim, 2.4, bones.trunk(0.2, -0.75), bones.trunk(0.2, 0.75)),
        patch(person.skin, bones.trunk(1.1, 0.0), bones.trunk(1.1, 0.5), bones.trunk(0.85, 0.85)),
    ]


_EXTRAS = {
    Extra.APRON: _apron,
    Extra.DUNGAREES: _dungarees,
    Extra.VEST: _vest,
    Extra.SASH: _sash,
    Extra.SAILOR_COLLAR: _sailor_collar,
    Extra.BANDS: _bands,
    Extra.SMOCK: _smock,
    Extra.TUTU: _tutu,
    Extra.WATCH: _watch,
    Extra.BODICE: _bodice,
}
