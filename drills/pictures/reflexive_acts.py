"""What one does to oneself: wash, comb, dry, feed, splash, fan, bandage, weigh, measure, cover."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from drills.pictures import furniture, gear, signs, tools
from drills.pictures.cast import Person
from drills.pictures.geometry import between, plus
from drills.pictures.people import figure
from drills.pictures.poses import hand_at, lying, seat_height, shoulder, sitting, stance
from drills.pictures.shapes import Shape
from drills.pictures.skeleton import Build, Mouth

Shapes = list[Shape]


def _wash(person: Person, build: Build) -> Shapes:
    sit = stance(build, near=(0.05, 0.0), far=(-0.05, 0.0), height=0.8, mouth=Mouth.SMILE)
    made = figure(person, build, sit)
    place = made.bones.trunk(0.62, 1.0)
    made = figure(
        person, build, replace(sit, near_hand=place, far_hand=hand_at(build, sit, 0.5, -0.6))
    )
    x, y = place
    size = build.head * 0.45
    half = build.leg_width * 2.5
    foam = signs.bubbles((x + 6, y - size, 3.0), (x + 9, y + size, 2.4), (x + 3, y + size * 1.8, 3))
    return [
        *made.body, *gear.tub(0.0, half, build.hip_height * 0.8),
        *gear.sponge(plus(place, (size * 0.4, 0.0)), size), *foam, *made.near_arm,
    ]  # fmt: skip


def _comb(person: Person, build: Build) -> Shapes:
    stand = stance(build, near=(0.1, 0.0), far=(-0.1, 0.0), tilt=4, mouth=Mouth.SMILE)
    made = figure(person, build, stand)
    hair = made.bones.face(-0.95, 0.1)
    hand = plus(hair, (-build.head * 0.95, build.head * 0.25))
    glass = hand_at(build, stand, 0.9, 0.0)
    made = figure(person, build, replace(stand, near_hand=hand, near_elbow=1, far_hand=glass))
    return [
        *made.body, *tools.mirror(made.bones.far_arm.end, build.head * 0.75),
        *tools.comb(made.bones.near_arm.end, hair, build.head * 0.5), *made.near_arm,
    ]  # fmt: skip


def _dry(person: Person, build: Build) -> Shapes:
    stand = stance(build, near=(0.1, 0.0), far=(-0.1, 0.0), mouth=Mouth.SMILE)
    made = figure(person, build, stand)
    stand = replace(
        stand, near_hand=made.bones.trunk(0.95, 0.8), far_hand=made.bones.trunk(0.4, 1.6)
    )
    made = figure(person, build, stand)
    x, y = made.bones.head
    r = build.head
    water = signs.drops(
        (x + r * 1.4, y + r * 0.5), (x + r * 1.7, y + r * 1.6), (x - r * 1.5, y), size=r * 0.3
    )
    towel = tools.towel(made.bones, build)
    puddle = tools.puddle(3.0, build.girth * 2.4)
    return [*puddle, *made.body, *towel, *made.near_arm, *water]


def _feed(person: Person, build: Build) -> Shapes:
    eat = sitting(build, lean=4, tilt=4, mouth=Mouth.OPEN)
    made = figure(person, build, eat)
    mouth = made.bones.face(1.02, -0.66)
    hand = plus(mouth, (build.head * 1.1, build.head * 0.7))
    dish = hand_at(build, eat, 0.6, -0.55)
    made = figure(person, build, replace(eat, near_hand=hand, far_hand=dish))
    return [
        *furniture.stool(0.0, seat_height(build), build.girth * 1.1), *made.body,
        *gear.bowl(plus(dish, (2.0, -2.0)), build.head * 0.62),
        *gear.spoon(made.bones.near_arm.end, mouth), *made.near_arm,
    ]  # fmt: skip


def _splash(person: Person, build: Build) -> Shapes:
    stand = stance(build, near=(0.2, 0.0), far=(-0.2, 0.0), lean=-6, mouth=Mouth.OPEN)
    pail = hand_at(build, stand, 0.86, 0.05)
    made = figure(person, build, stand)
    chest = made.bones.trunk(0.45, 1.0)
    made = figure(person, build, replace(stand, near_hand=plus(pail, (2.0, 5.0)), far_hand=pail))
    size = build.head * 0.95
    water = [
        signs.water(plus(pail, (-size * 0.9, -size * 0.2)), chest, size * 0.4),
        *signs.drops(plus(chest, (6, 12)), plus(chest, (2, 20)), plus(chest, (9, 24)), size=3.0),
    ]
    return [
        *made.body, *water, *gear.bucket(plus(pail, (size * 0.3, 0.0)), -76, size), *made.near_arm
    ]  # fmt: skip


def _fan(person: Person, build: Build) -> Shapes:
    rest = sitting(build, lean=-6, mouth=Mouth.OPEN)
    made = figure(person, build, rest)
    face = made.bones.face(1.0, -0.3)
    hand = plus(face, (build.head * 1.9, build.head * 1.6))
    knee = plus(rest.hip, (build.thigh * 0.5, -build.leg_width * 0.6))
    made = figure(person, build, replace(rest, near_hand=hand, far_hand=knee))
    x, y = made.bones.head
    r = build.head
    sweat = signs.drops((x - r * 1.6, y - r * 0.6), (x - r * 1.8, y + r * 0.4), size=r * 0.26)
    return [
        *furniture.armchair(0.0, seat_height(build), build, facing=1), *made.body,
        *tools.fan(made.bones.near_arm.end, r * 1.5, -24), *made.near_arm, *sweat,
    ]  # fmt: skip


def _bandage(person: Person, build: Build) -> Shapes:
    sit = sitting(build, tilt=8)
    wrist = hand_at(build, sit, 0.8, -0.3)
    roll = plus(wrist, (-build.head * 0.1, -build.head * 0.9))
    made = figure(person, build, replace(sit, far_hand=wrist, near_hand=roll))
    arm = made.bones.far_arm
    middle = between(arm.joint, arm.end, 0.4)
    return [
        *furniture.stool(0.0, seat_height(build), build.girth * 1.1), *made.body,
        *tools.wraps(arm, build.arm_width * 1.25),
        *tools.bandage_roll(middle, made.bones.near_arm.end, build.head * 0.34), *made.near_arm,
        *tools.aid_case((made.bones.near_leg.end[0] + build.head * 1.6, 0.0), build.head * 0.8),
    ]  # fmt: skip


def _weigh(person: Person, build: Build) -> Shapes:
    step = build.ankle * 1.6
    stand = stance(build, near=(0.06, 0.0), far=(-0.08, 0.0), tilt=4)
    made = figure(person, build, stand)
    column = build.girth + build.head * 1.35
    dial = (column, -build.hip_height - build.torso * 0.75)
    floor = furniture.scale(column, (-build.girth * 1.6, column + 3.0), step, dial[1])
    raised = [*made.shapes]
    return [*floor, *signs.raised(raised, step), *furniture.dial(dial, build.head * 0.95, 30)]


def _measure(person: Person, build: Build) -> Shapes:
    stand = stance(build, near=(0.08, 0.0), far=(-0.08, 0.0), tilt=10)
    made = figure(person, build, stand)
    waist = made.bones.trunk(0.2, 1.15)
    made = figure(
        person, build,
        replace(stand, near_hand=waist, far_hand=plus(shoulder(build, stand), (9.0, -2.0))),
    )  # fmt: skip
    x = waist[0] + build.hand
    width = build.head * 0.34
    return [
        *made.body, *gear.tape((x, made.bones.head[1] - build.head), (x, -1.5), width),
        *made.near_arm,
    ]  # fmt: skip


def _cover(person: Person, build: Build) -> Shapes:
    top = -(build.leg * 0.36 + 6.0)
    edge = (build.torso * 0.62, top - build.girth * 2.35)
    rest = lying(build, top, mouth=Mouth.SMILE, near_hand=edge, far_hand=plus(edge, (3.0, 2.0)))
    made = figure(person, build, rest)
    feet = made.bones.near_leg.end
    quilt = furniture.blanket((feet[0] - build.leg_width * 0.7, top), edge, build.girth)
    return [
        *furniture.bed(feet[0] - 9, made.bones.head[0] + build.head * 1.5, top),
        *furniture.pillow(made.bones.head, build.head, top), *made.body, *quilt, *made.near_arm,
    ]  # fmt: skip


REFLEXIVE_ACTS: Mapping[str, Callable[[Person, Build], Shapes]] = MappingProxyType(
    {
        "wash": _wash,
        "comb": _comb,
        "dry": _dry,
        "feed": _feed,
        "splash": _splash,
        "fan": _fan,
        "bandage": _bandage,
        "weigh": _weigh,
        "measure": _measure,
        "cover": _cover,
    }
)
