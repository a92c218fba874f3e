"""The animals: how each looks."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType

from drills.pictures.cast import BLACK, RED, WHITE
from drills.pictures.shapes import Colour


class Horns(StrEnum):
    NONE = "none"
    SHORT = "short"
    SWEPT = "swept"


@dataclass(frozen=True, slots=True, kw_only=True)
class Animal:
    """One row of the table; lengths in drawing units.

    body: hip to shoulder.   depth: of the belly.   neck: length; neck_rise: degrees above level.
    head: length; muzzle: depth.   tail_rise: degrees above level.
    ear: length against a horse's.   blunt: a flat snout.
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
    ear: float = 1.0
    wool: bool = False
    curly_tail: bool = False
    blunt: bool = False
    whiskers: bool = False
    collar: Colour | None = None


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
        "donkey": Animal(
            coat=(142, 136, 138), muzzle_colour=(236, 230, 222), hoof=BLACK,
            body=31, depth=22, leg=25, leg_width=6.5, neck=19, neck_rise=48, head=23, muzzle=10,
            tail=18, tail_rise=-75, tail_colour=(60, 54, 56), mane=(60, 54, 56), ear=2.0,
        ),
        "sheep": Animal(
            coat=(244, 240, 228), muzzle_colour=(52, 48, 52), hoof=(52, 48, 52),
            body=25, depth=25, leg=15, leg_width=5, neck=9, neck_rise=38, head=16, muzzle=8,
            tail=8, tail_rise=-40, tail_colour=(244, 240, 228), wool=True,
        ),
        "pig": Animal(
            coat=(240, 166, 160), muzzle_colour=(214, 120, 118), hoof=(120, 70, 66),
            body=28, depth=25, leg=12, leg_width=6.5, neck=5, neck_rise=12, head=19, muzzle=12,
            tail=9, tail_rise=30, tail_colour=(240, 166, 160), curly_tail=True, blunt=True,
        ),
        "cat": Animal(
            coat=(74, 72, 82), muzzle_colour=(236, 232, 228), hoof=(236, 232, 228),
            body=20, depth=11, leg=14, leg_width=4.6, neck=6, neck_rise=50, head=12, muzzle=7.5,
            tail=22, tail_rise=70, tail_colour=(74, 72, 82), whiskers=True, ear=1.1,
        ),
    }
)  # fmt: skip
