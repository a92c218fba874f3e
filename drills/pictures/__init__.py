"""Pictures: a meaning becomes a scene of posed figures, then shapes, then terminal cells.

Holds the cast, the things, the acts and how they move; draws them to cells, PNG or SVG, and says
of a meaning why it cannot (`why_not`) and of two scenes whether they can be told apart. May import
`drills.core` alone; numpy and Pillow load at the first `draw`, never at import.
Tested by tests/pictures, which measures contact, framing and contrast; bench_pictures tries all.
"""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.meanings import Scene
from drills.pictures.activities import ACTIVITIES
from drills.pictures.acts import ACTS
from drills.pictures.animal_acts import ANIMAL_ACTS
from drills.pictures.cast import PEOPLE
from drills.pictures.cells import Cell, Cells, Encoding
from drills.pictures.herd import ANIMALS
from drills.pictures.limits import SMALL_UNREADABLE, why_not
from drills.pictures.objects import THINGS
from drills.pictures.places import CONTAINERS
from drills.pictures.scenes import can_draw, drawing, drawings, moving
from drills.pictures.telling_apart import least_share, share_apart, tells_apart

__all__ = [
    "ACTIVITY_KEYS",
    "ANIMAL_KEYS",
    "ANIMAL_VERB_KEYS",
    "CONTAINERS",
    "PEOPLE_KEYS",
    "SMALL_UNREADABLE",
    "STEPS",
    "THING_KEYS",
    "VERB_KEYS",
    "Cell",
    "Cells",
    "Encoding",
    "can_draw",
    "draw",
    "drawing",
    "drawings",
    "frames",
    "least_share",
    "share_apart",
    "tells_apart",
    "why_not",
]

PEOPLE_KEYS = tuple(PEOPLE)
ANIMAL_KEYS = tuple(ANIMALS)
VERB_KEYS = tuple(ACTS)
ANIMAL_VERB_KEYS = tuple(ANIMAL_ACTS)
ACTIVITY_KEYS = tuple(ACTIVITIES)
THING_KEYS = tuple(THINGS)
STEPS = 8
"""Frames in one round of a movement."""


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


def frames(
    scene: Scene, *, columns: int, lines: int, encoding: Encoding = Encoding.BLOCKS
) -> tuple[Cells, ...]:
    """One round of an act or activity; the first frame is the still picture.

    A meaning with no movement gives one frame.   Raises: as `draw`.
    """
    from drills.pictures.encode import encode  # noqa: PLC0415

    made = (
        encode(each, columns=columns, lines=lines, encoding=encoding)
        for each in moving(scene, columns=columns, lines=lines, steps=STEPS)
    )
    several = tuple(made)
    return several[:1] if len(set(several)) == 1 else several
