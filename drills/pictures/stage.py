"""Two figures in one act, as shapes in order, with what a check needs to know about them."""

from __future__ import annotations

from dataclasses import dataclass

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
