"""Weeks side by side: minutes against the plan, and help."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from drills.digest.charts import BLACK, MIDDLE, SMALL_PT, canvas, day_label, svg
from drills.digest.spans import CueWeeks, DoseWeek
from drills.digest.values import FEWEST_FOR_PERCENT
from drills.digest.wording import number

_MOST_LABELS = 4
# A bar below this share of the height has no room for its number.
_LOW = 0.3


def dose_chart(weeks: Sequence[DoseWeek], *, width_mm: float, height_mm: float) -> Markup:
    """Minutes of sessions in each week; a stroke where the plan would have them."""
    with canvas(width_mm=width_mm, height_mm=height_mm) as (figure, axes):
        places = range(len(weeks))
        most = max([1.0, *(max(week.minutes, week.minutes_planned) for week in weeks)])
        axes.bar(places, [week.minutes for week in weeks], width=0.7, color="#8c8c8c")
        for at, week in zip(places, weeks, strict=True):
            if week.minutes_planned:
                axes.hlines(week.minutes_planned, at - 0.45, at + 0.45, color=BLACK, linewidth=1.4)
            # Within the bar, where the stroke of the plan cannot run through it.
            low = week.minutes < _LOW * most
            axes.annotate(
                number(round(week.minutes)),
                (at, week.minutes),
                xytext=(0, 1 if low else -1.5),
                textcoords="offset points",
                ha="center",
                va="bottom" if low else "top",
                fontsize=SMALL_PT,
            )
        if weeks and weeks[-1].minutes_planned:
            axes.annotate(
                f"plan {number(round(weeks[-1].minutes_planned))}",
                (len(weeks) - 1, weeks[-1].minutes_planned),
                xytext=(0, 1.5),
                textcoords="offset points",
                ha="center",
                va="bottom",
                fontsize=SMALL_PT,
            )
        axes.set_ylim(0, most * 1.18)
        axes.set_yticks([])
        axes.spines["left"].set_visible(False)
        axes.set_xlim(-0.6, max(len(weeks), 4) - 0.4)
        shown = _shown(len(weeks))
        axes.set_xticks(shown, [day_label(weeks[at].first) for at in shown])
        told = "; ".join(
            f"week from {day_label(week.first)}: {number(week.minutes)} "
            f"of {number(week.minutes_planned)}"
            for week in weeks
        )
        return svg(figure, f"Minutes of sessions of those in the plan, {told}.")


def cues_chart(line: CueWeeks, *, most: float, width_mm: float, height_mm: float) -> Markup:
    """Mean level of help in each week, from 0 to `most`.

    Weeks without trials are left open; those with less than five have a hollow mark, not joined.
    """
    levels = [week.use.mean_level for week in line.weeks]
    nan = float("nan")
    few = [week.use.of < FEWEST_FOR_PERCENT for week in line.weeks]
    met = [at for at, level in enumerate(levels) if level is not None]
    with canvas(width_mm=width_mm, height_mm=height_mm) as (figure, axes):
        axes.plot(
            range(len(levels)),
            [
                nan if level is None or is_few else level
                for level, is_few in zip(levels, few, strict=True)
            ],
            color=BLACK,
            linewidth=0.9,
            marker="o",
            markersize=2.6,
            clip_on=False,
        )
        axes.plot(
            [at for at in met if few[at]],
            [level for at in met if few[at] and (level := levels[at]) is not None],
            color=BLACK,
            linestyle="none",
            marker="o",
            markersize=2.6,
            markerfacecolor="#ffffff",
            markeredgewidth=0.6,
            clip_on=False,
        )
        axes.set_ylim(0, most)
        axes.set_yticks([0, most], ["0", number(most)])
        axes.axhline(most, color=MIDDLE, linewidth=0.4)
        axes.set_xlim(-0.3, max(len(levels), 4) - 0.7)
        axes.set_xticks([0, len(levels) - 1] if len(levels) > 1 else [0])
        axes.set_xticklabels(
            [day_label(line.weeks[at].first) for at in axes.get_xticks().astype(int)]
        )
        told = "; ".join(
            f"week from {day_label(line.weeks[at].first)}: {levels[at]:.1f}, "
            f"n {line.weeks[at].use.of}"
            for at in met
        )
        return svg(figure, f"Mean level of help, {line.label}: {told}.")


def _shown(count: int) -> list[int]:
    """Places that have their day written: the last, and others evenly before it."""
    step = -(-count // _MOST_LABELS) if count > _MOST_LABELS else 1
    return sorted(range(count - 1, -1, -step))
