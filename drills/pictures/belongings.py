"""Things that people own: plate to drum."""

from __future__ import annotations

from drills.pictures.geometry import area, blob, limb, line, patch, shade
from drills.pictures.shapes import Colour, Ellipse, Stroke
from drills.pictures.thing import Thing


def plate() -> Thing:
    white: Colour = (250, 250, 252)
    blue: Colour = (70, 120, 196)
    return Thing(
        back=(blob((0, -1.8), 9, 1.8, shade(white, 0.7)),),
        front=(
            blob((0, -5), 21, 4.4, white),
            Ellipse(centre=(0, -5.2), radii=(18.5, 3.4), fill=blue),
            Ellipse(centre=(0, -5.2), radii=(15, 2.6), fill=(236, 240, 246)),
        ),
        width=43, height=10, rest=6, thin=True, core=(20.0, 20.0),
    )  # fmt: skip


def brush() -> Thing:
    """A broad brush with bristles down."""
    wood: Colour = (186, 110, 60)
    return Thing(
        back=(area((236, 220, 180), (-13, -9), (13, -9), (15, 0), (-15, 0)),),
        front=(
            *(line((170, 150, 104), 1.0, (x, -8), (x * 1.12, -0.6)) for x in (-9, -4.5, 0, 4.5, 9)),
            area(wood, (-14, -14), (14, -14), (14, -8.5), (-14, -8.5)),
            limb(wood, 4.6, (0, -15), (0, -34)),
        ),
        width=30, height=36, rest=36, flat=False, thin=True, core=(13.0, 13.0),
    )  # fmt: skip


def coat() -> Thing:
    """On a hanger stand."""
    wool: Colour = (60, 74, 140)
    return Thing(
        back=(
            limb((110, 74, 44), 2.6, (0, 0), (0, -49)),
            limb((110, 74, 44), 2.6, (-9, -1.4), (9, -1.4)),
        ),
        front=(
            area(
                wool,
                (-6, -44),
                (6, -44),
                (16, -37),
                (21, -17),
                (15.5, -15),
                (12, -27),
                (14, -7),
                (-14, -7),
                (-12, -27),
                (-15.5, -15),
                (-21, -17),
                (-16, -37),
            ),
            line(shade(wool, 0.55), 1.6, (0, -40), (0, -8)),
            patch(shade(wool, 1.4), (-5, -43.5), (0, -34), (5, -43.5)),
            *(blob((3, y), 1.3, 1.3, (240, 206, 100)) for y in (-30, -22, -14)),
        ),
        width=43,
        height=50,
        rest=45,
        bulk=2,
        flat=False,
        core=(13.0, 13.0),
    )


def glove() -> Thing:
    wool: Colour = (200, 56, 92)
    return Thing(
        back=(),
        front=(
            *(limb(wool, 4.4, (x, -20), (x * 1.1, -top))
              for x, top in ((-7.5, 28), (-2.5, 32), (2.5, 32), (7.5, 28))),
            limb(wool, 5.0, (8, -12), (15.5, -20)),
            area(wool, (-10, -22), (10, -22), (10, -6), (-10, -6)),
            area(shade(wool, 1.5), (-11, -7), (11, -7), (11, 0), (-11, 0)),
        ),
        width=30, height=35, rest=34, flat=False, core=(10.0, 10.0),
    )  # fmt: skip


def pillow() -> Thing:
    cloth: Colour = (240, 236, 246)
    return Thing(
        back=(),
        front=(
            area(
                cloth,
                (-23, -17),
                (-12, -15),
                (0, -18),
                (12, -15),
                (23, -17),
                (21, -8),
                (23, -0.5),
                (10, -1.5),
                (-10, -1.5),
                (-23, -0.5),
                (-21, -8),
            ),
            line((150, 130, 190), 1.6, (-19, -13.5), (19, -13.5)),
            line((150, 130, 190), 1.6, (-19, -4), (19, -4)),
        ),
        width=46,
        height=18,
        rest=16.5,
        bulk=2,
        thin=True,
        core=(20.0, 20.0),
    )


def blanket() -> Thing:
    """Folded."""
    wool: Colour = (226, 96, 40)
    stripe: Colour = (255, 222, 120)
    folds = [limb(wool, 6.0, (-19, y), (19, y)) for y in (-3.2, -10, -16.8)]
    return Thing(
        back=(),
        front=(
            *folds,
            *(
                patch(stripe, (x, -19.6), (x + 4, -19.6), (x + 4, -0.6), (x, -0.6))
                for x in (-13, 8)
            ),
            line(shade(wool, 0.5), 1.2, (-19, -6.6), (19, -6.6)),
            line(shade(wool, 0.5), 1.2, (-19, -13.4), (19, -13.4)),
        ),
        width=44,
        height=20,
        rest=20,
        bulk=2,
        core=(20.0, 20.0),
    )


def ladder() -> Thing:
    wood: Colour = (196, 136, 62)
    rungs = [limb(wood, 2.6, (-9 + y * 0.06, -y), (9 - y * 0.06, -y)) for y in (8, 18, 28, 38, 48)]
    return Thing(
        back=(),
        front=(*rungs, limb(wood, 3.2, (-11, 0), (-7, -56)), limb(wood, 3.2, (11, 0), (7, -56))),
        width=25, height=58, rest=57, bulk=3, flat=False, thin=True, core=(9.0, 9.0),
    )  # fmt: skip


def phone() -> Thing:
    """A flat telephone with a bright screen."""
    case: Colour = (40, 42, 52)
    return Thing(
        back=(),
        front=(
            area(case, (-10, -38), (10, -38), (10, 0), (-10, 0)),
            patch((120, 210, 240), (-8, -34), (8, -34), (8, -6.5), (-8, -6.5)),
            *(patch((250, 250, 250), (x, y), (x + 4, y), (x + 4, y + 4), (x, y + 4))
              for x in (-6, 2) for y in (-31, -24, -17)),
            blob((0, -3.2), 1.7, 1.7, (200, 204, 214)),
        ),
        width=21, height=38, rest=38, flat=False, core=(10.0, 10.0),
    )  # fmt: skip


def letter() -> Thing:
    """An envelope with a stamp."""
    paper: Colour = (250, 244, 224)
    return Thing(
        back=(),
        front=(
            area(paper, (-20, -26), (20, -26), (20, 0), (-20, 0)),
            line((150, 130, 96), 1.4, (-20, -26), (0, -11), (20, -26)),
            area((206, 50, 60), (12, -7), (17.5, -7), (17.5, -1.6), (12, -1.6)),
            line((90, 90, 110), 1.3, (-15, -5), (0, -5)),
        ),
        width=41, height=27, rest=26, flat=False, core=(19.0, 19.0),
    )  # fmt: skip


def drum() -> Thing:
    red: Colour = (200, 50, 48)
    skin: Colour = (250, 240, 216)
    zigzag = tuple(
        (x, -8 if n % 2 else -21) for n, x in enumerate((-17, -10.2, -3.4, 3.4, 10.2, 17))
    )
    return Thing(
        back=(),
        front=(
            area(red, (-18, -25), (18, -25), (18, -4), (-18, -4)),
            Stroke(points=zigzag, width=1.5, fill=(250, 220, 90)),
            limb((250, 210, 70), 3.2, (-18, -3), (18, -3)),
            blob((0, -26), 18.5, 4.4, skin),
            limb((150, 96, 50), 1.8, (-12, -27), (6, -33)),
            limb((150, 96, 50), 1.8, (12, -27), (-6, -33)),
        ),
        width=38, height=34, rest=27, bulk=2, core=(17.5, 17.5),
    )  # fmt: skip
