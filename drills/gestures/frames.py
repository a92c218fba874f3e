"""Frames of a gesture, ready for the screen."""

from __future__ import annotations

from functools import lru_cache

from drills.core.problems import BadInput
from drills.gestures.keyframes import TO_AND_FRO, Motion, drawings
from drills.gestures.motions import MOTIONS
from drills.pictures.cells import Cells, Encoding
from drills.pictures.shapes import Drawing

KEYS: tuple[str, ...] = tuple(MOTIONS)
"""Every drawing there is, in the order of the content."""

FRAMES_A_LOOP = len(TO_AND_FRO)

# Two seconds a loop: slow enough to follow, and far below three changes of light a second.
_MOVING_SECONDS = 0.25
_HELD_SECONDS = 1.0


def drawn(drawing_key: str) -> tuple[Drawing, ...]:
    """The frames as drawings, for print.

    Raises BadInput when there is no such drawing.
    """
    return drawings(_motion(drawing_key))


@lru_cache(maxsize=64)
def frames(drawing_key: str, *, columns: int, lines: int, encoding: Encoding) -> tuple[Cells, ...]:
    """The frames of one loop; the first is the most telling one, a held gesture has no other.

    Raises BadInput when there is no such drawing.
    """
    from drills.pictures.encode import encode  # noqa: PLC0415 - numpy and Pillow, only to draw

    return tuple(
        encode(drawing, columns=columns, lines=lines, encoding=encoding)
        for drawing in drawn(drawing_key)
    )


def frame_seconds(drawing_key: str) -> float:
    """For how long each frame of a drawing is shown.

    Raises BadInput when there is no such drawing.
    """
    return _HELD_SECONDS if len(_motion(drawing_key).steps) == 1 else _MOVING_SECONDS


def _motion(drawing_key: str) -> Motion:
    motion = MOTIONS.get(drawing_key)
    if motion is None:
        raise BadInput(
            f"There is no gesture drawing {drawing_key!r}. Use one of: {', '.join(KEYS)}."
        )
    return motion
