"""Tools of the acts of care and dealing: comb, towel, fan, umbrella, purse."""

from __future__ import annotations

from drills.pictures.geometry import (
    area,
    between,
    blob,
    limb,
    line,
    minus,
    patch,
    plus,
    shade,
    turn,
    unit,
)
from drills.pictures.shapes import Colour, Ellipse, Point, Shape, Stroke
from drills.pictures.signs import DARK, WATER
from drills.pictures.skeleton import Bones, Build, Limb

WOOD: Colour = (150, 98, 54)
CLOTH: Colour = (252, 250, 246)
SILVER: Colour = (178, 184, 196)
GOLD: Colour = (250, 200, 40)


def comb(hand: Point, tip: Point, size: float) -> list[Shape]:
    """A large comb; its teeth point down from a back that runs from `hand` to `tip`."""
    blue: Colour = (28, 92, 210)
    axis = unit(minus(tip, hand))
    down = turn(axis, 90)
    start = plus(hand, axis, size * 0.6)
    end = plus(tip, axis, size * 0.5)
    teeth = [
        line(blue, size * 0.24, between(start, end, k / 4), plus(between(start, end, k / 4), down,
             size * 1.1))
        for k in range(5)
    ]  # fmt: skip
    return [*teeth, limb(blue, size * 0.5, hand, start, end)]


def mirror(hand: Point, size: float) -> list[Shape]:
    x, y = hand
    frame: Colour = (176, 60, 110)
    return [
        limb(frame, size * 0.3, (x, y + size * 0.3), (x, y - size * 0.7)),
        blob((x, y - size * 1.4), size * 0.55, size * 0.85, frame),
        Ellipse(centre=(x, y - size * 1.4), radii=(size * 0.34, size * 0.6), fill=(222, 240, 252)),
    ]


def towel(bones: Bones, build: Build) -> list[Shape]:
    """Round shoulders, back and belly, with red stripes at the hem."""
    stripe: Colour = (226, 60, 60)
    wide = 1.8 if build.leg > 25 else 2.1
    cloth = (
        bones.trunk(1.14, 0.5),
        bones.trunk(1.22, -0.7),
        bones.trunk(0.8, -wide),
        bones.trunk(-0.3, -wide - 0.1),
        bones.trunk(-0.4, 0.55),
        bones.trunk(0.6, 0.75),
    )
    return [
        area(CLOTH, *cloth),
        *(
            patch(
                stripe,
                bones.trunk(low + 0.14, -wide + 0.05),
                bones.trunk(low, -wide + 0.02),
                bones.trunk(low - 0.04, 0.5),
                bones.trunk(low + 0.1, 0.55),
            )
            for low in (-0.22, 0.1)
        ),
    ]


def puddle(x: float, half: float) -> list[Shape]:
    return [Ellipse(centre=(x, 1.5), radii=(half, 2.6), fill=(80, 150, 240), outline=WATER)]


def fan(hand: Point, size: float, angle: float) -> list[Shape]:
    """A pleated fan, half round, opened towards `angle` degrees from straight up."""
    red: Colour = (200, 36, 60)
    rim = [plus(hand, turn((0.0, -size), angle + a)) for a in range(-62, 63, 31)]
    inner = [plus(hand, turn((0.0, -size * 0.4), angle + a)) for a in range(-62, 63, 31)]
    gold: Colour = (250, 214, 110)
    return [
        area(red, hand, *rim),
        *(line(gold, 1.6, start, end) for start, end in zip(inner, rim, strict=True)),
        Stroke(points=tuple(rim), width=2.2, fill=gold),
    ]


def umbrella(grip: Point, top: Point, half: float) -> tuple[list[Shape], list[Shape]]:
    """Its stick from `grip`, and its open canopy centred under `top`."""
    x, y = top
    red: Colour = (206, 40, 70)
    deep = half * 0.52
    rim = y + deep
    dome = (
        (x - half, rim), (x - half * 0.82, y + deep * 0.42), (x - half * 0.42, y + deep * 0.08),
        (x, y), (x + half * 0.42, y + deep * 0.08), (x + half * 0.82, y + deep * 0.42),
        (x + half, rim), (x + half * 0.66, rim - deep * 0.22), (x + half * 0.33, rim),
        (x, rim - deep * 0.22), (x - half * 0.33, rim), (x - half * 0.66, rim - deep * 0.22),
    )  # fmt: skip
    light = shade(red, 1.35)
    stick = limb((70, 66, 76), 2.2, plus(grip, (0.0, half * 0.28)), grip, (x - half * 0.18, rim))
    return [stick], [
        limb(DARK, 2.0, top, (x, y - half * 0.14)),
        area(red, *dome),
        patch(light, (x, y + 1), (x + half * 0.3, y + deep * 0.5), (x + half * 0.33, rim - 1),
              (x, rim - deep * 0.22), (x - half * 0.33, rim - 1), (x - half * 0.3, y + deep * 0.5)),
    ]  # fmt: skip


def rain(across: Point, heights: Point, dry: Point, size: float, shift: float) -> list[Shape]:
    """Slanting strokes over `across`, none inside `dry`.   heights: from, to."""
    shapes: list[Shape] = []
    top, low = heights
    x, row = across[0], 0
    while x <= across[1]:
        y = top + (row % 3) * size * 0.45 + shift
        while y + size * 0.7 < low:
            if not dry[0] - size * 0.2 < x < dry[1] + size * 0.2:
                shapes.append(line((40, 96, 214), 1.6, (x, y), (x - size * 0.12, y + size * 0.7)))
            y += size * 1.4
        x += size * 0.62
        row += 1
    return shapes


def wraps(arm: Limb, width: float) -> list[Shape]:
    """White turns of bandage round a forearm."""
    start, end = between(arm.joint, arm.end, 0.05), between(arm.joint, arm.end, 0.72)
    across = turn(unit(minus(arm.end, arm.joint)), 90)
    seams = [
        line((150, 160, 180), 1.0, plus(between(start, end, k), across, -width * 0.45),
             plus(between(start, end, k + 0.12), across, width * 0.45))
        for k in (0.15, 0.45, 0.75)
    ]  # fmt: skip
    return [limb(CLOTH, width, start, end), *seams]


def bandage_roll(start: Point, roll: Point, size: float) -> list[Shape]:
    return [
        limb(CLOTH, size * 0.8, start, roll),
        blob(roll, size, size, CLOTH),
        blob(roll, size * 0.35, size * 0.35, (200, 204, 214)),
    ]


def aid_case(at: Point, size: float) -> list[Shape]:
    """A white case with a green cross."""
    x, y = at
    green: Colour = (0, 140, 90)
    return [
        limb(
            DARK,
            1.6,
            (x - size * 0.3, y - size),
            (x - size * 0.3, y - size * 1.3),
            (x + size * 0.3, y - size * 1.3),
            (x + size * 0.3, y - size),
        ),
        area(
            CLOTH,
            (x - size * 0.8, y - size),
            (x + size * 0.8, y - size),
            (x + size * 0.8, y),
            (x - size * 0.8, y),
        ),
        line(green, size * 0.26, (x, y - size * 0.8), (x, y - size * 0.2)),
        line(
            green, size * 0.26, (x - size * 0.3, y - size * 0.5), (x + size * 0.3, y - size * 0.5)
        ),
    ]


def stop_sign(hand: Point, size: float) -> list[Shape]:
    """A red octagon with a white bar, on a stick held in `hand`."""
    red: Colour = (206, 24, 36)
    centre = plus(hand, (0.0, -size * 1.7))
    corners = tuple(plus(centre, turn((0.0, -size), a + 22.5)) for a in range(0, 360, 45))
    inner = tuple(plus(centre, turn((0.0, -size * 0.8), a + 22.5)) for a in range(0, 360, 45))
    x, y = centre
    return [
        limb((120, 124, 136), 2.2, plus(hand, (0.0, size * 0.5)), centre),
        area(CLOTH, *corners),
        patch(red, *inner),
        patch(CLOTH, (x - size * 0.5, y - size * 0.17), (x + size * 0.5, y - size * 0.17),
              (x + size * 0.5, y + size * 0.17), (x - size * 0.5, y + size * 0.17)),
    ]  # fmt: skip


def palm(hand: Point, size: float, skin: Colour) -> list[Shape]:
    """An open hand held up, seen from its edge; fingers up."""
    x, y = hand
    return [
        limb(skin, size * 0.5, (x + size * 0.2, y + size * 0.3), (x + size * 0.3, y - size * 1.2)),
        limb(skin, size * 0.34, (x, y - size * 0.1), (x - size * 0.45, y - size * 0.7)),
    ]


def dust(x: float, size: float) -> list[Shape]:
    pale: Colour = (226, 214, 190)
    return [
        blob((x - size * 1.1, -size * 0.5), size * 0.8, size * 0.6, pale),
        blob((x - size * 2.1, -size * 0.4), size * 0.5, size * 0.4, pale),
    ]


def coins(start: Point, palm_at: Point, size: float, *, few: bool) -> list[Shape]:
    """Gold coins on the way from one hand to the other."""
    over = plus(palm_at, (0.0, -size * 1.4))
    # In few rows two coins run into one bar.
    shares = (0.2, 1.0) if not few else (0.6,)
    return [blob(between(start, over, share), size, size * 0.9, GOLD) for share in shares]


def note(at: Point, size: float) -> list[Shape]:
    """A bank note with no country's face on it."""
    x, y = at
    green: Colour = (88, 160, 104)
    return [
        area(green, (x - size * 0.6, y - size * 0.8), (x + size, y - size * 0.5),
             (x + size * 0.9, y + size * 0.3), (x - size * 0.7, y)),
        blob((x + size * 0.12, y - size * 0.25), size * 0.26, size * 0.24, shade(green, 1.6)),
    ]  # fmt: skip


def purse(hand: Point, size: float) -> list[Shape]:
    x, y = hand
    leather: Colour = (150, 62, 44)
    return [
        area(
            leather,
            (x - size, y),
            (x - size * 0.6, y - size * 0.8),
            (x + size * 0.6, y - size * 0.8),
            (x + size, y),
            (x + size * 0.8, y + size * 0.8),
            (x - size * 0.8, y + size * 0.8),
        ),
        line(GOLD, 1.8, (x - size * 0.6, y - size * 0.8), (x + size * 0.6, y - size * 0.8)),
    ]
