"""The digest's words and number formats, the same in text and on the page."""

from __future__ import annotations

from datetime import date
from math import floor

from drills.core.items import Foil, ItemSet, Kind
from drills.core.records import CloseReason

# Said through this module as well, which text and page ask for every word.
from drills.digest import flag_words
from drills.digest.plain import KEEP, day, day_and_year, inert, kept, span
from drills.digest.values import (
    FEWEST_FOR_PERCENT,
    Change,
    Digest,
    DueLine,
    Example,
    GridCell,
    Line,
    SittingLine,
)
from drills.measures.accuracy import Share
from drills.measures.chance import Verdict
from drills.measures.intervals import Interval

alert = flag_words.alert
rule = flag_words.rule

SIMULATED = "SIMULATED PATIENT: no person answered. Invented data."
FOOT = (
    "Counts of home practice, for the treating therapist. No diagnosis, no norms. "
    "Practice items adapt to the person: judge progress on checks without help, not on practice."
)

KINDS = {
    Kind.MATCH: "pictures",
    Kind.ACT_OUT: "act it out",
    Kind.CLOZE: "missing word",
    Kind.QUESTION: "question",
    Kind.GESTURE: "gesture",
}
FOILS = {
    Foil.REVERSAL: "Roles exchanged",
    Foil.VERB: "Other action",
    Foil.NOUN: "Other person or thing",
    Foil.WORD: "Small word or ending",
}
VERDICTS = {
    Verdict.ABOVE: "above",
    Verdict.SAME: "like guessing",
    Verdict.BELOW: "below",
}
BRIEF = {
    Verdict.ABOVE: "above",
    Verdict.SAME: "like guessing",
    Verdict.BELOW: "BELOW",
    None: "nothing to guess",
}
GUESSING = {
    Verdict.ABOVE: "above guessing",
    Verdict.SAME: "like guessing",
    Verdict.BELOW: "below guessing",
    None: "nothing to guess",
}
VERDICT_FOOT = (
    "Like guessing: could be guessing. The verdict is an exact test, a little stricter than the "
    "interval."
)
EXCHANGES = "Where the one wrong picture has the roles exchanged, every error is an exchange."
REASONS = {
    CloseReason.FINISHED: "finished",
    CloseReason.STOPPED: "stopped early",
    CloseReason.TIRED: "ended tired",
    CloseReason.UNWELL: "ended unwell",
    None: "broken off",
}


def range_told(digest: Digest) -> str:
    """The days of the digest, and how far they have come."""
    told = f"{day_and_year(digest.first)} to {day_and_year(digest.last)}"
    if digest.is_over:
        return told
    if digest.until < digest.first:
        return f"{told}, not begun yet"
    return f"{told}, not over yet: counted to {day(digest.until)}"


def planned(digest: Digest, asked: float, of: float | None) -> str:
    """` of 125 (30%)`; empty where the plan asks for nothing."""
    if of is None:
        return ""
    so_far = "" if digest.is_over else f"planned so far{KEEP}"
    return f" of {number(asked)} {so_far}({percent(of)})"


def number(value: float) -> str:
    """At most one decimal, and none where there is nothing to say."""
    return f"{value:.1f}".removesuffix(".0")


def whole_percent(value: float) -> int:
    """Halves go up, as a reader expects; not to the even number."""
    return floor(100 * value + 0.5)


def percent(value: float) -> str:
    return f"{whole_percent(value)}%"


def share(of: Share) -> str:
    """`9/12 (75%)`; no percent below five trials."""
    if of.of < FEWEST_FOR_PERCENT:
        return f"{of.right}/{of.of}"
    # In whole numbers, so that a half goes up: 100 * (23 / 40) falls short of 57.5.
    return f"{of.right}/{of.of} ({(200 * of.right + of.of) // (2 * of.of)}%)"


MINUTES = (
    "Minutes: from opening to closing, as the plan means them. Active: answering only; a wait "
    "counts as one minute at most."
)
GESTURE_TRIES = (
    "First tries, scored by the caregiver: 3 right at once, 2 known with a small slip, 1 part "
    "right, 0 not known. Alone: 2 or 3 with no help before. Help before: mean level, 0 is none."
)
TWO_CHOICES = "Of two choices, a second try is sure to be right: with help then says little."


def interval(line: Line | GridCell) -> str:
    return percent_span(line.unaided, line.interval)


def percent_span(of: Share, between: Interval) -> str:
    """`60 to 98`; `too few` below five trials."""
    return "too few" if of.of < FEWEST_FOR_PERCENT else _span(between)


def in_cell(cell: GridCell) -> str:
    """`9/10 (90%) [60 to 98]`."""
    return f"{share(cell.unaided)} [{interval(cell)}]"


def _span(between: Interval) -> str:
    return f"{whole_percent(between.low)} to {whole_percent(between.high)}"


def verdict(line: Line) -> str:
    """Against guessing: `above (1 in 2)`."""
    if line.verdict is None or line.chance is None:
        return "nothing to guess"
    return f"{VERDICTS[line.verdict]} {_odds(line)}"


def notes(digest: Digest) -> list[tuple[str, str]]:
    """(when, what): what was noted in the same words several times is told once."""
    alike: dict[str, list[date]] = {}
    for note in digest.notes:
        alike.setdefault(inert(note.text), []).append(note.day)
    return [
        (
            day(on[0]) if len(on) == 1 else f"{len(on)} times, {span(on[0], on[-1])}",
            text,
        )
        for text, on in alike.items()
    ]


def brief_verdict(line: Line) -> str:
    """`above`; how likely a guess is only where it is not 1 in 2."""
    told = BRIEF[line.verdict]
    if line.verdict is None or line.chance in (None, 0.5):
        return told
    return f"{told} {_odds(line)}"


def _odds(line: Line) -> str:
    return "" if line.chance is None else kept(f"(1 in {number(1 / line.chance)})")


def brief_change(of: Change | None) -> str:
    """`+25 (-10 to 53) from 6/12`, in points."""
    if of is None or of.points is None or of.interval is None:
        return change(of)
    moved = whole_percent(of.points)
    return (
        f"{kept(f'{moved:+d}' if moved else 'unchanged')} {kept(f'({_span(of.interval)})')} "
        f"{kept(f'from {of.earlier.right}/{of.earlier.of}')}"
    )


def help_level(line: Line) -> str:
    """The mean level of help; 0 is none."""
    return "-" if line.cues.mean_level is None else number(line.cues.mean_level)


def change(of: Change | None) -> str:
    """`+25 points (-10 to 53), from 6/12`."""
    if of is None:
        return "nothing earlier"
    before = f"{of.earlier.right}/{of.earlier.of}"
    if of.points is None or of.interval is None:
        return f"too few to compare, from {before}"
    moved = whole_percent(of.points)
    points = kept(f"{moved:+d} points" if moved else "0 points")
    return f"{points} {kept(f'({_span(of.interval)}),')} {kept(f'from {before}')}"


def alone(line: Line) -> str:
    """Gestures scored 2 or 3 with no help before, of those scored; `-` when none was."""
    return share(line.unaided) if line.unaided.of else "-"


def mean(value: float | None) -> str:
    return "-" if value is None else f"{value:.1f}"


def ticks(line: Line) -> str:
    if line.gesture is None:
        return ""
    ticked = [f"{tick}{KEEP}{count}" for tick, count in line.gesture.ticks.items() if count]
    if line.gesture.hindered:
        ticked.append(f"hindered, not scored {line.gesture.hindered}")
    return ", ".join(ticked) or "-"


def other_set(line: Line) -> str:
    """Nothing for what is practised; else the set of the items."""
    return "" if line.item_set is ItemSet.TREATED else f" ({line.item_set.value})"


def example(of: Example) -> str:
    """What was said, with what stood beside it: `"It is on the box." The cup is ____ the box.`"""
    return f"{of.context} {of.sentence}".strip()


def errors(line: Line) -> str:
    wrong = [f"{FOILS[foil].lower()}{KEEP}{count}" for foil, count in line.errors.items() if count]
    return ", ".join(wrong) or "-"


def tired(sitting: SittingLine) -> str:
    """`2, then 4`; `-` where it was not said."""
    before, after = (
        "-" if value is None else str(value)
        for value in (sitting.tired_before, sitting.tired_after)
    )
    return f"{before}, then {after}"


def task(line: Line) -> str:
    name = KINDS[line.kind]
    return name if line.item_set is ItemSet.TREATED else f"{name}, {line.item_set.value}"


def due_reason(line: DueLine) -> str:
    """Why a target comes up then, without saying "days ago": the page is read later."""
    if line.last is None:
        return "not met yet"
    group = f"{group_name(line.target.group)} " if line.target.group else ""
    since = f"; open since {day(line.open_since)}" if line.open_since else ""
    return f"right alone in a row: {group}{line.run}; last on {day(line.last)}{since}"


def group_name(group: str) -> str:
    """`behind / in front of`, of a contrast's key."""
    return inert(group.replace("-", " / ").replace("_", " "))


DUE_MOVES = "As it stands now; each practice moves these days."
NOTHING_DUE = "Nothing has its day in the week to come; sessions go on as planned."


def quality(digest: Digest) -> list[tuple[str, str]]:
    """What to know before trusting the numbers, as (name, value)."""
    of = digest.quality
    rows = [
        ("Program version", ", ".join(of.programs) or "-"),
        ("Plans practised", ", ".join(f"{name}, version {n}" for name, n in of.plans) or "-"),
        ("Versions of the content", str(len(of.contents))),
        ("Trials left unfinished", str(of.unfinished)),
        ("Trials skipped", str(of.skipped)),
        ("Sessions stopped early", str(of.stopped_early)),
        ("Sessions broken off", str(of.broken_off)),
        ("Sessions in which the clock went back", str(of.clock_back)),
        ("Right answers too fast to time (under 0.3 s)", str(of.too_soon)),
        ("Right answers unusually slow", str(of.slow)),
        *(("The records", notice.rstrip(".")) for notice in of.notices),
    ]
    return [(name, inert(value)) for name, value in rows]


def seconds(line: Line) -> str:
    """The median time to a right answer without help."""
    middle = line.latency.median_ms
    return "-" if middle is None else f"{middle / 1000:.1f} s"
