"""The words of checks, the same in text and on the page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from drills.core.items import ItemSet
from drills.digest.checks import CheckLine, CheckPoint, Checks
from drills.digest.outcomes import Phase
from drills.digest.plain import day, inert
from drills.digest.wording import VERDICTS, number, percent_span, share

TITLE = "Checks without help"
ROLES = {
    ItemSet.PROBE: "practised, new sentences",
    ItemSet.RELATED: "related, not practised",
    ItemSet.CONTROL: "unrelated, not practised",
}
FOOT = (
    "Judge progress on these: never practised, no help, no feedback. The newest is held against "
    "guessing, 1 in 2."
)
FIRST_SHOWN, LAST_SHOWN = 3, 6


class Row(NamedTuple):
    """One day of one construction; all empty but `when` where days are left out."""

    when: str
    right: str
    interval: str
    verdict: str


def counted(checks: Checks) -> str:
    """How many there were, and for how long, beside practice."""
    times = "1 check" if checks.sittings == 1 else f"{checks.sittings} checks"
    told = f"In these days: {times}, {number(checks.minutes)} minutes, not counted as practice."
    if not checks.baseline:
        return told
    return f"Baseline: {checks.baseline_done} of {checks.baseline} checks done. {told}"


def heading(line: CheckLine) -> str:
    return inert(f"{line.label} ({ROLES[line.item_set]})")


def newest(line: CheckLine) -> str:
    """`7/10 (70%) [40 to 89], not distinguishable`: the last against guessing."""
    row = _rows(line.points[-1:])[0]
    return f"{row.right} [{row.interval}], {row.verdict}"


def course(line: CheckLine) -> str:
    """`baseline from Fri 9 Oct: 2/20, 0/20, 3/20; practice from Mon 19 Oct: 1/10, 0/10`."""
    return "; ".join(
        f"{phase.value} from {day(points[0].day)}: {_shares(points)}"
        for phase, points in (
            (phase, [point for point in line.points if point.phase is phase]) for phase in Phase
        )
        if points
    )


def _shares(points: Sequence[CheckPoint]) -> str:
    told = [f"{point.right.right}/{point.right.of}" for point in points]
    between = len(told) - FIRST_SHOWN - LAST_SHOWN
    if between > 1:
        told = [*told[:FIRST_SHOWN], f"{between} more between", *told[-LAST_SHOWN:]]
    return ", ".join(told)


def rows(line: CheckLine) -> list[Row]:
    """The first days and the last ones; how many lie between."""
    between = len(line.points) - FIRST_SHOWN - LAST_SHOWN
    if between <= 1:
        return _rows(line.points)
    return [
        *_rows(line.points[:FIRST_SHOWN]),
        Row(f"{between} more between", "", "", ""),
        *_rows(line.points[-LAST_SHOWN:]),
    ]


def _rows(points: Sequence[CheckPoint]) -> list[Row]:
    return [
        Row(
            day(point.day),
            share(point.right),
            percent_span(point.right, point.interval),
            "nothing to guess" if point.verdict is None else VERDICTS[point.verdict],
        )
        for point in points
    ]
