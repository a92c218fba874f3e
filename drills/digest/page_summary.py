"""The week in a few lines, for a reader with twenty seconds; each number stands again below."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import groupby
from typing import NamedTuple

from drills.digest import wording
from drills.digest.check_wording import ROLES, TOGETHER, next_check
from drills.digest.checks import CheckLine, PhaseShare
from drills.digest.plain import day, inert, kept
from drills.digest.values import FEWEST_FOR_PERCENT, Change, Digest, Line
from drills.digest.wording import GUESSING, share
from drills.measures import chance
from drills.measures.chance import Verdict

MOST_NAMES, MOST_IN_SHORT = 6, 3
_ORDER = (Verdict.BELOW, Verdict.SAME, Verdict.ABOVE)


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
    for verdict in _ORDER:
        of_verdict = [line for line in able if line.verdict is verdict]
        if of_verdict:
            told = _listed(_named(line) for line in of_verdict)
            head = wording.GUESSING[verdict].capitalize()
            found.append(Told(head, told, urgent=verdict is Verdict.BELOW))
    unable = [line for line in lines if line.verdict is not None and not _could_tell(line)]
    if unable:
        found.append(Told("Too few to tell", _listed(_named(line) for line in unable)))
    return found


def _could_tell(line: Line) -> bool:
    """With every answer right it would have been above guessing."""
    of = line.unaided.of
    if line.verdict is None or line.chance is None:
        return False
    return chance.verdict(of, [line.chance] * of) is Verdict.ABOVE


def _named(line: Line) -> str:
    """`Passive sentences 2/10 (roles exchanged more often than guessing would)`.

    A habit is told of what is below guessing alone, and where all that is wrong goes one way: the
    only wrong picture may be the exchange.
    """
    told = f"{inert(line.label)} {kept(f'{line.unaided.right}/{line.unaided.of}')}"
    wrong = [foil for foil, count in line.errors.items() if count]
    if line.verdict is not Verdict.BELOW or len(wrong) != 1:
        return told
    return f"{told} ({wording.FOILS[wrong[0]].lower()} more often than guessing would)"


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
    """`All since practice began: Passive 7/50 (14%), below guessing, first 0/20 (practised)`.

    Of each construction its newest phase; what stands for the same is told together.
    """
    if digest.checks is None:
        return []
    told, phase = [], None
    for item_set, of_set in groupby(digest.checks.lines, key=lambda line: line.item_set):
        each_told = []
        for line in of_set:
            newest = line.phases[-1]
            head = "" if newest.phase is phase else f"{TOGETHER[newest.phase]}: "
            phase = newest.phase
            each_told.append(f"{head}{inert(line.label)} {_share_and_first(line, newest)}")
        role = ROLES[item_set].removesuffix(", new sentences")
        told.append(f"{'; '.join(each_told)} ({role})")
    if not told:
        return []
    listed = _listed(told)
    return [Told("Checks", f"{listed[:1].upper()}{listed[1:]}")]


def _share_and_first(line: CheckLine, newest: PhaseShare) -> str:
    first = line.points[0].right
    told = f"{kept(share(newest.right))}, {GUESSING[newest.verdict]}"
    return told if len(line.points) == 1 else f"{told}, {kept(f'first {first.right}/{first.of}')}"


def _due(digest: Digest) -> str:
    first = digest.upcoming[0]
    names = list(dict.fromkeys(inert(due.label) for due in first.dues))
    shown = names[:MOST_IN_SHORT]
    more = f"; and {len(names) - len(shown)} more" if len(names) > len(shown) else ""
    minutes = ""
    if digest.calendar is not None and digest.calendar.days[0].day == first.day:
        minutes = f", about {round(digest.calendar.days[0].minutes)} minutes"
    checks = digest.checks
    check = "" if checks is None or checks.next_day is None else next_check(checks.next_day)
    return f"{day(first.day)}{minutes}: {'; '.join(shown)}{more}. {check}".rstrip()


def _listed(told: Iterable[str]) -> str:
    return f"{'; '.join(told)}."
