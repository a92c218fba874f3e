"""Acts that move somebody: push, pull, lift, carry, chase, follow.

The doer stands on the left, the done-to on the right. Each act shows its roles three ways: hand or
tool is on the done-to, the doer leans in, the done-to answers with arms, face or balance.
"""

from __future__ import annotations

from dataclasses import replace

from drills.pictures import signs
from drills.pictures.cast import Person
from drills.pictures.geometry import between, line, plus
from drills.pictures.motion import rise
from drills.pictures.pairs import posed, staged
from drills.pictures.people import figure
from drills.pictures.poses import (
    hand_at,
    running,
    stance,
    walking,
    within_reach,
)
from drills.pictures.skeleton import Build, Mouth, Pose, stretched
from drills.pictures.stage import Stage


def push(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    pose = stance(
        build, lean=15, tilt=-4, near=(0.5, 0.0), far=(-0.3, 0.06), height=0.94, at=at,
        mouth=Mouth.OPEN,
    )  # fmt: skip
    pose = replace(
        pose, near_hand=hand_at(build, pose, 0.86, 0.0), far_hand=hand_at(build, pose, 0.8, 0.28)
    )
    pushed = figure(done_to, build, pose)
    high, low = pushed.bones.trunk(0.82, -1.0), pushed.bones.trunk(0.5, -0.92)
    push = stance(build, lean=27, tilt=-10, near=(-0.02, 0.0), far=(-0.85, 0.0), height=0.86, at=at)
    push = within_reach(build, push, high, 0.9)
    push = replace(push, near_hand=low, far_hand=high)
    pusher = figure(doer, build, push)
    x, y = pusher.bones.trunk(0.6, -1.0)
    effort = signs.speed_lines(x - build.head * 0.5, build.head * 0.9, y, y + 8.0)
    shapes = [*effort, *pusher.body, *pushed.shapes, *pusher.near_arm]
    return staged(
        pusher, pushed, shapes, (pusher.bones.near_arm.end, low), (pusher.bones.far_arm.end, high)
    )


def pull(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    pose = stance(
        build,
        facing=-1,
        lean=-13,
        tilt=6,
        near=(0.55, 0.0),
        far=(0.0, 0.0),
        height=0.92,
        at=at,
        mouth=Mouth.OPEN,
    )
    pose = replace(
        pose, near_hand=hand_at(build, pose, 0.84, 0.1), far_hand=hand_at(build, pose, 0.72, 0.32)
    )
    pulled = figure(done_to, build, pose)
    tied = pulled.bones.trunk(0.12, 1.0)
    pull = stance(
        build,
        -build.apart * 1.05,
        facing=-1,
        lean=27,
        tilt=-8,
        near=(-0.75, 0.0),
        far=(0.22, 0.0),
        height=0.88,
        at=at,
    )
    over = posed(doer, build, pull).trunk(1.02, -0.1)
    grip = plus(posed(doer, build, pull).trunk(0.62, 1.0), (-3.5, 2.0))
    pull = replace(pull, near_hand=grip, far_hand=plus(grip, (-2.5, 5.0)))
    puller = figure(doer, build, pull)
    belt = signs.rope(pulled.bones.trunk(0.06, -1.0), pulled.bones.trunk(0.02, 0.0), tied)
    knot = signs.knot(tied, build.head * 0.24)
    # The rope hangs a little between the two: a straight one is taken for a pole.
    middle = plus(between(over, tied, 0.55), (0.0, build.head * 0.55))
    cord = signs.rope(tied, *signs.curve(tied, middle, over), grip)
    tail = signs.rope(grip, plus(grip, (-3.0, build.head)), plus(grip, (1.0, build.head * 1.7)))
    shapes = [
        *pulled.body, *belt, *tail, *puller.body, *cord, *knot, *puller.near_arm, *pulled.near_arm,
    ]  # fmt: skip
    return staged(puller, pulled, shapes, (puller.bones.near_arm.end, grip))


def lift(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    few = build.leg < 25
    up = build.stature * ((0.42 if few else 0.22) - 0.17 * rise(at))
    pose = stance(
        build, facing=-1, lean=3, near=(-0.1, 0.0), far=(-0.26, 0.14), height=1.0, mouth=Mouth.SMILE
    )
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
    low = -0.2 if few else 0.22
    side, front = lifted.bones.trunk(low, 0.35), lifted.bones.trunk(low + 0.08, 1.0)
    hold = stance(build, lean=-7, tilt=-12, near=(0.3, 0.0), far=(-0.3, 0.0), height=0.9)
    hold = within_reach(build, hold, side, 0.97)
    hold = replace(hold, near_hand=side, far_hand=front, near_elbow=1)
    lifter = figure(doer, build, hold)
    x = lifted.bones.hip[0]
    feet = -up - 1
    marks = [
        shape
        for dx in (-9.0, 0.0, 9.0)
        for shape in (
            line(signs.DARK, 1.7, (x + 6 + dx, feet + 8), (x + 6 + dx, feet + 8 + up * 0.5)),
        )
    ]
    shapes = [*signs.shadow(x + 4, 15), *marks, *lifter.body, *lifted.shapes, *lifter.near_arm]
    return staged(
        lifter, lifted, shapes, (lifter.bones.near_arm.end, side), (lifter.bones.far_arm.end, front)
    )


def carry(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    few = build.leg < 25
    # Short legs would be lost before the carrier, and hang down to the ground.
    build, long = (
        (stretched(build, 1.5, 1.0), stretched(build, 2.0, 1.0)) if few else (build, build)
    )
    walk = walking(build, lean=-6, tilt=4, near=(0.42, 0.0), far=(-0.42, 0.06), at=at)
    chest = posed(doer, build, walk)
    hip = (
        chest.hip[0] - build.torso * 0.1 + (build.head - 11.5) * 2.4,
        chest.trunk(0.15 if not few else -0.08, 0.0)[1],
    )
    knee = (hip[0] - long.thigh * 0.96, hip[1] - long.thigh * 0.3)
    # Stretched out, since short shins that hang down are not seen.
    along, down = (0.85, 0.5) if few else (0.55, 0.84)
    near_foot = (knee[0] - long.shin * along, knee[1] + long.shin * down)
    far_foot = plus(near_foot, (-3.0, -4.0))
    pose = Pose(
        hip=hip, near_foot=near_foot, far_foot=far_foot, facing=-1, lean=-72,
        tilt=6 if not few else -30,
        mouth=Mouth.SMILE,
    )  # fmt: skip
    bones = posed(done_to, long, pose)
    pose = replace(pose, near_hand=bones.trunk(0.25, 0.9), far_hand=bones.trunk(0.4, 1.3))
    carried = figure(done_to, long, pose)
    back = carried.bones.trunk(0.72, -0.75)
    thigh = plus(
        between(carried.bones.near_leg.root, carried.bones.near_leg.joint, 0.75),
        (0, build.leg_width * 0.4),
    )
    hold = replace(walk, near_hand=back, far_hand=thigh)
    carrier = figure(doer, build, hold)
    shapes = [*carrier.body, *carried.shapes, *carrier.near_arm]
    return staged(
        carrier,
        carried,
        shapes,
        (carrier.bones.near_arm.end, back),
        (carrier.bones.far_arm.end, thigh),
    )


def chase(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    flee = running(build, lean=20, tilt=-8, at=at, mouth=Mouth.OPEN)
    flee = replace(
        flee,
        near_hand=hand_at(build, flee, 0.68 - 1.3 * rise(at), -0.2),
        far_hand=hand_at(build, flee, -0.62 + 1.3 * rise(at), -0.3),
        far_elbow=1,
    )
    fled = figure(done_to, build, flee)
    gap = build.arm * 0.95 + build.girth + build.head * 2.1
    hunt = running(build, -gap, lean=22, tilt=-12, near=(0.42, 0.0), far=(-0.6, 0.5), at=at)
    hunt = replace(
        hunt, near_hand=hand_at(build, hunt, 0.95, 0.0), far_hand=hand_at(build, hunt, 0.9, 0.3)
    )
    hunter = figure(doer, build, hunt)
    x, y = fled.bones.head
    radius = build.head
    sweat = signs.drops(
        (x - radius * 1.7, y - radius * 0.1), (x - radius * 2.1, y + radius * 0.6), size=2.8
    )
    back = hunter.bones.trunk(0.7, -1.0)
    lines = signs.speed_lines(back[0] - 7, 13, back[1] - 2, back[1] + 7, back[1] + 16)
    shapes = [*lines, *hunter.body, *fled.shapes, *hunter.near_arm, *sweat]
    return staged(hunter, fled, shapes)


def follow(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    lead = walking(build, lean=-4, tilt=-2, at=at)
    lead = replace(
        lead,
        near_hand=hand_at(build, lead, -0.42 + 0.87 * rise(at), -0.8),
        far_hand=hand_at(build, lead, 0.45 - 0.87 * rise(at), -0.75),
    )
    leader = figure(done_to, build, lead)
    gap = build.apart * 1.15
    trail = walking(build, -gap, near=(0.42, 0.05), far=(-0.36, 0.0), tilt=12, lean=11, at=at)
    trail = replace(
        trail,
        near_hand=hand_at(build, trail, 0.75, -0.55),
        far_hand=hand_at(build, trail, -0.3, -0.85),
    )
    follower = figure(doer, build, trail)
    steps = signs.footprints(
        follower.bones.hip[0] + build.girth, leader.bones.hip[0] - build.girth, build.head * 0.3
    )
    return staged(follower, leader, [*steps, *follower.shapes, *leader.shapes])
