"""What the page's tables and captions say beside the charts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from math import ceil

from drills.core.kinds import Kind
from drills.digest import wording
from drills.digest.check_wording import FIRST_SHOWN, LAST_SHOWN
from drills.digest.checks import CheckLine, Checks
from drills.digest.flag_values import Alert
from drills.digest.keeping import Kept
from drills.digest.plain import day, inert, kept
from drills.digest.spans import CueWeek, CueWeeks
from drills.digest.suggestion_wording import SuggestionRow, suggestion_rows
from drills.digest.values import FEWEST_FOR_PERCENT, Digest, Note
from drills.digest.wording import GUESSING, percent_span
from drills.measures.retention import Retained

MOST_CHARTS, MOST_DAYS = 4, 4


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckDay:
    """One column of the table of checks.   days: several where it stands for what is left out."""

    told: str
    days: tuple[date, ...]

    def of(self, line: CheckLine) -> str:
        """`7/10`; `-` where the construction was not checked."""
        if len(self.days) > 1:
            return ""
        for point in line.points:
            if point.day in self.days:
                return f"{point.right.right}/{point.right.of}"
        return "-"


def check_days(checks: Checks) -> list[CheckDay]:
    """The first days and the last ones of all constructions; how many lie between."""
    days = sorted({point.day for line in checks.lines for point in line.points})
    columns = [CheckDay(told=day(each).split(" ", 1)[1], days=(each,)) for each in days]
    between = len(days) - FIRST_SHOWN - LAST_SHOWN
    if between <= 1:
        return columns
    left_out = CheckDay(told=f"{between} more", days=tuple(days[FIRST_SHOWN:-LAST_SHOWN]))
    return [*columns[:FIRST_SHOWN], left_out, *columns[-LAST_SHOWN:]]


def newest(line: CheckLine) -> str:
    """`40 to 89%, like guessing`."""
    point = line.points[-1]
    span = percent_span(point.right, point.interval)
    return (
        f"{kept(span)}{'%' if point.right.of >= FEWEST_FOR_PERCENT else ''}, "
        f"{GUESSING[point.verdict]}"
    )


def cue_lines(weeks: Sequence[CueWeeks]) -> list[CueWeeks]:
    """Those which needed most help in their newest week, in the order they have.

    Gestures are told with their scores; of each only few trials come in a week. What had enough
    trials in no week is left out.
    """
    words = [line for line in weeks if line.kind is not Kind.GESTURE and _levels(line)]
    most = sorted(words, key=lambda line: -_levels(line)[-1])[:MOST_CHARTS]
    return [line for line in words if any(line is each for each in most)]


def _levels(line: CueWeeks) -> list[float]:
    return [level for _, level in _judged(line)]


def _judged(line: CueWeeks) -> list[tuple[CueWeek, float]]:
    """The weeks with enough trials, and their mean level of help."""
    return [
        (week, week.use.mean_level)
        for week in line.weeks
        if week.use.mean_level is not None and week.use.of >= FEWEST_FOR_PERCENT
    ]


def most_help(drawn: Sequence[CueWeeks]) -> int:
    """The top level of help of those drawn, one scale for all; 1 where no help was taken."""
    # Dependence is the level taken as a share of the top one.
    uses = [week.use for line in drawn for week in line.weeks]
    tops = [
        max(use.mean_level, round(use.mean_level / use.dependence, 6))
        for use in uses
        if use.mean_level and use.dependence
    ]
    return ceil(max(tops, default=1))


def cue_told(line: CueWeeks) -> str:
    """`3.1, now 2.5`; `last 2.5 (week of 9 Nov)` where it was not practised enough since."""
    judged = _judged(line)
    week, level = judged[-1]
    if week is not line.weeks[-1]:
        since = day(week.first).split(" ", 1)[1]
        return f"{kept(f'last {wording.mean(level)}')} {kept(f'(week of {since})')}"
    first = f"{wording.mean(judged[0][1])}, now " if len(judged) > 1 else ""
    return kept(f"{first}{wording.mean(level)}")


def kept_series(of: Kept) -> list[tuple[str, Sequence[Retained]]]:
    """Sentences and words, and gestures, where anything was given on two days."""
    both = (("sentences and words", of.words), ("gestures", of.gestures))
    found = [(name, kept_) for name, kept_ in both if any(each.share.of for each in kept_)]
    # Steps so long that nothing has come to them yet say nothing.
    met = [at for _, kept_ in found for at, each in enumerate(kept_) if each.share.of]
    return [(name, kept_[: max(met) + 1]) for name, kept_ in found]


def flagged(digest: Digest) -> set[str]:
    """The evidence that flags have told already."""
    return {inert(alert.evidence) for alert in digest.alerts}


def suggested(digest: Digest, most: int) -> list[tuple[str, list[SuggestionRow]]]:
    """The first ones, neighbours with one rule together; no rule where a flag has told it."""
    told = flagged(digest)
    rows = suggestion_rows(digest.suggestions)[:most]
    return [
        ("" if all(row.evidence in told for row in alike) else rule, alike)
        for rule, alike in ((rule, list(rows)) for rule, rows in groupby(rows, key=_rule))
    ]


def _rule(row: SuggestionRow) -> str:
    return row.rule


def by_rule(alerts: Sequence[Alert]) -> list[tuple[str, list[Alert]]]:
    """Neighbours that one rule made fire together, so that it is told once."""
    return [(rule, list(of_rule)) for rule, of_rule in groupby(alerts, key=wording.rule)]


def quality_told(digest: Digest) -> str:
    """What is there, then what there is none of."""
    rows = wording.quality(digest)
    told = "; ".join(f"{name}: {value}" for name, value in rows if value != "0")
    none = ", ".join(name[:1].lower() + name[1:] for name, value in rows if value == "0")
    return f"{told}. None: {none}." if none else f"{told}."


def notes_told(notes: Sequence[Note]) -> list[str]:
    """`Mon 16 Nov, Wed 18 Nov: words`; the same words once, with how often where days are many."""
    same: dict[str, list[date]] = {}
    for note in notes:
        same.setdefault(inert(note.text), []).append(note.day)
    return [f"{_on(days)}: {text}" for text, days in same.items()]


def _on(days: Sequence[date]) -> str:
    told = list(dict.fromkeys(days))
    if len(told) > MOST_DAYS:
        return kept(f"{len(days)} times to {day(told[-1])}")
    times = f" ({len(days)} times)" if len(days) > len(told) else ""
    return ", ".join(kept(day(each)) for each in told) + times
