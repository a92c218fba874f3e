"""The digest's words for yes and no, and for words against grammar."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drills.core.items import ItemSet
from drills.core.question_words import Grammar
from drills.core.words import Band
from drills.digest.values import FEWEST_FOR_PERCENT, Grid, GridCell, Line
from drills.measures.chance import Verdict

LIKINGS: Mapping[Verdict | None, str] = MappingProxyType(
    {
        Verdict.ABOVE: "says yes to most",
        Verdict.BELOW: "says no to most",
        Verdict.SAME: "yes and no about as often",
    }
)
YES_AND_NO = (
    "Yes and no: half of what is asked is true. d': how far true is told from false, apart from a "
    "liking for yes or no. 0 is guessing; 1 is as 69, 2 as 84 right of 100 with no liking. c: "
    "below 0 a liking for yes, above 0 for no."
)
GRID_TITLE = "Words against grammar"
GRID_FOOT = (
    "Statements that everybody knows, true or false, right alone. By guessing half are right. The "
    "counts show where help may be needed; they name no illness."
)
BANDS: Mapping[Band, str] = MappingProxyType(
    {Band.EVERYDAY: "everyday words", Band.RARE: "rare words"}
)
GRAMMARS: Mapping[Grammar, str] = MappingProxyType(
    {Grammar.EASY: "easy grammar", Grammar.HARD: "hard grammar"}
)


def detection(line: Line) -> str:
    """`d' 1.04, c -0.28, n 50: says yes to most`; `-` where nothing is asked by yes or no."""
    found = line.detection
    if found is None:
        return "-"
    if found.of < FEWEST_FOR_PERCENT:
        return f"too few yes and no to tell, n {found.of}"
    told = LIKINGS[found.liking]
    return f"d' {_two(found.d_prime)}, c {_two(found.criterion)}, n {found.of}: {told}"


def detection_counts(line: Line) -> str:
    """`yes to 20 of 25 true, 10 of 25 false`."""
    found = line.detection
    if found is None:
        return "-"
    return f"yes to {found.hits} of {found.true} true, {found.false_alarms} of {found.false} false"


def cell_label(cell: GridCell) -> str:
    return f"{BANDS[cell.band]}, {GRAMMARS[cell.grammar]}"


def grid_set(grid: Grid) -> str:
    """Nothing for what is practised; else the set of the items."""
    return "" if grid.item_set is ItemSet.TREATED else f" ({grid.item_set.value})"


def grid_rows(grid: Grid) -> list[tuple[str, list[GridCell]]]:
    """A row for each band of words, its cells from easy to hard grammar."""
    return [
        (BANDS[band].capitalize(), [cell for cell in grid.cells if cell.band == band])
        for band in Band
    ]


def grid_short(grid: Grid) -> str:
    """`Rare words 9/10, hard grammar 5/10.`: each with the other kept easy."""
    shares = {(cell.band, cell.grammar): cell.unaided for cell in grid.cells}
    rare = shares[Band.RARE, Grammar.EASY]
    hard = shares[Band.EVERYDAY, Grammar.HARD]
    return (
        f"Rare words {rare.right}/{rare.of} (in easy grammar), "
        f"hard grammar {hard.right}/{hard.of} (in everyday words)."
    )


def _two(value: float) -> str:
    shown = f"{value:.2f}"
    return "0.00" if shown == "-0.00" else shown
