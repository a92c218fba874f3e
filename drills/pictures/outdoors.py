"""Things of the garden, the sky and the table: ball to bread."""

from __future__ import annotations

from drills.pictures.geometry import area, blob, limb, line, patch, shade
from drills.pictures.shapes import Colour, Ellipse, Stroke
from drills.pictures.thing import Thing


def ball() -> Thing:
    blue: Colour = (44, 104, 206)
    return Thing(
        back=(),
        front=(
            blob((0, -14), 14, 14, blue),
            Stroke(
                points=((-13.2, -13), (-6, -9.4), (6, -9.4), (13.2, -13)),
                width=4.4,
                fill=(246, 244, 236),
            ),
            Ellipse(centre=(-4.5, -21), radii=(3.6, 2.4), fill=shade(blue, 1.6), angle=-30),
        ),
        width=28,
        height=28,
        core=(12.5, 12.5),
        rest=27.4,
        flat=False,
    )


def umbrella() -> Thing:
    """Open, standing on its rim's side as it dries."""
    red: Colour = (206, 40, 70)
    return Thing(
        back=(limb((90, 70, 60), 2.4, (0, -36), (0, -2), (4, -1), (5, -5)),),
        front=(
            area(red, (-27, -27), (-22, -38), (-11, -46), (0, -48), (11, -46), (22, -38), (27, -27),
                 (18, -30), (9, -27), (0, -30), (-9, -27), (-18, -30)),
            patch(shade(red, 1.4), (0, -47), (8, -38), (9, -28), (0, -30), (-9, -28), (-8, -38)),
        ),
        width=55, height=49, rest=48, room=(-13, 24, 11), bulk=2, flat=False, thin=True,
        core=(22.0, 22.0),
    )  # fmt: skip


def kite() -> Thing:
    yellow: Colour = (250, 206, 50)
    red: Colour = (214, 60, 60)
    return Thing(
        back=(
            Stroke(points=((0, -14), (5, -9), (-4, -6), (6, -2)), width=1.6, fill=(70, 60, 60)),
            *(
                area(red, (x, y), (x + 5, y - 2.5), (x + 5, y + 2.5))
                for x, y in ((3, -9), (-4, -5))
            ),
        ),
        front=(
            area(yellow, (0, -48), (17, -32), (0, -13), (-17, -32)),
            patch(red, (0, -48), (17, -32), (0, -32)),
            patch(red, (0, -32), (0, -13), (-17, -32)),
            line((110, 70, 40), 1.4, (0, -48), (0, -13)),
            line((110, 70, 40), 1.4, (-17, -32), (17, -32)),
        ),
        width=35,
        height=49,
        rest=48,
        flat=False,
        thin=True,
        bulk=2,
        core=(11.0, 11.0),
    )


def tree() -> Thing:
    leaf: Colour = (52, 130, 62)
    bark: Colour = (116, 76, 44)
    return Thing(
        back=(area(bark, (-4.5, -30), (4.5, -30), (6.5, 0), (-6.5, 0)),),
        front=(
            blob((-14, -42), 16, 14, leaf),
            blob((14, -42), 16, 14, leaf),
            blob((0, -56), 18, 16, shade(leaf, 1.12)),
            Ellipse(centre=(0, -43), radii=(16, 11), fill=leaf),
        ),
        width=60, height=72, rest=70, room=(-18, 26, 10), bulk=3, flat=False, core=(16.0, 16.0),
    )  # fmt: skip


def flower() -> Thing:
    petal: Colour = (236, 70, 120)
    stem: Colour = (60, 140, 60)
    petals = [
        blob((x * 8.5, y * 8.5 - 30), 6, 6, petal)
        for x, y in ((0, -1), (0.87, -0.5), (0.87, 0.5), (0, 1), (-0.87, 0.5), (-0.87, -0.5))
    ]
    return Thing(
        back=(
            limb(stem, 2.8, (0, 0), (0, -22)),
            blob((7, -8), 7, 3.2, stem, -28),
            blob((-7, -12), 7, 3.2, stem, 28),
        ),
        front=(*petals, blob((0, -30), 5.4, 5.4, (250, 206, 60))),
        width=30, height=45, rest=44, flat=False, core=(12.0, 12.0),
    )  # fmt: skip


def apple() -> Thing:
    green: Colour = (122, 186, 52)
    return Thing(
        back=(
            limb((96, 64, 40), 2.2, (0, -24), (2.5, -31)),
            blob((8, -29), 5, 2.6, (60, 140, 60), -20),
        ),
        front=(
            area(
                green,
                (0, -23),
                (6, -26),
                (12.5, -23.5),
                (15, -16),
                (13, -7),
                (6, 0),
                (0, -1.2),
                (-6, 0),
                (-13, -7),
                (-15, -16),
                (-12.5, -23.5),
                (-6, -26),
            ),
            Ellipse(centre=(-7, -18), radii=(2.6, 4.2), fill=shade(green, 1.6), angle=20),
        ),
        width=30,
        height=32,
        rest=24,
        flat=False,
        core=(12.0, 12.0),
    )


def cake() -> Thing:
    sponge: Colour = (218, 160, 92)
    icing: Colour = (250, 226, 232)
    return Thing(
        back=(blob((0, -2), 22, 3.2, (200, 204, 214)),),
        front=(
            area(sponge, (-18, -22), (18, -22), (18, -3), (-18, -3)),
            line((196, 50, 70), 2.6, (-17.5, -12), (17.5, -12)),
            area(
                icing,
                (-19, -24),
                (19, -24),
                (19, -17),
                (13, -19),
                (8, -15),
                (2, -19),
                (-4, -15.5),
                (-9, -19),
                (-14, -16),
                (-19, -18),
            ),
            blob((0, -26.5), 3.2, 3.2, (206, 36, 50)),
            blob((-10, -26.2), 2.8, 2.8, (206, 36, 50)),
            blob((10, -26.2), 2.8, 2.8, (206, 36, 50)),
        ),
        width=44,
        height=30,
        rest=25,
        flat=False,
        core=(18.0, 18.0),
    )


def bread() -> Thing:
    crust: Colour = (198, 128, 60)
    cuts = [
        line(shade(crust, 1.5), 2.2, (x - 3, -17.5), (x + 3, -11)) for x in (-13, -4.5, 4.5, 13)
    ]
    return Thing(
        back=(),
        front=(
            area(crust, (-23, -7), (-20, -15), (-10, -19.5), (10, -19.5), (20, -15), (23, -7),
                 (19, 0), (-19, 0)),
            *cuts,
        ),
        width=47, height=20, rest=19, flat=False, thin=True, core=(20.0, 20.0),
    )  # fmt: skip
