"""The marks of a trade on the trunk: apron, vest, sash."""

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
)
from drills.pictures.shapes import Colour, Ellipse, Point, Shape
from drills.pictures.skeleton import Bones, along_limb


def dress(person: Person, bones: Bones) -> list[Shape]:
    """The marks of a trade on the trunk: apron, vest, sash."""
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


def _ermine(person: Person, bones: Bones) -> list[Shape]:
    white: Colour = (246, 242, 232)
    shapes: list[Shape] = [
        _quad(bones, white, (0.95, 0.45), (0.95, 0.9), (-0.9, 1.0), (-0.9, 0.55)),
        area(
            white,
            bones.trunk(0.78, -1.12),
            bones.trunk(1.12, -0.7),
            bones.trunk(1.12, 0.55),
            bones.trunk(0.78, 1.08),
            bones.trunk(0.86, 0.0),
        ),
    ]
    spots = ((0.95, -0.6), (0.95, 0.5), (0.5, 0.78), (0.0, 0.8), (-0.5, 0.8))
    return [*shapes, *(blob(bones.trunk(*spot), 1.0, 1.2, BLACK) for spot in spots)]


def _waistcoat(person: Person, bones: Bones) -> list[Shape]:
    return [
        area(
            person.trim,
            bones.trunk(0.02, -0.95),
            bones.trunk(0.85, -1.02),
            bones.trunk(1.08, -0.55),
            bones.trunk(1.06, -0.05),
            bones.trunk(0.4, 0.95),
            bones.trunk(0.02, 0.95),
        ),
        _quad(bones, (214, 40, 52), (1.12, 0.35), (0.86, 0.25), (0.84, 1.1), (1.1, 1.1)),
    ]


def _long_apron(person: Person, bones: Bones) -> list[Shape]:
    """A waiter's, from the waist to the shins."""
    hems = [along_limb(leg, 0.78) for leg in (bones.near_leg, bones.far_leg)]
    front = max(hems, key=lambda point: point[0] * bones.pose.facing)
    back = min(hems, key=lambda point: point[0] * bones.pose.facing)
    depth = minus(bones.trunk(0, 1), bones.trunk(0, 0))
    return [
        area(
            shade(WHITE, 0.97),
            bones.trunk(0.2, -0.55),
            bones.trunk(0.2, 1.0),
            plus(front, depth, 0.75),
            plus(back, depth, -0.35),
        ),
        limb(shade(WHITE, 0.8), 1.8, bones.trunk(0.2, -0.9), bones.trunk(0.2, 0.98)),
    ]


def _bib(person: Person, bones: Bones) -> list[Shape]:
    """A gardener's apron, with a pocket."""
    lower = between(bones.near_leg.joint, bones.far_leg.joint)
    depth = minus(bones.trunk(0, 1), bones.trunk(0, 0))
    return [
        area(
            person.trim,
            bones.trunk(0.84, 0.25),
            bones.trunk(0.84, 1.04),
            bones.trunk(0.2, 1.08),
            plus(lower, depth, 1.05),
            plus(lower, depth, -0.4),
            bones.trunk(0.2, -0.6),
        ),
        limb(shade(person.trim, 0.7), 1.8, bones.trunk(0.2, -0.9), bones.trunk(0.2, 1.0)),
        limb(person.trim, 2.2, bones.trunk(0.8, 0.3), bones.trunk(1.08, -0.15)),
    ]


def _hoops(person: Person, bones: Bones) -> list[Shape]:
    return [
        _quad(bones, person.trim, (low, -0.9), (high, -0.94), (high, 0.94), (low, 0.9))
        for low, high in ((0.22, 0.4), (0.6, 0.78))
    ]


def _cardigan(person: Person, bones: Bones) -> list[Shape]:
    return [
        _quad(bones, person.trim, (1.1, 0.1), (1.05, 0.62), (0.55, 0.98), (0.3, 0.8)),
        limb(shade(person.top, 0.6), 2.2, bones.trunk(0.18, -0.8), bones.trunk(0.18, 0.84)),
    ]


def _collar(person: Person, bones: Bones) -> list[Shape]:
    return [
        _quad(bones, person.trim, (1.12, -0.45), (1.14, 0.55), (0.88, 0.98), (0.94, -0.3)),
        _quad(bones, person.trim, (0.02, -0.9), (0.14, -0.88), (0.14, 0.9), (0.02, 0.92)),
    ]


def _straps(person: Person, bones: Bones) -> list[Shape]:
    """A wide pale neckline, so that the top is seen to be one."""
    return [
        _quad(bones, person.trim, (1.1, -0.5), (1.12, 0.5), (0.94, 0.98), (0.98, -0.6)),
        _quad(bones, shade(person.top, 1.35), (0.2, 0.35), (0.9, 0.55), (0.9, 0.8), (0.2, 0.7)),
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
    Extra.ERMINE: _ermine,
    Extra.WAISTCOAT: _waistcoat,
    Extra.LONG_APRON: _long_apron,
    Extra.BIB: _bib,
    Extra.HOOPS: _hoops,
    Extra.CARDIGAN: _cardigan,
    Extra.COLLAR: _collar,
    Extra.STRAPS: _straps,
}
