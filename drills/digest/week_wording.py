"""The words of weeks, of what is kept and of trends, the same in text and on the page."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from drills.core.kinds import ItemSet
from drills.digest.course import Course
from drills.digest.figure_wording import missing, signed_two
from drills.digest.keeping import Kept, TrendLine
from drills.digest.outcomes import Phase
from drills.digest.plain import day, kept, span
from drills.digest.spans import CueWeeks, DoseWeek
from drills.digest.values import FEWEST_FOR_PERCENT, Digest
from drills.digest.wording import number, percent_span, share
from drills.measures.missing import Missing
from drills.measures.retention import Retained

KEPT_TITLE = "Kept after days without it"
KEPT_FOOT = "Right alone at the first giving after so many days. What is known waits longer."
TREND_TITLE = "Trend over sessions"
TREND_FOOT = (
    "Of practice, no outcome. tau: -1 falls, 1 rises from session to session. Points: a session. "
    "Help: mean level, first and last week."
)
PHASES = {
    Phase.BASELINE: "Baseline report: before practice.",
    Phase.PRACTICE: "Report while practice goes on.",
    Phase.MAINTENANCE: "Report after practice: what was kept.",
}


def dose_weeks(weeks: Sequence[DoseWeek]) -> str:
    """`Minutes by week, the last to Sun 22 Nov: 92, 75, 90 of 125; 4.3 hours in all.`"""
    planned = [number(week.minutes_planned) for week in weeks]
    alike = len(set(planned)) == 1
    told = ", ".join(
        number(week.minutes) if alike else f"{number(week.minutes)} of {of}"
        for week, of in zip(weeks, planned, strict=True)
    )
    each = f" of {planned[0]} each" if alike else ""
    return (
        f"Minutes in the {len(weeks)} weeks to {day(weeks[-1].last)}: {told}{each}; "
        f"{number(weeks[-1].hours)} hours in all."
    )


class KeptRow(NamedTuple):
    """`after`: from so many days to the next step."""

    after: str
    words: str
    gestures: str


def kept_rows(of: Kept) -> list[KeptRow]:
    """The steps at which anything was given."""
    rows = [
        KeptRow(_after(words.days, of.words), _kept(words), _kept(gestures))
        for words, gestures in zip(of.words, of.gestures, strict=True)
        if words.share.of or gestures.share.of
    ]
    same = of.words_same_day, of.gestures_same_day
    if any(each.share.of for each in same):
        rows.append(KeptRow("same day again", _kept(same[0]), _kept(same[1])))
    return rows


def _after(days: int, steps: Sequence[Retained]) -> str:
    later = [step.days for step in steps if step.days > days]
    if not later:
        return f"{days} days or more"
    if later[0] == days + 1:
        return "1 day" if days == 1 else f"{days} days"
    return f"{days} to {later[0] - 1} days"


def _kept(of: Retained) -> str:
    if not of.share.of:
        return "-"
    return f"{share(of.share)} [{percent_span(of.share, of.interval)}]"


class TrendRow(NamedTuple):
    sessions: str
    trials: str
    tau: str
    slope: str
    help: str
    label: str


def trend_rows(digest: Digest) -> list[TrendRow]:
    """Names of the range with a trend to tell; the others are in `untold`."""
    used = {(line.kind, line.name): line for line in digest.cue_weeks}
    return [
        TrendRow(
            str(line.sessions),
            str(line.trials),
            SAME if isinstance(line.trend.tau, Missing) else signed_two(line.trend.tau),
            f"{100 * line.trend.slope:+.1f}" if round(line.trend.slope, 3) else "0",
            _help(used.get((line.kind, line.name))),
            line.label,
        )
        for line in _told(digest)
        if not isinstance(line.trend, Missing)
    ]


SAME = "even"


def _told(digest: Digest) -> list[TrendLine]:
    """Of names with enough trials in the range: of the others the JSON tells."""
    judged = {
        (line.kind, line.name)
        for line in digest.lines
        if line.unaided.of >= FEWEST_FOR_PERCENT and line.item_set is ItemSet.TREATED
    }
    return [line for line in digest.trends if (line.kind, line.name) in judged]


def untold(digest: Digest) -> str:
    """`Not told: Place words (3 sessions are needed; there are 2)`; empty for none."""
    told = [
        f"{line.label} ({missing(line.trend)})"
        for line in _told(digest)
        if isinstance(line.trend, Missing)
    ]
    return f"Not told: {', '.join(told)}." if told else ""


def _help(line: CueWeeks | None) -> str:
    """`3.1, 2.0`; `-` where there is no help to take."""
    levels = [week.use.mean_level for week in (line.weeks if line else ())]
    told = [number(level) for level in levels if level is not None]
    return "-" if not told else told[0] if len(told) == 1 else f"{told[0]}, {told[-1]}"


def course_head(course: Course, weeks: Sequence[DoseWeek]) -> list[str]:
    """What kind of report it is, how long practice went on, and what is held against what."""
    told = [PHASES[course.phase]]
    if course.first_practice is None or course.last_practice is None:
        return [*told, "No practice yet."]
    hours = f", {number(weeks[-1].hours)} hours" if weeks else ""
    told.append(
        f"Practice {kept(span(course.first_practice, course.last_practice))}: "
        f"{course.practice_days} days{hours}."
    )
    if course.ends is not None:
        told.append(
            f"Levels: {kept(span(*course.ends.closing))}, change against "
            f"{kept(span(*course.ends.opening))}."
        )
    return told
