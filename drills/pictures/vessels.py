"""Things that hold other things."""

from __future__ import annotations

from drills.pictures.geometry import area, blob, line, patch, shade
from drills.pictures.shapes import Colour, Ellipse, Stroke
from drills.pictures.thing import Thing


def cup() -> Thing:
    red: Colour = (204, 44, 48)
    return Thing(
        back=(
            Stroke(
                points=((10, -21), (19, -20), (19, -9), (9, -7)),
                width=3.6,
                fill=red,
                outline=shade(red, 0.32),
            ),
            blob((0, -26), 13, 3.2, shade(red, 0.45)),
        ),
        front=(
            area(red, (-13, -26), (-6, -23.6), (6, -23.6), (13, -26), (10.5, 0), (-10.5, 0)),
            patch(shade(red, 1.5), (-9.5, -21), (-6.5, -20.5), (-5.5, -4), (-8, -4)),
        ),
        width=33,
        height=29,
        rest=26,
        mouth=(0, 26, 10.5),
    )


def box() -> Thing:
    card: Colour = (196, 146, 84)
    return Thing(
        back=(),
        front=(
            area(shade(card, 1.3), (-16, -25), (-12.5, -32), (12.5, -32), (16, -25)),
            area(card, (-16, -25), (16, -25), (16, 0), (-16, 0)),
            patch(shade(card, 0.78), (-2.4, -25), (2.4, -25), (2.4, 0), (-2.4, 0)),
            patch(shade(card, 0.9), (-2.4, -25), (-1.8, -32), (1.8, -32), (2.4, -25)),
        ),
        width=33,
        height=32,
        core=(16.0, 16.0),
        rest=28.5,
    )


def open_box() -> Thing:
    card: Colour = (196, 146, 84)
    return Thing(
        back=(area(shade(card, 0.5), (-16, -26), (16, -26), (13, -32), (-13, -32)),),
        front=(
            area(card, (-16, -26), (16, -26), (16, 0), (-16, 0)),
            patch(shade(card, 0.78), (-2.4, -26), (2.4, -26), (2.4, 0), (-2.4, 0)),
            line(shade(card, 1.5), 1.5, (-15, -24.6), (15, -24.6)),
        ),
        width=33,
        height=32,
        core=(16.0, 16.0),
        rest=26,
        mouth=(0, 26, 13.5),
    )


def hat() -> Thing:
    felt: Colour = (92, 88, 104)
    return Thing(
        back=(),
        front=(
            area(
                felt,
                (-13, -4),
                (-11.5, -20),
                (-7, -25),
                (0, -22.5),
                (7, -25),
                (11.5, -20),
                (13, -4),
            ),
            patch((150, 40, 52), (-13, -10), (13, -10), (13.2, -5), (-13.2, -5)),
            blob((0, -3.4), 23, 3.4, felt),
        ),
        width=46,
        height=25,
        core=(12.5, 12.5),
        rest=23.5,
    )


def turned_hat() -> Thing:
    felt: Colour = (92, 88, 104)
    return Thing(
        back=(
            blob((0, -24), 24, 4.6, felt),
            Ellipse(centre=(0, -24), radii=(14, 2.8), fill=shade(felt, 0.4)),
        ),
        front=(
            area(
                felt,
                (-14, -23),
                (-7, -21),
                (7, -21),
                (14, -23),
                (11.5, -4),
                (6, 0),
                (-6, 0),
                (-11.5, -4),
            ),
            patch(
                (150, 40, 52),
                (-13.8, -20),
                (-7, -18.2),
                (7, -18.2),
                (13.8, -20),
                (13, -14.4),
                (7, -12.6),
                (-7, -12.6),
                (-13, -14.4),
            ),
            Stroke(
                points=((-22.5, -23.4), (-13, -21), (0, -20.2), (13, -21), (22.5, -23.4)),
                width=3.4,
                fill=felt,
                outline=shade(felt, 0.32),
            ),
        ),
        width=48,
        height=28.6,
        core=(14.0, 14.0),
        rest=26,
        mouth=(0, 23, 11.5),
    )


def shoe() -> Thing:
    leather: Colour = (128, 66, 30)
    return Thing(
        back=(blob((-11, -24.5), 10.5, 3.0, shade(leather, 0.45)),),
        front=(
            area(
                leather,
                (-21.5, -25),
                (-15, -22.6),
                (-6, -22.6),
                (-0.5, -25),
                (4, -16),
                (15, -12.5),
                (21, -8.5),
                (22, -3),
                (-21, -3),
            ),
            area(
                shade(leather, 0.4),
                (-21.5, -3.4),
                (22.5, -3.4),
                (22.5, 0),
                (-7, 0),
                (-8.5, -1.6),
                (-11, 0),
                (-21.5, 0),
            ),
            line((240, 226, 200), 1.5, (-1, -20), (4.5, -21.5)),
            line((240, 226, 200), 1.5, (2, -16.5), (7.5, -18)),
        ),
        width=44,
        height=27.5,
        core=(21.0, 3.0),
        rest=24.5,
        rest_at=-9,
        mouth=(-11, 24.5, 8.5),
    )


def bucket() -> Thing:
    steel: Colour = (150, 164, 184)
    return Thing(
        back=(
            Stroke(
                points=((-15, -29), (-12, -38), (0, -42), (12, -38), (15, -29)),
                width=1.8,
                fill=(70, 74, 90),
            ),
            blob((0, -29), 15.5, 3.6, shade(steel, 0.45)),
        ),
        front=(
            area(steel, (-15.5, -29), (-8, -26.2), (8, -26.2), (15.5, -29), (11, 0), (-11, 0)),
            line(shade(steel, 0.62), 2.0, (-14, -20), (-7, -17.6), (7, -17.6), (14, -20)),
            patch(shade(steel, 1.6), (-10.5, -24), (-7.5, -23.5), (-6.5, -4), (-8.5, -4)),
        ),
        width=33,
        height=43,
        rest=29.5,
        mouth=(0, 29, 12.5),
    )
