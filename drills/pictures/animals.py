"""Four-footed bodies, seen from the side."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drills.pictures.animal_heads import animal_head
from drills.pictures.geometry import (
    between,
    blob,
    limb,
    minus,
    plus,
    shade,
    turn,
    unit,
)
from drills.pictures.herd import Animal
from drills.pictures.shapes import Ellipse, Point, Shape, Stroke
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
    shut_eyes: bool = False


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
    if animal.wool:
        shapes += _wool(animal, hip, spine)
    shapes += _markings(animal, hip, spine)
    shapes += animal_head(
        animal, poll, face, (head, muzzle), open_mouth=gait.open_mouth, shut_eyes=gait.shut_eyes
    )
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
    if animal.curly_tail:
        curl = ((-3.0, -3.0), (-6.5, -2.0), (-6.0, -6.5), (-2.5, -5.5), (-5.0, -9.5), (-8.0, -7.0))
        return [limb(coat, 2.0, start, *(plus(start, step) for step in curl))]
    if animal.mane is not None and animal.ear > 1.5:
        bend, end = plus(start, (-4.0, 3.0)), plus(start, (-6.0, animal.tail * 0.8))
        return [limb(animal.coat, 2.6, start, bend, end), blob(end, 3.0, 4.6, coat)]
    if animal.whiskers:
        bend, end = plus(start, (-8.0, -3.0)), plus(start, (-8.0, -animal.tail * 0.7))
        return [limb(coat, 3.8, start, bend, end, plus(end, (4.0, -4.0)))]
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


def _wool(animal: Animal, hip: Point, spine: Point) -> list[Shape]:
    """Round tufts along the back and belly."""
    depth = animal.depth
    tufts: list[Shape] = []
    for along in (-0.25, 0.05, 0.35, 0.65, 0.95, 1.2):
        for down in (-0.42, 0.4):
            at = plus(plus(hip, spine, along), (0.0, down * depth))
            tufts.append(blob(at, depth * 0.22, depth * 0.2, animal.coat))
    middle = limb(animal.coat, depth * 0.8, plus(hip, spine, -0.15), plus(hip, spine, 1.15))
    return [*tufts, replace(middle, outline=None)]
