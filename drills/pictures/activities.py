"""What one does alone: wave, sit, jump, sleep, walk, read, drink, dance; one to three doers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from drills.pictures import furniture, gear, signs, tools
from drills.pictures.animals import RUN, WALK, Gait, animal_figure
from drills.pictures.cast import Person
from drills.pictures.geometry import bounds, line, plus, put
from drills.pictures.herd import Animal
from drills.pictures.motion import rise, swing
from drills.pictures.people import figure
from drills.pictures.poses import hand_at, seat_height, sitting, stance, walking
from drills.pictures.shapes import Shape
from drills.pictures.skeleton import Build, Mouth, Pose, on_long_legs

Shapes = list[Shape]


def _wave(person: Person, build: Build, at: float) -> Shapes:
    # Longer arms, so that the hand is high above the head and no bow is seen in it.
    build = replace(build, upper_arm=build.upper_arm * 1.25, forearm=build.forearm * 1.25)
    stand = stance(build, near=(0.1, 0.0), far=(-0.12, 0.0), to_viewer=True, mouth=Mouth.SMILE)
    sway = 0.2 * swing(at)
    # The far arm, so that the face stays free.
    stand = replace(
        stand,
        far_hand=hand_at(build, stand, 0.5 + sway, 0.85 - sway * 0.5),
        far_elbow=-1,
        near_hand=hand_at(build, stand, -0.3, -0.92),
    )
    made = figure(person, build, stand)
    x, y = made.bones.far_arm.end
    size = build.head
    marks = [
        line(signs.DARK, 1.8, (x + side * size * 0.62, y + size * 0.1),
             (x + side * size * 0.78, y - size * 0.3), (x + side * size * 0.62, y - size * 0.7))
        for side in (-1, 1)
    ]  # fmt: skip
    fingers = tools.palm((x, y), size * 0.8, person.skin)
    return [*made.shapes, *fingers, *marks]


def _sit(person: Person, build: Build, at: float) -> Shapes:
    build = on_long_legs(build)
    sit = sitting(build, lean=-2, tilt=2 + 6 * rise(at), mouth=Mouth.SMILE)
    knee = plus(sit.hip, (build.thigh * 0.6, -build.leg_width * 0.6))
    made = figure(person, build, replace(sit, near_hand=knee, far_hand=plus(knee, (4.0, 0.0))))
    return [*furniture.plain_chair(0.0, seat_height(build), build), *made.shapes]


def _jump(person: Person, build: Build, at: float) -> Shapes:
    few = build.leg < 25
    build = on_long_legs(build)
    up = build.stature * (0.3 if few else 0.4) * (1 - rise(at))
    apart = 0.2 if few else 0.0
    leap = stance(
        build, near=(0.25 + apart, 0.22), far=(-0.45 - apart, 0.3), height=0.95,
        mouth=Mouth.SMILE, lean=4,
    )  # fmt: skip
    leap = Pose(
        hip=plus(leap.hip, (0.0, -up)),
        near_foot=plus(leap.near_foot, (0.0, -up)),
        far_foot=plus(leap.far_foot, (0.0, -up)),
        lean=leap.lean, mouth=Mouth.SMILE,
    )  # fmt: skip
    leap = replace(
        leap, near_hand=hand_at(build, leap, 0.92, 0.3), far_hand=hand_at(build, leap, -0.9, 0.35)
    )
    made = figure(person, build, leap)
    lift = [
        line(signs.DARK, 1.8, (x, -up * 0.2), (x, -up * 0.75)) for x in (-9.0, 0.0, 9.0)
    ]  # fmt: skip
    # In few rows the strokes look like stilts; there the gap above the shadow says it alone.
    return [*signs.shadow(0.0, build.girth * 1.8), *([] if few else lift), *made.shapes]


def _sleep(person: Person, build: Build, at: float) -> Shapes:
    few = build.leg < 25
    build = on_long_legs(build)
    doze = sitting(build, lean=-8, tilt=22, asleep=True)
    lap = plus(doze.hip, (build.thigh * 0.45, -build.leg_width * 0.7))
    made = figure(person, build, replace(doze, near_hand=lap, far_hand=plus(lap, (3.0, 0.0))))
    x, y = made.bones.head
    size = build.head
    sleep = furniture.snores(
        (x + size * 1.1, y - size * (1.25 + 0.25 * rise(at))), size * 0.5, one=few
    )
    chair = furniture.armchair(0.0, seat_height(build), build, facing=1)
    return [*chair, *made.shapes, *sleep]


def _walk(person: Person, build: Build, at: float) -> Shapes:
    few = build.leg < 25
    build = on_long_legs(build)
    if not few:
        go = walking(build, lean=2, at=at)
    elif person.skirt >= 0.9:
        # Under a long skirt wide steps look like kneeling.
        go = walking(build, lean=8, at=at, near=(0.42, 0.0), far=(-0.52, 0.14), height=0.93)
    else:
        go = walking(build, lean=6, at=at, near=(0.66, 0.0), far=(-0.78, 0.12), height=0.82)
    back = 0.87 * rise(at)
    wide = 1.3 if few else 1.0
    go = replace(
        go,
        near_hand=hand_at(build, go, (-0.42 + back) * wide, -0.8 / wide),
        far_hand=hand_at(build, go, (0.45 - back) * wide, -0.75 / wide),
    )
    made = figure(person, build, go)
    behind = build.girth + build.head * 0.6 if few else build.leg * 0.3
    size = build.head * (0.38 if few else 0.26)
    steps = signs.footprints(-behind - (build.leg * 0.8 + build.head), -behind, size)
    return [*steps, *made.shapes]


def _read(person: Person, build: Build, at: float) -> Shapes:
    few = build.leg < 25
    build = on_long_legs(build)
    sit = sitting(build, tilt=(18 if few else 12) + 4 * rise(at), lean=2)
    page = hand_at(build, sit, 0.62 if few else 0.72, -0.42 if few else -0.28)
    sit = replace(sit, near_hand=page, far_hand=plus(page, (4.0, -2.0)))
    made = figure(person, build, sit)
    if few:
        book = gear.open_book(plus(page, (build.head * 0.75, 0.0)), build.head * 1.1)
    else:
        book = furniture.large_book(
            plus(page, (build.head * 0.5, -build.head * 0.3)), build.head * 0.95
        )
    chair = furniture.plain_chair(0.0, seat_height(build), build)
    return [*chair, *made.body, *book, *made.near_arm]


def _drink(person: Person, build: Build, at: float) -> Shapes:
    few = build.leg < 25
    build = on_long_legs(build)
    tilt = -24 if few else -16
    stand = stance(build, near=(0.12, 0.0), far=(-0.12, 0.0), tilt=tilt + 14 * rise(at), lean=-2)
    made = figure(person, build, stand)
    mouth = made.bones.face(1.05, -0.5)
    low = plus(mouth, (build.head * 0.35, build.head * ((0.1 if few else 0.35) + 1.4 * rise(at))))
    hand = plus(low, (build.head * (1.0 if few else 0.75), build.head * (0.1 if few else 0.85)))
    made = figure(person, build, replace(stand, near_hand=hand, near_elbow=1))
    return [
        *made.body,
        *made.near_arm,
        *furniture.glass(
            low,
            build.head * (1.3 if few else 1.15),
            (104 if few else 62) - 50 * rise(at),
            0.36 if few else 0.5,
        ),
    ]


def _dance(person: Person, build: Build, at: float) -> Shapes:
    side = swing(at)
    step = stance(
        build, near=(0.2, 0.0), far=(-0.5, 0.3 + 0.12 * side), height=0.97, lean=-7 + 6 * side,
        to_viewer=True, mouth=Mouth.SMILE,
    )  # fmt: skip
    step = replace(
        step,
        near_hand=hand_at(build, step, -0.8, -0.1 - 0.2 * side),
        far_hand=hand_at(build, step, 0.8, 0.5 + 0.15 * side),
        near_elbow=-1,
        far_elbow=-1,
    )
    made = figure(person, build, step)
    x, y = made.bones.head
    size = build.head
    notes = [
        *furniture.music_note((x + size * 2.2, y + size * 2.1), size * 0.5),
        *furniture.music_note((x - size * 2.0, y - size * 0.1), size * 0.5),
    ]
    return [*made.shapes, *notes]


ACTIVITIES: Mapping[str, Callable[[Person, Build, float], Shapes]] = MappingProxyType(
    {
        "wave": _wave,
        "sit": _sit,
        "jump": _jump,
        "sleep": _sleep,
        "walk": _walk,
        "read": _read,
        "drink": _drink,
        "dance": _dance,
    }
)


def _animal_walk(animal: Animal, build: Build, at: float) -> Shapes:
    turned = rise(at)
    gait = replace(
        WALK,
        fore=((0.4 - 0.7 * turned, 0.05), (-0.3 + 0.7 * turned, 0.05)),
        hind=((-0.3 + 0.65 * turned, 0.05), (0.35 - 0.65 * turned, 0.05)),
    )
    made = animal_figure(animal, build, gait)
    left = bounds(made.shapes).left
    return [*signs.footprints(left - 14, left + 8, 2.8), *made.shapes]


def _animal_jump(animal: Animal, build: Build, at: float) -> Shapes:
    made = animal_figure(animal, build, replace(RUN, pitch=-12, neck=0))
    up = animal.leg * build.animal_legs * 0.75 * (1 - rise(at))
    middle = made.hip[0] + animal.body * 0.5
    lift = [line(signs.DARK, 1.8, (middle + dx, -up * 0.15), (middle + dx, -up * 0.8))
            for dx in (-10.0, 0.0, 10.0)]  # fmt: skip
    return [*signs.shadow(middle, animal.body * 0.6), *lift, *put(made.shapes, 0.0, -up)]


def _animal_sleep(animal: Animal, build: Build, at: float) -> Shapes:
    rest = Gait(
        crouch=0.8, neck=animal.neck_rise + 4, nod=14, shut_eyes=True,
        fore=((0.75, 0.0), (0.6, 0.0)), hind=((0.7, 0.0), (0.55, 0.0)),
    )  # fmt: skip
    made = animal_figure(animal, build, rest)
    low = bounds(made.shapes)
    x, y = made.head
    size = made.head_radius * 0.55
    sleep = furniture.snores((x + size, y - size * (3.0 + 0.4 * rise(at))), size)
    return [*put(made.shapes, 0.0, -(low.top + low.height)), *sleep]


def _animal_drink(animal: Animal, build: Build, at: float) -> Shapes:
    nod = 60.0
    neck = animal.neck_rise + 12.0
    made = animal_figure(animal, build, Gait(neck=neck, nod=nod - 10 * rise(at)))
    # A long neck goes down until the muzzle is in the trough.
    while made.muzzle[1] < -animal.muzzle * 0.9 - 5 and neck < animal.neck_rise + 75:
        neck += 4
        made = animal_figure(animal, build, Gait(neck=neck, nod=nod - 10 * rise(at)))
    x = made.muzzle[0] + 1
    return [*made.shapes, *furniture.trough(x, max(12.0, animal.head * 0.8))]


ANIMAL_ACTIVITIES: Mapping[str, Callable[[Animal, Build, float], Shapes]] = MappingProxyType(
    {
        "walk": _animal_walk,
        "jump": _animal_jump,
        "sleep": _animal_sleep,
        "drink": _animal_drink,
    }
)


def side_by_side(group: Shapes, count: int, gap: float) -> tuple[Shape, ...]:
    """`count` of the same, each a little apart from the next."""
    box = bounds(group)
    step = box.width + gap
    return tuple(shape for n in range(count) for shape in put(group, n * step, 0.0))
