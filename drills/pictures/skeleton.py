"""Bones: proportions of a body, and where its joints go when hands and feet are told where to be.

Figures are seen from the side. `facing` is 1 for right, -1 for left; "forward" is the way that a
figure faces. Lean and tilt are in degrees, forward positive.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from enum import StrEnum

from drills.pictures.geometry import between, distance, minus, plus, turn, unit
from drills.pictures.shapes import Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Build:
    """Proportions of a grown-up body, in drawing units.

    head: radius.   girth: half the depth of the trunk.   ankle: height of the ankle joint.
    animal_legs, animal_body, animal_depth, animal_head: factors for four-footed bodies.
    hat: factor for what rises above a head.   sway: factor for leaning, since large heads meet.
    """

    head: float
    neck: float
    torso: float
    thigh: float
    shin: float
    upper_arm: float
    forearm: float
    hand: float
    arm_width: float
    leg_width: float
    girth: float
    ankle: float = 3.5
    animal_legs: float = 1.25
    animal_body: float = 0.8
    animal_depth: float = 1.2
    animal_head: float = 1.25
    hat: float = 1.0
    sway: float = 1.0

    @property
    def leg(self) -> float:
        return self.thigh + self.shin

    @property
    def arm(self) -> float:
        return self.upper_arm + self.forearm

    @property
    def hip_height(self) -> float:
        return self.leg + self.ankle

    @property
    def apart(self) -> float:
        """From hip to hip of two people who face each other with a tool between them."""
        return 2 * self.head + 1.25 * self.arm

    @property
    def stature(self) -> float:
        return self.hip_height + self.torso + self.neck + 2 * self.head


TALL = Build(
    head=11.5, neck=2.5, torso=30, thigh=19.5, shin=19.5, upper_arm=17, forearm=16,
    hand=4.0, arm_width=7.5, leg_width=9.5, girth=9.5,
)  # fmt: skip
MIDDLE = Build(
    head=13.5, neck=1.5, torso=26, thigh=15, shin=15, upper_arm=17, forearm=16.5,
    hand=4.4, arm_width=7.5, leg_width=9.5, girth=9.5,
    animal_legs=1.1, animal_body=0.8, animal_depth=1.2, animal_head=1.25, hat=0.85, sway=0.85,
)  # fmt: skip
SQUAT = Build(
    head=17, neck=0.0, torso=19, thigh=8.5, shin=8.5, upper_arm=18, forearm=18,
    hand=5.4, arm_width=8, leg_width=10, girth=11.5,
    animal_legs=0.65, animal_body=1.0, animal_depth=1.0, animal_head=1.3, hat=0.7, sway=0.6,
)  # fmt: skip


def build_for(lines: int) -> Build:
    """The proportions that a picture of `lines` rows of cells can show."""
    if lines >= 18:
        return TALL
    return MIDDLE if lines >= 12 else SQUAT


def on_long_legs(build: Build) -> Build:
    """Legs as short as those in few rows look knelt on; alone, there is room for longer ones."""
    if build.leg >= 25:
        return build
    share = build.head / SQUAT.head
    return replace(
        MIDDLE,
        **{
            part: getattr(MIDDLE, part) * share
            for part in ("head", "torso", "thigh", "shin", "upper_arm", "forearm", "girth")
        },
    )


def stretched(build: Build, legs: float, trunk: float) -> Build:
    """Legs and trunk at so many times their length; the girth a little less."""
    longer = {part: getattr(build, part) * legs for part in ("thigh", "shin")}
    return replace(build, torso=build.torso * trunk, girth=build.girth * 0.85, **longer)


def child(build: Build) -> Build:
    """The proportions of a child beside a grown-up of `build`."""
    small = {
        part: getattr(build, part) * factor
        for part, factor in (
            ("head", 0.92), ("torso", 0.7), ("thigh", 0.66), ("shin", 0.66), ("upper_arm", 0.74),
            ("forearm", 0.74), ("hand", 0.84), ("arm_width", 0.86), ("leg_width", 0.84),
            ("girth", 0.84),
        )
    }  # fmt: skip
    return replace(build, **small)


class Mouth(StrEnum):
    CLOSED = "closed"
    SMILE = "smile"
    OPEN = "open"
    LAUGH = "laugh"
    KISS = "kiss"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """What a body does: where the hip is, how it leans, where hands and feet go.

    A hand of None hangs.   head_back: looks over the shoulder.   to_viewer: the face looks out.
    seated: a skirt falls from the knees.   asleep: the eye is shut.
    knees, elbows: 1 bends the usual way.
    """

    hip: Point
    near_foot: Point
    far_foot: Point
    facing: int = 1
    lean: float = 0.0
    tilt: float = 0.0
    near_hand: Point | None = None
    far_hand: Point | None = None
    mouth: Mouth = Mouth.CLOSED
    head_back: bool = False
    to_viewer: bool = False
    seated: bool = False
    asleep: bool = False
    knees: int = 1
    near_elbow: int = 1
    far_elbow: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Limb:
    root: Point
    joint: Point
    end: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Bones:
    """A posed body.   girth: half the depth of this body's trunk.   head_angle: clockwise."""

    build: Build
    pose: Pose
    girth: float
    hip: Point
    shoulder: Point
    head: Point
    head_angle: float
    head_facing: int
    near_arm: Limb
    far_arm: Limb
    near_leg: Limb
    far_leg: Limb

    def trunk(self, along: float, forward: float) -> Point:
        """A point of the trunk.

        along: 0 at the hip, 1 at the shoulder.   forward: 1 at the chest's edge, -1 at the back's.
        """
        axis = unit(minus(self.shoulder, self.hip))
        front = turn(axis, 90 * self.pose.facing)
        return plus(between(self.hip, self.shoulder, along), front, forward * self.girth)

    def face(self, forward: float, up: float) -> Point:
        """A point of the head, in head radii from its centre."""
        radius = self.build.head
        if up > 1:
            up = 1 + (up - 1) * self.build.hat
        offset = (self.head_facing * forward * radius, -up * radius)
        return plus(self.head, turn(offset, self.head_angle))

    @property
    def mouth(self) -> Point:
        return self.face(0.95, -0.5)

    @property
    def hands(self) -> tuple[Point, Point]:
        return (self.near_arm.end, self.far_arm.end)


def reach(root: Point, target: Point, upper: float, lower: float, bend: int) -> Limb:
    """Two bones from `root` to `target`; a target out of reach is pointed at with a straight limb.

    bend: 1 puts the joint to the right of the line root to target as seen from the root looking
    down the page (clockwise), -1 to the other side.
    Source: law of cosines, the closed form of two-link inverse kinematics.
    """
    longest = (upper + lower) * 0.999
    shortest = abs(upper - lower) + 1e-6
    span = min(max(distance(root, target), shortest), longest)
    direction = unit(minus(target, root))
    cosine = (upper**2 + span**2 - lower**2) / (2 * upper * span)
    angle = math.degrees(math.acos(max(-1.0, min(1.0, cosine))))
    joint = plus(root, turn(direction, bend * angle), upper)
    return Limb(root=root, joint=joint, end=plus(root, direction, span))


def solve(build: Build, pose: Pose, girth: float = 1.0) -> Bones:
    """The joints of a body in `pose`.   girth: this body's trunk against the build's."""
    facing = pose.facing
    up = turn((0.0, -1.0), pose.lean * facing)
    shoulder = plus(pose.hip, up, build.torso * 0.9)
    head_angle = (pose.lean * 0.55 + pose.tilt) * facing
    throat = plus(pose.hip, up, build.torso + build.neck)
    head = plus(throat, turn((0.0, -1.0), head_angle), build.head * 0.92)
    hanging = plus(shoulder, (facing * build.arm * 0.12, min(build.arm * 0.95, build.torso * 1.05)))
    arms = [
        reach(shoulder, hand or hanging, build.upper_arm, build.forearm, elbow * facing)
        for hand, elbow in (
            (pose.near_hand, pose.near_elbow),
            (pose.far_hand, pose.far_elbow),
        )
    ]
    legs = [
        reach(pose.hip, foot, build.thigh, build.shin, -facing * pose.knees)
        for foot in (pose.near_foot, pose.far_foot)
    ]
    return Bones(
        build=build,
        pose=pose,
        girth=build.girth * girth,
        hip=pose.hip,
        shoulder=shoulder,
        head=head,
        head_angle=head_angle,
        head_facing=-facing if pose.head_back else facing,
        near_arm=arms[0],
        far_arm=arms[1],
        near_leg=legs[0],
        far_leg=legs[1],
    )


def along_limb(bones: Limb, share: float) -> Point:
    """The point `share` of the way down a limb, along its bones."""
    upper = distance(bones.root, bones.joint)
    total = upper + distance(bones.joint, bones.end)
    walked = share * total
    if walked <= upper:
        return between(bones.root, bones.joint, walked / upper)
    return between(bones.joint, bones.end, (walked - upper) / (total - upper))


def path_along(bones: Limb, start: float, end: float) -> list[Point]:
    """The stretch of a limb between two shares of its length."""
    points = [along_limb(bones, start)]
    upper = distance(bones.root, bones.joint)
    middle = upper / (upper + distance(bones.joint, bones.end))
    if start < middle < end:
        points.append(bones.joint)
    return [*points, along_limb(bones, end)]
