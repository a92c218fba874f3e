"""Whether the pictures of an item can be told apart as they are shown: at one scale, at one size.

Two pictures are large, three or four are small. The gate is a share of half cells that differ
(`least_share` in pictures); it is measured on the drawings themselves and kept for each set of
scenes, so that a redrawn act needs nothing here to be changed.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from drills.core.kinds import Side
from drills.core.meanings import Act, Place, Scene
from drills.language import placed
from drills.pictures import drawings, least_share

COLUMNS = 38
LARGE_LINES = 15
"""Rows of one of two pictures."""
SMALL_LINES = 9
"""Rows of one of three or four pictures."""


def lines_for(options: int) -> int:
    return SMALL_LINES if options > 2 else LARGE_LINES


def shares(target: Scene, foils: Sequence[Scene], *, lines: int) -> tuple[float, ...]:
    """By what share of its half cells each foil differs from the target.

    All are drawn together, at the one scale at which an item shows them.
    Raises: ValueError when a meaning cannot be drawn.
    """
    return _shares(_bare(target), tuple(map(_bare, foils)), lines)


def alike(target: Scene, foils: Sequence[Scene]) -> tuple[int, ...]:
    """Which of the foils cannot be told from the target when all are shown together."""
    lines = lines_for(1 + len(foils))
    # In one order whatever theirs is, since what was measured once is kept.
    order = sorted(range(len(foils)), key=lambda index: _sorted_by(foils[index]))
    measured = shares(target, [foils[index] for index in order], lines=lines)
    short = [order[n] for n, share in enumerate(measured) if share < least_share(lines)]
    return tuple(sorted(short))


def are_unlike(one: Scene, other: Scene, *, lines: int) -> bool:
    """Whether two pictures of so many rows can be told apart."""
    (share,) = shares(one, [other], lines=lines)
    return share >= least_share(lines)


def _sorted_by(scene: Scene) -> tuple[tuple[str, ...], Side]:
    return (scene.meaning.drawn, scene.side)


def _bare(scene: Scene) -> Scene:
    """The scene without where and when, which no picture shows."""
    return Scene(meaning=placed(scene.meaning, (None, None)), side=scene.side)


@lru_cache(maxsize=4096)
def _shares(target: Scene, foils: tuple[Scene, ...], lines: int) -> tuple[float, ...]:
    # numpy takes a tenth of a second to load, and most commands draw nothing.
    from drills.exercises.seeing import halves_seen, share_unlike  # noqa: PLC0415

    first, *rest = (
        halves_seen(made, columns=COLUMNS, lines=lines)
        for made in drawings((target, *foils), columns=COLUMNS, lines=lines)
    )
    return tuple(share_unlike(first, other) for other in rest)


@dataclass(frozen=True, slots=True, kw_only=True)
class Showing:
    """How an item is shown: with how many pictures, and on which sides the doer stands."""

    options: int
    side: Side
    reversed_side: Side

    @property
    def is_small(self) -> bool:
        return self.options > 2

    def tells(self, meaning: Act | Place) -> bool:
        """Whether the meaning and its reversal can be told apart at the size they are shown."""
        return are_unlike(
            Scene(meaning=meaning, side=self.side),
            Scene(meaning=meaning.reversed(), side=self.reversed_side),
            lines=lines_for(self.options),
        )
