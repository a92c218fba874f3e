"""Clothes over a body: skirts and the marks of a trade."""

from __future__ import annotations

from drills.pictures.cast import BLACK, GOLD, WHITE, Extra, Person
from drills.pictures.geometry import (
    area,
    between,
    blob,
    limb,
    minus,
    patch,
    plus,
    shade,
    slope,
    turn,
    unit,
)
from drills.pictures.shapes import Colour, Ellipse, Point, Shape
from drills.pictures.skeleton import Bones, along_limb


def dress(person: Person, bones: Bones) -> list[Shape]:
    """The marks of a trade on the trunk: apron, vest, sash."""
    shapes: list[Shape] = []
    for extra in person.extras:
        shapes += _EXTRAS[extra](person, bones)
    return shapes


def skirt(person: Person, bones: Bones) -> list[Shape]:
    """Skirt, gown or robe; nothing for somebody in trousers."""
    if not person.skirt:
        return []
    if bones.pose.seated and person.skirt >= 0.9:
        return _lap(person, bones)
    hems = [along_limb(leg, person.skirt * 0.97) for leg in (bones.near_leg, bones.far_leg)]
    middle = between(hems[0], hems[1])
    # A long skirt hangs straight down, whatever the legs do, unless its wearer lies.
    hangs = person.skirt >= 0.9 and abs(bones.pose.lean) < 60
    axis = (0.0, 1.0) if hangs else unit(minus(middle, bones.hip))
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
        start, end = plus(hem, across, low), plus(hem, across, high)
        shapes.append(limb(person.trim, 2.4, plus(start, axis, -1.5), plus(end, axis, -1.5)))
    return shapes


def _lap(person: Person, bones: Bones) -> list[Shape]:
    """A long skirt of somebody who sits: level to the knees, then down."""
    facing, width = bones.pose.facing, bones.build.leg_width
    spread = person.flare * bones.girth * 0.45
    near, far = bones.near_leg, bones.far_leg
    front = max((near.end, far.end), key=lambda point: point[0] * facing)
    back = min((near.end, far.end), key=lambda point: point[0] * facing)
    knee = max((near.joint, far.joint), key=lambda point: point[0] * facing)
    floor = -0.5
    cloth = person.bottom
    shapes: list[Shape] = [
        area(
            cloth,
            bones.trunk(0.18, -0.85),
            bones.trunk(0.18, 0.8),
            (knee[0], knee[1] - width * 0.62),
            (knee[0] + facing * width * 0.5, knee[1] - width * 0.2),
            (front[0] + facing * (width * 0.5 + spread), floor),
            (back[0] - facing * (width * 0.5 + spread), floor),
            (near.joint[0] - facing * width * 0.8, knee[1] + width * 0.6),
            (bones.hip[0] - facing * bones.girth, bones.hip[1] + width * 0.55),
        )
    ]
    if person.flare > 1:
        hem = (front[0] + facing * (width * 0.5 + spread), floor - 1)
        shapes.append(
            limb(person.trim, 2.4, hem, (back[0] - facing * (width * 0.5 + spread), floor - 1))
        )
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
    return [
        area(
            WHITE,
            bones.trunk(1.08, 0.3),
            bones.trunk(0.98, 0.75),
            bones.trunk(0.5, 1.1),
            bones.trunk(0.5, 0.5),
        )
    ]


def _smock(person: Person, bones: Bones) -> list[Shape]:
    thighs = [along_limb(leg, 0.42) for leg in (bones.near_leg, bones.far_leg)]
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
    axis = slope(minus(bones.trunk(0, 1), bones.trunk(0, -1)))
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
