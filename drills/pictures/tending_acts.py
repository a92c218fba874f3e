"""Acts done close by: wash, feed, kiss, tickle, tap.

The doer stands on the left, the done-to on the right. Each act shows its roles three ways: hand or
tool is on the done-to, the doer leans in, the done-to answers with arms, face or balance.
"""

from __future__ import annotations

from dataclasses import replace

from drills.pictures import signs
from drills.pictures.cast import Person
from drills.pictures.geometry import plus
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


def wash(doer: Person, done_to: Person, build: Build) -> Stage:
    sit = stance(
        build, near=(0.05, 0.0), far=(-0.05, 0.0), height=0.8, lean=4, tilt=6, mouth=Mouth.SMILE
    )
    sit = replace(
        sit, near_hand=hand_at(build, sit, 0.55, -0.55), far_hand=hand_at(build, sit, 0.6, -0.45)
    )
    washed = figure(done_to, build, sit)
    place = washed.bones.trunk(0.72, -1.05)
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
        *washed.shapes, *signs.tub(0.0, half, build.hip_height * 0.8), *washer.body,
        *washer.near_arm, *foam, *signs.sponge(place, size),
    ]  # fmt: skip
    return staged(washer, washed, shapes, (washer.bones.near_arm.end, hand))


def feed(doer: Person, done_to: Person, build: Build) -> Stage:
    eat = sitting(build, facing=-1, lean=2, tilt=-8, mouth=Mouth.OPEN)
    knee = plus(eat.hip, (-build.thigh * 0.6, -build.leg_width * 0.6))
    eat = replace(eat, near_hand=knee, far_hand=plus(knee, (-3.0, 0.0)))
    eater = figure(done_to, build, eat)
    mouth = eater.bones.face(1.02, -0.66)
    feed = stance(build, lean=14, tilt=8, near=(0.2, 0.0), far=(-0.3, 0.0), height=0.96)
    hand = plus(mouth, (-build.head * 1.6, build.head * 0.6))
    feed = within_reach(build, feed, hand, 0.95)
    feed = replace(feed, near_hand=hand)
    dish = hand_at(build, feed, 0.55, -0.62)
    feed = replace(feed, far_hand=dish)
    feeder = figure(doer, build, feed)
    shapes = [
        *feeder.body, *signs.stool(0.0, seat_height(build), build.girth * 1.1), *eater.shapes,
        *signs.bowl(plus(dish, (2.0, -2.0)), build.head * 0.62),
        *signs.spoon(feeder.bones.near_arm.end, mouth), *feeder.near_arm,
    ]  # fmt: skip
    return staged(feeder, eater, shapes, (feeder.bones.near_arm.end, hand))


def kiss(doer: Person, done_to: Person, build: Build) -> Stage:
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
    arm = kissed.bones.trunk(0.75, -0.75)
    kiss = replace(kiss, near_hand=arm)
    kisser = figure(doer, build, kiss)
    # Beside the kissed head: above it the heart would make every figure smaller.
    over = kissed.bones.face(2.25, 0.75)
    shapes = [*kisser.body, *kissed.shapes, *kisser.near_arm, *signs.heart(over, build.head * 0.55)]
    return staged(kisser, kissed, shapes, (kisser.bones.face(1.12, -0.54), cheek))


def tickle(doer: Person, done_to: Person, build: Build) -> Stage:
    squirm = stance(
        build,
        facing=-1,
        lean=-15,
        tilt=-6,
        near=(0.3, 0.0),
        far=(-0.05, 0.34),
        height=0.94,
        mouth=Mouth.LAUGH,
    )
    squirm = replace(
        squirm,
        near_hand=hand_at(build, squirm, -0.85, -0.15),
        far_hand=hand_at(build, squirm, 0.75, 0.55),
    )
    tickled = figure(done_to, build, squirm)
    tip = tickled.bones.trunk(0.62, 0.95)
    tickle = stance(
        build, lean=14, near=(0.3, 0.0), far=(-0.35, 0.0), height=0.96, mouth=Mouth.SMILE
    )
    hand = plus(tip, (-build.head * 3.2, build.head * 1.0))
    tickle = within_reach(build, tickle, hand, 0.95)
    tickle = replace(tickle, near_hand=hand, far_hand=hand_at(build, tickle, 0.2, -0.75))
    tickler = figure(doer, build, tickle)
    plume = signs.feather(tickler.bones.near_arm.end, tip, build.head * 0.7)
    marks = signs.wiggles(plus(tip, (-build.head * 0.9, -build.head * 0.2)), -1, build.head * 0.5)
    shapes = [*tickler.body, *tickled.shapes, *plume, *tickler.near_arm, *marks]
    return staged(tickler, tickled, shapes, (tickler.bones.near_arm.end, hand))


def tap(doer: Person, done_to: Person, build: Build) -> Stage:
    stand = sitting(build, lean=9 if build.leg > 25 else 26, tilt=-4, mouth=Mouth.OPEN)
    knee = plus(stand.hip, (build.thigh * 0.6, -build.leg_width * 0.6))
    stand = replace(stand, near_hand=knee, far_hand=plus(knee, (4.0, 0.0)))
    tapped = figure(done_to, build, stand)
    place = tapped.bones.trunk(0.95 if build.leg > 25 else 0.85, -0.6)
    tap = stance(build, lean=6 if build.leg > 25 else -4, tilt=4, near=(0.2, 0.0), far=(-0.2, 0.0))
    tap = within_reach(build, tap, place, 0.97)
    tap = replace(tap, near_hand=place)
    tapper = figure(doer, build, tap)
    marks = signs.taps(place, 1, build.head * 0.5)
    stool = signs.stool(0.0, seat_height(build), build.girth * 1.1)
    shapes = [*tapper.body, *stool, *tapped.shapes, *tapper.near_arm, *marks]
    return staged(tapper, tapped, shapes, (tapper.bones.near_arm.end, place))
