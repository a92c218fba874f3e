"""Giving, showing and bringing: a doer, what is given, and a receiver."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from types import MappingProxyType

from drills.pictures import furniture, signs
from drills.pictures.animals import WALK, Gait, animal_figure
from drills.pictures.cast import PEOPLE, Person
from drills.pictures.geometry import between, bounds, distance, limb, line, plus, put
from drills.pictures.herd import ANIMALS, Animal
from drills.pictures.objects import UPRIGHT
from drills.pictures.people import Figure, figure
from drills.pictures.poses import hand_at, stance, walking
from drills.pictures.shapes import Point, Shape
from drills.pictures.skeleton import Build, Mouth

Shapes = list[Shape]

TRANSFERS = ("give", "show", "bring")


def held(name: str, at: Point, size: float) -> tuple[Shape, ...]:
    """A thing, `size` units high or wide, resting on the place `at`."""
    thing = UPRIGHT[name]()
    scale = size / max(thing.width * 0.8, thing.height)
    return put(thing.shapes, at[0], at[1], scale)


def transfer(verb: str, doer: Person, given: str, receiver: Person, build: Build) -> Shapes:
    """The doer on the left, what is given between, the receiver on the right."""
    if given in UPRIGHT:
        return _MAKERS[verb](doer, given, receiver, build)
    return _with_one_between(verb, doer, given, receiver, build)


def _receiving(receiver: Person, build: Build, x: float, *, hands: bool) -> Figure:
    pose = stance(
        build, x, facing=-1, near=(0.12, 0.0), far=(-0.12, 0.0), lean=2, tilt=4, mouth=Mouth.SMILE
    )
    if hands:
        pose = replace(
            pose, near_hand=hand_at(build, pose, 0.72, -0.45),
            far_hand=hand_at(build, pose, 0.8, -0.3),
        )  # fmt: skip
    return figure(receiver, build, pose)


def _give(doer: Person, given: str, receiver: Person, build: Build) -> Shapes:
    take = _receiving(receiver, build, build.apart * 1.25, hands=True)
    pose = stance(build, near=(0.22, 0.0), far=(-0.2, 0.0), lean=8, tilt=4)
    palm = hand_at(build, pose, 0.94, -0.2)
    giver = figure(doer, build, replace(pose, near_hand=palm, far_hand=plus(palm, (-2.0, -3.0))))
    palm = giver.bones.near_arm.end
    thing = held(given, plus(palm, (build.head * 0.35, -build.hand * 0.4)), build.head * 1.7)
    way = signs.arrow(plus(palm, (-build.head * 0.2, build.head * 1.15)), build.head * 1.9)
    return [*giver.body, *take.shapes, *thing, *giver.near_arm, *way]


def _show(doer: Person, given: str, receiver: Person, build: Build) -> Shapes:
    """The thing is on a stand, out of all hands; the doer points at it, the other looks."""
    pose = stance(build, near=(0.15, 0.0), far=(-0.15, 0.0), lean=6, tilt=-4, mouth=Mouth.OPEN)
    tip = hand_at(build, pose, 0.93, -0.1)
    pose = replace(pose, near_hand=tip, far_hand=hand_at(build, pose, 0.1, -0.9))
    shower = figure(doer, build, pose)
    end = shower.bones.near_arm.end
    pointing = signs.finger(end, plus(end, (build.head * 0.8, 0.0)), build, doer.skin)
    size = build.head * (1.9 if build.leg > 25 else 2.1)
    middle = end[0] + build.head * 1.15 + size * 0.55
    top = end[1] + size * 0.5
    x = middle + size * 0.55 + build.head * 2.4
    look = stance(build, x, facing=-1, near=(0.1, 0.0), far=(-0.12, 0.0), lean=10, tilt=8)
    behind = plus(look.hip, (build.girth * 0.9, -build.torso * 0.25))
    looker = figure(receiver, build, replace(look, near_hand=behind, far_hand=behind))
    eye = looker.bones.face(1.4, 0.06)
    goal = (middle + size * 0.5, top - size * 0.45)
    return [
        *shower.body, *looker.shapes, *furniture.pedestal(middle, top, size * 0.6),
        *held(given, (middle, top), size), *pointing, *shower.near_arm, *_gaze(eye, goal, build),
    ]  # fmt: skip


def _gaze(eye: Point, goal: Point, build: Build) -> Shapes:
    """Dashes from an eye to what it looks at."""
    long, width = (3.4, 1.5) if build.leg > 25 else (7.0, 3.4)
    count = max(2, round(distance(eye, goal) / (2 * long)))
    return [
        line(signs.DARK, width, between(eye, goal, k / count),
             between(eye, goal, (k + 0.5) / count))
        for k in range(count)
    ]  # fmt: skip


def _bring(doer: Person, given: str, receiver: Person, build: Build) -> Shapes:
    take = _receiving(receiver, build, build.apart * 1.5, hands=True)
    pose = walking(build, lean=4, near=(0.46, 0.0), far=(-0.5, 0.1))
    palm = hand_at(build, pose, 0.7, -0.35)
    bringer = figure(doer, build, replace(pose, near_hand=palm, far_hand=plus(palm, (4.0, -2.0))))
    palm = bringer.bones.near_arm.end
    thing = held(given, plus(palm, (build.head * 0.4, -build.hand * 0.4)), build.head * 1.7)
    steps = signs.footprints(
        -build.leg * 1.6 - build.head * 1.6, -build.leg * 0.4, build.head * 0.28
    )
    back = bringer.bones.trunk(0.7, -1.0)
    speed = signs.speed_lines(back[0] - 6, build.head, back[1] + 4, back[1] + 14)
    return [*steps, *speed, *bringer.body, *take.shapes, *thing, *bringer.near_arm]


_MAKERS: Mapping[str, Callable[[Person, str, Person, Build], Shapes]] = MappingProxyType(
    {"give": _give, "show": _show, "bring": _bring}
)


def _with_one_between(
    verb: str, doer: Person, given: str, receiver: Person, build: Build
) -> Shapes:
    """Somebody or an animal stands between the two."""
    animal = ANIMALS.get(given)
    pose = walking(build) if verb == "bring" else stance(build, near=(0.15, 0.0), far=(-0.15, 0.0))
    pose = replace(pose, mouth=Mouth.OPEN if verb == "show" else Mouth.CLOSED)
    # Who is shown is not touched, and there is room to be looked at.
    room = build.head if verb == "show" else 0.0
    x = build.apart * 0.95 + room
    if animal is not None:
        between_two = _animal_between(animal, build, x - build.head, walks=verb == "bring")
        wide = bounds(between_two.shapes)
        low, far = between_two.neck, wide.left + wide.width
        middle: Shapes = list(between_two.shapes)
    else:
        other = walking(build, x, lean=2) if verb == "bring" else stance(build, x)
        own = figure(
            PEOPLE[given], build, replace(other, near_hand=hand_at(build, other, -0.55, -0.6))
        )
        low, far = own.bones.near_arm.end, x + build.girth
        middle = list(own.shapes)
    hand = hand_at(build, pose, 0.85, 0.0 if verb == "show" else -0.45)
    if animal is None and verb == "bring":
        hand = low
    doing = figure(doer, build, replace(pose, near_hand=hand))
    end = doing.bones.near_arm.end
    take = _receiving(receiver, build, far + build.apart * 0.62 + room, hands=verb != "show")
    shapes: Shapes = [*doing.body, *middle, *take.shapes]
    if animal is not None and verb != "show":
        goal = take.bones.near_arm.end if verb == "give" else end
        shapes += [limb((150, 90, 40), 1.8, low, between(low, goal, 0.5), goal)]
        if verb == "give":
            shapes += signs.arrow(
                plus(between(end, goal), (-6.0, -build.head * 0.4)), build.head * 1.3
            )
    if verb == "show":
        shapes += signs.finger(end, plus(end, (build.head * 0.8, 0.0)), build, doer.skin)
        shapes += _gaze(
            take.bones.face(1.4, 0.06), (far - build.head * 0.5, low[1] - build.head), build
        )
    if verb == "bring":
        shapes += signs.footprints(
            -build.leg * 1.6 - build.head, -build.leg * 0.4, build.head * 0.28
        )
    return [*shapes, *doing.near_arm]


def _animal_between(animal: Animal, build: Build, x: float, *, walks: bool) -> _Tied:
    made = animal_figure(animal, build, WALK if walks else Gait())
    left = bounds(made.shapes).left
    shift = x - left
    neck = plus(between(made.back, made.head, 0.75), (shift, 0.0))
    return _Tied(put(made.shapes, shift, 0.0), neck)


class _Tied:
    """An animal where it stands, and where a lead is tied to it."""

    def __init__(self, shapes: Sequence[Shape], neck: Point) -> None:
        self.shapes = tuple(shapes)
        self.neck = neck
