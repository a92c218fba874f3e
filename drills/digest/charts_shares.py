"""Shares right with their intervals: what is kept after days, and words against grammar."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from markupsafe import Markup
from matplotlib.axes import Axes

from drills.core.question_words import Grammar
from drills.core.words import Band
from drills.digest.charts import BLACK, canvas, guessing_line, percent_axis, svg
from drills.digest.question_wording import BANDS, GRAMMARS
from drills.digest.values import FEWEST_FOR_PERCENT, Grid
from drills.digest.wording import in_cell, percent_span, share
from drills.measures.accuracy import Share
from drills.measures.intervals import Interval
from drills.measures.retention import Retained

GRID_CHANCE = 0.5


class _Style(NamedTuple):
    marker: str
    fill: str
    dashes: str | tuple[int, tuple[int, ...]]


# Of two series one is filled, round and solid, the other hollow, square and broken.
_STYLES = (_Style("o", BLACK, "solid"), _Style("s", "#ffffff", (0, (3, 2))))


def retention_chart(
    series: Sequence[tuple[str, Sequence[Retained]]], *, width_mm: float, height_mm: float
) -> Markup:
    """Right alone at the first giving after so many days, one series a name.

    What was tried less than five times has no point.
    """
    steps = [each.days for each in series[0][1]] if series else []
    with canvas(width_mm=width_mm, height_mm=height_mm) as (figure, axes):
        percent_axis(axes)
        for number, (name, kept) in enumerate(series):
            points = [
                (at + 0.16 * number, each.share, each.interval)
                for at, each in enumerate(kept)
                if each.share.of >= FEWEST_FOR_PERCENT
            ]
            _series(axes, points, _STYLES[number % len(_STYLES)], name)
        axes.set_xticks(range(len(steps)), [f"{days}" for days in steps])
        axes.set_xlim(-0.4, len(steps) - 0.4)
        axes.set_xlabel("days since the giving before", labelpad=1)
        told = "; ".join(f"{name}: {_kept(kept)}" for name, kept in series)
        return svg(figure, f"Right alone after days. {told}.")


def grid_chart(grid: Grid, *, width_mm: float, height_mm: float) -> Markup:
    """Easy beside hard grammar, a line for each band of words."""
    with canvas(width_mm=width_mm, height_mm=height_mm) as (figure, axes):
        percent_axis(axes)
        guessing_line(axes, GRID_CHANCE)
        for number, band in enumerate(Band):
            cells = {cell.grammar: cell for cell in grid.cells if cell.band is band}
            points = [
                (at + 0.06 * number, cells[grammar].unaided, cells[grammar].interval)
                for at, grammar in enumerate(Grammar)
                if cells[grammar].unaided.of >= FEWEST_FOR_PERCENT
            ]
            _series(axes, points, _STYLES[number % len(_STYLES)], BANDS[band])
        axes.set_xticks(range(len(Grammar)), [GRAMMARS[grammar] for grammar in Grammar])
        axes.set_xlim(-0.35, len(Grammar) - 0.6)
        told = "; ".join(
            f"{BANDS[cell.band]}, {GRAMMARS[cell.grammar]}: {in_cell(cell)}" for cell in grid.cells
        )
        return svg(figure, f"Right alone, words against grammar. {told}.")


def _series(
    axes: Axes, points: Sequence[tuple[float, Share, Interval]], style: _Style, name: str
) -> None:
    rights = [of.right / of.of for _, of, _ in points]
    axes.errorbar(
        [at for at, _, _ in points],
        rights,
        yerr=(
            [max(0.0, r - span.low) for r, (_, _, span) in zip(rights, points, strict=True)],
            [max(0.0, span.high - r) for r, (_, _, span) in zip(rights, points, strict=True)],
        ),
        color=BLACK,
        ecolor="#767676",
        elinewidth=0.7,
        linewidth=0.8,
        linestyle=style.dashes,
        marker=style.marker,
        markerfacecolor=style.fill,
        markeredgecolor=BLACK,
        markeredgewidth=0.7,
        clip_on=False,
        zorder=3,
        label=name,
    )


def _kept(kept: Sequence[Retained]) -> str:
    return ", ".join(
        f"{each.days} days {share(each.share)} [{percent_span(each.share, each.interval)}]"
        for each in kept
        if each.share.of
    )
