"""Words against grammar: right alone in each cell of the grid."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from drills.core.items import ItemSet
from drills.core.question_words import GRID, Grammar, cell_of
from drills.core.records import Trial
from drills.core.words import Band
from drills.digest.values import Grid, GridCell
from drills.measures import accuracy
from drills.measures.intervals import wilson

CELLS = tuple(product(Band, Grammar))


def grids_of(trials: Sequence[Trial]) -> tuple[Grid, ...]:
    """One grid for each set of items that was tried in it."""
    found: dict[ItemSet, list[Trial]] = {}
    for trial in trials:
        if trial.attempts and trial.asked.target.name == GRID:
            found.setdefault(trial.asked.item_set, []).append(trial)
    return tuple(
        Grid(item_set=each, cells=tuple(_cell(found[each], *cell) for cell in CELLS))
        for each in ItemSet
        if each in found
    )


def _cell(trials: Sequence[Trial], band: Band, grammar: Grammar) -> GridCell:
    own = [trial for trial in trials if cell_of(trial.asked.level) == (band, grammar)]
    unaided = accuracy.count(own).unaided
    return GridCell(
        band=band,
        grammar=grammar,
        unaided=unaided,
        interval=wilson(unaided.right, unaided.of),
    )
