"""The words of checks, the same in text and on the page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from drills.core.items import ItemSet
from drills.digest.checks import CheckLine, CheckPoint, Checks
from drills.digest.plain import day, inert
from drills.digest.wording import VERDICTS, number, percent_span, share

TITLE = "Checks without help"
ROLES = {
    ItemSet.PROBE: "practised, new sentences",
    ItemSet.RELATED: "related, not practised",
    ItemSet.CONTROL: "unrelated, not practised",
}
FOOT = (
    "Judge progress on these: sentences that are never practised, no help, no feedback. In [ ]: "
    "95 in 100 such ranges hold the true share. Guessing: 1 in 2."
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
