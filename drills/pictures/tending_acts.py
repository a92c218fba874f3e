"""Acts done close by: wash, feed, kiss, tickle, tap.

The doer stands on the left, the done-to on the right. Each act shows its roles three ways: hand or
tool is on the done-to, the doer leans in, the done-to answers with arms, face or balance.
"""

from __future__ import annotations

from dataclasses import replace

from drills.pictures import furniture, gear, signs
from drills.pictures.cast import Person
from drills.pictures.geometry import plus
from drills.pictures.motion import rise, swing
from drills.pictures.pairs import posed, staged
from drills.pictures.people import figure
from drills.pictures.poses import (
    hand_at,
    moved,
    seat_height,
    sitting,
    stance,
    within_reach,
)
from drills.pictures.skeleton import Build, Mouth
from drills.pictures.stage import Stage


def wash(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    sit = stance(
        build, near=(0.05, 0.0), far=(-0.05, 0.0), height=0.8, lean=4, tilt=6, mouth=Mouth.SMILE
    )
    sit = replace(
        sit, near_hand=hand_at(build, sit, 0.55, -0.55), far_hand=hand_at(build, sit, 0.6, -0.45)
    )
    washed = figure(done_to, build, sit)
    place = washed.bones.trunk(0.72 - 0.4 * rise(at), -1.05)
    wash = stance(build, lean=14, near=(0.2, 0.0), far=(-0.3, 0.0), height=0.95, mouth=Mouth.CLOSED)
    wash = within_reach(build, wash, place, 0.95)
    half = build.leg_width * 2.5
    wash = moved(wash, min(0.0, -half - build.leg * 0.25 - wash.hip[0]))
    hand = plus(place, (-build.head * 0.5, 0.0))
    rim = (-half + 1.0, -build.hip_height * 0.8)
    wash = replace(wash, near_hand=hand, far_hand=rim)
    washer = figure(doer, build, wash)
    x, y = place
    size = build.head * 0.45
    foam = signs.bubbles(
        (x + 5, y + size * 1.3, 3.6), (x + 2, y - size * 1.5, 2.8), (x - 6, y - size * 2.2, 3.2),
        (x - 13, y - size * 1.6, 2.2), (x - 5, y + size * 1.9, 2.6),
    )  # fmt: skip
    shapes = [
        *washed.shapes, *gear.tub(0.0, half, build.hip_height * 0.8), *washer.body,
        *washer.near_arm, *foam, *gear.sponge(place, size),
    ]  # fmt: skip
    return staged(washer, washed, shapes, (washer.bones.near_arm.end, hand))


def feed(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    eat = sitting(build, facing=-1, lean=2, tilt=-8, mouth=Mouth.OPEN)
    knee = plus(eat.hip, (-build.thigh * 0.6, -build.leg_width * 0.6))
    eat = replace(eat, near_hand=knee, far_hand=plus(knee, (-3.0, 0.0)))
    eater = figure(done_to, build, eat)
    lips = eater.bones.face(1.02, -0.66)
    mouth = plus(lips, (-build.head * 1.1 * rise(at), build.head * 1.3 * rise(at)))
    feed = stance(build, lean=14, tilt=8, near=(0.2, 0.0), far=(-0.3, 0.0), height=0.96)
    hand = plus(mouth, (-build.head * 1.6, build.head * 0.6))
    feed = within_reach(build, feed, hand, 0.95)
    feed = replace(feed, near_hand=hand)
    dish = hand_at(build, feed, 0.55, -0.62)
    feed = replace(feed, far_hand=dish)
    feeder = figure(doer, build, feed)
    shapes = [
        *feeder.body, *furniture.stool(0.0, seat_height(build), build.girth * 1.1), *eater.shapes,
        *gear.bowl(plus(dish, (2.0, -2.0)), build.head * 0.62),
        *gear.spoon(feeder.bones.near_arm.end, mouth), *feeder.near_arm,
    ]  # fmt: skip
    return staged(feeder, eater, shapes, (feeder.bones.near_arm.end, hand))


def kiss(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    stand = stance(
        build, lean=4, tilt=4, near=(0.12, 0.0), far=(-0.12, 0.0), to_viewer=True, mouth=Mouth.SMILE
    )
    kissed = figure(done_to, build, stand)
    cheek = kissed.bones.face(-0.9, -0.4)
    kiss = stance(
        build, lean=14, tilt=-4, near=(0.25, 0.0), far=(-0.45, 0.05), height=0.98, mouth=Mouth.KISS
    )
    lips = posed(doer, build, kiss).face(1.12, -0.54)
    kiss = moved(kiss, cheek[0] - lips[0])
    # Both heads are one height, so the lips meet the cheek when the doer's hip sinks or rises.
    kiss = replace(kiss, hip=plus(kiss.hip, (0.0, cheek[1] - lips[1])))
    kiss = moved(kiss, -build.head * 0.7 * rise(at))
    arm = kissed.bones.trunk(0.75, -0.75)
    kiss = replace(kiss, near_hand=arm)
    kisser = figure(doer, build, kiss)
    # Beside the kissed head: above it the heart would make every figure smaller.
    over = kissed.bones.face(1.75, 0.85)
    shapes = [*kisser.body, *kissed.shapes, *kisser.near_arm, *signs.heart(over, build.head * 0.55)]
    return staged(kisser, kissed, shapes, (kisser.bones.face(1.12, -0.54), cheek))


def tickle(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """A feather under a bare foot; whoever is tickled laughs and throws up the arms."""
    squirm = sitting(build, facing=-1, lean=-14, tilt=-8, mouth=Mouth.LAUGH)
    few = build.leg < 25
    far_out = build.leg + build.leg_width if few else build.leg * 0.9
    heel = (squirm.hip[0] - far_out, squirm.hip[1] - build.leg_width * (0.5 if few else 0.3))
    squirm = replace(
        squirm,
        near_foot=heel,
        near_hand=hand_at(build, squirm, -0.8, 0.2 + 0.2 * rise(at)),
        far_hand=hand_at(build, squirm, 0.55, 0.75),
        near_elbow=-1,
    )
    tickled = figure(done_to, build, squirm)
    heel = tickled.bones.near_leg.end
    sole = plus(heel, (-build.leg_width * 0.6, -build.leg_width * (0.7 + 0.4 * swing(at))))
    tickle = stance(
        build, lean=16, tilt=4, near=(0.3, 0.0), far=(-0.3, 0.0), height=0.94, mouth=Mouth.SMILE
    )
    hand = plus(sole, (-build.head * (1.9 if few else 0.9), -build.head * (0.6 if few else 2.5)))
    tickle = within_reach(build, tickle, hand, 0.8)
    tickle = replace(tickle, near_hand=hand, far_hand=hand_at(build, tickle, 0.1, -0.8))
    tickler = figure(doer, build, tickle)
    foot = signs.bare_foot(tickled.bones.near_leg, done_to.skin, build)
    plume = gear.feather(tickler.bones.near_arm.end, sole, build.head * (0.52 if few else 0.7))
    stool = furniture.stool(0.0, seat_height(build), build.girth * 1.1)
    marks = signs.wiggles(plus(sole, (build.head * 0.7, -build.head * 1.0)), build.head * 0.45)
    shapes = [
        *tickler.body, *stool, *tickled.shapes, *foot, *plume, *tickler.near_arm, *marks,
    ]  # fmt: skip
    return staged(tickler, tickled, shapes, (tickler.bones.near_arm.end, hand))


def tap(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """A finger on the shoulder of somebody who stands with empty hands and is startled."""
    stand = stance(build, near=(0.14, 0.0), far=(-0.14, 0.0), lean=4, tilt=-4, mouth=Mouth.OPEN)
    stand = replace(
        stand,
        near_hand=hand_at(build, stand, 0.3, -0.86),
        far_hand=hand_at(build, stand, 0.75, -0.25),
    )
    tapped = figure(done_to, build, stand)
    back = tapped.bones.trunk(0.9 if build.leg > 25 else 0.6, -0.95)
    place = plus(back, (-build.head * 0.5 * rise(at), 0.0))
    hand = plus(place, (-build.head * 1.25, build.head * 0.1))
    tap = stance(build, lean=5, tilt=2, near=(0.2, 0.0), far=(-0.2, 0.0))
    tap = within_reach(build, tap, hand, 0.97)
    tap = replace(tap, near_hand=hand)
    tapper = figure(doer, build, tap)
    finger = signs.finger(tapper.bones.near_arm.end, place, build, doer.skin)
    marks = signs.taps(back, build.head * 0.5)
    shapes = [
        *tapper.body, *tapped.shapes, *finger, *tapper.near_arm, *marks,
    ]  # fmt: skip
    return staged(tapper, tapped, shapes, (tapper.bones.near_arm.end, hand))
