"""The words of checks, the same in text and on the page."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date
from typing import NamedTuple

from drills.core.items import ItemSet
from drills.digest.checks import CheckLine, CheckPoint, Checks, PhaseShare
from drills.digest.outcomes import Phase
from drills.digest.plain import day, inert, kept
from drills.digest.wording import GUESSING, number, percent_span, share

TITLE = "Checks without help"
ROLES = {
    ItemSet.PROBE: "practised, new sentences",
    ItemSet.RELATED: "related, not practised",
    ItemSet.CONTROL: "unrelated, not practised",
}
FOOT = (
    "Judge progress on these: never practised, no help, no feedback. The newest alone, and all of "
    "a phase together, each answer counted as if it stood alone, are held against guessing, 1 in 2."
)
TOGETHER = {
    Phase.BASELINE: "all before practice",
    Phase.PRACTICE: "all since practice began",
    Phase.MAINTENANCE: "all after practice",
}
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
    if checks.baseline:
        told = f"Baseline: {checks.baseline_done} of {checks.baseline} checks done. {told}"
    return told if checks.next_day is None else f"{told} {next_check(checks.next_day)}"


def next_check(on: date) -> str:
    return f"Next check due from {kept(day(on))} on."


def heading(line: CheckLine) -> str:
    return inert(f"{line.label} ({ROLES[line.item_set]})")


def together(line: CheckLine) -> str:
    """`all before practice 3/60 (5%) [2 to 14], below guessing; all since practice began ...`."""
    over = any(each.phase is Phase.MAINTENANCE for each in line.phases)
    return "; ".join(
        f"{_which(each, over=over)} {kept(share(each.right))} "
        f"{kept(f'[{percent_span(each.right, each.interval)}]')}, {GUESSING[each.verdict]}"
        for each in line.phases
    )


def _which(of: PhaseShare, *, over: bool) -> str:
    if of.phase is Phase.PRACTICE and over:
        return "all during practice"
    return TOGETHER[of.phase]


def newest(line: CheckLine) -> str:
    """`7/10 (70%) [40 to 89], like guessing`: the last against guessing."""
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
            GUESSING[point.verdict],
        )
        for point in points
    ]
