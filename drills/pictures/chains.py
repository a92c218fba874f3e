"""Three in a row, each doing the same act to the next."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from drills.pictures import signs
from drills.pictures.animal_acts import ANIMAL_CHAINS
from drills.pictures.cast import PEOPLE, Person
from drills.pictures.geometry import between, plus
from drills.pictures.herd import ANIMALS
from drills.pictures.pairs import posed
from drills.pictures.people import Figure, figure
from drills.pictures.poses import hand_at, running, stance, walking
from drills.pictures.shapes import Shape
from drills.pictures.skeleton import Build, Mouth, Pose

Shapes = list[Shape]


def _row(
    people: Sequence[Person], build: Build, gap: float, pose: Callable[[int, float], Pose]
) -> list[Figure]:
    return [figure(person, build, pose(n, n * gap)) for n, person in enumerate(people)]


def _chase(people: Sequence[Person], build: Build) -> Shapes:
    gap = build.arm * 0.95 + build.girth + build.head * 2.1

    def pose(n: int, x: float) -> Pose:
        run = running(build, x, lean=20, tilt=-10, mouth=Mouth.OPEN if n == 2 else Mouth.CLOSED)
        reach = 0.92 if n < 2 else 0.5
        return replace(
            run,
            near_hand=hand_at(build, run, reach, 0.0),
            far_hand=hand_at(build, run, reach, 0.25),
        )

    row = _row(people, build, gap, pose)
    back = row[0].bones.trunk(0.7, -1.0)
    speed = signs.speed_lines(back[0] - 7, 11, back[1], back[1] + 9)
    return [*speed, *(shape for one in row for shape in one.shapes)]


def _follow(people: Sequence[Person], build: Build) -> Shapes:
    gap = build.apart * 1.1
    row = _row(people, build, gap, lambda n, x: walking(build, x, lean=8 if n < 2 else 0, tilt=8))
    prints = signs.footprints(build.girth, gap * 2 - build.girth, build.head * 0.28)
    return [*prints, *(shape for one in row for shape in one.shapes)]


def _push(people: Sequence[Person], build: Build) -> Shapes:
    gap = build.arm * 0.86 + build.girth * 2.1

    def pose(n: int, x: float) -> Pose:
        lean = 24 if n < 2 else 14
        heave = stance(build, x, lean=lean, tilt=-8, near=(0.0, 0.0), far=(-0.8, 0.0), height=0.88)
        if n == 2:
            heave = replace(heave, mouth=Mouth.OPEN)
        return replace(heave, near_hand=hand_at(build, heave, 0.85, 0.0))

    row = _row(people, build, gap, pose)
    moved = [
        figure(people[n], build, replace(row[n].bones.pose,
               near_hand=row[n + 1].bones.trunk(0.55, -0.95),
               far_hand=row[n + 1].bones.trunk(0.85, -1.0)))
        for n in (0, 1)
    ]  # fmt: skip
    return [shape for one in (row[2], moved[1], moved[0]) for shape in one.shapes]


def _pull(people: Sequence[Person], build: Build) -> Shapes:
    """From the left, each draws the next by a rope."""
    gap = build.apart * 1.0

    def pose(n: int, x: float) -> Pose:
        lean = 22 if n < 2 else -10
        draw = stance(
            build, x, facing=-1, lean=lean, near=(-0.6, 0.0) if n < 2 else (0.5, 0.0),
            far=(0.2, 0.0), height=0.9, mouth=Mouth.OPEN if n == 2 else Mouth.CLOSED,
        )  # fmt: skip
        grip = hand_at(build, draw, 0.35, -0.3) if n < 2 else hand_at(build, draw, 0.8, 0.1)
        return replace(draw, near_hand=grip, far_hand=plus(grip, (-3.0, 4.0)))

    row = _row(people, build, gap, pose)
    ropes: Shapes = []
    for n in (0, 1):
        tied, over = row[n + 1].bones.trunk(0.1, 1.0), row[n].bones.trunk(1.02, -0.1)
        middle = plus(between(over, tied, 0.55), (0.0, build.head * 0.5))
        ropes += signs.rope(row[n + 1].bones.trunk(0.1, -1.0), tied)
        ropes += signs.rope(tied, *signs.curve(tied, middle, over), row[n].bones.near_arm.end)
        ropes += signs.knot(tied, build.head * 0.22)
    bodies = [shape for one in reversed(row) for shape in one.body]
    arms = [shape for one in row for shape in one.near_arm]
    return [*bodies, *ropes, *arms]


def _lead(people: Sequence[Person], build: Build) -> Shapes:
    """From the left, each leads the next by the hand."""
    gap = build.apart * 1.02
    poses = [walking(build, n * gap, facing=-1, lean=4, tilt=-2) for n in range(3)]
    joined = [
        between(posed(people[n], build, poses[n]).shoulder,
                posed(people[n + 1], build, poses[n + 1]).shoulder)
        for n in (0, 1)
    ]  # fmt: skip
    joined = [plus(at, (0.0, build.torso * 0.4)) for at in joined]
    poses[0] = replace(
        poses[0], near_hand=joined[0], near_elbow=-1, far_hand=hand_at(build, poses[0], 0.85, 0.1)
    )
    poses[1] = replace(poses[1], far_hand=joined[0], near_hand=joined[1], near_elbow=-1)
    poses[2] = replace(poses[2], near_hand=joined[1])
    row = [figure(person, build, pose) for person, pose in zip(people, poses, strict=True)]
    return [shape for one in row for shape in one.shapes]


def _tap(people: Sequence[Person], build: Build) -> Shapes:
    gap = build.apart * 1.0
    poses = [stance(build, n * gap, near=(0.15, 0.0), far=(-0.15, 0.0), lean=3) for n in range(3)]
    bones = [posed(person, build, pose) for person, pose in zip(people, poses, strict=True)]
    backs = [each.trunk(0.82 if build.leg > 25 else 0.6, -1.05) for each in bones]
    shapes: Shapes = []
    for n in (2, 1, 0):
        hand = plus(backs[n + 1], (-build.head * 0.8, 0.0)) if n < 2 else None
        one = figure(people[n], build, replace(poses[n], near_hand=hand))
        shapes += one.body
        if n < 2:
            shapes += signs.finger(one.bones.near_arm.end, backs[n + 1], build, people[n].skin)
        shapes += one.near_arm
        if n:
            shapes += signs.taps(backs[n], build.head * 0.45)
    return shapes


CHAINS: Mapping[str, Callable[[Sequence[Person], Build], Shapes]] = MappingProxyType(
    {
        "chase": _chase,
        "follow": _follow,
        "push": _push,
        "pull": _pull,
        "lead": _lead,
        "tap": _tap,
    }
)


def chain(verb: str, outer: str, middle: str, build: Build) -> Shapes:
    """The outer one does it to the middle one, who does it to another outer one."""
    if outer in PEOPLE:
        return CHAINS[verb]((PEOPLE[outer], PEOPLE[middle], PEOPLE[outer]), build)
    return ANIMAL_CHAINS[verb]((ANIMALS[outer], ANIMALS[middle], ANIMALS[outer]), build)
