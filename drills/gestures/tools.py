"""Pretend tools and what they work on: pale, with a thin edge, for they are not really there."""

from __future__ import annotations

from drills.gestures.hands import Hand
from drills.pictures.geometry import blob, line
from drills.pictures.shapes import Colour, Ellipse, Point, Polygon, Shape, Stroke

PALE: Colour = (232, 240, 250)
EDGE: Colour = (70, 92, 136)
TINT: Colour = (196, 206, 226)
SIGN: Colour = (52, 78, 128)
SKY: Colour = (178, 212, 250)


def bar(width: float, *points: Point, fill: Colour = PALE) -> Stroke:
    return Stroke(points=points, width=width, fill=fill, outline=EDGE)


def sheet(*points: Point, fill: Colour = PALE) -> Polygon:
    return Polygon(points=points, fill=fill, outline=EDGE)


def sign(*points: Point, width: float = 1.5) -> Stroke:
    """A thin line that says how something moves."""
    return line(SIGN, width, *points)


def _held(hand: Hand, fill: Colour, *points: Point) -> Polygon:
    return sheet(*(hand.at(*point) for point in points), fill=fill)


def toothbrush(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    return (
        bar(3.0, hand.at(7, -13), hand.at(7, 26)),
        _held(hand, TINT, (8.5, 17), (12.5, 17), (12.5, 27), (8.5, 27)),
    )


def comb(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    """The comb lies beyond the fingertips, its teeth toward the head."""
    teeth = [line(EDGE, 2.0, hand.at(19 + 4.5 * n, 3), hand.at(19 + 4.5 * n, 12)) for n in range(5)]
    return (*teeth, bar(3.6, hand.at(15, 3), hand.at(38, 3)))


def cup(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    rim = Ellipse(
        centre=hand.at(11, 13), radii=(10.5, 2.6), fill=PALE, outline=EDGE, angle=hand.turned + 90
    )
    return (_held(hand, TINT, (3, -9), (19, -9), (20, 13), (2, 13)), rim)


def spoon(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    """The handle goes into the cup on the table and is hidden below its rim."""
    x, y = hand.at(17, 3)
    return (bar(2.4, (x + 3, y - 10), (x - 3, _RIM + 1), fill=TINT),)


def key(hand: Hand, amount: float) -> tuple[Shape, ...]:
    """A key in a lock; its bow goes thin as it turns.   amount: of a quarter turn."""
    return (bar(2.6, hand.at(24, 3.5), hand.at(43, 3.5)), _bow(hand, 8.5 - 6.5 * amount))


def _bow(hand: Hand, high: float) -> Ellipse:
    return Ellipse(
        centre=hand.at(23, 3.5), radii=(high, 8.0), fill=TINT, outline=EDGE, angle=hand.turned
    )


def hammer(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    return (
        bar(3.6, hand.at(7, -12), hand.at(7, 26)),
        _held(hand, TINT, (0, 24), (17, 24), (17, 32), (0, 32)),
    )


def flat_brush(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    return (
        bar(4.0, hand.at(10, 3.5), hand.at(24, 3.5)),
        _held(hand, TINT, (23, -4), (29, -4), (29, 11), (23, 11)),
        _held(hand, PALE, (29, -4), (38, -3), (38, 10), (29, 11)),
    )


def cloth(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    """The cloth lies over the palm, for it is between the hand and the pane."""
    return (_held(hand, PALE, (-3, -8), (5, -11), (12, -9), (13, 2), (11, 8), (5, 10), (-2, 7)),)


def remote(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    return (
        _held(hand, TINT, (0, 3), (34, 3), (34, 9), (0, 9)),
        *(blob(hand.at(along, 9.6), 1.0, 1.0, EDGE) for along in (14, 20, 26)),
    )


def phone(hand: Hand, _amount: float) -> tuple[Shape, ...]:
    return (_held(hand, TINT, (4, -13), (13, -13), (13, 17), (4, 17)),)


NAIL: tuple[Shape, ...] = (
    sheet((-70, 90), (-34, 90), (-34, 98), (-70, 98), fill=TINT),
    bar(2.0, (-52, 82), (-52, 90)),
    bar(2.0, (-55, 81), (-49, 81)),
)

_RIM = 74.0

CUP_ON_TABLE: tuple[Shape, ...] = (
    Ellipse(centre=(-50, 85), radii=(6, 6.5), fill=TINT, outline=EDGE),
    Ellipse(centre=(-50, 85), radii=(3, 3.5), fill=SKY, outline=EDGE),
    sheet((-50, _RIM), (-26, _RIM), (-28, 98), (-48, 98), fill=TINT),
    Ellipse(centre=(-38, _RIM), radii=(12, 3.5), fill=PALE, outline=EDGE),
)

_PAINT: Colour = (120, 168, 128)
FENCE: tuple[Shape, ...] = (
    sheet((-72, 102), (-72, 24), (-66, 17), (-60, 24), (-60, 102), fill=_PAINT),
    sheet((-58, 102), (-58, 24), (-52, 17), (-46, 24), (-46, 102)),
    Polygon(points=((-57, 40), (-47, 40), (-47, 72), (-57, 72)), fill=_PAINT),
)

LOCK: tuple[Shape, ...] = (
    sheet((-74, 22), (-60, 22), (-60, 104), (-74, 104), fill=TINT),
    sheet((-62, 64), (-57, 64), (-57, 90), (-62, 90)),
    bar(3.4, (-60, 48), (-53, 48)),
    blob((-50, 48), 4.2, 5.6, PALE),
)

PANE: tuple[Shape, ...] = (
    bar(2.6, (-74, 16), (-4, 16)),
    bar(2.6, (-74, 16), (-74, 92)),
    bar(2.6, (-74, 92), (-4, 92)),
    bar(2.6, (-4, 16), (-4, 92)),
)
