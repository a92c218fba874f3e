"""Acts of care: comb, cover, dry, fan, wake, shelter, bandage.

The doer stands on the left, the done-to on the right. Each act shows its roles three ways: hand or
tool is on the done-to, the doer leans in, the done-to answers with arms, face or balance.
"""

from __future__ import annotations

from dataclasses import replace

from drills.pictures import furniture, signs, tools
from drills.pictures.cast import Person
from drills.pictures.geometry import between, line, plus
from drills.pictures.motion import rise, swing
from drills.pictures.pairs import staged
from drills.pictures.people import Figure, figure
from drills.pictures.poses import (
    hand_at,
    lying,
    seat_height,
    shoulder,
    sitting,
    stance,
    within_reach,
)
from drills.pictures.shapes import Point, Shape
from drills.pictures.skeleton import Build, Mouth, stretched
from drills.pictures.stage import Stage


def comb(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """The comb is in the hair of somebody seated, who looks into a hand mirror."""
    sit = sitting(build, lean=4, tilt=-2, mouth=Mouth.SMILE)
    glass = hand_at(build, sit, 0.9, -0.2)
    knee = plus(sit.hip, (build.thigh * 0.6, -build.leg_width * 0.6))
    sit = replace(sit, near_hand=knee, far_hand=glass)
    combed = figure(done_to, build, sit)
    hair = combed.bones.face(-0.95, 0.05 - 0.7 * rise(at))
    hand = plus(hair, (-build.head * 1.25, build.head * 0.15))
    stand = stance(build, lean=8, tilt=4, near=(0.2, 0.0), far=(-0.25, 0.0))
    stand = within_reach(build, stand, hand, 0.86)
    stand = replace(stand, near_hand=hand, near_elbow=1)
    comber = figure(doer, build, stand)
    shapes = [
        *comber.body, *furniture.stool(0.0, seat_height(build), build.girth * 1.1), *combed.shapes,
        *tools.mirror(combed.bones.far_arm.end, build.head * 0.75),
        *tools.comb(comber.bones.near_arm.end, hair, build.head * 0.55), *comber.near_arm,
    ]  # fmt: skip
    return staged(comber, combed, shapes, (comber.bones.near_arm.end, hand))


def _bed_top(build: Build) -> float:
    return -(build.leg * 0.36 + 6.0)


def _bedside(doer: Person, build: Build, *hands: Point, lean: float) -> Figure:
    """The doer stands behind a bed and bends over it, both hands at the places given."""
    over = stance(build, lean=lean, tilt=8, near=(0.1, 0.0), far=(-0.2, 0.0), height=0.97)
    over = within_reach(build, over, hands[0], 0.92)
    return figure(doer, build, replace(over, near_hand=hands[0], far_hand=hands[1]))


def cover(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """At the foot of a bed, a large blanket is spread over somebody who lies there at ease."""
    top = _bed_top(build)
    long = build
    if build.leg < 25:
        # Short legs would leave nothing in the bed to cover.
        top -= 3.0
        build, long = stretched(build, 1.6, 1.1), stretched(build, 2.1, 1.4)
    rest = lying(long, top, mouth=Mouth.SMILE)
    rest = replace(
        rest,
        near_hand=(long.torso * 0.5, top - long.girth * 1.9),
        far_hand=(long.torso * 0.4, top - long.girth * 1.9),
    )
    covered = figure(done_to, long, rest)
    feet = covered.bones.near_leg.end
    # Far from the head, and high: at the chest, both hands look as if they shook the sleeper.
    edge = (long.torso * (0.35 * rise(at) - 0.15), -build.hip_height - build.torso * 1.1)
    hands = (plus(edge, (-3.0, 3.0)), plus(edge, (-build.head * 0.5, 0.0)))
    spread = stance(build, lean=8, tilt=6, near=(0.12, 0.0), far=(-0.2, 0.0))
    spread = within_reach(build, spread, hands[0], 0.96)
    spreader = figure(doer, build, replace(spread, near_hand=hands[0], far_hand=hands[1]))
    quilt = furniture.spread((feet[0] - 7.0, top), edge, long.torso * 0.3, long.girth)
    shapes = [
        *spreader.body, *furniture.bed(feet[0] - 9, covered.bones.head[0] + long.head * 1.5, top),
        *furniture.pillow(covered.bones.head, long.head, top), *covered.shapes, *quilt,
        *spreader.near_arm,
    ]  # fmt: skip
    return staged(spreader, covered, shapes, (spreader.bones.near_arm.end, hands[0]))


def wake(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """Somebody asleep is shaken by the shoulder."""
    top = _bed_top(build)
    # A longer body in bed, so that the hand on it is well away from the face.
    long = build if build.leg > 25 else stretched(build, 1.6, 1.6)
    rest = lying(long, top, asleep=True)
    rest = replace(
        rest,
        near_hand=(long.torso * 0.25, top - long.girth * 1.7),
        far_hand=(long.torso * 0.2, top - long.girth * 1.7),
    )
    asleep = figure(done_to, long, rest)
    arm = asleep.bones.trunk(0.8 if build.leg > 25 else 0.5, 0.9)
    place = plus(arm, (2.5 * swing(at), 0.0))
    over = _bedside(doer, build, place, plus(place, (-6.0, 1.0)), lean=36)
    feet = asleep.bones.near_leg.end
    quilt = furniture.blanket(
        (feet[0] - long.leg_width * 0.7, top), (-long.torso * 0.05, top - long.girth * 2.1),
        long.girth, plain=True,
    )  # fmt: skip
    x, y = asleep.bones.head
    sleep = furniture.snores(
        (x + build.head * 0.5, y - build.head * (2.3 if build.leg > 25 else 1.7)), build.head * 0.55
    )
    shake = [
        line(signs.DARK, 1.7, plus(arm, (side * (9 + k), -3.0 * k)),
             plus(arm, (side * (9 + k), -3.0 * k - 6)))
        for side in (1,) for k in (0, 3)
    ]  # fmt: skip
    stand = x + build.head * 1.5 + 8
    shapes = [
        *furniture.alarm(stand, top, build.head * 0.62),
        *over.body,
        *furniture.bed(feet[0] - 9, x + build.head * 1.5, top),
        *furniture.pillow(asleep.bones.head, build.head, top),
        *asleep.shapes,
        *quilt,
        *over.near_arm,
        *sleep,
        *shake,
    ]
    return staged(over, asleep, shapes, (over.bones.near_arm.end, place))


def dry(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """A large towel round somebody who drips; a puddle at the feet."""
    drip = stance(build, near=(0.08, 0.0), far=(-0.1, 0.0), lean=3, tilt=4, mouth=Mouth.SMILE)
    front = plus(shoulder(build, drip), (build.arm * 0.35, build.torso * 0.45))
    drip = replace(drip, near_hand=front, far_hand=plus(front, (3.0, -4.0)))
    wet = figure(done_to, build, drip)
    move = 0.22 * swing(at)
    high = wet.bones.trunk(0.86 - 0.2 * rise(at), -1.15)
    low = wet.bones.trunk(0.3 + move, -1.2)
    rub = stance(build, lean=12, near=(0.2, 0.0), far=(-0.3, 0.0), height=0.96)
    rub = within_reach(build, rub, high, 0.85)
    rub = replace(rub, near_hand=low, far_hand=high)
    rubber = figure(doer, build, rub)
    x, y = wet.bones.head
    r = build.head
    water = signs.drops(
        (x + r * 1.35, y + r * 0.9), (x + r * 1.75, y + r * 2.0), (x + r * 1.3, y + r * 3.0),
        (x + r * 1.9, y + r * 0.1),
        size=r * 0.3,
    )  # fmt: skip
    towel = tools.towel(wet.bones, build)
    shapes = [
        *tools.puddle(wet.bones.hip[0] + 3, build.girth * 2.4), *rubber.body, *wet.shapes, *towel,
        *rubber.near_arm, *water,
    ]  # fmt: skip
    return staged(rubber, wet, shapes, (rubber.bones.near_arm.end, low))


def fan(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """Somebody hot sits back in a chair; a large fan sends air."""
    rest = sitting(build, facing=-1, lean=-16, tilt=-4, mouth=Mouth.OPEN)
    rest = replace(
        rest,
        near_hand=plus(rest.hip, (-build.thigh * 0.5, -build.leg_width * 0.7)),
        far_hand=plus(rest.hip, (-build.thigh * 0.8, -build.leg_width * 0.6)),
    )
    hot = figure(done_to, build, rest)
    face = hot.bones.face(1.0, -0.3)
    stand = stance(build, lean=6, near=(0.25, 0.0), far=(-0.25, 0.0))
    hand = plus(face, (-build.head * 3.4, build.head * 1.4))
    stand = within_reach(build, stand, hand, 0.8)
    stand = replace(stand, near_hand=hand)
    fanner = figure(doer, build, stand)
    grip = fanner.bones.near_arm.end
    leaf = tools.fan(grip, build.head * 1.7, 18 + 26 * swing(at))
    air = [
        line((250, 252, 255), build.head * 0.2, plus(face, (-build.head * 1.7, dy)),
             plus(face, (-build.head * 1.2, dy - 2.0)), plus(face, (-build.head * 0.8, dy + 1.5)),
             plus(face, (-build.head * 0.35, dy)))
        for dy in (-build.head * 0.7, 0.0, build.head * 0.7)
    ]  # fmt: skip
    x, y = hot.bones.head
    r = build.head
    sweat = signs.drops((x + r * 1.5, y - r * 0.6), (x + r * 1.7, y + r * 0.4), size=r * 0.26)
    shapes = [
        *fanner.body, *furniture.armchair(0.0, seat_height(build), build), *hot.shapes, *air, *leaf,
        *fanner.near_arm, *sweat,
    ]  # fmt: skip
    return staged(fanner, hot, shapes, (grip, hand))


def shelter(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """An umbrella held over somebody; rain falls beside it, and on its holder."""
    stand = stance(build, facing=1, near=(0.1, 0.0), far=(-0.12, 0.0), tilt=-2, mouth=Mouth.SMILE)
    front = plus(shoulder(build, stand), (build.arm * 0.45, build.torso * 0.55))
    stand = replace(stand, near_hand=front, far_hand=plus(front, (2.0, -3.0)))
    under = figure(done_to, build, stand)
    hand = under.bones.trunk(0.75, -1.0)
    hand = plus(hand, (-build.head * 0.9, 0.0))
    hold = stance(build, lean=4, tilt=-4, near=(0.2, 0.0), far=(-0.2, 0.0))
    hold = within_reach(build, hold, hand, 0.9)
    hold = replace(hold, near_hand=hand)
    holder = figure(doer, build, hold)
    grip = holder.bones.near_arm.end
    crown = build.hat * build.head * 1.5
    x, y = under.bones.head
    top = (x, y - build.head - crown - build.head * 1.1)
    half = build.head * 2.6
    shift = at * build.head * 1.4
    rain = tools.rain(
        (holder.bones.head[0] - build.head * 2.4, x + build.head * 4.0),
        (top[1], -4.0),
        (x - half, x + half),
        build.head,
        shift,
    )
    stick, canopy = tools.umbrella(grip, top, half)
    shapes = [*rain, *holder.body, *stick, *under.shapes, *canopy, *holder.near_arm]
    return staged(holder, under, shapes, (grip, hand))


def bandage(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """A bandage from a roll round the forearm of somebody seated; a case on the ground."""
    sit = sitting(build, facing=-1, lean=2, tilt=2)
    wrist = hand_at(build, sit, 0.9, -0.25)
    knee = plus(sit.hip, (-build.thigh * 0.6, -build.leg_width * 0.6))
    sit = replace(sit, near_hand=wrist, far_hand=knee)
    hurt = figure(done_to, build, sit)
    arm = hurt.bones.near_arm
    middle = between(arm.joint, arm.end, 0.35)
    roll = plus(arm.end, (-build.head * 0.75, build.head * (0.75 - 1.3 * rise(at))))
    stand = stance(build, lean=22, tilt=4, near=(0.2, 0.0), far=(-0.35, 0.0), height=0.86)
    stand = within_reach(build, stand, plus(roll, (-build.hand, 0.0)), 0.8)
    stand = replace(
        stand, near_hand=plus(roll, (-build.hand, 0.0)), far_hand=plus(arm.end, (-build.hand, 0.0))
    )
    nurse = figure(doer, build, stand)
    wraps: list[Shape] = tools.wraps(arm, build.arm_width * 1.25)
    shapes = [
        *nurse.body, *furniture.stool(0.0, seat_height(build), build.girth * 1.1), *hurt.shapes,
        *wraps, *tools.bandage_roll(middle, roll, build.head * 0.34), *nurse.near_arm,
        *tools.aid_case((nurse.bones.hip[0] + build.girth * 1.6, 0.0), build.head * 0.8),
    ]  # fmt: skip
    return staged(nurse, hurt, shapes, (nurse.bones.near_arm.end, plus(roll, (-build.hand, 0.0))))
