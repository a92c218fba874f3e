"""Scenes that are more than one act or place: described, reported, ordered, compared, counted."""

from __future__ import annotations

from dataclasses import replace

from drills.core.meanings import Act, Comparison, Described, Order, Report, Role, State
from drills.pictures.activities import ACTIVITIES, ANIMAL_ACTIVITIES, side_by_side
from drills.pictures.acts import ACTS
from drills.pictures.animal_acts import ANIMAL_ACTS
from drills.pictures.animals import Gait, animal_figure
from drills.pictures.cast import PEOPLE
from drills.pictures.geometry import bounds, mirrored, put
from drills.pictures.herd import ANIMALS
from drills.pictures.objects import UPRIGHT
from drills.pictures.panels import balloon, in_order
from drills.pictures.people import figure
from drills.pictures.poses import hand_at, stance
from drills.pictures.reflexive_acts import REFLEXIVE_ACTS
from drills.pictures.shapes import Shape
from drills.pictures.skeleton import Build, Mouth, child
from drills.pictures.stage import Body, Stage, mirrored_body, moved_body
from drills.pictures.states import MARKS, in_state, pointer
from drills.pictures.trios import held

WIDE = 1.35
"""From this many times as wide as high, things stand side by side that else are stacked."""


def build_of(key: str, build: Build) -> Build:
    """A child's proportions for a child."""
    return child(build) if key in PEOPLE and PEOPLE[key].child else build


def two(act: Act, build: Build, at: float = 0.0) -> Stage:
    """Both figures of `act`, the doer on the left; `at` as in `acts.Staging`."""
    if act.negated:
        return _no_act(act, build)
    if act.doer in PEOPLE:
        own = build_of(act.doer, build)
        return ACTS[act.verb](PEOPLE[act.doer], PEOPLE[act.done_to], own, at)
    return ANIMAL_ACTS[act.verb](ANIMALS[act.doer], ANIMALS[act.done_to], build, at)


def _no_act(act: Act, build: Build) -> Stage:
    """The two stand and do nothing, turned to each other."""
    left, one = _standing(act.doer, build)
    right, other = _standing(act.done_to, build)
    right, other = tuple(map(mirrored, right)), mirrored_body(other)
    near, far = bounds(left), bounds(right)
    apart = near.left + near.width + build.apart * 0.5 - far.left
    return Stage(
        shapes=(*left, *put(right, apart, 0.0)), doer=one, done_to=moved_body(other, apart)
    )


def _standing(key: str, build: Build) -> tuple[tuple[Shape, ...], Body]:
    if key in ANIMALS:
        made = animal_figure(ANIMALS[key], build, Gait())
        body = Body(hip=made.hip, head=made.head, head_radius=made.head_radius, hands=())
        return made.shapes, body
    own = build_of(key, build)
    person = figure(PEOPLE[key], own, stance(own))
    bones = person.bones
    return person.shapes, Body(
        hip=bones.hip, head=bones.head, head_radius=own.head, hands=bones.hands
    )


def alone(key: str, verb: str, build: Build, at: float = 0.0) -> list[Shape]:
    """One person or animal at an activity."""
    if key in PEOPLE:
        return ACTIVITIES[verb](PEOPLE[key], build_of(key, build), at)
    return ANIMAL_ACTIVITIES[verb](ANIMALS[key], build, at)


def described(meaning: Described, build: Build, at: float = 0.0) -> tuple[Shape, ...]:
    """The act, with one of the two in a state, or pointed at."""
    staged = two(meaning.act, build, at)
    one = staged.doer if meaning.who is Role.DOER else staged.done_to
    hat = 1.15 * build.hat if meaning.subject in PEOPLE else 0.7
    if meaning.state is None:
        return (*staged.shapes, *pointer(one, hat))
    shapes = (*staged.shapes, *MARKS[meaning.state](one))
    if meaning.subject in ANIMALS:
        return (*shapes, *pointer(one, hat))
    return shapes


def report(meaning: Report, build: Build, aspect: float) -> tuple[Shape, ...]:
    """A speaker, and in a balloon what is told."""
    own = build_of(meaning.speaker, build)
    talk = stance(own, near=(0.12, 0.0), far=(-0.12, 0.0), lean=2, tilt=-6, mouth=Mouth.OPEN)
    talk = replace(talk, near_hand=hand_at(own, talk, 0.55, -0.45))
    speaker = figure(PEOPLE[meaning.speaker], own, talk)
    if meaning.is_reflexive:
        doer = meaning.act.doer
        told = tuple(REFLEXIVE_ACTS[meaning.act.verb](PEOPLE[doer], build_of(doer, build)))
    else:
        told = two(meaning.act, build).shapes
    box = bounds(speaker.shapes)
    mouth = speaker.bones.face(1.25, -0.5)
    right, low = box.left + box.width, box.top + box.height
    if aspect > WIDE:
        height = box.height * 1.06
        width = height * aspect * 0.96 - box.width - 8
        bubble = balloon(told, (right + 8, low - height), (width, height), mouth)
    else:
        height = box.height * 1.25
        width = (box.height + height) * aspect * 0.96
        bubble = balloon(told, (box.left - 4, box.top - height - 3), (width, height), mouth)
    return (*speaker.shapes, *bubble)


def order(meaning: Order, build: Build, aspect: float) -> tuple[Shape, ...]:
    """What comes earlier in the left panel, what comes later in the right one."""
    return in_order(
        alone(meaning.doer, meaning.earlier, build),
        alone(meaning.doer, meaning.later, build),
        aspect,
    )


_TALL = (("thigh", 1.3), ("shin", 1.3), ("torso", 1.18), ("upper_arm", 1.12), ("forearm", 1.12))
_SHORT = (("thigh", 0.68), ("shin", 0.68), ("torso", 0.82), ("upper_arm", 0.86), ("forearm", 0.86))
_STRETCHED = {"tall", "short"}


def comparison(meaning: Comparison, build: Build) -> tuple[Shape, ...]:
    """The one with more of the quality on the left."""
    first_is_large = meaning.quality in ("tall", "big")
    gap = 12.0
    left = _sized(meaning.more, meaning.quality, build, large=first_is_large, facing=1)
    right = _sized(meaning.less, meaning.quality, build, large=not first_is_large, facing=-1)
    one, other = bounds(left), bounds(right)
    return (*left, *put(right, one.left + one.width + gap - other.left, 0.0))


def _sized(key: str, quality: str, build: Build, *, large: bool, facing: int) -> tuple[Shape, ...]:
    scale = 1.3 if large else 0.72
    if key in UPRIGHT:
        return put(UPRIGHT[key]().shapes, 0.0, 0.0, scale * 1.6)
    if key in ANIMALS:
        return put(animal_figure(ANIMALS[key], build, Gait()).shapes, 0.0, 0.0, scale)
    own = build_of(key, build)
    if quality in _STRETCHED:
        changes = _TALL if large else _SHORT
        own = replace(own, **{part: getattr(own, part) * factor for part, factor in changes})
        return figure(PEOPLE[key], own, stance(own, facing=facing)).shapes
    return put(figure(PEOPLE[key], own, stance(own, facing=facing)).shapes, 0.0, 0.0, scale)


def state(meaning: State, build: Build) -> tuple[Shape, ...]:
    """One to three of a kind who are, or have, the same."""
    key, complement = meaning.subject, meaning.complement
    if key in ANIMALS:
        made = animal_figure(ANIMALS[key], build, Gait())
        body = Body(hip=made.hip, head=made.head, head_radius=made.head_radius, hands=())
        one = [*made.shapes, *MARKS[complement](body)]
    elif complement in UPRIGHT:
        one = _having(key, complement, build_of(key, build))
    else:
        one = in_state(PEOPLE[key], build_of(key, build), complement)
    return side_by_side(one, meaning.count, 8.0)


def _having(key: str, thing: str, build: Build) -> list[Shape]:
    pose = stance(build, near=(0.1, 0.0), far=(-0.12, 0.0), mouth=Mouth.SMILE)
    palm = hand_at(build, pose, 0.7, -0.38)
    made = figure(
        PEOPLE[key], build, replace(pose, near_hand=palm, far_hand=(palm[0] + 5, palm[1]))
    )
    x, y = made.bones.near_arm.end
    own = held(thing, (x + build.head * 0.55, y - build.hand * 0.4), build.head * 1.9)
    return [*made.body, *own, *made.near_arm]
