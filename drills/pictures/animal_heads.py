"""The heads of animals, in profile: ears and horns first, the eye last."""

from __future__ import annotations

from drills.pictures.geometry import INK, area, blob, limb, line, patch, plus, shade, slope, turn
from drills.pictures.herd import Animal, Horns
from drills.pictures.shapes import Colour, Ellipse, Mark, Point, Shape


def animal_head(
    animal: Animal,
    poll: Point,
    face: Point,
    size: tuple[float, float],
    *,
    open_mouth: bool,
    shut_eyes: bool,
) -> list[Shape]:
    """Paint a head from its `poll` in the direction `face`.   size: length and depth."""
    spot = _Spot(poll, face, *size)
    coat = animal.muzzle_colour if animal.wool else animal.coat
    shapes = [
        *_ears(animal, spot),
        *_snout(animal, spot, coat, open_mouth=open_mouth),
        *_features(animal, spot),
    ]
    eye = INK if sum(coat) > 240 else (250, 250, 250)
    if shut_eyes:
        shapes.append(line(eye, spot.depth * 0.16, spot(0.22, 0.26), spot(0.54, 0.26)))
    shapes.append(Mark(at=spot(0.38, 0.28), fill=eye))
    return shapes


class _Spot:
    """Points of a head: along it in its lengths, up in its depths."""

    def __init__(self, poll: Point, face: Point, length: float, depth: float) -> None:
        self.face, self.length, self.depth = face, length, depth
        self._poll, self._up = poll, turn(face, -90)

    def __call__(self, along: float, rise: float) -> Point:
        start = plus(self._poll, self.face, along * self.length)
        return plus(start, self._up, rise * self.depth)


def _ears(animal: Animal, at: _Spot) -> list[Shape]:
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
        long = animal.ear
        ear = [at(-0.12, 0.5), at(-0.18 * long, 0.5 + long), at(0.14, 0.7)]
        if long > 1.5:
            back = [at(0.02, 0.5), at(-0.05, 0.5 + long), at(0.2, 0.5 + long * 0.9), at(0.24, 0.6)]
            shapes.append(area(shade(coat, 0.7), *back))
            ear = [at(-0.14, 0.5), at(-0.5, 0.4 + long), at(-0.22, 0.5 + long), at(0.1, 0.7)]
        if animal.blunt:
            ear = [at(-0.05, 0.45), at(0.12, 0.95), at(0.32, 0.1)]
        if animal.udder or animal.beard or animal.wool:
            ear = [at(-0.05, 0.55), at(-0.45, 0.85), at(-0.12, 0.1)]
        shapes.append(area(shade(coat, 0.85) if animal.patches is None else (60, 58, 62), *ear))
    return shapes


def _snout(animal: Animal, at: _Spot, coat: Colour, *, open_mouth: bool) -> list[Shape]:
    shapes: list[Shape] = []
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
    return shapes


def _features(animal: Animal, at: _Spot) -> list[Shape]:
    """What tells one kind from another: fleece, flat snout, whiskers, beard, hanging ears."""
    coat, muzzle = animal.coat, at.depth
    shapes: list[Shape] = []
    if animal.wool:
        for along, rise in ((-0.1, 0.7), (0.15, 0.85), (-0.2, 0.1)):
            shapes.append(blob(at(along, rise), muzzle * 0.42, muzzle * 0.36, coat))
    if animal.blunt:
        disc = blob(at(1.02, -0.02), muzzle * 0.22, muzzle * 0.46, animal.muzzle_colour,
                    slope(at.face))  # fmt: skip
        shapes.append(disc)
    if animal.whiskers:
        shapes.append(area(coat, at(0.12, 0.5), at(0.16, 1.6), at(0.42, 0.66)))
        for rise in (-0.1, -0.4):
            shapes.append(line((250, 250, 250), 0.8, at(0.75, rise), at(1.35, rise * 1.5)))
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
    return shapes
