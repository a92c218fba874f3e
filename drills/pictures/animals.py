"""Four-footed bodies, seen from the side."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drills.pictures.cast import Animal, Horns
from drills.pictures.geometry import (
    INK,
    area,
    between,
    blob,
    limb,
    minus,
    patch,
    plus,
    shade,
    turn,
    unit,
)
from drills.pictures.shapes import Ellipse, Mark, Point, Shape, Stroke
from drills.pictures.skeleton import Build, reach

Step = tuple[float, float]


@dataclass(frozen=True, slots=True, kw_only=True)
class Gait:
    """How an animal stands or goes; it faces right.

    x: of the hip.   neck: degrees that the neck is lowered.   nod: degrees of the head below level.
    fore, hind: near and far foot, forward and up, in leg lengths.
    """

    x: float = 0.0
    neck: float = 0.0
    nod: float = 30.0
    fore: tuple[Step, Step] = ((0.06, 0.0), (-0.1, 0.0))
    hind: tuple[Step, Step] = ((0.06, 0.0), (-0.1, 0.0))
    pitch: float = 0.0
    crouch: float = 0.0
    open_mouth: bool = False


WALK = Gait(fore=((0.4, 0.0), (-0.3, 0.1)), hind=((-0.3, 0.0), (0.35, 0.1)))
RUN = Gait(
    fore=((0.75, 0.35), (0.4, 0.1)), hind=((-0.7, 0.15), (-0.35, 0.4)), pitch=-3, neck=12, nod=18
)


@dataclass(frozen=True, slots=True, kw_only=True)
class AnimalFigure:
    """A painted animal and the points that acts need.

    rump: the hindmost point of the body.   brow: the forehead, with which it pushes.
    """

    shapes: tuple[Shape, ...]
    hip: Point
    head: Point
    head_radius: float
    rump: Point
    brow: Point
    muzzle: Point
    back: Point


def animal_figure(animal: Animal, build: Build, gait: Gait) -> AnimalFigure:
    """Paint `animal`, facing right."""
    animal = replace(animal, depth=animal.depth * build.animal_depth)
    leg, size = animal.leg * build.animal_legs, build.animal_head
    high = leg * (1 - gait.crouch)
    hip = (gait.x, -high - animal.depth * 0.34)
    spine = turn((animal.body * build.animal_body, 0.0), gait.pitch)
    chest = plus(hip, spine)
    rise = animal.neck_rise - gait.neck
    withers = plus(chest, (animal.depth * 0.06, -animal.depth * 0.1))
    poll = plus(withers, turn((animal.neck * (size + 1) / 2, 0.0), -rise))
    face = turn((1.0, 0.0), gait.nod)
    head, muzzle = animal.head * size, animal.muzzle * size
    nose = plus(poll, face, head)
    far = shade(animal.coat, 0.7)
    shapes: list[Shape] = []
    for joint, (near_step, far_step) in ((hip, gait.hind), (chest, gait.fore)):
        shapes += _leg(animal, joint, far_step, leg, far, shade(animal.hoof, 0.8))
        del near_step
    shapes += _tail(animal, hip)
    if animal.udder:
        at = plus(plus(hip, spine, 0.2), (0.0, animal.depth * 0.52))
        shapes.append(blob(at, 6.0, 4.0, animal.muzzle_colour))
    shapes.append(limb(animal.coat, animal.depth, hip, chest))
    neck_width = max(animal.depth * 0.5, muzzle * 1.15)
    shapes.append(limb(animal.coat, neck_width, withers, poll))
    shapes.append(
        Stroke(
            points=(between(withers, hip, 0.25), withers), width=neck_width * 1.0, fill=animal.coat
        )
    )
    for joint, (near_step, _) in ((hip, gait.hind), (chest, gait.fore)):
        shapes += _leg(animal, joint, near_step, leg, animal.coat, animal.hoof)
        shapes.append(
            Ellipse(
                centre=plus(joint, (0.0, animal.depth * 0.05)),
                radii=(animal.leg_width * 0.75, animal.depth * 0.38),
                fill=animal.coat,
            )
        )
    shapes += _markings(animal, hip, spine)
    shapes += _head(animal, poll, face, head, muzzle, gait.open_mouth)
    if animal.mane is not None:
        across = turn(unit(minus(poll, withers)), -90)
        root = plus(withers, across, neck_width * 0.5)
        tip = plus(poll, across, neck_width * 0.42)
        shapes.append(
            limb(animal.mane, 4.2, plus(root, (-4.0, 1.0)), root, tip, plus(tip, (3.0, -3.0)))
        )
    if animal.collar is not None:
        across = turn(unit(minus(poll, withers)), 90)
        middle = between(withers, poll, 0.55)
        half = neck_width * 0.55
        shapes.append(
            limb(animal.collar, 2.6, plus(middle, across, half), plus(middle, across, -half))
        )
    return AnimalFigure(
        shapes=tuple(shapes),
        hip=hip,
        head=between(poll, nose, 0.4),
        head_radius=head * 0.5,
        rump=plus(hip, (-animal.depth / 2, -animal.depth * 0.05)),
        brow=plus(plus(poll, face, head * 0.22), turn(face, -90), muzzle * 0.62),
        muzzle=nose,
        back=between(hip, chest, 0.5),
    )


def _leg(  # noqa: PLR0917
    animal: Animal,
    joint: Point,
    step: Step,
    length: float,
    coat: tuple[int, int, int],
    hoof: tuple[int, int, int],
) -> list[Shape]:
    foot = (joint[0] + step[0] * length, -2.0 - step[1] * length)
    top = plus(joint, (0.0, animal.depth * 0.2))
    span = max(length * 0.52, ((foot[0] - top[0]) ** 2 + (foot[1] - top[1]) ** 2) ** 0.5 / 2)
    bones = reach(top, foot, span, span, -1)
    down = unit(minus(bones.end, bones.joint))
    return [
        limb(coat, animal.leg_width, bones.root, bones.joint, bones.end),
        limb(hoof, animal.leg_width * 0.95, plus(bones.end, down, -2.2), bones.end),
    ]


def _tail(animal: Animal, hip: Point) -> list[Shape]:
    start = plus(hip, (-animal.depth * 0.42, -animal.depth * 0.22))
    coat = animal.tail_colour or animal.coat
    tip = plus(start, turn((-animal.tail, 0.0), animal.tail_rise))
    if animal.mane is not None:
        bend = plus(start, (-5.0, 2.0))
        return [limb(coat, 5.5, start, bend, plus(bend, (-3.5, animal.tail * 0.8)))]
    if animal.udder:
        end = plus(plus(start, (-5.0, 3.0)), (-1.0, animal.tail * 0.8))
        return [
            limb(animal.coat, 2.4, start, plus(start, (-5.0, 3.0)), end),
            blob(end, 2.8, 4.0, coat),
        ]
    return [limb(coat, 4.6, start, between(start, tip, 0.5), tip)]


def _markings(animal: Animal, hip: Point, spine: Point) -> list[Shape]:
    shapes: list[Shape] = []
    if animal.patches is not None:
        depth = animal.depth
        spots = ((-0.08, -0.08, 0.25, 0.28), (0.8, -0.12, 0.26, 0.28))
        for along, down, wide, high in spots:
            centre = plus(plus(hip, spine, along), (0.0, down * depth))
            shapes.append(
                Ellipse(centre=centre, radii=(wide * depth, high * depth), fill=animal.patches)
            )
    return shapes


def _head(  # noqa: PLR0917
    animal: Animal, poll: Point, face: Point, length: float, muzzle: float, open_mouth: bool
) -> list[Shape]:
    up = turn(face, -90)

    def at(along: float, rise: float) -> Point:
        return plus(plus(poll, face, along * length), up, rise * muzzle)

    coat = animal.coat
    shapes: list[Shape] = []
    if animal.horns is Horns.SWEPT:
        horn = (96, 84, 70)
        shapes.append(limb(horn, 3.0, at(0.05, 0.6), at(-0.22, 1.55), at(-0.7, 1.75)))
        shapes.append(limb(shade(horn, 1.2), 3.0, at(0.2, 0.6), at(0.0, 1.6), at(-0.42, 1.95)))
    if animal.horns is Horns.SHORT:
        horn = (226, 206, 150)
        shapes.append(limb(horn, 3.0, at(0.08, 0.6), at(-0.02, 1.25), at(0.1, 1.55)))
    if not animal.drooping_ears:
        ear = [at(-0.12, 0.5), at(-0.18, 1.5), at(0.14, 0.7)]
        if animal.udder or animal.beard:
            ear = [at(-0.05, 0.55), at(-0.45, 0.85), at(-0.12, 0.1)]
        shapes.append(area(shade(coat, 0.85) if animal.patches is None else (60, 58, 62), *ear))
    if open_mouth:
        shapes.append(
            area((150, 30, 40), at(0.5, -0.2), at(1.0, -0.55), at(0.9, -0.95), at(0.4, -0.6))
        )
    jaw = 0.62
    shapes.append(
        area(
            coat, at(-0.18, 0.3), at(0.0, 0.72), at(0.3, 0.74), at(0.85, 0.42), at(1.02, 0.2),
            at(1.02, -0.32), at(0.85, -0.48), at(0.3, -jaw), at(-0.1, -0.6),
        )
    )  # fmt: skip
    shapes.append(
        patch(
            animal.muzzle_colour, at(0.68, 0.5), at(0.9, 0.4), at(1.02, 0.2), at(1.02, -0.32),
            at(0.85, -0.46), at(0.68, -0.5),
        )
    )  # fmt: skip
    if animal.patches is not None:
        shapes.append(
            patch(
                animal.patches,
                at(-0.1, 0.4),
                at(0.05, 0.7),
                at(0.3, 0.6),
                at(0.1, -0.4),
                at(-0.1, -0.4),
            )
        )
    if animal.beard:
        shapes.append(area(shade(coat, 1.3), at(0.5, -0.5), at(0.82, -0.5), at(0.62, -1.7)))
    if animal.drooping_ears:
        shapes.append(
            area(
                shade(coat, 0.55),
                at(-0.12, 0.5),
                at(0.15, 0.6),
                at(0.12, -0.6),
                at(-0.08, -0.95),
                at(-0.28, -0.3),
            )
        )
        tip = at(1.0, 0.25)
        shapes.append(Ellipse(centre=tip, radii=(2.2, 2.0), fill=INK))
    shapes.append(Mark(at=at(0.38, 0.28), fill=INK if sum(coat) > 200 else (250, 250, 250)))
    return shapes
