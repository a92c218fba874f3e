"""Acts with a tool between the two: film, splash, measure.

The doer stands on the left, the done-to on the right. Each act shows its roles three ways: hand or
tool is on the done-to, the doer leans in, the done-to answers with arms, face or balance.
"""

from __future__ import annotations

from dataclasses import replace

from drills.pictures import gear, signs
from drills.pictures.cast import Person
from drills.pictures.geometry import area, between, bounds, line, plus
from drills.pictures.motion import rise
from drills.pictures.pairs import posed, staged
from drills.pictures.people import figure
from drills.pictures.poses import (
    hand_at,
    shoulder,
    stance,
    within_reach,
)
from drills.pictures.shapes import Shape
from drills.pictures.skeleton import Build, Mouth
from drills.pictures.stage import Stage


def film(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    show = stance(build, facing=-1, lean=-3, near=(0.1, 0.0), far=(-0.2, 0.0), mouth=Mouth.SMILE)
    show = replace(
        show,
        far_hand=hand_at(build, show, 0.82 - 0.3 * rise(at), 0.5),
        near_hand=plus(show.hip, (-1.0, -3.0)),
        near_elbow=1,
    )
    shown = figure(done_to, build, show)
    film = stance(
        build, -build.apart * 1.42, lean=10, tilt=2, near=(0.2, 0.0), far=(-0.3, 0.0), height=0.95
    )
    eye = posed(doer, build, film).face(1.35, -0.1)
    size = min(build.head * 0.95, build.arm * 0.45)
    lens = (eye[0] + size * 2.1, eye[1] + size * 0.2)
    grip = (lens[0] - size * 1.5, lens[1] + size * 0.5)
    film = replace(film, near_hand=grip, far_hand=plus(grip, (6.0, 0.0)))
    filmer = figure(doer, build, film)
    beam = [
        line(
            (120, 120, 140),
            1.2,
            plus(lens, (size * 0.8, -size * 0.3)),
            plus(lens, (size * 1.9, -size * 0.75)),
        ),
        line(
            (120, 120, 140),
            1.2,
            plus(lens, (size * 0.8, size * 0.3)),
            plus(lens, (size * 1.9, size * 0.75)),
        ),
    ]
    shapes = [*filmer.body, *gear.camera(lens, size), *filmer.near_arm, *beam, *shown.shapes]
    return staged(filmer, shown, shapes, (filmer.bones.near_arm.end, grip))


def splash(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    shrink = stance(
        build,
        facing=-1,
        lean=-14,
        tilt=-4,
        near=(0.25, 0.0),
        far=(-0.2, 0.1),
        height=0.95,
        mouth=Mouth.OPEN,
    )
    shrink = replace(
        shrink,
        near_hand=hand_at(build, shrink, -0.75, 0.4),
        far_hand=hand_at(build, shrink, 0.75, 0.55),
        near_elbow=-1,
    )
    wet = figure(done_to, build, shrink)
    goal = wet.bones.trunk(0.55, 1.0)
    throw = stance(
        build, -build.apart * 1.2, lean=12, near=(0.4, 0.0), far=(-0.4, 0.0), height=0.94
    )
    pail = hand_at(build, throw, 0.88, -0.3)
    throw = replace(
        throw,
        near_hand=plus(pail, (-build.head * 0.75, 3.0)),
        far_hand=plus(pail, (0.0, -build.head * 0.5)),
    )
    thrower = figure(doer, build, throw)
    size = build.head * 1.1
    mouth = plus(pail, (size * 1.0, -size * 0.25))
    hit = between(goal, mouth, 0.65 * rise(at))
    crest = (mouth[0] + (hit[0] - mouth[0]) * 0.5, min(mouth[1], hit[1]) - build.head * 0.45)
    thick = build.head * 0.32
    water: list[Shape] = [
        area(
            signs.GUSH,
            plus(mouth, (0, -size * 0.5)),
            plus(crest, (0, -thick)),
            plus(hit, (0, -thick * 1.5)),
            plus(hit, (2.0, thick * 1.6)),
            plus(crest, (0, thick)),
            plus(mouth, (0, size * 0.55)),
        ),
        line((225, 242, 255), 2.6, mouth, crest, hit),
    ]
    x, y = hit
    spray = signs.drops(
        (x - 5, y - build.head * 0.95),
        (x - 9, y + build.head * 0.9),
        (x - 3, y + build.head * 1.5),
        (x - 13, y - build.head * 0.9),
        (x - 14, y + build.head * 1.6),
        (x + 3, y + build.head * 2.2),
        size=3.0,
    )
    shapes = [
        *thrower.body,
        *wet.shapes,
        *thrower.near_arm,
        *water,
        *gear.bucket(pail, 72, size),
        *spray,
    ]
    return staged(thrower, wet, shapes, (thrower.bones.far_arm.end, throw.far_hand or pail))


def measure(doer: Person, done_to: Person, build: Build, at: float = 0.0) -> Stage:
    """Somebody stands with the back to a tall rule; the doer brings its slide down on the head."""
    stand = stance(build, facing=1, near=(0.04, 0.0), far=(-0.06, 0.0), height=1.0, tilt=-4)
    measured = figure(done_to, build, stand)
    crown = bounds(measured.shapes).top - 1.5
    width = build.head * (0.7 if build.leg > 25 else 0.85)
    rule = measured.bones.head[0] - build.head * 1.25 - width * 0.5
    slide = crown - build.head * 0.9 * rise(at)
    # The grip hangs low enough for an arm, whatever the hat.
    reach = stance(build, lean=2, tilt=-6, near=(0.16, 0.0), far=(-0.16, 0.0))
    high = min(slide + build.head * 1.1, -build.hip_height - build.torso * 1.35)
    high = max(high, shoulder(build, reach)[1] - build.arm * 0.8)
    grip = (rule - width * 0.5 - build.hand * 0.5, high)
    reach = within_reach(build, reach, grip, 0.97)
    reach = replace(reach, near_hand=grip, far_hand=hand_at(build, reach, 0.3, -0.85))
    measurer = figure(doer, build, reach)
    shapes = [
        *measured.shapes, *gear.rule(rule, crown - build.head * 0.9, width), *measurer.body,
        *gear.slide((rule, slide), grip, build.head * 2.5, width), *measurer.near_arm,
    ]  # fmt: skip
    return staged(measurer, measured, shapes, (measurer.bones.near_arm.end, grip))
