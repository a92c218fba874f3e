"""What people do to each other. The doer stands on the left and the done-to on the right.

Each act shows its roles three ways: the doer's hand or tool is on the done-to, the doer leans in,
and the done-to answers with arms, face or balance.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from drills.pictures import signs
from drills.pictures.cast import Person
from drills.pictures.geometry import between, minus, plus, unit
from drills.pictures.people import Figure, figure
from drills.pictures.poses import (
    hand_at,
    moved,
    running,
    shoulder,
    stance,
    walking,
    within_reach,
)
from drills.pictures.shapes import Point, Shape
from drills.pictures.skeleton import Bones, Build, Mouth, Pose, solve
from drills.pictures.stage import Body, Stage


def _bones(person: Person, build: Build, pose: Pose) -> Bones:
    return solve(build, pose, person.girth)


def _body(bones: Bones) -> Body:
    return Body(
        hip=bones.hip, head=bones.head, head_radius=bones.build.head, hands=bones.hands
    )


def _stage(
    doer: Figure,
    done_to: Figure,
    shapes: list[Shape],
    *touches: tuple[Point, Point],
) -> Stage:
    return Stage(
        shapes=tuple(shapes),
        doer=_body(doer.bones),
        done_to=_body(done_to.bones),
        touches=touches,
    )


def _push(doer: Person, done_to: Person, build: Build) -> Stage:
    pose = stance(build, lean=15, tilt=-4, near=(0.5, 0.0), far=(-0.3, 0.06), height=0.94, mouth=Mouth.OPEN)
    pose = replace(
        pose, near_hand=hand_at(build, pose, 0.86, 0.0), far_hand=hand_at(build, pose, 0.8, 0.28)
    )
    pushed = figure(done_to, build, pose)
    high, low = pushed.bones.trunk(0.82, -1.0), pushed.bones.trunk(0.5, -0.92)
    push = stance(build, lean=27, tilt=-10, near=(-0.02, 0.0), far=(-0.85, 0.0), height=0.86)
    push = within_reach(build, push, high, 0.9)
    push = replace(push, near_hand=low, far_hand=high)
    pusher = figure(doer, build, push)
    shapes = [*pusher.body, *pushed.shapes, *pusher.near_arm]
    return _stage(
        pusher, pushed, shapes, (pusher.bones.near_arm.end, low), (pusher.bones.far_arm.end, high)
    )


def _pull(doer: Person, done_to: Person, build: Build) -> Stage:
    pose = stance(
        build, facing=-1, lean=-13, tilt=6, near=(0.55, 0.0), far=(0.0, 0.0), height=0.92, mouth=Mouth.OPEN
    )
    pose = replace(
        pose, near_hand=hand_at(build, pose, 0.72, 0.2), far_hand=hand_at(build, pose, 0.6, 0.5)
    )
    pulled = figure(done_to, build, pose)
    tied = pulled.bones.trunk(0.12, 1.0)
    pull = stance(build, -build.apart * 1.15, facing=-1, lean=27, tilt=-8, near=(-0.75, 0.0), far=(0.22, 0.0), height=0.88)
    over = _bones(doer, build, pull).trunk(1.02, -0.1)
    grip = plus(_bones(doer, build, pull).trunk(0.62, 1.0), (-3.5, 2.0))
    pull = replace(pull, near_hand=grip, far_hand=plus(grip, (-2.5, 5.0)))
    puller = figure(doer, build, pull)
    belt = signs.rope(pulled.bones.trunk(0.12, -1.0), tied)
    cord = signs.rope(tied, over, grip)
    shapes = [*pulled.body, *belt, *puller.body, *cord, *puller.near_arm, *pulled.near_arm]
    return _stage(puller, pulled, shapes, (puller.bones.near_arm.end, grip), (tied, tied))


def _lift(doer: Person, done_to: Person, build: Build) -> Stage:
    up = build.stature * 0.25
    pose = stance(build, facing=-1, lean=3, near=(-0.1, 0.0), far=(-0.26, 0.14), height=1.0, mouth=Mouth.SMILE)
    pose = replace(
        pose,
        hip=plus(pose.hip, (0, -up)),
        near_foot=plus(pose.near_foot, (0, -up)),
        far_foot=plus(pose.far_foot, (0, -up)),
    )
    pose = replace(
        pose, near_hand=hand_at(build, pose, -0.75, 0.5), far_hand=hand_at(build, pose, 0.55, 0.75)
    )
    lifted = figure(done_to, build, pose)
    side, front = lifted.bones.trunk(0.22, 0.35), lifted.bones.trunk(0.3, 1.0)
    hold = stance(build, lean=-7, tilt=-12, near=(0.3, 0.0), far=(-0.3, 0.0), height=0.9)
    hold = within_reach(build, hold, side, 0.97)
    hold = replace(hold, near_hand=side, far_hand=front, near_elbow=1)
    lifter = figure(doer, build, hold)
    x = lifted.bones.hip[0]
    feet = -up - 1
    marks = [
        shape
        for dx in (-9.0, 0.0, 9.0)
        for shape in (signs.line(signs.DARK, 1.7, (x + 6 + dx, feet + 8), (x + 6 + dx, feet + 8 + up * 0.5)),)
    ]
    shapes = [*signs.shadow(x + 4, 15), *marks, *lifter.body, *lifted.shapes, *lifter.near_arm]
    return _stage(
        lifter, lifted, shapes, (lifter.bones.near_arm.end, side), (lifter.bones.far_arm.end, front)
    )


def _carry(doer: Person, done_to: Person, build: Build) -> Stage:
    walk = walking(build, lean=-6, tilt=4, near=(0.42, 0.0), far=(-0.42, 0.06))
    chest = _bones(doer, build, walk)
    hip = (chest.hip[0] - build.torso * 0.1 + (build.head - 11.5) * 1.2, chest.trunk(0.15, 0.0)[1])
    knee = (hip[0] - build.thigh * 0.96, hip[1] - build.thigh * 0.3)
    near_foot = (knee[0] - build.shin * 0.55, knee[1] + build.shin * 0.84)
    far_foot = plus(near_foot, (-3.0, -4.0))
    pose = Pose(
        hip=hip, near_foot=near_foot, far_foot=far_foot, facing=-1, lean=-72, tilt=6,
        mouth=Mouth.SMILE,
    )  # fmt: skip
    bones = _bones(done_to, build, pose)
    pose = replace(pose, near_hand=bones.trunk(0.25, 0.9), far_hand=bones.trunk(0.4, 1.3))
    carried = figure(done_to, build, pose)
    back = carried.bones.trunk(0.72, -0.75)
    thigh = plus(between(carried.bones.near_leg.root, carried.bones.near_leg.joint, 0.75), (0, build.leg_width * 0.4))
    hold = replace(walk, near_hand=back, far_hand=thigh)
    carrier = figure(doer, build, hold)
    shapes = [*carrier.body, *carried.shapes, *carrier.near_arm]
    return _stage(carrier, carried, shapes, (carrier.bones.near_arm.end, back), (carrier.bones.far_arm.end, thigh))


def _chase(doer: Person, done_to: Person, build: Build) -> Stage:
    flee = running(build, lean=20, tilt=-8, mouth=Mouth.OPEN)
    flee = replace(flee, near_hand=hand_at(build, flee, 0.62, 0.1), far_hand=hand_at(build, flee, -0.62, -0.3), far_elbow=1)
    fled = figure(done_to, build, flee)
    gap = build.arm * 0.95 + build.girth + build.head * 1.7
    hunt = running(build, -gap, lean=22, tilt=-12, near=(0.42, 0.0), far=(-0.6, 0.5))
    hunt = replace(hunt, near_hand=hand_at(build, hunt, 0.95, 0.0), far_hand=hand_at(build, hunt, 0.9, 0.3))
    hunter = figure(doer, build, hunt)
    x, y = fled.bones.head
    radius = build.head
    sweat = signs.drops(
        (x - radius * 1.7, y - radius * 0.1), (x - radius * 2.1, y + radius * 0.6), size=2.8
    )
    back = hunter.bones.trunk(0.7, -1.0)
    lines = signs.speed_lines(back[0] - 7, 13, back[1] - 2, back[1] + 7, back[1] + 16)
    shapes = [*lines, *hunter.body, *fled.shapes, *hunter.near_arm, *sweat]
    return _stage(hunter, fled, shapes)


def _follow(doer: Person, done_to: Person, build: Build) -> Stage:
    lead = walking(build, mouth=Mouth.CLOSED)
    lead = replace(lead, near_hand=hand_at(build, lead, -0.3, -0.85), far_hand=hand_at(build, lead, 0.4, -0.8))
    leader = figure(done_to, build, lead)
    gap = build.apart * 1.1
    trail = walking(build, -gap, near=(0.42, 0.05), far=(-0.36, 0.0), tilt=10, lean=3)
    trail = replace(trail, near_hand=hand_at(build, trail, 0.4, -0.8), far_hand=hand_at(build, trail, -0.3, -0.85))
    follower = figure(doer, build, trail)
    steps = signs.footprints(follower.bones.hip[0] + build.girth, leader.bones.hip[0] - build.girth, build.head * 0.3)
    return _stage(follower, leader, [*steps, *follower.shapes, *leader.shapes])


def _wash(doer: Person, done_to: Person, build: Build) -> Stage:
    sit = stance(build, near=(0.05, 0.0), far=(-0.05, 0.0), height=0.8, lean=4, tilt=6, mouth=Mouth.SMILE)
    sit = replace(sit, near_hand=hand_at(build, sit, 0.55, -0.55), far_hand=hand_at(build, sit, 0.6, -0.45))
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
    hand = washer.bones.near_arm.end
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
    return _stage(washer, washed, shapes, (place, place))


def _feed(doer: Person, done_to: Person, build: Build) -> Stage:
    eat = stance(build, facing=-1, lean=6, tilt=-4, mouth=Mouth.OPEN)
    eater = figure(done_to, build, eat)
    mouth = eater.bones.mouth
    feed = stance(build, lean=5, tilt=4, near=(0.25, 0.0), far=(-0.2, 0.0))
    hand = plus(mouth, (-build.head * 1.6, build.head * 0.6))
    feed = within_reach(build, feed, hand, 0.95)
    feed = replace(feed, near_hand=hand)
    dish = hand_at(build, feed, 0.55, -0.62)
    feed = replace(feed, far_hand=dish)
    feeder = figure(doer, build, feed)
    shapes = [
        *feeder.body, *signs.bowl(plus(dish, (2.0, -2.0)), build.head * 0.62), *eater.shapes,
        *signs.spoon(feeder.bones.near_arm.end, mouth), *feeder.near_arm,
    ]  # fmt: skip
    return _stage(feeder, eater, shapes, (mouth, mouth))


def _kiss(doer: Person, done_to: Person, build: Build) -> Stage:
    stand = stance(build, lean=4, tilt=4, near=(0.12, 0.0), far=(-0.12, 0.0), to_viewer=True, mouth=Mouth.SMILE)
    kissed = figure(done_to, build, stand)
    cheek = kissed.bones.face(-0.9, -0.4)
    kiss = stance(build, lean=14, tilt=-4, near=(0.25, 0.0), far=(-0.45, 0.05), height=0.98, mouth=Mouth.KISS)
    lips = _bones(doer, build, kiss).face(1.12, -0.54)
    kiss = moved(kiss, cheek[0] - lips[0])
    # Both heads are one height, so the lips meet the cheek when the doer's hip sinks or rises.
    kiss = replace(kiss, hip=plus(kiss.hip, (0.0, cheek[1] - lips[1])))
    arm = kissed.bones.trunk(0.75, -0.75)
    kiss = replace(kiss, near_hand=arm)
    kisser = figure(doer, build, kiss)
    over = (cheek[0] - build.head * 0.2, cheek[1] - build.head * 2.9)
    shapes = [*kisser.body, *kissed.shapes, *kisser.near_arm, *signs.heart(over, build.head * 0.55)]
    return _stage(kisser, kissed, shapes, (kisser.bones.face(1.12, -0.54), cheek))


def _tickle(doer: Person, done_to: Person, build: Build) -> Stage:
    squirm = stance(build, facing=-1, lean=-15, tilt=-6, near=(0.3, 0.0), far=(-0.1, 0.12), height=0.94, mouth=Mouth.LAUGH)
    squirm = replace(squirm, near_hand=hand_at(build, squirm, -0.7, 0.35), far_hand=hand_at(build, squirm, 0.3, 0.85))
    tickled = figure(done_to, build, squirm)
    tip = tickled.bones.trunk(0.62, 0.95)
    tickle = stance(build, lean=14, near=(0.3, 0.0), far=(-0.35, 0.0), height=0.96, mouth=Mouth.SMILE)
    hand = plus(tip, (-build.head * 2.4, build.head * 0.7))
    tickle = within_reach(build, tickle, hand, 0.95)
    tickle = replace(tickle, near_hand=hand, far_hand=hand_at(build, tickle, 0.2, -0.75))
    tickler = figure(doer, build, tickle)
    plume = signs.feather(tickler.bones.near_arm.end, tip, build.head * 0.5)
    shapes = [*tickler.body, *tickled.shapes, *plume, *tickler.near_arm]
    return _stage(tickler, tickled, shapes, (tip, tip))


def _film(doer: Person, done_to: Person, build: Build) -> Stage:
    show = stance(build, facing=-1, lean=-3, near=(0.1, 0.0), far=(-0.2, 0.0), mouth=Mouth.SMILE)
    show = replace(show, far_hand=hand_at(build, show, 0.72, 0.75), near_hand=plus(show.hip, (-1.0, -3.0)), near_elbow=1)
    shown = figure(done_to, build, show)
    film = stance(build, -build.apart * 1.5, lean=10, tilt=2, near=(0.2, 0.0), far=(-0.3, 0.0), height=0.95)
    eye = _bones(doer, build, film).face(1.35, -0.1)
    size = build.head * 0.82
    lens = (eye[0] + size * 2.1, eye[1] + size * 0.2)
    grip = (lens[0] - size * 1.5, lens[1] + size * 0.5)
    film = replace(film, near_hand=grip, far_hand=plus(grip, (6.0, 0.0)))
    filmer = figure(doer, build, film)
    beam = [
        signs.line((120, 120, 140), 1.2, plus(lens, (size * 0.8, -size * 0.3)), plus(lens, (size * 1.9, -size * 0.75))),
        signs.line((120, 120, 140), 1.2, plus(lens, (size * 0.8, size * 0.3)), plus(lens, (size * 1.9, size * 0.75))),
    ]
    shapes = [*filmer.body, *signs.camera(lens, size), *filmer.near_arm, *beam, *shown.shapes]
    return _stage(filmer, shown, shapes, (filmer.bones.near_arm.end, grip))


def _splash(doer: Person, done_to: Person, build: Build) -> Stage:
    shrink = stance(build, facing=-1, lean=-14, tilt=-4, near=(0.25, 0.0), far=(-0.2, 0.1), height=0.95, mouth=Mouth.OPEN)
    shrink = replace(shrink, near_hand=hand_at(build, shrink, -0.55, 0.55), far_hand=hand_at(build, shrink, 0.6, 0.7), near_elbow=-1)
    wet = figure(done_to, build, shrink)
    hit = wet.bones.trunk(0.55, 1.0)
    throw = stance(build, -build.apart * 1.3, lean=12, near=(0.4, 0.0), far=(-0.4, 0.0), height=0.94)
    pail = hand_at(build, throw, 0.88, -0.3)
    throw = replace(throw, near_hand=plus(pail, (-build.head * 0.75, 3.0)), far_hand=plus(pail, (0.0, -build.head * 0.5)))
    thrower = figure(doer, build, throw)
    size = build.head * 0.95
    mouth = plus(pail, (size * 1.0, -size * 0.25))
    rise = (mouth[0] + (hit[0] - mouth[0]) * 0.5, min(mouth[1], hit[1]) - build.head * 0.7)
    thick = build.head * 0.32
    water = [
        signs.area(
            signs.WATER,
            plus(mouth, (0, -size * 0.5)),
            plus(rise, (0, -thick)),
            plus(hit, (0, -thick * 1.5)),
            plus(hit, (2.0, thick * 1.6)),
            plus(rise, (0, thick)),
            plus(mouth, (0, size * 0.55)),
        ),
        signs.line((150, 205, 255), 1.6, mouth, rise, hit),
    ]
    x, y = hit
    spray = signs.drops(
        (x - 5, y - build.head * 0.95), (x - 9, y + build.head * 0.9), (x - 3, y + build.head * 1.5),
        (x - 13, y - build.head * 0.9), (x - 14, y + build.head * 1.6), (x + 3, y + build.head * 2.2), size=3.0,
    )  # fmt: skip
    shapes = [*thrower.body, *wet.shapes, *thrower.near_arm, *water, *signs.bucket(pail, 72, size), *spray]
    return _stage(thrower, wet, shapes, (hit, hit))


def _tap(doer: Person, done_to: Person, build: Build) -> Stage:
    stand = stance(build, lean=0, near=(0.1, 0.0), far=(-0.12, 0.0), head_back=True, tilt=0)
    stand = replace(stand, near_hand=hand_at(build, stand, 0.4, -0.75))
    tapped = figure(done_to, build, stand)
    place = tapped.bones.trunk(1.0, -0.85)
    tap = stance(build, lean=4, near=(0.15, 0.0), far=(-0.2, 0.0))
    tap = within_reach(build, tap, place, 0.97)
    tap = replace(tap, near_hand=place)
    tapper = figure(doer, build, tap)
    marks = signs.taps(place, 1, build.head * 0.5)
    shapes = [*tapper.body, *tapped.shapes, *tapper.near_arm, *marks]
    return _stage(tapper, tapped, shapes, (tapper.bones.near_arm.end, place))


def _measure(doer: Person, done_to: Person, build: Build) -> Stage:
    stand = stance(build, facing=1, near=(0.04, 0.0), far=(-0.06, 0.0), height=1.0, tilt=-4)
    measured = figure(done_to, build, stand)
    top = measured.bones.trunk(1.0, -1.0)
    bottom = (top[0] - 3.0, -2.0)
    measure = stance(build, lean=30, tilt=-14, near=(0.25, 0.0), far=(-0.4, 0.0), height=0.7)
    measure = within_reach(build, measure, top, 0.98)
    low = between(top, bottom, 0.62)
    measure = replace(measure, far_hand=top, near_hand=low)
    measurer = figure(doer, build, measure)
    top = measurer.bones.far_arm.end
    shapes = [
        *measured.shapes, *measurer.body, *signs.tape(top, bottom), *measurer.near_arm,
    ]  # fmt: skip
    return _stage(measurer, measured, shapes, (top, measured.bones.trunk(1.0, -1.0)))


ACTS: Mapping[str, Callable[[Person, Person, Build], Stage]] = MappingProxyType(
    {
        "push": _push,
        "pull": _pull,
        "lift": _lift,
        "carry": _carry,
        "chase": _chase,
        "follow": _follow,
        "wash": _wash,
        "feed": _feed,
        "kiss": _kiss,
        "tickle": _tickle,
        "film": _film,
        "splash": _splash,
        "tap": _tap,
        "measure": _measure,
    }
)
