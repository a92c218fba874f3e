"""The cast: how each person and animal looks. Nobody is told apart by colour alone."""

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """One row of the table.

    skirt: how far down the legs cloth reaches, 0 (trousers) to 1 (the floor).
    flare: how far a skirt stands out at its hem, in trunk depths.
    girth: depth of the trunk against the build's.   bell: trousers widen at the foot.
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
    trim: Colour = WHITE
    extras: tuple[Extra, ...] = ()


class Horns(StrEnum):
    NONE = "none"
    SHORT = "short"
    SWEPT = "swept"


@dataclass(frozen=True, slots=True, kw_only=True)
class Animal:
    """One row of the table; lengths in drawing units.

    body: hip to shoulder.   depth: of the belly.   neck: length; neck_rise: degrees above level.
    head: length; muzzle: depth.   tail_rise: degrees above level.
    """

    coat: Colour
    muzzle_colour: Colour
    hoof: Colour
    body: float
    depth: float
    leg: float
    leg_width: float
    neck: float
    neck_rise: float
    head: float
    muzzle: float
    tail: float
    tail_rise: float
    mane: Colour | None = None
    tail_colour: Colour | None = None
    patches: Colour | None = None
    horns: Horns = Horns.NONE
    drooping_ears: bool = False
    beard: bool = False
    udder: bool = False
    collar: Colour | None = None


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
            shoes=(226, 72, 132), sleeve=0.0, girth=0.82, trim=(252, 196, 216),
            extras=(Extra.TUTU,),
        ),
        "builder": Person(
            skin=(232, 180, 146), hair=Hair.TAIL, hair_colour=(168, 76, 32),
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
    }
)  # fmt: skip

ANIMALS: Mapping[str, Animal] = MappingProxyType(
    {
        "horse": Animal(
            coat=(150, 86, 40), muzzle_colour=(112, 62, 30), hoof=BLACK,
            body=34, depth=22, leg=32, leg_width=7, neck=26, neck_rise=58, head=23, muzzle=9,
            tail=26, tail_rise=-50, mane=BLACK, tail_colour=BLACK,
        ),
        "cow": Animal(
            coat=WHITE, muzzle_colour=(240, 168, 172), hoof=BLACK,
            body=36, depth=29, leg=23, leg_width=8, neck=13, neck_rise=30, head=21, muzzle=12,
            tail=22, tail_rise=-75, tail_colour=BLACK, patches=BLACK, horns=Horns.SHORT,
            udder=True,
        ),
        "dog": Animal(
            coat=(172, 112, 52), muzzle_colour=(96, 60, 32), hoof=(132, 84, 40),
            body=26, depth=16, leg=19, leg_width=6.5, neck=10, neck_rise=52, head=18, muzzle=8,
            tail=17, tail_rise=55, tail_colour=(172, 112, 52), drooping_ears=True, collar=RED,
        ),
        "goat": Animal(
            coat=(214, 206, 194), muzzle_colour=(150, 138, 126), hoof=BLACK,
            body=26, depth=19, leg=21, leg_width=5, neck=13, neck_rise=62, head=16, muzzle=7,
            tail=7, tail_rise=40, tail_colour=(214, 206, 194), horns=Horns.SWEPT, beard=True,
        ),
    }
)  # fmt: skip
