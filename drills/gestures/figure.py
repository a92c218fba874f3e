"""A grown-up at a table, from the front or from the side, with one arm that moves.

Units: the head is about 30 wide and 38 high, the middle of the face at x = 14. From the front
the figure is a mirror: its moving hand is on the viewer's left. From the side it faces left,
and the moving hand is its own left, nearest to the viewer. The other arm rests on the table.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from math import sqrt

from drills.gestures.hands import SKIN, Hand, draw
from drills.pictures.geometry import area, blob, distance, edge, limb, line, patch, plus, shade
from drills.pictures.shapes import Colour, Ellipse, Mark, Point, Polygon, Shape

SHIRT: Colour = (38, 122, 128)
SLEEVE: Colour = (74, 164, 166)
HAIR: Colour = (62, 46, 40)
TABLE: Colour = (178, 134, 92)
LIPS: Colour = (150, 52, 48)
DARK: Colour = (30, 24, 26)
WHITE: Colour = (250, 250, 246)
TABLE_TOP = 97.0
FACE: Point = (14.0, 28.0)
_UPPER_ARM = 25.0
_FOREARM = 24.0


class View(StrEnum):
    FRONT = "front"
    SIDE = "side"


class Mouth(StrEnum):
    PLAIN = "plain"
    SMILE = "smile"
    TEETH = "teeth"
    PUFFED = "puffed"
    SIP = "sip"


SHOULDERS = {View.FRONT: (-8.0, 64.0), View.SIDE: (19.0, 64.0)}
EYES = {View.FRONT: ((8.0, 26.0), (20.0, 26.0)), View.SIDE: ((4.5, 26.0),)}


@dataclass(frozen=True, slots=True, kw_only=True)
class Arm:
    """The moving arm.

    elbow_left: bends the elbow to the left of the way to the hand; `elbow` puts it in one place.
    """

    hand: Hand
    elbow_left: bool = True
    elbow: Point | None = None


def body(view: View) -> tuple[Shape, ...]:
    """The trunk, neck and resting arm, without head and moving arm."""
    if view is View.FRONT:
        trunk = area(
            SHIRT, (-13, 68), (-9, 60), (3, 54), (25, 54), (37, 60), (41, 68), (39, 160), (-11, 160)
        )
        collar = Ellipse(centre=(14, 54), radii=(9, 4.5), fill=SKIN, outline=edge(SKIN))
        return (trunk, limb(SKIN, 13, (14, 42), (14, 53)), collar)
    trunk = area(
        SHIRT, (6, 62), (12, 54), (24, 54), (33, 62), (36, 90), (36, 160), (4, 160), (3, 80)
    )
    return (limb(SKIN, 12, (18, 42), (18, 54)), trunk)


def resting(view: View, *, seated: bool) -> tuple[Shape, ...]:
    """The arm that does not move: it hangs, or lies on the table when the figure is seated."""
    sleeve = shade(SHIRT, 0.86)
    if not seated:
        hangs = (limb(SKIN, 8, (43, 100), (42, 118)), limb(sleeve, 11, (36, 66), (43, 104)))
        return hangs if view is View.FRONT else ()
    top = area(TABLE, (-200, TABLE_TOP), (200, TABLE_TOP), (200, 180), (-200, 180))
    if view is View.FRONT:
        hand = limb(SKIN, 8, (27, 95), (18, 96))
        return (top, hand, limb(sleeve, 11, (36, 66), (42, 88), (31, 94)))
    return (top,)


def head(view: View, mouth: Mouth, amount: float) -> tuple[Shape, ...]:
    """The head.   amount: 0 to 1, how far the mouth has gone from plain."""
    if view is View.SIDE:
        return _side_head(mouth)
    return _front_head(mouth, amount)


def arm(view: View, pose: Arm) -> tuple[Shape, ...]:
    """Sleeve and forearm, from the shoulder to the wrist."""
    shoulder, wrist = SHOULDERS[view], pose.hand.wrist
    elbow = pose.elbow or bend(shoulder, wrist, pose.elbow_left)
    cuff = plus(elbow, (wrist[0] - elbow[0], wrist[1] - elbow[1]), 0.72)
    return (
        limb(SKIN, 7.5, elbow, wrist),
        limb(SLEEVE, 11, shoulder, elbow, cuff),
    )


def bend(shoulder: Point, wrist: Point, elbow_left: bool) -> Point:
    """Where the elbow is, by the law of cosines; a reach too long straightens the arm."""
    reach = max(distance(shoulder, wrist), abs(_UPPER_ARM - _FOREARM) + 0.1)
    along = (reach**2 + _UPPER_ARM**2 - _FOREARM**2) / (2 * reach)
    along = min(along, _UPPER_ARM)
    away = sqrt(max(_UPPER_ARM**2 - along**2, 0.0))
    x, y = (wrist[0] - shoulder[0]) / reach, (wrist[1] - shoulder[1]) / reach
    if not elbow_left:
        away = -away
    # The perpendicular that lies to the left of the way up.
    return (shoulder[0] + x * along + y * away, shoulder[1] + y * along - x * away)


def hand_layers(pose: Arm, tool: tuple[Shape, ...]) -> tuple[Shape, ...]:
    """The hand with the tool between its palm and its fingers."""
    layers = draw(pose.hand)
    return (*layers.under, *tool, *layers.over)


def _front_head(mouth: Mouth, amount: float) -> tuple[Shape, ...]:
    x, y = FACE
    shapes: list[Shape] = [
        blob((x - 15, y + 1), 3.2, 4.6, SKIN),
        blob((x + 15, y + 1), 3.2, 4.6, SKIN),
        blob((x, y - 5), 16, 16.5, HAIR),
    ]
    puff = amount if mouth is Mouth.PUFFED else 0.0
    cheeks = [
        blob((x + side * (8 + 2.4 * puff), y + 9), 5.5 + 2.6 * puff, 5.5 + 2.2 * puff, SKIN)
        for side in (-1, 1)
    ]
    # The face hides the cheeks' inner edges; then they are filled again without an edge.
    shapes += [*cheeks, blob((x, y + 1), 14.2, 17.5, SKIN)]
    shapes += [replace(cheek, fill=shade(SKIN, 1 + 0.14 * puff), outline=None) for cheek in cheeks]
    shapes.append(
        patch(HAIR, (x - 14.5, y - 4), (x - 13, y - 15), (x, y - 20), (x + 13, y - 15),
              (x + 14.5, y - 4), (x + 11, y - 9.5), (x - 5, y - 11), (x - 11, y - 9))
    )  # fmt: skip
    for side in (-1, 1):
        eye = (x + side * 6, y - 2)
        shapes += [
            line(HAIR, 1.4, (eye[0] - 2.8, eye[1] - 4.4), (eye[0] + 2.8, eye[1] - 4.4)),
            Ellipse(centre=eye, radii=(2.9, 2.1), fill=WHITE),
            Ellipse(centre=eye, radii=(1.5, 2.0), fill=DARK),
            Mark(at=eye, fill=DARK),
        ]
    shapes.append(line(shade(SKIN, 0.62), 1.5, (x, y + 1), (x - 1.6, y + 5.4), (x + 1.4, y + 5.6)))
    shapes += _front_mouth((x, y + 11), mouth, amount)
    return tuple(shapes)


def _front_mouth(centre: Point, mouth: Mouth, amount: float) -> list[Shape]:
    x, y = centre
    match mouth:
        case Mouth.PUFFED:
            wide = 5 - 2.4 * amount
            return [line(LIPS, 1.8 + amount, (x - wide, y), (x + wide, y))]
        case Mouth.TEETH if amount > 0:
            wide, high = 4.5 + 4.5 * amount, 2.6 * amount
            rim = ((x - wide, y - 1.6 * amount), (x - wide / 2, y + high), (x, y + high + 0.9),
                   (x + wide / 2, y + high), (x + wide, y - 1.6 * amount),
                   (x, y - 0.6 - 0.6 * amount))  # fmt: skip
            return [
                Polygon(points=rim, fill=LIPS, outline=LIPS),
                patch(WHITE, *rim),
                line(shade(WHITE, 0.7), 0.5, (x - wide * 0.7, y + 0.8), (x + wide * 0.7, y + 0.8)),
            ]
        case Mouth.SMILE:
            return [line(LIPS, 1.7, (x - 5.5, y - 1.4), (x - 2.5, y + 0.8), (x + 2.5, y + 0.8),
                         (x + 5.5, y - 1.4))]  # fmt: skip
        case _:
            return [line(LIPS, 1.7, (x - 4.6, y), (x + 4.6, y))]


def _side_head(mouth: Mouth) -> tuple[Shape, ...]:
    x, y = FACE
    shapes: list[Shape] = [
        blob((x + 3.5, y - 4), 15.5, 16.5, HAIR),
        area(SKIN, (x - 13, y), (x - 19, y + 6), (x - 12, y + 8)),
        blob((x - 1, y + 1.5), 13.6, 17.2, SKIN),
        patch(SKIN, (x - 12.5, y + 0.8), (x - 17.6, y + 5.6), (x - 11, y + 7)),
        patch(HAIR, (x - 11.5, y - 9), (x - 6, y - 20), (x + 8, y - 19), (x + 17, y - 8),
              (x + 17.5, y + 2), (x + 12, y + 9), (x + 7, y - 1), (x + 1, y - 3), (x - 1, y - 10)),
        blob((x + 4.5, y + 1.5), 3, 4.4, SKIN),
        line(HAIR, 1.4, (x - 12, y - 6.4), (x - 7.4, y - 6.8)),
        Ellipse(centre=(x - 9.5, y - 2), radii=(1.6, 2.0), fill=DARK),
        Mark(at=(x - 9.5, y - 2), fill=DARK),
    ]  # fmt: skip
    if mouth is Mouth.SIP:
        shapes.append(blob((x - 12, y + 11), 1.6, 2.0, LIPS))
    elif mouth is Mouth.SMILE:
        shapes.append(line(LIPS, 1.7, (x - 12.5, y + 11), (x - 9, y + 11.6), (x - 6, y + 9.5)))
    else:
        shapes.append(line(LIPS, 1.7, (x - 12.5, y + 11), (x - 6.5, y + 11)))
    return tuple(shapes)
