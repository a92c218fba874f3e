"""Skirts, gowns and robes over a body."""

from __future__ import annotations

from drills.pictures.cast import Person
from drills.pictures.geometry import (
    area,
    between,
    limb,
    minus,
    patch,
    plus,
    shade,
    turn,
    unit,
)
from drills.pictures.shapes import Shape
from drills.pictures.skeleton import Bones, along_limb


def skirt(person: Person, bones: Bones) -> list[Shape]:
    """Skirt, gown or robe; nothing for somebody in trousers."""
    if not person.skirt:
        return []
    if bones.pose.seated and person.skirt >= 0.9:
        return _lap(person, bones)
    hems = [along_limb(leg, person.skirt * 0.97) for leg in (bones.near_leg, bones.far_leg)]
    middle = between(hems[0], hems[1])
    # A long skirt hangs straight down, whatever the legs do, unless its wearer lies.
    hangs = person.skirt >= 0.9 and abs(bones.pose.lean) < 60
    axis = (0.0, 1.0) if hangs else unit(minus(middle, bones.hip))
    across = turn(axis, 90)
    offsets = [
        (hem[0] - bones.hip[0]) * across[0] + (hem[1] - bones.hip[1]) * across[1] for hem in hems
    ]
    reach = max(
        (hem[0] - bones.hip[0]) * axis[0] + (hem[1] - bones.hip[1]) * axis[1] for hem in hems
    ) + (bones.build.ankle * 0.7 if person.skirt >= 0.9 else 1.0)
    spread = bones.build.leg_width * 0.6 + person.flare * bones.girth
    low, high = min(offsets) - spread, max(offsets) + spread
    hem = plus(bones.hip, axis, reach)
    waist = bones.girth * 0.85
    cloth = person.bottom
    shapes: list[Shape] = [
        area(
            cloth,
            plus(bones.trunk(0.18, 0.0), across, -waist),
            plus(bones.trunk(0.18, 0.0), across, waist),
            plus(hem, across, high),
            plus(hem, across, low),
        )
    ]
    if person.skirt >= 0.9:
        for share in (0.3, 0.68):
            fold = plus(hem, across, low + (high - low) * share)
            shapes.append(
                patch(
                    shade(cloth, 0.86 if min(cloth) > 100 else 1.14),
                    between(bones.hip, fold, 0.3),
                    plus(fold, across, 1.5),
                    plus(fold, across, -1.5),
                )
            )
    if person.flare > 1:
        start, end = plus(hem, across, low), plus(hem, across, high)
        shapes.append(limb(person.trim, 2.4, plus(start, axis, -1.5), plus(end, axis, -1.5)))
    return shapes


def _lap(person: Person, bones: Bones) -> list[Shape]:
    """A long skirt of somebody who sits: level to the knees, then down."""
    facing, width = bones.pose.facing, bones.build.leg_width
    spread = person.flare * bones.girth * 0.45
    near, far = bones.near_leg, bones.far_leg
    front = max((near.end, far.end), key=lambda point: point[0] * facing)
    back = min((near.end, far.end), key=lambda point: point[0] * facing)
    knee = max((near.joint, far.joint), key=lambda point: point[0] * facing)
    floor = -0.5
    cloth = person.bottom
    shapes: list[Shape] = [
        area(
            cloth,
            bones.trunk(0.18, -0.85),
            bones.trunk(0.18, 0.8),
            (knee[0], knee[1] - width * 0.62),
            (knee[0] + facing * width * 0.5, knee[1] - width * 0.2),
            (front[0] + facing * (width * 0.5 + spread), floor),
            (back[0] - facing * (width * 0.5 + spread), floor),
            (near.joint[0] - facing * width * 0.8, knee[1] + width * 0.6),
            (bones.hip[0] - facing * bones.girth, bones.hip[1] + width * 0.55),
        )
    ]
    if person.flare > 1:
        hem = (front[0] + facing * (width * 0.5 + spread), floor - 1)
        shapes.append(
            limb(person.trim, 2.4, hem, (back[0] - facing * (width * 0.5 + spread), floor - 1))
        )
    return shapes
