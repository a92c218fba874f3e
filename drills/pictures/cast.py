"""The people: how each looks. Nobody is told apart by colour alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from drills.pictures.shapes import Colour

WHITE: Colour = (250, 248, 244)
BLACK: Colour = (38, 36, 44)
GREY: Colour = (178, 178, 184)
NAVY: Colour = (34, 48, 110)
GOLD: Colour = (240, 190, 50)
STRAW: Colour = (236, 200, 104)
RED: Colour = (196, 44, 48)
TEAL: Colour = (0, 150, 146)
BLUE: Colour = (48, 96, 190)
BROWN: Colour = (112, 68, 38)


class Hair(StrEnum):
    SHORT = "short"
    BUN = "bun"
    TOP_KNOT = "top knot"
    LONG = "long"
    TAIL = "tail"
    CURLS = "curls"
    UP = "up"
    BOB = "bob"
    PIGTAILS = "pigtails"
    CROPPED = "cropped"


class Hat(StrEnum):
    NURSE_CAP = "nurse cap"
    CROWN = "crown"
    VEIL = "veil"
    NONE = "none"
    HARD_HAT = "hard hat"
    BAKER_HAT = "baker hat"
    STRAW_HAT = "straw hat"
    SAILOR_HAT = "sailor hat"
    BERET = "beret"
    SUN_HAT = "sun hat"
    HELMET = "helmet"


class Beard(StrEnum):
    NONE = "none"
    FULL = "full"
    MOUSTACHE = "moustache"
    POINTED = "pointed"


class Extra(StrEnum):
    """Marks of dress that are painted on the trunk."""

    APRON = "apron"
    DUNGAREES = "dungarees"
    VEST = "vest"
    SASH = "sash"
    SAILOR_COLLAR = "sailor collar"
    BANDS = "bands"
    SMOCK = "smock"
    TUTU = "tutu"
    WATCH = "watch"
    BODICE = "bodice"
    ERMINE = "ermine"
    WAISTCOAT = "waistcoat"
    LONG_APRON = "long apron"
    BIB = "bib"
    HOOPS = "hoops"
    CARDIGAN = "cardigan"
    COLLAR = "collar"
    STRAPS = "straps"


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """One row of the table.

    skirt: how far down the legs cloth reaches, 0 (trousers) to 1 (the floor).
    flare: how far a skirt stands out at its hem, in trunk depths.
    girth: depth of the trunk against the build's.   bell: trousers widen at the foot.
    shorts: how far down the legs trousers reach, 0 for long ones.   boots: shoes reach the calf.
    """

    skin: Colour
    hair: Hair
    hair_colour: Colour
    hat: Hat
    hat_colour: Colour
    top: Colour
    bottom: Colour
    shoes: Colour
    beard: Beard = Beard.NONE
    skirt: float = 0.0
    flare: float = 0.0
    girth: float = 1.0
    sleeve: float = 1.0
    wide_sleeves: bool = False
    bell: bool = False
    shorts: float = 0.0
    boots: bool = False
    child: bool = False
    trim: Colour = WHITE
    extras: tuple[Extra, ...] = ()


PEOPLE: Mapping[str, Person] = MappingProxyType(
    {
        "nurse": Person(
            skin=(158, 102, 70), hair=Hair.BUN, hair_colour=BLACK,
            hat=Hat.NURSE_CAP, hat_colour=WHITE, top=TEAL, bottom=TEAL, shoes=WHITE,
            sleeve=0.5, skirt=0.55, flare=0.25, extras=(Extra.WATCH,),
        ),
        "queen": Person(
            skin=(246, 208, 178), hair=Hair.UP, hair_colour=(206, 204, 208),
            hat=Hat.CROWN, hat_colour=GOLD, top=(116, 44, 140), bottom=(116, 44, 140),
            shoes=BLACK, skirt=1.0, flare=1.15, trim=GOLD, extras=(Extra.SASH,),
        ),
        "bride": Person(
            skin=(214, 156, 112), hair=Hair.LONG, hair_colour=(74, 42, 28),
            hat=Hat.VEIL, hat_colour=(238, 240, 248), top=WHITE, bottom=WHITE, shoes=WHITE,
            sleeve=0.35, skirt=1.0, flare=0.75, trim=(240, 150, 170), extras=(Extra.BODICE,),
        ),
        "dancer": Person(
            skin=(126, 78, 54), hair=Hair.TOP_KNOT, hair_colour=(24, 20, 22),
            hat=Hat.NONE, hat_colour=BLACK, top=(226, 72, 132), bottom=(248, 176, 200),
            shoes=(226, 72, 132), sleeve=1.0, girth=0.86, trim=(252, 206, 224),
            extras=(Extra.STRAPS, Extra.TUTU),
        ),
        "builder": Person(
            skin=(232, 180, 146), hair=Hair.BOB, hair_colour=(168, 76, 32),
            hat=Hat.HARD_HAT, hat_colour=(252, 210, 30), top=(70, 84, 104),
            bottom=(56, 66, 92), shoes=(120, 78, 40), trim=(240, 240, 190),
            extras=(Extra.VEST,),
        ),
        "baker": Person(
            skin=(250, 214, 186), hair=Hair.SHORT, hair_colour=(60, 42, 34),
            hat=Hat.BAKER_HAT, hat_colour=WHITE, top=WHITE, bottom=(92, 96, 112),
            shoes=BLACK, beard=Beard.MOUSTACHE, girth=1.35, trim=RED, extras=(Extra.APRON,),
        ),
        "farmer": Person(
            skin=(236, 176, 134), hair=Hair.SHORT, hair_colour=(196, 104, 36),
            hat=Hat.STRAW_HAT, hat_colour=STRAW, top=(190, 48, 44), bottom=BLUE,
            shoes=(88, 58, 34), beard=Beard.FULL, girth=1.1, extras=(Extra.DUNGAREES,),
        ),
        "sailor": Person(
            skin=(138, 88, 60), hair=Hair.SHORT, hair_colour=BLACK,
            hat=Hat.SAILOR_HAT, hat_colour=WHITE, top=WHITE, bottom=NAVY, shoes=BLACK,
            bell=True, trim=NAVY, girth=0.95, extras=(Extra.SAILOR_COLLAR,),
        ),
        "judge": Person(
            skin=(206, 150, 112), hair=Hair.CURLS, hair_colour=(214, 212, 212),
            hat=Hat.NONE, hat_colour=GREY, top=(50, 48, 58), bottom=(50, 48, 58),
            shoes=BLACK, skirt=0.95, flare=0.45, wide_sleeves=True, girth=1.1,
            extras=(Extra.BANDS,),
        ),
        "painter": Person(
            skin=(222, 170, 120), hair=Hair.SHORT, hair_colour=(52, 38, 34),
            hat=Hat.BERET, hat_colour=(168, 28, 52), top=(138, 148, 84), bottom=(78, 64, 60),
            shoes=(60, 44, 40), beard=Beard.POINTED, trim=(168, 28, 52), girth=0.95,
            extras=(Extra.SMOCK,),
        ),
        "king": Person(
            skin=(232, 180, 146), hair=Hair.BOB, hair_colour=(92, 58, 36),
            hat=Hat.CROWN, hat_colour=GOLD, top=(176, 28, 44), bottom=(176, 28, 44),
            shoes=BLACK, skirt=0.95, flare=0.5, wide_sleeves=True, girth=1.2, trim=GOLD,
            beard=Beard.FULL, extras=(Extra.ERMINE,),
        ),
        "waiter": Person(
            skin=(196, 140, 100), hair=Hair.CROPPED, hair_colour=(30, 26, 28),
            hat=Hat.NONE, hat_colour=GREY, top=WHITE, bottom=(44, 44, 54), shoes=BLACK,
            girth=0.9, trim=(30, 30, 38), extras=(Extra.WAISTCOAT, Extra.LONG_APRON),
        ),
        "gardener": Person(
            skin=(250, 214, 186), hair=Hair.TAIL, hair_colour=(222, 178, 92),
            hat=Hat.SUN_HAT, hat_colour=(250, 240, 206), top=(214, 120, 150),
            bottom=(122, 104, 84), shoes=(38, 94, 58), boots=True, trim=(54, 128, 66),
            girth=1.05, extras=(Extra.BIB,),
        ),
        "cyclist": Person(
            skin=(206, 150, 112), hair=Hair.BOB, hair_colour=(48, 34, 30),
            hat=Hat.HELMET, hat_colour=(232, 60, 40), top=(250, 214, 40), bottom=(36, 40, 52),
            shoes=(240, 240, 240), shorts=0.45, sleeve=0.45, girth=0.88,
            trim=(30, 90, 190), extras=(Extra.HOOPS,),
        ),
        "woman": Person(
            skin=(238, 190, 158), hair=Hair.LONG, hair_colour=(140, 74, 36),
            hat=Hat.NONE, hat_colour=GREY, top=(40, 76, 150), bottom=(40, 76, 150),
            shoes=(120, 40, 48), skirt=0.68, flare=0.45, girth=0.92,
            trim=(232, 226, 214), extras=(Extra.CARDIGAN,),
        ),
        "man": Person(
            skin=(120, 78, 54), hair=Hair.CROPPED, hair_colour=(214, 212, 210),
            hat=Hat.NONE, hat_colour=GREY, top=(58, 108, 78), bottom=(148, 140, 128),
            shoes=(92, 54, 34), beard=Beard.MOUSTACHE, girth=1.22, trim=(240, 232, 214),
            extras=(Extra.COLLAR,),
        ),
        "boy": Person(
            skin=(176, 120, 84), hair=Hair.SHORT, hair_colour=(44, 32, 28),
            hat=Hat.NONE, hat_colour=GREY, top=(244, 244, 244), bottom=(60, 110, 70),
            shoes=(210, 50, 46), shorts=0.5, sleeve=0.45, child=True,
            trim=(204, 44, 48), extras=(Extra.HOOPS,),
        ),
        "girl": Person(
            skin=(250, 214, 186), hair=Hair.PIGTAILS, hair_colour=(214, 150, 60),
            hat=Hat.NONE, hat_colour=GREY, top=(250, 206, 60), bottom=(250, 206, 60),
            shoes=(60, 60, 120), skirt=0.5, flare=0.7, sleeve=0.4, child=True,
            trim=(60, 90, 180), extras=(Extra.COLLAR,),
        ),
    }
)  # fmt: skip
