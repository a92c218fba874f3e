"""The digest as plain text of at most 78 columns, in the order in which a therapist asks."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from drills.digest import (
    calendar_wording,
    check_wording,
    pattern_wording,
    question_wording,
    week_wording,
    wording,
)
from drills.digest.folding import WIDTH, fold, section
from drills.digest.outcomes import Phase
from drills.digest.text_checks import checks
from drills.digest.text_gestures import gestures
from drills.digest.text_suggestions import suggestions
from drills.digest.values import FEWEST_FOR_PERCENT, Digest, Line

# Trials of which two examples are shown, the most frequent kinds first.
_KINDS_OF_ERROR = 3
_NUMBERS = 4

__all__ = ["WIDTH", "render_text"]


def render_text(digest: Digest) -> str:
    """Plain text, the most urgent first; ends with a line break."""
    lines = [line.rstrip() for part in _parts(digest) for line in part]
    return "\n".join(lines) + "\n"


def _parts(digest: Digest) -> Iterator[Iterator[str]]:
    course = digest.course
    yield _head(digest)
    yield section("LOOK AT FIRST", _alerts(digest))
    yield section("PRACTICE AGAINST PLAN", _dose(digest))
    if course is not None:
        # Of a course the outcome comes before how practice went.
        yield from _checks(digest)
    yield section("SENTENCES AND WORDS", _words(digest))
    if digest.grids:
        yield section(question_wording.GRID_TITLE.upper(), _grids(digest))
    yield section("WRONG FIRST ANSWERS", _errors(digest))
    if digest.dose.trials:
        yield section(pattern_wording.TITLE.upper(), _patterns(digest))
    if course is None:
        yield from _checks(digest)
    if week_wording.kept_rows(digest.kept):
        yield section(week_wording.KEPT_TITLE.upper(), _kept(digest))
    if course is None or course.phase is not Phase.MAINTENANCE:
        yield section(calendar_wording.title(digest).upper(), _to_come(digest))
    yield section("GESTURES", gestures(digest))
    if digest.trends:
        yield section(week_wording.TREND_TITLE.upper(), _trends(digest))
    if digest.suggestions or digest.decisions:
        yield section("SUGGESTIONS", suggestions(digest))
    yield section("DATA QUALITY", _quality(digest))
    yield iter(["", *fold(wording.FOOT, indent=0, hang=0)])


def _checks(digest: Digest) -> Iterator[Iterator[str]]:
    if digest.checks is not None:
        yield section(check_wording.TITLE.upper(), checks(digest.checks))


def _head(digest: Digest) -> Iterator[str]:
    if digest.simulated:
        yield wording.SIMULATED
        yield "=" * len(wording.SIMULATED)
    yield "PRACTICE DIGEST" if digest.course is None else "SUMMARY OF THE COURSE"
    yield from fold(wording.range_told(digest), indent=0)
    plan = f"Plan: {digest.plan_name}, version {digest.plan_version}."
    therapist = f" Therapist: {digest.therapist}." if digest.therapist.strip() else ""
    yield from fold(plan + therapist, indent=0)
    if digest.person:
        yield from fold(f"Code {wording.inert(digest.person)}", indent=0)
    if digest.course is not None:
        told = week_wording.course_head(digest.course, digest.dose_weeks)
        yield from fold(" ".join(told), indent=0)


def _alerts(digest: Digest) -> Iterator[str]:
    if not digest.alerts:
        yield "  Nothing noted."
    for rule, alerts in groupby(digest.alerts, key=wording.rule):
        for alert in alerts:
            yield from fold(f"! {wording.alert(alert)}")
        if rule:
            yield from fold(rule, indent=4)
    for when, text in wording.notes(digest):
        yield from fold(f"Note, {when}: {text}")


def _dose(digest: Digest) -> Iterator[str]:
    dose = digest.dose
    sessions = wording.planned(digest, dose.sessions_planned, dose.sessions_share)
    minutes = wording.planned(digest, dose.minutes_planned, dose.minutes_share)
    yield from fold(
        f"Sessions {dose.sessions}{sessions}. Minutes {wording.number(dose.minutes)}{minutes}. "
        f"Active minutes {wording.number(dose.active_minutes)}. "
        f"Trials {dose.trials} on {dose.days} days."
    )
    if digest.dose_weeks and (len(digest.dose_weeks) > 1 or digest.course is not None):
        yield from fold(week_wording.dose_weeks(digest.dose_weeks))
    if digest.sittings and digest.course is None:
        yield f"  {'':<12}{'minutes':>8}{'active':>8}{'trials':>8}   tired (1-5)   ended"
        for sitting in digest.sittings:
            yield (
                f"  {wording.day(sitting.day):<12}{wording.number(sitting.minutes):>8}"
                f"{wording.number(sitting.active_minutes):>8}{sitting.trials:>8}   "
                f"{wording.tired(sitting):<13} {wording.REASONS[sitting.reason]}"
            )
    if digest.sittings:
        yield from fold(wording.MINUTES)


def _words(digest: Digest) -> Iterator[str]:
    if not digest.word_lines:
        yield "  None practised."
        return
    yield from fold(
        "Right alone [95% interval], against guessing (1 in 2 unless told), mean help (0 is none), "
        f"change in points from {_before(digest)}. {wording.VERDICT_FOOT} {wording.EXCHANGES}"
    )
    told = [line for line in digest.word_lines if line.unaided.of >= FEWEST_FOR_PERCENT]
    for kind in dict.fromkeys(line.kind for line in digest.word_lines):
        yield f"  {wording.KINDS[kind]}"
        for line in told:
            if line.kind is kind:
                yield from _word(line)
        few = [
            f"{line.label}{wording.other_set(line)} {_brief(line)}"
            for line in digest.word_lines
            if line.kind is kind and line not in told
        ]
        if few:
            yield from fold(f"too few to tell: {'; '.join(few)}.", indent=4)
    if any(line.detection is not None for line in digest.word_lines):
        yield from fold(question_wording.YES_AND_NO)


def _before(digest: Digest) -> str:
    if digest.course is None:
        return "as many days before"
    return "the first days of practice to the last"


def _brief(line: Line) -> str:
    """`2/4, wrong: roles exchanged 2`."""
    told = [wording.share(line.unaided)]
    if wording.errors(line) != "-":
        told.append(f"wrong: {wording.errors(line)}")
    if line.detection is not None:
        told.append(question_wording.detection(line))
    return ", ".join(told)


def _word(line: Line) -> Iterator[str]:
    wrong = f"; wrong: {wording.errors(line)}" if wording.errors(line) != "-" else ""
    yield from fold(f"{line.label}{wording.other_set(line)}{wrong}", indent=4)
    yield from fold(
        f"{wording.share(line.unaided)} [{wording.interval(line)}], {wording.brief_verdict(line)}, "
        f"help {wording.help_level(line)}, {wording.brief_change(line.change)}",
        indent=6,
    )
    if line.detection is not None:
        told = f"{question_wording.detection(line)} ({question_wording.detection_counts(line)})"
        yield from fold(told, indent=6)


def _grids(digest: Digest) -> Iterator[str]:
    for grid in digest.grids:
        heads = "".join(f"{name:>28}" for name in question_wording.GRAMMARS.values())
        yield f"  {f'right alone{question_wording.grid_set(grid)}':<20}{heads}"
        for name, cells in question_wording.grid_rows(grid):
            told = "".join(f"{wording.in_cell(cell):>28}" for cell in cells)
            yield f"  {name:<20}{told}"
        yield from fold(question_wording.grid_short(grid))
    yield from fold(question_wording.GRID_FOOT)


def _errors(digest: Digest) -> Iterator[str]:
    if not digest.errors:
        yield "  None."
    for error in digest.errors[:_KINDS_OF_ERROR]:
        yield from fold(f"{wording.FOILS[error.foil]}: {error.count}")
        for example in error.examples:
            yield from fold(f"{wording.example(example)} ({example.label})", indent=4)
    rest = digest.errors[_KINDS_OF_ERROR:]
    if rest:
        told = ", ".join(f"{wording.FOILS[error.foil].lower()} {error.count}" for error in rest)
        yield from fold(f"Also {told}.")


def _patterns(digest: Digest) -> Iterator[str]:
    for name, told in pattern_wording.rows(digest.patterns):
        yield from fold(f"{name}: {told}.")
    yield from fold(pattern_wording.FOOT)


def _kept(digest: Digest) -> Iterator[str]:
    yield f"  {'':<16}{'sentences and words':<26}gestures"
    for row in week_wording.kept_rows(digest.kept):
        yield f"  {row.after:<16}{row.words:<26}{row.gestures}"
    yield from fold(f"From {wording.day(digest.kept.since)} on. {week_wording.KEPT_FOOT}")


def _to_come(digest: Digest) -> Iterator[str]:
    if digest.calendar is not None:
        for row in calendar_wording.rows(digest.calendar):
            waits = f"; {row.waiting} due wait" if row.waiting else ""
            yield from fold(f"{row.days}: {row.minutes}: {row.what}{waits}.")
    if not digest.upcoming:
        yield from fold(wording.NOTHING_DUE)
    else:
        yield from fold(f"{calendar_wording.WAITING}:")
    for day, names in calendar_wording.due_names(digest):
        for kind, of_kind in groupby(names, key=lambda name: name.kind):
            all_names = list(of_kind)
            since = calendar_wording.open_since(all_names)
            told = calendar_wording.shown(all_names)
            yield from fold(f"{day}, {wording.KINDS[kind]}{since}: {told}", indent=4)
    about = [calendar_wording.FOOT]
    if digest.calendar is not None:
        about.append(calendar_wording.pace(digest.calendar.days))
    yield from fold(" ".join(about))


def _trends(digest: Digest) -> Iterator[str]:
    rows = week_wording.trend_rows(digest)
    if rows:
        yield f"  {'tau':>5}{'points':>8}{'help':>10}{'n':>5} in sessions"
    for row in rows:
        numbers = f"  {row.tau:>5}{row.slope:>8}{row.help:>10}{row.trials:>5} in {row.sessions:<4}"
        first, *more = fold(row.label, indent=len(numbers), hang=0) or [""]
        yield numbers + first[len(numbers) :]
        yield from more
    told = week_wording.untold(digest)
    if told:
        yield from fold(told)
    yield from fold(week_wording.TREND_FOOT)


def _quality(digest: Digest) -> Iterator[str]:
    rows = wording.quality(digest)
    told = "; ".join(f"{name}: {value}" for name, value in rows if value != "0")
    none = ", ".join(name[:1].lower() + name[1:] for name, value in rows if value == "0")
    yield from fold(f"{told}.")
    if none:
        yield from fold(f"None: {none}.")
