"""A scene becomes a drawing; the scenes of one item share one scale."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drills.core.meanings import Act, Meaning, Place, Scene, Side
from drills.pictures.acts import ACTS
from drills.pictures.animal_acts import ANIMAL_ACTS
from drills.pictures.cast import ANIMALS, PEOPLE
from drills.pictures.geometry import bounds, mirrored
from drills.pictures.objects import THINGS
from drills.pictures.places import CONTAINERS, arrange
from drills.pictures.shapes import Colour, Drawing, Frame, Mark, Point, Shape
from drills.pictures.skeleton import build_for
from drills.pictures.stage import Body, Stage

_TABLE: Colour = (206, 190, 164)
_MARGIN = 0.035
_EARTH_SHARE = 0.07


def can_draw(meaning: Meaning) -> bool:
    """Whether a picture can show `meaning`."""
    match meaning:
        case Act(verb=verb, doer=doer, done_to=done_to):
            if doer == done_to:
                return False
            if doer in PEOPLE and done_to in PEOPLE:
                return verb in ACTS
            return doer in ANIMALS and done_to in ANIMALS and verb in ANIMAL_ACTS
        case Place(relation=relation, thing=thing, landmark=landmark):
            if thing == landmark or thing not in THINGS or landmark not in THINGS:
                return False
            return relation.value != "in" or landmark in CONTAINERS
        case _:
            return False


def stage(scene: Scene, *, lines: int) -> Stage:
    """The figures and shapes of an act, with the doer on the scene's side.

    Raises: ValueError when the meaning cannot be drawn.
    """
    meaning = scene.meaning
    if not isinstance(meaning, Act) or not can_draw(meaning):
        raise ValueError(f"there is no act to draw in {meaning}")
    build = build_for(lines)
    if meaning.doer in PEOPLE:
        staged = ACTS[meaning.verb](PEOPLE[meaning.doer], PEOPLE[meaning.done_to], build)
    else:
        staged = ANIMAL_ACTS[meaning.verb](ANIMALS[meaning.doer], ANIMALS[meaning.done_to], build)
    return staged if scene.side is Side.LEFT else _mirrored(staged)


def _mirrored(staged: Stage) -> Stage:
    def point(at: Point) -> Point:
        return (-at[0], at[1])

    def body(of: Body) -> Body:
        return replace(
            of, hip=point(of.hip), head=point(of.head), hands=tuple(map(point, of.hands))
        )

    return Stage(
        shapes=tuple(mirrored(shape) for shape in staged.shapes),
        doer=body(staged.doer),
        done_to=body(staged.done_to),
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


def _shapes(scene: Scene, lines: int) -> tuple[Shape, ...]:
    if isinstance(scene.meaning, Place) and can_draw(scene.meaning):
        shapes = arrange(scene.meaning)
        return shapes if scene.side is Side.LEFT else tuple(mirrored(shape) for shape in shapes)
    shapes = stage(scene, lines=lines).shapes
    return tuple(map(_softened, shapes)) if lines < 12 else shapes


def drawings(scenes: Sequence[Scene], *, columns: int, lines: int) -> tuple[Drawing, ...]:
    """The drawings of one item, all at the same scale and with the ground at the same height.

    Raises: ValueError when a meaning cannot be drawn.
    """
    if not scenes:
        return ()
    every = [_shapes(scene, lines) for scene in scenes]
    extents = [bounds(shapes) for shapes in every]
    aspect = columns / (2 * lines)
    wide = max(extent.width for extent in extents)
    top = min(extent.top for extent in extents)
    low = max(0.0, *(extent.top + extent.height for extent in extents))
    high = low - top
    height = max(high / (1 - _MARGIN - _EARTH_SHARE), wide / (1 - 2 * _MARGIN) / aspect)
    # Spare height goes mostly above: figures stand on the ground, not in the air.
    below = low + height * _EARTH_SHARE * 0.5 + max(0.0, height - high * 1.12) * 0.3
    made = []
    for scene, shapes, extent in zip(scenes, every, extents, strict=True):
        middle = extent.left + extent.width / 2
        frame = Frame(
            left=middle - height * aspect / 2,
            top=below - height,
            width=height * aspect,
            height=height,
        )
        if isinstance(scene.meaning, Place):
            made.append(Drawing(shapes=shapes, frame=frame, earth=_TABLE, ground=-25.0))
        else:
            made.append(Drawing(shapes=shapes, frame=frame))
    return tuple(made)


def drawing(scene: Scene, *, columns: int, lines: int) -> Drawing:
    """One scene on its own.   Raises: ValueError when its meaning cannot be drawn."""
    return drawings((scene,), columns=columns, lines=lines)[0]
