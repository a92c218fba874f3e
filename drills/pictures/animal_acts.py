"""What animals do to each other. The doer stands on the left; both go to the right."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from drills.pictures import signs
from drills.pictures.animals import RUN, WALK, AnimalFigure, Gait, animal_figure
from drills.pictures.geometry import bounds
from drills.pictures.herd import Animal
from drills.pictures.motion import paced
from drills.pictures.shapes import Point, Shape
from drills.pictures.skeleton import Build
from drills.pictures.stage import Body, Stage


def _body(of: AnimalFigure) -> Body:
    return Body(hip=of.hip, head=of.head, head_radius=of.head_radius, hands=())


def _stage(
    doer: AnimalFigure, done_to: AnimalFigure, shapes: list[Shape], *touches: tuple[Point, Point]
) -> Stage:
    return Stage(shapes=tuple(shapes), doer=_body(doer), done_to=_body(done_to), touches=touches)


def _behind(
    animal: Animal, build: Build, gait: Gait, ahead: AnimalFigure, gap: float
) -> AnimalFigure:
    """`animal` with its foremost point `gap` units behind the animal `ahead`."""
    here = bounds(animal_figure(animal, build, gait).shapes)
    edge = bounds(ahead.shapes).left
    return animal_figure(
        animal, build, replace(gait, x=gait.x + edge - gap - here.left - here.width)
    )


def _going(gait: Gait, at: float) -> Gait:
    """`gait`, a share of two steps later."""
    return replace(gait, fore=paced(at, *gait.fore), hind=paced(at, *gait.hind))


def _push(doer: Animal, done_to: Animal, build: Build, at: float = 0.0) -> Stage:
    braced = Gait(
        fore=((0.5, 0.0), (0.25, 0.0)), hind=((0.3, 0.0), (0.05, 0.12)), pitch=5, neck=-8, nod=8,
        open_mouth=True,
    )  # fmt: skip
    pushed = animal_figure(done_to, build, _going(braced, at))
    heave = Gait(
        fore=((-0.2, 0.0), (-0.5, 0.0)), hind=((-0.5, 0.0), (-0.85, 0.0)), pitch=6,
        neck=doer.neck_rise + 10, nod=56, crouch=0.08,
    )  # fmt: skip
    trial = animal_figure(doer, build, heave)
    # A long head on short legs is held higher, so that the muzzle stays off the ground.
    while trial.muzzle[1] > -doer.muzzle * 0.7:
        heave = replace(heave, neck=heave.neck - 6, nod=heave.nod - 2)
        trial = animal_figure(doer, build, heave)
    heave = replace(heave, x=pushed.rump[0] - trial.brow[0])
    pusher = animal_figure(doer, build, _going(heave, at))
    lines = signs.speed_lines(
        bounds(pusher.shapes).left - 1, 8, pusher.hip[1] - 6, pusher.hip[1] + 2, pusher.hip[1] + 10
    )
    shapes = [*lines, *pushed.shapes, *pusher.shapes]
    touch = (pusher.brow, (pushed.rump[0], pusher.brow[1]))
    return _stage(pusher, pushed, shapes, touch)


def _chase(doer: Animal, done_to: Animal, build: Build, at: float = 0.0) -> Stage:
    fled = animal_figure(done_to, build, _going(replace(RUN, neck=-4, nod=12, open_mouth=True), at))
    hunter = _behind(doer, build, _going(replace(RUN, neck=22, nod=8), at), fled, 3.0)
    left = bounds(hunter.shapes).left
    lines = signs.speed_lines(left - 1, 9, hunter.hip[1] - 7, hunter.hip[1] + 1, hunter.hip[1] + 9)
    x, y = fled.head
    sweat = signs.drops(
        (x - fled.head_radius * 1.7, y - fled.head_radius * 1.5),
        (x - fled.head_radius * 2.4, y - fled.head_radius * 0.9), size=3.2,
    )  # fmt: skip
    return _stage(hunter, fled, [*lines, *hunter.shapes, *fled.shapes, *sweat])


def _follow(doer: Animal, done_to: Animal, build: Build, at: float = 0.0) -> Stage:
    leader = animal_figure(done_to, build, _going(WALK, at))
    follower = _behind(doer, build, _going(replace(WALK, neck=16, nod=48), at), leader, 11.0)
    steps = signs.footprints(follower.hip[0] + doer.body, leader.hip[0], 3.6)
    return _stage(follower, leader, [*steps, *follower.shapes, *leader.shapes])


ANIMAL_ACTS: Mapping[str, Callable[[Animal, Animal, Build, float], Stage]] = MappingProxyType(
    {"push": _push, "chase": _chase, "follow": _follow}
)


def _chased(row: Sequence[Animal], build: Build) -> list[Shape]:
    made = [animal_figure(row[2], build, replace(RUN, neck=-4, nod=12, open_mouth=True))]
    for animal in (row[1], row[0]):
        made.append(_behind(animal, build, replace(RUN, neck=22, nod=8), made[-1], 3.0))
    return [shape for one in reversed(made) for shape in one.shapes]


def _followed(row: Sequence[Animal], build: Build) -> list[Shape]:
    made = [animal_figure(row[2], build, WALK)]
    for animal in (row[1], row[0]):
        made.append(_behind(animal, build, replace(WALK, neck=16, nod=48), made[-1], 10.0))
    steps = signs.footprints(made[2].hip[0] + row[0].body, made[0].hip[0], 3.4)
    return [*steps, *(shape for one in reversed(made) for shape in one.shapes)]


ANIMAL_CHAINS: Mapping[str, Callable[[Sequence[Animal], Build], list[Shape]]] = MappingProxyType(
    {"chase": _chased, "follow": _followed}
)
