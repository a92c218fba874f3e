"""More things that hold other things: basket to boat; a cup turned over, a bucket closed."""

from __future__ import annotations

from drills.pictures.geometry import area, blob, limb, line, patch, shade
from drills.pictures.shapes import Colour, Ellipse, Polygon, Stroke
from drills.pictures.thing import Thing


def basket() -> Thing:
    cane: Colour = (190, 140, 70)
    weave = [
        line(shade(cane, 0.62), 1.2, (-14 + k, y), (-10 + k, y))
        for n, y in enumerate((-15, -11, -7, -3))
        for k in range((n % 2) * 4, 26, 8)
    ]
    return Thing(
        back=(
            Stroke(points=((-15, -18), (-11, -34), (0, -39), (11, -34), (15, -18)), width=3.0,
                   fill=shade(cane, 0.8), outline=shade(cane, 0.3)),
            blob((0, -19), 17, 3.4, shade(cane, 0.4)),
        ),
        front=(
            area(cane, (-17, -19), (-8, -16.4), (8, -16.4), (17, -19), (13, 0), (-13, 0)),
            *weave,
            limb(shade(cane, 1.25), 2.2, (-17, -19), (-8, -16.4), (8, -16.4), (17, -19)),
        ),
        width=36, height=40, rest=19, mouth=(0, 19, 14), bulk=2, flat=False,
    )  # fmt: skip


def bag() -> Thing:
    leather: Colour = (70, 120, 96)
    return Thing(
        back=(
            Stroke(points=((-8, -24), (-7, -34), (7, -34), (8, -24)), width=2.4,
                   fill=shade(leather, 0.6)),
            blob((0, -24.5), 14, 2.6, shade(leather, 0.4)),
        ),
        front=(
            area(leather, (-14, -25), (14, -25), (18, 0), (-18, 0)),
            patch(shade(leather, 0.75), (-16.4, -9), (16.4, -9), (18, 0), (-18, 0)),
            blob((0, -17), 2.2, 2.2, (240, 200, 80)),
        ),
        width=36, height=35, rest=25, mouth=(0, 24, 12), bulk=2, flat=False, core=(15.0, 15.0),
    )  # fmt: skip


def pot() -> Thing:
    steel: Colour = (104, 112, 128)
    return Thing(
        back=(
            limb(shade(steel, 0.6), 3.2, (-20, -19), (20, -19)),
            blob((0, -23), 16, 3.4, shade(steel, 0.4)),
        ),
        front=(
            area(steel, (-16, -23), (-8, -20.2), (8, -20.2), (16, -23), (14.5, 0), (-14.5, 0)),
            patch(shade(steel, 1.5), (-12.5, -18), (-9, -17.6), (-8.5, -3), (-11.8, -3)),
        ),
        width=42, height=26, rest=23, mouth=(0, 22.5, 13), core=(15.5, 15.5),
    )  # fmt: skip


def lidded_pot() -> Thing:
    made = pot()
    steel: Colour = (104, 112, 128)
    lid = (
        area(shade(steel, 1.3), (-17, -23), (-11, -27.5), (11, -27.5), (17, -23)),
        blob((0, -29.5), 3.0, 2.2, shade(steel, 0.6)),
    )
    return Thing(back=made.back, front=(*made.front, *lid), width=42, height=32, rest=28,
                 core=(15.5, 15.5))  # fmt: skip


def jug() -> Thing:
    glaze: Colour = (236, 226, 200)
    blue: Colour = (52, 92, 170)
    return Thing(
        back=(
            Stroke(points=((8, -29), (18, -27), (17, -12), (9, -8)), width=3.2, fill=glaze,
                   outline=shade(glaze, 0.35)),
            blob((-1, -33), 9, 2.6, shade(glaze, 0.4)),
        ),
        front=(
            area(glaze, (-14, -35), (-8, -31), (8, -33), (7, -26), (12, -12), (9, 0), (-10, 0),
                 (-13, -12), (-8, -26)),
            patch(blue, (-12.2, -14), (11.4, -14), (12, -10), (-12.8, -10)),
        ),
        width=34, height=36, rest=33, mouth=(0, 32, 7.5), flat=False, core=(11.0, 11.0),
    )  # fmt: skip


def barrel() -> Thing:
    oak: Colour = (160, 104, 54)
    return Thing(
        back=(blob((0, -33), 12, 3.2, shade(oak, 0.4)),),
        front=(
            area(oak, (-12, -33), (-6, -30.4), (6, -30.4), (12, -33), (17, -17), (12, 0), (-12, 0),
                 (-17, -17)),
            line(shade(oak, 0.6), 1.2, (-5, -30), (-7, -17), (-5, 0)),
            line(shade(oak, 0.6), 1.2, (5, -30), (7, -17), (5, 0)),
            line((90, 94, 104), 2.8, (-15, -24), (0, -22), (15, -24)),
            line((90, 94, 104), 2.8, (-15, -9), (0, -7), (15, -9)),
        ),
        width=35, height=36, rest=33, mouth=(0, 32.5, 10.5), bulk=2, core=(15.0, 15.0),
    )  # fmt: skip


def lidded_barrel() -> Thing:
    made = barrel()
    top = blob((0, -33), 12, 3.2, (196, 140, 84))
    return Thing(back=(), front=(*made.front, top), width=35, height=36, rest=34, bulk=2,
                 core=(15.0, 15.0))  # fmt: skip


def boot() -> Thing:
    green: Colour = (44, 104, 62)
    return Thing(
        back=(blob((-9, -37), 8.5, 2.8, shade(green, 0.4)),),
        front=(
            area(green, (-17.5, -38), (-12, -35.6), (-5, -35.6), (-0.5, -38), (0, -16), (9, -12),
                 (14, -8), (15, -3), (-17, -3)),
            area((36, 36, 40), (-17.5, -3.4), (15.5, -3.4), (15.5, 0), (-17.5, 0)),
            line((236, 220, 120), 2.2, (-17, -32), (-0.6, -32)),
        ),
        width=33, height=40, rest=37, rest_at=-9, mouth=(-9, 36.5, 7), flat=False,
        core=(16.0, 1.0),
    )  # fmt: skip


def boat() -> Thing:
    red: Colour = (190, 60, 44)
    white: Colour = (246, 242, 232)
    return Thing(
        back=(area(shade(white, 0.55), (-26, -20), (28, -20), (22, -15), (-22, -15)),),
        front=(
            area(red, (-30, -21), (-24, -17.5), (20, -17.5), (33, -24), (20, 0), (-22, 0)),
            patch(white, (-29.5, -20.5), (-24, -17.2), (20, -17.2), (32, -23), (29.5, -18),
                  (20, -13), (-26, -13)),
        ),
        width=63, height=24, rest=18, mouth=(-1, 18.5, 16), bulk=3, flat=False,
        core=(26.0, 22.0),
    )  # fmt: skip


def car() -> Thing:
    paint: Colour = (38, 120, 176)
    wheel: Colour = (40, 40, 46)
    tyres = [
        shape
        for x in (-17, 17)
        for shape in (blob((x, -7), 7, 7, wheel), blob((x, -7), 3, 3, (190, 194, 204)))
    ]
    return Thing(
        back=(),
        front=(
            area(paint, (-31, -8), (-31, -18), (-20, -21), (-13, -32), (9, -32), (17, -21),
                 (30, -18), (31, -8)),
            area((206, 232, 248), (-16, -21.5), (-11, -29.5), (-3, -29.5), (-3, -21.5)),
            area((206, 232, 248), (0, -21.5), (0, -29.5), (7, -29.5), (13, -21.5)),
            *tyres,
            blob((29, -15), 2.2, 2.2, (252, 236, 150)),
        ),
        width=64, height=32, rest=32, bulk=3, rest_at=-2, core=(27.0, 25.0),
    )  # fmt: skip


def open_car() -> Thing:
    """Without a roof, so that what is in it shows."""
    made = car()
    paint: Colour = (38, 120, 176)
    body = area(paint, (-31, -8), (-31, -20), (-20, -22), (12, -22), (30, -18), (31, -8))
    pane = limb((150, 196, 226), 2.0, (13, -22), (9, -31))
    back = (area(shade(paint, 0.4), (-20, -22), (-18, -26), (8, -26), (12, -22)), pane)
    return Thing(back=back, front=(body, *made.front[3:]), width=64, height=31, rest=22,
                 mouth=(-4, 22, 13), bulk=3, flat=False, core=(27.0, 25.0))  # fmt: skip


def tent() -> Thing:
    canvas: Colour = (214, 150, 60)
    return Thing(
        back=(
            area(canvas, (0, -40), (30, 0), (-30, 0)),
            Polygon(points=((0, -32), (13, 0), (-13, 0)), fill=(74, 50, 34)),
        ),
        front=(
            area(shade(canvas, 1.3), (0, -40), (-2, -30), (-13, 0), (-20, 0)),
            area(shade(canvas, 0.8), (0, -40), (2, -30), (13, 0), (20, 0)),
        ),
        width=60, height=40, rest=40, mouth=(0, 0, 9), bulk=3, flat=False, core=(17.0, 17.0),
    )  # fmt: skip


def turned_cup() -> Thing:
    """Bottom up, so that what stands on it does not look to be in it."""
    red: Colour = (204, 44, 48)
    handle = Stroke(points=((9, -19), (19, -17), (19, -6), (11, -5)), width=3.6, fill=red,
                    outline=shade(red, 0.32))  # fmt: skip
    return Thing(
        back=(handle,),
        front=(
            area(red, (-10.5, -26), (10.5, -26), (13, 0), (-13, 0)),
            Ellipse(centre=(0, -26), radii=(10.5, 2.4), fill=shade(red, 1.25),
                    outline=shade(red, 0.32)),
            patch(shade(red, 1.5), (-7.5, -22), (-5, -22), (-6.5, -4), (-9.5, -4)),
        ),
        width=33, height=28, rest=26.5,
    )  # fmt: skip


def lidded_bucket() -> Thing:
    """With a lid, and its handle hanging down in front: upright, yet closed."""
    steel: Colour = (150, 164, 184)
    return Thing(
        back=(),
        front=(
            area(steel, (-15, -27), (15, -27), (11, 0), (-11, 0)),
            patch(shade(steel, 1.6), (-10.5, -23), (-7.5, -23), (-6.5, -4), (-8.5, -4)),
            Stroke(points=((-14, -25), (-10, -14), (0, -10), (10, -14), (14, -25)), width=1.8,
                   fill=(70, 74, 90)),
            area(shade(steel, 1.25), (-17, -30), (17, -30), (17, -26), (-17, -26)),
        ),
        width=35, height=31, rest=30,
    )  # fmt: skip
