"""Acts between two who stand apart: weigh, lead, stop, pay, paint.

The doer stands on the left, the done-to on the right. Each act shows its roles three ways: hand or
tool is on the done-to, the doer leans in, the done-to answers with arms, face or balance.
"""

from __future__ import annotations

import math
from dataclasses import replace

from drills.pictures import furniture, signs, tools
from drills.pictures.cast import Hat, Person
from drills.pictures.geometry import plus
from drills.pictures.motion import rise, swing
from drills.pictures.pairs import staged
from drills.pictures.people import figure
from drills.pictures.poses import (
    hand_at,
    moved,
    running,
    seat_height,
    shoulder,
    sitting,
    stance,
    walking,
    within_reach,
)
from drills.pictures.skeleton import Build, Mouth
from drills.pictures.stage import Stage


def weigh(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """Somebody stands on a large scale; the doer sets its weight and looks at the dial."""
    step = build.ankle * 1.6
    stand = stance(build, facing=-1, near=(0.06, 0.0), far=(-0.08, 0.0), tilt=2)
    stand = replace(
        stand,
        hip=plus(stand.hip, (0.0, -step)),
        near_foot=plus(stand.near_foot, (0.0, -step)),
        far_foot=plus(stand.far_foot, (0.0, -step)),
    )
    weighed = figure(done_to, build, stand)
    column = -build.girth * 1.0 - build.head * 1.35
    dial = (column, -build.hip_height - build.torso * 0.75)
    size = build.head * 0.95
    knob = plus(dial, (-size * 0.75, size * 0.7))
    hand = plus(knob, (-build.hand, 0.0))
    look = stance(build, lean=8, tilt=2, near=(0.2, 0.0), far=(-0.25, 0.0))
    look = within_reach(build, look, hand, 0.8)
    look = replace(look, near_hand=hand, far_hand=hand_at(build, look, 0.25, -0.75))
    looker = figure(doer, build, look)
    plate = (column - 3.0, build.girth * 1.6)
    shapes = [
        *furniture.scale(column, plate, step, dial[1]), *looker.body, *weighed.shapes,
        *furniture.dial(dial, size, -40 + 70 * (1 - rise(at))), *looker.near_arm,
    ]  # fmt: skip
    return staged(looker, weighed, shapes, (looker.bones.near_arm.end, hand))


def lead(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """The doer walks ahead and points the way; the other is held by the hand."""
    come = walking(build, facing=-1, lean=8, tilt=-2, at=at)
    hand = hand_at(build, come, 0.92, -0.42)
    come = replace(come, near_hand=hand, far_hand=hand_at(build, come, -0.3, -0.85))
    led = figure(done_to, build, come)
    held = led.bones.near_arm.end
    ahead = walking(build, facing=-1, lean=4, tilt=-4, at=at, mouth=Mouth.SMILE)
    x, y = shoulder(build, ahead)
    span = 0.96 * build.arm
    ahead = moved(ahead, held[0] - math.sqrt(max(span**2 - (held[1] - y) ** 2, 1.0)) - x)
    ahead = replace(ahead, near_hand=held, near_elbow=-1, far_hand=hand_at(build, ahead, 0.85, 0.1))
    leader = figure(doer, build, ahead)
    finger = plus(leader.bones.far_arm.end, (-build.head * 0.8, -build.head * 0.15))
    shapes = [
        *signs.finger(leader.bones.far_arm.end, finger, build, doer.skin), *leader.body,
        *led.body, *leader.near_arm, *led.near_arm,
    ]  # fmt: skip
    return staged(leader, led, shapes, (leader.bones.near_arm.end, held))


def stop(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """An open hand and a stop sign before somebody who runs up and brakes."""
    brake = running(
        build, facing=-1, lean=-12, tilt=6, near=(0.62, 0.12), far=(-0.3, 0.0), height=0.9,
        mouth=Mouth.OPEN,
    )  # fmt: skip
    brake = replace(
        brake,
        near_hand=hand_at(build, brake, -0.7, -0.1),
        far_hand=hand_at(build, brake, 0.5, 0.35),
        near_elbow=-1,
    )
    halted = figure(done_to, build, brake)
    gap = build.apart * 1.5 - build.head * 0.5 * rise(at)
    halt = stance(build, -gap, lean=2, near=(0.2, 0.0), far=(-0.2, 0.0), height=0.98)
    palm = hand_at(build, halt, 0.98, -0.12)
    sign = hand_at(build, halt, 0.86, 0.45)
    halt = replace(halt, near_hand=palm, far_hand=sign)
    halter = figure(doer, build, halt)
    end = halter.bones.near_arm.end
    x = halted.bones.hip[0]
    dust = tools.dust(x - build.leg * 0.3, build.head * 0.5)
    back = halted.bones.trunk(0.6, -1.2)
    speed = signs.speed_lines(back[0] + 16, 11, back[1] - 4, back[1] + 5)
    shapes = [
        *tools.stop_sign(halter.bones.far_arm.end, build.head * 0.95), *halter.body,
        *halter.near_arm, *tools.palm(end, build.head * 0.55, doer.skin), *halted.shapes, *dust,
        *speed,
    ]  # fmt: skip
    return staged(halter, halted, shapes, (end, palm))


def pay(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """A bank note and a purse in the hands of who pays; the other holds out an empty palm."""
    take = sitting(build, facing=-1, lean=2, tilt=-4, mouth=Mouth.SMILE)
    open_hand = hand_at(build, take, 0.86, -0.3)
    knee = plus(take.hip, (-build.thigh * 0.6, -build.leg_width * 0.6))
    take = replace(take, near_hand=open_hand, far_hand=knee)
    taker = figure(done_to, build, take)
    palm = taker.bones.near_arm.end
    give = stance(build, -build.apart * 1.1, near=(0.2, 0.0), far=(-0.2, 0.0), lean=5, tilt=6)
    hand = plus(palm, (-build.head * 2.5, -build.head * (0.75 + 0.3 * swing(at))))
    give = within_reach(build, give, hand, 0.93)
    purse = hand_at(build, give, 0.42, -0.62)
    give = replace(give, near_hand=hand, far_hand=purse)
    giver = figure(doer, build, give)
    grip = giver.bones.near_arm.end
    shapes = [
        *giver.body, *furniture.stool(0.0, seat_height(build), build.girth * 1.1), *taker.shapes,
        *tools.purse(giver.bones.far_arm.end, build.head * 0.62),
        *tools.note(plus(grip, (build.head * 0.65, 0.0)), build.head * 0.9), *giver.near_arm,
    ]  # fmt: skip
    return staged(giver, taker, shapes, (grip, hand))


def paint(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """A picture of the other grows on an easel; the other sits for it."""
    pose = stance(build, facing=-1, near=(0.1, 0.0), far=(-0.16, 0.0), tilt=-6, mouth=Mouth.SMILE)
    pose = replace(
        pose,
        near_hand=plus(pose.hip, (2.0, -3.0)),
        near_elbow=1,
        far_hand=plus(pose.hip, (-build.girth * 1.1, -build.torso * 0.35)),
    )
    model = figure(done_to, build, pose)
    size = build.head * 1.45
    canvas = (-build.girth - size * 1.75, -build.hip_height - build.torso * 0.5)
    touch = plus(canvas, (-size * 0.55, size * (0.45 + 0.25 * swing(at))))
    hand = plus(touch, (-build.head * 1.05, build.head * 0.35))
    work = stance(build, lean=6, tilt=2, near=(0.22, 0.0), far=(-0.24, 0.0))
    work = within_reach(build, work, hand, 0.84)
    board = hand_at(build, work, 0.3, -0.62)
    work = replace(work, near_hand=hand, far_hand=board)
    artist = figure(doer, build, work)
    hat = done_to.hair_colour if done_to.hat is Hat.NONE else done_to.hat_colour
    shapes = [
        *artist.body, *model.shapes, *furniture.easel(canvas, size),
        *furniture.portrait(canvas, size, done_to.skin, hat, done_to.top),
        *furniture.palette(artist.bones.far_arm.end, build.head * 0.6),
        *furniture.brush(artist.bones.near_arm.end, touch, build.head * 0.16), *artist.near_arm,
    ]  # fmt: skip
    return staged(artist, model, shapes, (artist.bones.near_arm.end, hand))
