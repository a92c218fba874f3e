"""A scene becomes a drawing; the scenes of one item share one scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drills.core.kinds import Side
from drills.core.meanings import (
    Act,
    Activity,
    Chain,
    Comparison,
    Described,
    Meaning,
    Order,
    Place,
    Report,
    Scene,
    State,
    Transfer,
)
from drills.pictures import compositions
from drills.pictures.activities import side_by_side
from drills.pictures.cast import PEOPLE
from drills.pictures.chains import chain
from drills.pictures.geometry import bounds, mirrored
from drills.pictures.limits import why_not
from drills.pictures.objects import THINGS
from drills.pictures.places import arrange
from drills.pictures.shapes import Colour, Drawing, Frame, Mark, Point, Shape
from drills.pictures.skeleton import build_for
from drills.pictures.stage import Stage, mirrored_body
from drills.pictures.trios import transfer

_TABLE: Colour = (206, 190, 164)
_PAPER: Colour = (232, 228, 218)
_MARGIN = 0.035
_EARTH_SHARE = 0.07
_GAP = 8.0


def can_draw(meaning: Meaning, *, lines: int | None = None) -> bool:
    """Whether a picture, of so many rows, can show `meaning`; `why_not` says what hinders."""
    return why_not(meaning, lines=lines) is None


def stage(scene: Scene, *, lines: int, at: float = 0.0) -> Stage:
    """The figures and shapes of an act, with the doer on the scene's side.

    at: how far into one round of the movement, 0 to 1; 0 is the still picture.
    Raises: ValueError when the meaning cannot be drawn.
    """
    meaning = scene.meaning
    if not isinstance(meaning, Act) or not can_draw(meaning):
        raise ValueError(f"there is no act to draw in {meaning}")
    staged = compositions.two(meaning, build_for(lines), at)
    return staged if scene.side is Side.LEFT else _mirrored(staged)


def _mirrored(staged: Stage) -> Stage:
    def point(at: Point) -> Point:
        return (-at[0], at[1])

    return Stage(
        shapes=tuple(mirrored(shape) for shape in staged.shapes),
        doer=mirrored_body(staged.doer),
        done_to=mirrored_body(staged.done_to),
        touches=tuple((point(a), point(b)) for a, b in staged.touches),
    )


def _softened(shape: Shape) -> Shape:
    """A lighter outline: in few rows the edge line takes as much room as the limb."""
    if isinstance(shape, Mark) or shape.outline is None:
        return shape
    red, green, blue = (
        round(a * 0.6 + b * 0.4) for a, b in zip(shape.fill, shape.outline, strict=True)
    )
    return replace(shape, outline=(red, green, blue))


def _facing_right(meaning: Meaning, lines: int, aspect: float, at: float) -> tuple[Shape, ...]:
    build = build_for(lines)
    made: Sequence[Shape] = ()
    match meaning:
        case Act():
            made = compositions.two(meaning, build, at).shapes
        case Activity(verb=verb, doer=doer, count=count):
            made = side_by_side(compositions.alone(doer, verb, build, at), count, _GAP)
        case Place():
            made = arrange(meaning)
        case State():
            made = compositions.state(meaning, build)
        case Described():
            made = compositions.described(meaning, build, at)
        case Report():
            made = compositions.report(meaning, build, aspect)
        case Order():
            made = compositions.order(meaning, build, aspect)
        case Comparison():
            made = compositions.comparison(meaning, build)
        case Transfer(verb=verb, doer=doer, given=given, receiver=receiver):
            own = compositions.build_of(doer, build)
            made = transfer(verb, PEOPLE[doer], given, PEOPLE[receiver], own)
        case Chain(verb=verb, outer=outer, middle=middle):
            made = chain(verb, outer, middle, compositions.build_of(outer, build))
    return tuple(made)


def _shapes(scene: Scene, lines: int, aspect: float, at: float = 0.0) -> tuple[Shape, ...]:
    if why_not(scene.meaning) is not None:
        raise ValueError(f"there is no act to draw in {scene.meaning}")
    shapes = _facing_right(scene.meaning, lines, aspect, at)
    # Earlier is on the left, wherever the doer stands.
    if scene.side is Side.RIGHT and not isinstance(scene.meaning, Order):
        shapes = tuple(mirrored(shape) for shape in shapes)
    if lines < 12 and not isinstance(scene.meaning, Place):
        return tuple(map(_softened, shapes))
    return shapes


def drawings(scenes: Sequence[Scene], *, columns: int, lines: int) -> tuple[Drawing, ...]:
    """The drawings of one item, all at the same scale and with the ground at the same height.

    Raises: ValueError when a meaning cannot be drawn.
    """
    aspect = columns / (2 * lines)
    every = [_shapes(scene, lines, aspect) for scene in scenes]
    return tuple(
        _on_its_ground(scene, shapes, frame)
        for scene, shapes, frame in zip(scenes, every, _frames_of(every, aspect), strict=True)
    )


def moving(scene: Scene, *, columns: int, lines: int, steps: int) -> tuple[Drawing, ...]:
    """One round of the scene's movement from its still picture, in one frame.

    Raises: ValueError when its meaning cannot be drawn.
    """
    aspect = columns / (2 * lines)
    every = [_shapes(scene, lines, aspect, step / steps) for step in range(steps)]
    still = bounds(every[0])
    everything = [tuple(shape for shapes in every for shape in shapes)]
    frame = _frames_of(everything, aspect)[0]
    # The still picture is in the middle unless that would cut off what moves.
    middle = still.left + still.width / 2 - frame.width / 2
    reach = bounds(everything[0])
    slack = (frame.width - reach.width) / 2
    left = min(max(middle, frame.left - slack), frame.left + slack)
    return tuple(_on_its_ground(scene, shapes, replace(frame, left=left)) for shapes in every)


def _frames_of(every: Sequence[tuple[Shape, ...]], aspect: float) -> list[Frame]:
    """A frame of one common size for each group of shapes."""
    if not every:
        return []
    extents = [bounds(shapes) for shapes in every]
    wide = max(extent.width for extent in extents)
    top = min(extent.top for extent in extents)
    low = max(0.0, *(extent.top + extent.height for extent in extents))
    high = low - top
    height = max(high / (1 - _MARGIN - _EARTH_SHARE), wide / (1 - 2 * _MARGIN) / aspect)
    # Spare height goes mostly above: figures stand on the ground, not in the air.
    below = low + height * _EARTH_SHARE * 0.5 + max(0.0, height - high * 1.12) * 0.3
    return [
        Frame(
            left=extent.left + extent.width / 2 - height * aspect / 2,
            top=below - height,
            width=height * aspect,
            height=height,
        )
        for extent in extents
    ]


def _on_its_ground(scene: Scene, shapes: tuple[Shape, ...], frame: Frame) -> Drawing:
    match scene.meaning:
        case Place():
            return Drawing(shapes=shapes, frame=frame, earth=_TABLE, ground=-25.0)
        case Comparison(more=key) if key in THINGS:
            return Drawing(shapes=shapes, frame=frame, earth=_TABLE, ground=-25.0)
        case Order():
            return Drawing(shapes=shapes, frame=frame, sky=_PAPER, ground=None)
        case _:
            return Drawing(shapes=shapes, frame=frame)


def drawing(scene: Scene, *, columns: int, lines: int) -> Drawing:
    """One scene on its own.   Raises: ValueError when its meaning cannot be drawn."""
    return drawings((scene,), columns=columns, lines=lines)[0]
