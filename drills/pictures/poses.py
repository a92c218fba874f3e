"""Stances that acts are made of, and how to stand so that a hand just reaches."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Any

from drills.pictures.geometry import plus
from drills.pictures.motion import paced
from drills.pictures.shapes import Point
from drills.pictures.skeleton import Build, Pose, solve


def stance(
    build: Build,
    x: float = 0.0,
    *,
    facing: int = 1,
    height: float = 0.99,
    near: tuple[float, float] = (0.1, 0.0),
    far: tuple[float, float] = (-0.12, 0.0),
    at: float = 0.0,
    **more: Any,
) -> Pose:
    """A body on its feet; with `at`, on its way, that share of two steps later.

    x: of the hip.   height: of the hip, in leg lengths.   near, far: the feet, forward of the hip
    and above the ground, in leg lengths.   more: other fields of `Pose`.
    """
    leg = build.leg
    near, far = paced(at, near, far)
    more["lean"] = more.get("lean", 0.0) * build.sway

    def foot(place: tuple[float, float]) -> Point:
        return (x + facing * place[0] * leg, -build.ankle - place[1] * leg)

    hip = (x, -build.ankle - height * leg)
    return Pose(hip=hip, near_foot=foot(near), far_foot=foot(far), facing=facing, **more)


def walking(build: Build, x: float = 0.0, **more: Any) -> Pose:
    defaults: dict[str, Any] = {"near": (0.36, 0.0), "far": (-0.42, 0.08), "height": 0.95}
    return stance(build, x, **(defaults | more))


def running(build: Build, x: float = 0.0, **more: Any) -> Pose:
    # Short legs must swing wider to be seen to run.
    wide = 1.0 if build.leg > 25 else 1.5
    defaults: dict[str, Any] = {
        "near": (0.5 * wide, 0.1),
        "far": (-0.62 * wide, 0.42),
        "height": 0.95,
        "lean": 18,
    }
    return stance(build, x, **(defaults | more))


def sitting(build: Build, x: float = 0.0, *, facing: int = 1, **more: Any) -> Pose:
    """A body on a seat of `seat_height`, thighs level, feet on the ground."""
    knee = build.thigh * 0.95 / build.leg
    return stance(
        build,
        x,
        facing=facing,
        height=build.shin / build.leg,
        near=(knee, 0.0),
        far=(knee + 0.12, 0.0),
        seated=True,
        **more,
    )


def lying(build: Build, top: float, **more: Any) -> Pose:
    """A body on its back, head to the right.   top: y of what it lies on."""
    hip = (0.0, top - build.girth * 0.95)
    feet = (-build.leg * 0.97, top - build.girth * 0.5)
    # On a pillow the face is raised, and so seen.
    defaults: dict[str, Any] = {"lean": -90, "tilt": 0 if build.leg > 25 else 12}
    return Pose(
        hip=hip, near_foot=feet, far_foot=(feet[0] - 1, feet[1] - 2), facing=-1,
        **(defaults | more),
    )  # fmt: skip


def seat_height(build: Build) -> float:
    return build.ankle + build.shin - build.leg_width * 0.55


def shoulder(build: Build, pose: Pose) -> Point:
    return solve(build, pose).shoulder


def hand_at(build: Build, pose: Pose, forward: float, up: float) -> Point:
    """A place for a hand, from the shoulder, in arm lengths."""
    return plus(shoulder(build, pose), (pose.facing * forward * build.arm, -up * build.arm))


def moved(pose: Pose, dx: float) -> Pose:
    """The whole body, `dx` units to the right."""

    def move(point: Point | None) -> Point | None:
        return None if point is None else (point[0] + dx, point[1])

    return replace(
        pose,
        hip=(pose.hip[0] + dx, pose.hip[1]),
        near_foot=(pose.near_foot[0] + dx, pose.near_foot[1]),
        far_foot=(pose.far_foot[0] + dx, pose.far_foot[1]),
        near_hand=move(pose.near_hand),
        far_hand=move(pose.far_hand),
    )


def within_reach(build: Build, pose: Pose, target: Point, stretch: float = 0.9) -> Pose:
    """`pose`, moved so that its shoulder is `stretch` arm lengths behind `target`."""
    x, y = shoulder(build, pose)
    span = stretch * build.arm
    across = math.sqrt(max(span**2 - (target[1] - y) ** 2, (0.25 * span) ** 2))
    return moved(pose, target[0] - pose.facing * across - x)
