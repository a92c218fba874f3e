"""Two figures in one act, as shapes in order, with what a check needs to know about them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drills.pictures.shapes import Point, Shape


@dataclass(frozen=True, slots=True, kw_only=True)
class Body:
    """Where one figure is.   head: centre and radius.   hands: none for an animal."""

    hip: Point
    head: Point
    head_radius: float
    hands: tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stage:
    """touches: (where a hand or lips came to be, where it was sent), pair by pair; they part when
    the arm is too short. Without a tool the place sent to is on the done-to, else on the tool."""

    shapes: tuple[Shape, ...]
    doer: Body
    done_to: Body
    touches: tuple[tuple[Point, Point], ...] = ()


def mirrored_body(of: Body) -> Body:
    """The body with left and right exchanged about x = 0."""
    hands = tuple((-x, y) for x, y in of.hands)
    return replace(of, hip=(-of.hip[0], of.hip[1]), head=(-of.head[0], of.head[1]), hands=hands)


def moved_body(of: Body, right: float) -> Body:
    """The body, `right` units to the right."""
    hands = tuple((x + right, y) for x, y in of.hands)
    return replace(
        of, hip=(of.hip[0] + right, of.hip[1]), head=(of.head[0] + right, of.head[1]), hands=hands
    )
