"""What every act between two people is put together from."""

from __future__ import annotations

from drills.pictures.cast import Person
from drills.pictures.people import Figure
from drills.pictures.shapes import Point, Shape
from drills.pictures.skeleton import Bones, Build, Pose, solve
from drills.pictures.stage import Body, Stage


def posed(person: Person, build: Build, pose: Pose) -> Bones:
    """The bones of one person's own girth."""
    return solve(build, pose, person.girth)


def _body(bones: Bones) -> Body:
    return Body(hip=bones.hip, head=bones.head, head_radius=bones.build.head, hands=bones.hands)


def staged(
    doer: Figure,
    done_to: Figure,
    shapes: list[Shape],
    *touches: tuple[Point, Point],
) -> Stage:
    """The two figures and all shapes in painting order."""
    return Stage(
        shapes=tuple(shapes),
        doer=_body(doer.bones),
        done_to=_body(done_to.bones),
        touches=touches,
    )
