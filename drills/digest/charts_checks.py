"""Checks over time: one small chart a construction, the phases of the course apart."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from markupsafe import Markup
from matplotlib.axes import Axes

from drills.digest import check_wording
from drills.digest.charts import (
    BLACK,
    SMALL_PT,
    canvas,
    day_label,
    guessing_line,
    percent_axis,
    svg,
)
from drills.digest.checks import CheckLine, CheckPoint
from drills.digest.outcomes import Phase
from drills.digest.plain import day
from drills.digest.wording import GUESSING, percent_span, share

# Hollow before practice, filled during it, square after it.
_MARKS = {
    Phase.BASELINE: {"marker": "o", "markerfacecolor": "#ffffff"},
    Phase.PRACTICE: {"marker": "o", "markerfacecolor": BLACK},
    Phase.MAINTENANCE: {"marker": "s", "markerfacecolor": "#ffffff"},
}
_NAMES = {
    Phase.BASELINE: "before",
    Phase.PRACTICE: "practice",
    Phase.MAINTENANCE: "after",
}
CHANCE = 0.5
_FEWEST_FOR_NAME, _BETWEEN_DAYS = 2, 2


def checks_chart(line: CheckLine, *, width_mm: float, height_mm: float) -> Markup:
    """Share right at each check with its interval; a line between the phases."""
    with canvas(width_mm=width_mm, height_mm=height_mm) as (figure, axes):
        points = line.points
        percent_axis(axes)
        guessing_line(axes, CHANCE)
        axes.set_xlim(-0.6, max(len(points) - 0.4, 2.6))
        phases = [point.phase for point in points]
        for phase in dict.fromkeys(phases):
            _phase(axes, points, [at for at, each in enumerate(phases) if each is phase], phase)
        for before, after in pairwise(range(len(points))):
            if phases[before] is not phases[after]:
                axes.axvline((before + after) / 2, color=BLACK, linewidth=0.8)
        shown = _days_shown(phases)
        axes.set_xticks(shown, [day_label(points[at].day) for at in shown])
        return svg(figure, _told(line))


def _phase(axes: Axes, points: Sequence[CheckPoint], places: Sequence[int], phase: Phase) -> None:
    rights = [points[at].right.right / points[at].right.of for at in places]
    spans = [points[at].interval for at in places]
    axes.errorbar(
        places,
        rights,
        yerr=(
            [max(0.0, right - span.low) for right, span in zip(rights, spans, strict=True)],
            [max(0.0, span.high - right) for right, span in zip(rights, spans, strict=True)],
        ),
        color=BLACK,
        ecolor="#767676",
        elinewidth=0.7,
        linewidth=0.8,
        markeredgecolor=BLACK,
        markeredgewidth=0.7,
        clip_on=False,
        zorder=3,
        **_MARKS[phase],  # type: ignore[arg-type]
    )
    if len(places) >= _FEWEST_FOR_NAME:
        middle = (places[0] + places[-1]) / 2
        axes.annotate(
            _NAMES[phase],
            (middle, 1),
            xycoords=("data", "axes fraction"),
            xytext=(0, 1.5),
            textcoords="offset points",
            ha="center",
            va="bottom",
            fontsize=SMALL_PT,
            annotation_clip=False,
        )


def _days_shown(phases: Sequence[Phase]) -> list[int]:
    """Places with their day written: the last, the first of a phase, others where room is."""
    last = len(phases) - 1
    firsts = [at for at in range(len(phases)) if at == 0 or phases[at] is not phases[at - 1]]
    apart = max(_BETWEEN_DAYS, -(-len(phases) // 4))
    shown: list[int] = []
    for at in (last, *firsts, *range(0, len(phases), apart)):
        if all(abs(at - other) >= apart for other in shown):
            shown.append(at)
    return sorted(shown)


def _told(line: CheckLine) -> str:
    points = [
        f"{day(point.day)} ({_NAMES[point.phase]}) {share(point.right)}, "
        f"interval {percent_span(point.right, point.interval)}, "
        f"{GUESSING[point.verdict]}"
        for point in line.points
    ]
    return f"Checks of {check_wording.heading(line)}, against guessing: {'; '.join(points)}."
