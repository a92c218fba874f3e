"""Pictures: a meaning becomes a scene of posed figures, then shapes, then terminal cells.

Holds the cast, the things, the acts and the places; draws them to cells, PNG or SVG. May import
`drills.core` alone; numpy and Pillow load at the first `draw`, never at import.
Tested by tests/pictures, which measures contact, framing and contrast of what is drawn.
"""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.meanings import Scene
from drills.pictures.acts import ACTS
from drills.pictures.animal_acts import ANIMAL_ACTS
from drills.pictures.cast import ANIMALS, PEOPLE
from drills.pictures.cells import Cell, Cells, Encoding
from drills.pictures.objects import THINGS
from drills.pictures.places import CONTAINERS
from drills.pictures.scenes import can_draw, drawing, drawings

__all__ = [
    "ANIMAL_KEYS",
    "ANIMAL_VERB_KEYS",
    "CONTAINERS",
    "PEOPLE_KEYS",
    "THING_KEYS",
    "VERB_KEYS",
    "Cell",
    "Cells",
    "Encoding",
    "can_draw",
    "draw",
    "drawing",
    "drawings",
]

PEOPLE_KEYS = tuple(PEOPLE)
ANIMAL_KEYS = tuple(ANIMALS)
VERB_KEYS = tuple(ACTS)
ANIMAL_VERB_KEYS = tuple(ANIMAL_ACTS)
THING_KEYS = tuple(THINGS)


def draw(
    scenes: Sequence[Scene], *, columns: int, lines: int, encoding: Encoding = Encoding.BLOCKS
) -> tuple[Cells, ...]:
    """The scenes of one item as terminal cells, all at the same scale.

    Raises: ValueError when a meaning cannot be drawn; ask `can_draw` first.
    """
    # numpy takes a tenth of a second to load, and most commands draw nothing.
    from drills.pictures.encode import encode  # noqa: PLC0415

    return tuple(
        encode(made, columns=columns, lines=lines, encoding=encoding)
        for made in drawings(scenes, columns=columns, lines=lines)
    )
