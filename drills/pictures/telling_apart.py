"""Whether a target and a foil can be told apart at the size they are shown."""

from __future__ import annotations

from functools import lru_cache

from drills.core.meanings import Scene
from drills.pictures.cells import Encoding
from drills.pictures.limits import FEW_LINES


def least_share(lines: int) -> float:
    """How much of two pictures must differ.   Source: reference of this project, a guess."""
    return 0.15 if lines < FEW_LINES else 0.20


@lru_cache(maxsize=4096)
def share_apart(a: Scene, b: Scene, *, columns: int, lines: int) -> float:
    """The share of half cells further apart than Delta-E 20, both scenes at one scale.

    Raises: ValueError when a meaning cannot be drawn.
    """
    # numpy takes a tenth of a second to load, and most commands draw nothing.
    from drills.pictures.contrast import share_that_differs  # noqa: PLC0415
    from drills.pictures.encode import encode  # noqa: PLC0415
    from drills.pictures.scenes import drawings  # noqa: PLC0415

    one, other = (
        encode(made, columns=columns, lines=lines, encoding=Encoding.HALVES)
        for made in drawings((a, b), columns=columns, lines=lines)
    )
    return share_that_differs(one, other)


def tells_apart(a: Scene, b: Scene, *, columns: int, lines: int) -> bool:
    """Whether the two differ in enough of the picture to be offered against each other."""
    return share_apart(a, b, columns=columns, lines=lines) >= least_share(lines)
