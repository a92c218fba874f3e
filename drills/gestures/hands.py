"""A hand with fingers that can be told apart, in the shapes that gestures need.

A hand has its own directions: `along` runs from the wrist to the fingertips, `across` to the
side of the thumb. Shapes come in two layers, so that a tool can lie between palm and fingers.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum
from functools import partial

from drills.pictures.geometry import edge, line, plus, shade, turn
from drills.pictures.shapes import Colour, Point, Polygon, Shape, Stroke

SKIN: Colour = (214, 150, 112)
_LINE = edge(SKIN)
_CREASE = shade(SKIN, 0.58)
_SIZE = 1.15
_FINGERS = (-5.7, -1.9, 1.9, 5.7)
_LENGTHS = (8.5, 11.5, 12.5, 10.5)


class HandShape(StrEnum):
    OPEN = "open"
    FLAT = "flat"
    GRIP = "grip"
    ROUND = "round"
    PINCH = "pinch"
    POINT = "point"
    THUMB = "thumb"
    BECKON = "beckon"
    PRESS = "press"


@dataclass(frozen=True, slots=True, kw_only=True)
class Hand:
    """Where a hand is and how it is turned.

    turned: degrees clockwise from fingers up.   thumb_right: with fingers up, on which side.
    bend: 0 to 1, how far the moving fingers have gone.   slim: below 1, seen from nearer the edge.
    size: 1 beside the body; more when it is held out to the viewer.
    """

    shape: HandShape
    wrist: Point
    turned: float
    thumb_right: bool
    bend: float = 0.0
    size: float = 1.0
    slim: float = 1.0

    def at(self, along: float, across: float) -> Point:
        """The place of a point that is given in the hand's own directions."""
        side = 1 if self.thumb_right else -1
        size = self.size * _SIZE
        return plus(
            self.wrist, turn((across * side * size * self.slim, -along * size), self.turned)
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Layers:
    """Shapes that lie under a tool in the hand, and over it."""

    under: tuple[Shape, ...]
    over: tuple[Shape, ...]


def draw(hand: Hand) -> Layers:
    """Draw the hand in its shape."""
    return _SHAPES[hand.shape](hand)


def _joined(*parts: Polygon | Stroke) -> tuple[Shape, ...]:
    """Skin parts with one outline round all of them."""
    outlines: list[Shape] = []
    fills: list[Shape] = []
    for part in parts:
        if isinstance(part, Stroke):
            outlines.append(Stroke(points=part.points, width=part.width, fill=_LINE, outline=_LINE))
        else:
            outlines.append(Polygon(points=part.points, fill=_LINE, outline=_LINE))
        fills.append(part)
    return (*outlines, *fills)


def _finger(hand: Hand, *points: Point, width: float = 3.5) -> Stroke:
    return Stroke(
        points=tuple(hand.at(*p) for p in points), width=width * _SIZE * hand.size, fill=SKIN
    )


def _crease(hand: Hand, *points: Point) -> Stroke:
    return line(_CREASE, 1.0, *(hand.at(*point) for point in points))


def _palm(hand: Hand, long: float, wide: float) -> Polygon:
    outline = (
        (-2, -4.2), (4, -wide + 0.6), (long - 1, -wide), (long + 1, -wide + 2),
        (long + 1, wide - 2), (long - 1, wide), (4, wide - 0.6), (-2, 4.2),
    )  # fmt: skip
    return Polygon(points=tuple(hand.at(*point) for point in outline), fill=SKIN)


def _open(hand: Hand, *, spread: float) -> Layers:
    fan = 1 + 0.55 * spread
    fingers = [
        _finger(hand, (11, across), (12 + length, across * fan))
        for across, length in zip(_FINGERS, _LENGTHS, strict=True)
    ]
    thumb = _finger(hand, (3, 5), (8 - 2 * spread + 2, 9.5 + 3 * spread), width=4.2)
    creases = [
        _crease(hand, (13.5, across), (20 - abs(across) / 2, across * (1 + 0.4 * spread)))
        for across in (-3.8, 0, 3.8)
    ]
    return Layers(under=(*_joined(_palm(hand, 13, 7.4), *fingers, thumb), *creases), over=())


def _fist(hand: Hand, *, reach: float, thumb: tuple[Point, ...]) -> Layers:
    """Four fingers side by side round something that lies across the palm."""
    under = _joined(_palm(hand, reach - 1, 6.8))
    fingers = [
        _finger(hand, (4, across), (reach, across), width=3.3) for across in (-5.1, -1.7, 1.7, 5.1)
    ]
    creases = [_crease(hand, (4, across), (reach + 0.5, across)) for across in (-3.4, 0, 3.4)]
    return Layers(
        under=under,
        over=(*_joined(*fingers), *creases, *_joined(_finger(hand, *thumb, width=4.2))),
    )


def _pinch(hand: Hand) -> Layers:
    """Thumb and first finger meet ahead of the other three, which are closed.

    As `bend` grows the forearm rolls: the thumb comes to the front and the finger goes up.
    """
    roll = 0.6 * hand.bend
    curled = [
        _finger(hand, (4, across), (9.5, across), width=3.6)
        for across in (-5 - 2 * roll, -1.6 - 2.4 * roll)
    ]
    index = _finger(
        hand, (6, 1.5 + 2.5 * roll), (13, -0.6 + 9 * roll), (19, 2 + 3 * roll), width=3.6
    )
    thumb = _finger(
        hand, (1, 4.5 - 4 * roll), (10, 8 - 9.5 * roll), (18.5, 5.4 - 3.4 * roll), width=3.8
    )
    heel = _finger(hand, (1, 3 - 2 * roll), (7, 3.5 - 3 * roll), width=4.5)
    return Layers(
        under=(*_joined(_palm(hand, 7, 6.2), *curled), _crease(hand, (5, -3.3), (10.5, -3.3))),
        over=(*_joined(index), *_joined(thumb), heel),
    )


def _pointing(hand: Hand) -> Layers:
    index = _finger(hand, (8, 4.6), (24, 4.2), width=3.8)
    fist = _palm(hand, 9, 6.8)
    curled = [_finger(hand, (6, across), (11, across), width=3.4) for across in (-5.1, -1.7, 1.4)]
    creases = [_crease(hand, (5, across), (11.5, across)) for across in (-3.4, 0)]
    thumb = _finger(hand, (2, 5.5), (7.5, 1), width=4.0)
    return Layers(under=(), over=(*_joined(fist, index, *curled), *creases, *_joined(thumb)))


def _beckoning(hand: Hand) -> Layers:
    """Seen from the edge: the fingers close toward the thumb's side as `bend` grows."""
    palm = _finger(hand, (1, 0), (10, 0), width=7.5)
    fingers = []
    for number in range(3):
        first = turn((0.0, -8.0), 85 * hand.bend + 10 * number - 6)
        second = turn((0.0, -8.0), 160 * hand.bend + 12 * number - 6)
        knuckle = (11.0, 1.6 - 1.6 * number)
        middle = (knuckle[0] - first[1], knuckle[1] + first[0])
        tip = (middle[0] - second[1], middle[1] + second[0])
        fingers.append(_finger(hand, knuckle, middle, tip, width=3.8))
    thumb = _finger(hand, (3, 3), (8, 9), width=3.8)
    root = _finger(hand, (3, 1), (5, 3), width=4.0)
    return Layers(under=(), over=(*_joined(palm, *fingers), *_joined(thumb), root))


def _pressing(hand: Hand) -> Layers:
    """Seen from the edge: the thumb, on top, comes down as `bend` grows."""
    lift = 8 - 7 * hand.bend
    return _fist(hand, reach=10.0, thumb=((1, 6), (7, 8 + lift), (14, 6.5 + lift)))


_SHAPES: dict[HandShape, Callable[[Hand], Layers]] = {
    HandShape.OPEN: partial(_open, spread=0.7),
    HandShape.FLAT: partial(_open, spread=0.0),
    HandShape.GRIP: partial(_fist, reach=10.5, thumb=((3, 5), (6.5, 11))),
    HandShape.ROUND: partial(_fist, reach=15.5, thumb=((2, 4), (4, 11))),
    HandShape.THUMB: partial(_fist, reach=10.5, thumb=((3, 5), (5, 10), (4.5, 18))),
    HandShape.PINCH: _pinch,
    HandShape.POINT: _pointing,
    HandShape.BECKON: _beckoning,
    HandShape.PRESS: _pressing,
}
