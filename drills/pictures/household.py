"""Things of a house: furniture, clothes, tools."""

from __future__ import annotations

from drills.pictures.geometry import area, blob, limb, line, patch, shade
from drills.pictures.shapes import Colour, Ellipse, Polygon, Stroke
from drills.pictures.thing import Thing


def bell() -> Thing:
    gold: Colour = (238, 182, 40)
    return Thing(
        back=(blob((0, -1.6), 3.2, 2.6, shade(gold, 0.55)),),
        front=(
            limb((118, 74, 40), 4.4, (0, -27), (0, -36)),
            area(
                gold,
                (-4, -29),
                (4, -29),
                (8, -24),
                (9.5, -12),
                (15, -2),
                (-15, -2),
                (-9.5, -12),
                (-8, -24),
            ),
            line(shade(gold, 0.7), 2.0, (-12.5, -6.5), (12.5, -6.5)),
            patch(shade(gold, 1.6), (-5, -25), (-2.5, -25), (-4, -12), (-6.5, -12)),
        ),
        width=31,
        height=38.5,
        core=(11.0, 11.0),
        rest=38,
        flat=False,
    )


def book() -> Thing:
    green: Colour = (30, 112, 74)
    pages: Colour = (250, 244, 226)
    return Thing(
        back=(),
        front=(
            area(green, (-19, -14), (19, -14), (19, 0), (-19, 0), (-21, -3), (-21, -11)),
            Polygon(points=((-15, -11), (20, -11), (19, -3), (-15, -3)), fill=pages),
            line((190, 180, 150), 1.0, (-14, -8.6), (19, -8.6)),
            line((190, 180, 150), 1.0, (-14, -5.6), (19, -5.6)),
        ),
        width=41,
        height=14,
        core=(19.0, 19.0),
        rest=14,
    )


def standing_book() -> Thing:
    green: Colour = (30, 112, 74)
    return Thing(
        back=(area((250, 244, 226), (-9, -33), (13.5, -33), (13.5, -1), (-9, -1)),),
        front=(
            area(green, (-13, -34), (11, -34), (11, 0), (-13, 0)),
            patch(shade(green, 0.6), (-13, -34), (-8.5, -34), (-8.5, 0), (-13, 0)),
            patch((232, 200, 96), (-5, -27), (8, -27), (8, -23.5), (-5, -23.5)),
            patch((232, 200, 96), (-3, -20), (6, -20), (6, -18), (-3, -18)),
        ),
        width=27,
        height=34,
        core=(13.0, 11.0),
        rest=34,
    )


def chair() -> Thing:
    wood: Colour = (168, 104, 52)
    dark = shade(wood, 0.75)
    return Thing(
        back=(limb(dark, 3.0, (-10, 0), (-9, -20)), limb(dark, 3.0, (15, 0), (13, -20))),
        front=(
            limb(wood, 3.2, (-14, 0), (-14, -48)),
            limb(wood, 3.2, (11, 0), (11, -22)),
            limb(wood, 4.6, (-14, -43), (-14, -34)),
            limb(wood, 4.4, (-14, -22), (14, -22)),
        ),
        width=32, height=50, rest=24, rest_at=1, room=(-1, 20, 9), bulk=3, thin=True,
        core=(14.0, 13.0),
    )  # fmt: skip


def table() -> Thing:
    wood: Colour = (140, 84, 44)
    dark = shade(wood, 0.75)
    return Thing(
        back=(limb(dark, 3.4, (-22, 0), (-22, -34)), limb(dark, 3.4, (22, 0), (22, -34))),
        front=(
            limb(wood, 4.0, (-28, 0), (-28, -36)),
            limb(wood, 4.0, (28, 0), (28, -36)),
            area(wood, (-34, -40), (34, -40), (33, -34), (-33, -34)),
        ),
        width=68, height=40, rest=40, room=(0, 33, 19), bulk=3, thin=True, core=(30.0, 30.0),
    )  # fmt: skip


def lamp() -> Thing:
    shade_of: Colour = (250, 220, 120)
    brass: Colour = (150, 110, 50)
    return Thing(
        back=(limb(brass, 3.0, (0, -3), (0, -24)),),
        front=(
            blob((0, -2.6), 10, 2.8, brass),
            area(shade_of, (-8, -42), (8, -42), (15, -22), (-15, -22)),
            line(shade(shade_of, 0.7), 1.8, (-14, -24), (14, -24)),
        ),
        width=30, height=42, rest=42, flat=False, core=(10.0, 10.0),
    )  # fmt: skip


def clock() -> Thing:
    case: Colour = (96, 60, 130)
    marks = [
        line((40, 40, 50), 1.4, (x * 10, y * 10 - 20), (x * 12.4, y * 12.4 - 20))
        for x, y in ((0, -1), (1, 0), (0, 1), (-1, 0))
    ]
    return Thing(
        back=(limb(case, 4.0, (-11, -1.6), (-8, -8)), limb(case, 4.0, (11, -1.6), (8, -8))),
        front=(
            blob((0, -20), 17, 17, case),
            Ellipse(centre=(0, -20), radii=(13.6, 13.6), fill=(252, 250, 240)),
            *marks,
            line((30, 30, 40), 2.2, (0, -20), (0, -29)),
            line((30, 30, 40), 2.2, (0, -20), (7, -16)),
        ),
        width=34, height=37, rest=36, flat=False, core=(14.5, 14.5),
    )  # fmt: skip


def key() -> Thing:
    brass: Colour = (226, 176, 44)
    return Thing(
        back=(),
        front=(
            limb(brass, 3.4, (-2, -7), (19, -7)),
            limb(brass, 3.0, (13, -7), (13, -1.6)),
            limb(brass, 3.0, (18.5, -7), (18.5, -1.6)),
            Stroke(points=tuple((-10 + 6.4 * x, -7.6 + 6.0 * y) for x, y in
                                ((1, 0), (0.7, 0.7), (0, 1), (-0.7, 0.7), (-1, 0), (-0.7, -0.7),
                                 (0, -1), (0.7, -0.7), (1, 0))),
                   width=3.6, fill=brass, outline=shade(brass, 0.32)),
        ),
        width=40, height=16, rest=9, flat=False, thin=True, core=(16.0, 19.0),
    )  # fmt: skip


def spoon() -> Thing:
    steel: Colour = (176, 182, 194)
    return Thing(
        back=(),
        front=(
            limb(steel, 3.0, (-22, -3.4), (10, -4.6)),
            blob((15, -4.8), 9, 4.6, steel),
            Ellipse(centre=(14.4, -5.6), radii=(6, 2.4), fill=shade(steel, 0.62)),
        ),
        width=47, height=10, rest=8, flat=False, thin=True, core=(20.0, 22.0),
    )  # fmt: skip
