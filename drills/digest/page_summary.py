"""The week in a few lines, for a reader with twenty seconds; each number stands again below."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import NamedTuple

from drills.digest import wording
from drills.digest.check_wording import ROLES
from drills.digest.checks import CheckLine
from drills.digest.plain import day, inert, kept
from drills.digest.values import FEWEST_FOR_PERCENT, Change, Digest, Line
from drills.measures import chance
from drills.measures.chance import Verdict

MOST_NAMES, MOST_IN_SHORT = 6, 3
_HEADS = {
    Verdict.BELOW: "Below guessing",
    Verdict.SAME: "Like guessing",
    Verdict.ABOVE: "Above guessing",
}


class Told(NamedTuple):
    """One line of the summary.   urgent: to be set off."""

    about: str
    told: str
    urgent: bool = False


def summary(digest: Digest) -> list[Told]:
    """Practice, guessing, change, checks and what is due; what there is nothing of is left out."""
    judged = [line for line in digest.word_lines if line.unaided.of >= FEWEST_FOR_PERCENT]
    lines = [Told("Practice", _practice(digest)), *_guessing(judged)]
    if judged:
        lines.append(Told("Changed", _changed(judged)))
    lines += _checked(digest)
    if digest.upcoming:
        lines.append(Told("Due next", _due(digest)))
    return lines


def _practice(digest: Digest) -> str:
    dose = digest.dose
    sessions = wording.planned(digest, dose.sessions_planned, dose.sessions_share)
    minutes = wording.planned(digest, dose.minutes_planned, dose.minutes_share)
    told = [
        f"{dose.sessions} sessions{sessions}",
        f"{wording.number(dose.minutes)} minutes{minutes}",
    ]
    if digest.sittings:
        told.append(f"last on {day(digest.sittings[-1].day)}")
    return f"{', '.join(told)}."


def _guessing(lines: Sequence[Line]) -> list[Told]:
    """One line a verdict; what could not be told from guessing whatever was answered is apart."""
    able = [line for line in lines if _could_tell(line)]
    found = []
    for verdict, head in _HEADS.items():
        of_verdict = [line for line in able if line.verdict is verdict]
        if of_verdict:
            wrong = verdict is not Verdict.ABOVE
            told = _listed(_named(line, wrong=wrong) for line in of_verdict)
            found.append(Told(head, told, urgent=verdict is Verdict.BELOW))
    unable = [line for line in lines if line.verdict is not None and not _could_tell(line)]
    if unable:
        found.append(Told("Too few to tell", _listed(_named(line, wrong=True) for line in unable)))
    return found


def _could_tell(line: Line) -> bool:
    """With every answer right it would have been above guessing."""
    of = line.unaided.of
    if line.verdict is None or line.chance is None:
        return False
    return chance.verdict(of, [line.chance] * of) is Verdict.ABOVE


def _named(line: Line, *, wrong: bool) -> str:
    """`Passive sentences 2/10 (roles exchanged: 7 of 8 wrong)`."""
    told = f"{inert(line.label)} {kept(f'{line.unaided.right}/{line.unaided.of}')}"
    all_wrong = sum(line.errors.values())
    if not wrong or not all_wrong:
        return told
    foil = max(line.errors, key=lambda each: line.errors[each])
    return f"{told} ({wording.FOILS[foil].lower()}: {line.errors[foil]} of {all_wrong} wrong)"


def _changed(lines: Sequence[Line]) -> str:
    moved = [
        f"{inert(line.label)} {wording.change(line.change)}"
        for line in lines
        if line.change is not None and _is_clear(line.change)
    ]
    if moved:
        return _listed(moved)
    if any(line.change is not None and line.change.interval is not None for line in lines):
        return "No clear change: every interval of a change takes in 0."
    return "Too little earlier to compare."


def _is_clear(change: Change) -> bool:
    return change.interval is not None and not change.interval.low <= 0 <= change.interval.high


def _checked(digest: Digest) -> list[Told]:
    """`Passive 0/20, now 7/10 (practised); ...`, what stands for the same told together."""
    if digest.checks is None:
        return []
    told = []
    for item_set, lines in groupby(digest.checks.lines, key=lambda line: line.item_set):
        role = ROLES[item_set].removesuffix(", new sentences")
        told.append(f"{', '.join(_first_and_now(line) for line in lines)} ({role})")
    return [Told("Checks", _listed(told))] if told else []


def _first_and_now(line: CheckLine) -> str:
    first, newest = line.points[0].right, line.points[-1].right
    told = f"{inert(line.label)} {first.right}/{first.of}"
    return told if len(line.points) == 1 else f"{told}, now {kept(f'{newest.right}/{newest.of}')}"


def _due(digest: Digest) -> str:
    first = digest.upcoming[0]
    names = list(dict.fromkeys(inert(due.label) for due in first.dues))
    shown = names[:MOST_IN_SHORT]
    more = f"; and {len(names) - len(shown)} more" if len(names) > len(shown) else ""
    minutes = ""
    if digest.calendar is not None and digest.calendar.days[0].day == first.day:
        minutes = f", about {round(digest.calendar.days[0].minutes)} minutes"
    return f"{day(first.day)}{minutes}: {'; '.join(shown)}{more}."


def _listed(told: Iterable[str]) -> str:
    return f"{'; '.join(told)}."
