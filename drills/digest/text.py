"""The digest as plain text of at most 78 columns."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap

from drills.core.items import ItemSet
from drills.digest import calendar_wording, check_wording, question_wording, wording
from drills.digest.checks import Checks
from drills.digest.values import Calendar, Digest, Line

WIDTH = 78
_BAR = 20


def render_text(digest: Digest) -> str:
    """Plain text, the most urgent first; ends with a line break."""
    lines = [line.rstrip() for part in _parts(digest) for line in part]
    return "\n".join(lines) + "\n"


def _parts(digest: Digest) -> Iterator[Iterator[str]]:
    yield _head(digest)
    yield _section("LOOK AT FIRST", _alerts(digest))
    yield _section("PRACTICE AGAINST PLAN", _dose(digest))
    yield _section("SENTENCES AND WORDS", _words(digest))
    if digest.grids:
        yield _section(question_wording.GRID_TITLE.upper(), _grids(digest))
    yield _section("WRONG FIRST ANSWERS", _errors(digest))
    yield _section("GESTURES", _gestures(digest))
    yield _section("SESSIONS", _sessions(digest))
    if digest.checks is not None:
        yield _section(check_wording.TITLE.upper(), _checks(digest.checks))
    yield _section("DUE NEXT", _upcoming(digest))
    if digest.calendar is not None:
        yield _section(calendar_wording.TITLE.upper(), _calendar(digest.calendar))
    yield _section("NOTES", _notes(digest))
    yield _section("DATA QUALITY", _quality(digest))
    yield iter(["", *wrap(wording.FOOT, WIDTH)])


def _section(title: str, body: Iterator[str]) -> Iterator[str]:
    yield ""
    yield title
    yield "-" * len(title)
    yield from body


def _fold(text: str, *, indent: int = 2, hang: int = 2) -> list[str]:
    """`text` in lines that fit, made inert; later lines are set in by `hang` more."""
    lines = wrap(
        wording.inert(text),
        WIDTH,
        initial_indent=" " * indent,
        subsequent_indent=" " * (indent + hang),
    )
    return [line.replace(wording.KEEP, " ") for line in lines]


def _head(digest: Digest) -> Iterator[str]:
    if digest.simulated:
        yield wording.SIMULATED
        yield "=" * len(wording.SIMULATED)
    yield "PRACTICE DIGEST"
    yield from _fold(wording.range_told(digest), indent=0)
    plan = f"Plan: {digest.plan_name}, version {digest.plan_version}."
    therapist = f" Therapist: {digest.therapist}." if digest.therapist.strip() else ""
    yield from _fold(plan + therapist, indent=0)


def _alerts(digest: Digest) -> Iterator[str]:
    if not digest.alerts:
        yield "  Nothing noted."
    for alert in digest.alerts:
        yield from _fold(f"! {wording.alert(alert)}")
        if wording.rule(alert):
            yield from _fold(wording.rule(alert), indent=4)


def _dose(digest: Digest) -> Iterator[str]:
    dose = digest.dose
    for name, done, planned, share in (
        ("Sessions", dose.sessions, dose.sessions_planned, dose.sessions_share),
        ("Minutes", dose.minutes, dose.minutes_planned, dose.minutes_share),
    ):
        against = wording.planned(digest, planned, share).replace(wording.KEEP, " ")
        yield f"  {name:<15} {wording.number(done)}{against}"
    yield f"  {'Active minutes':<15} {wording.number(dose.active_minutes)}"
    yield f"  {'Trials':<15} {dose.trials} on {dose.days} days"
    yield from _fold(wording.MINUTES, hang=0)
    most = max(dose.by_day.values(), default=0.0)
    if most and len(dose.by_day) <= 14:
        for day, minutes in dose.by_day.items():
            bar = "#" * round(_BAR * minutes / most)
            yield f"  {wording.day(day):<11} {bar:<{_BAR}} {wording.number(minutes)} min"


def _words(digest: Digest) -> Iterator[str]:
    if not digest.word_lines:
        yield "  None practised."
        return
    yield "  Alone: right at once. In [ ]: 95 in 100 such ranges hold the true share."
    yield from _fold(wording.TWO_CHOICES)
    for line in digest.word_lines:
        yield from _fold(f"{line.label} ({wording.task(line)})")
        for told in (
            f"alone {wording.share(line.unaided)} [{wording.interval(line)}], "
            f"against guessing: {wording.verdict(line)}",
            f"with help {wording.share(line.aided)}, mean level of help {wording.help_level(line)}",
            f"change, alone: {wording.change(line.change)}",
        ):
            yield from _fold(told, indent=4)
        if wording.errors(line) != "-":
            yield from _fold(f"wrong first: {wording.errors(line)}", indent=4)
        if line.detection is not None:
            yield from _fold(f"yes and no: {question_wording.detection(line)}", indent=4)
            yield from _fold(question_wording.detection_counts(line), indent=6)
    if any(line.detection is not None for line in digest.word_lines):
        yield from _fold(question_wording.YES_AND_NO)


def _grids(digest: Digest) -> Iterator[str]:
    for grid in digest.grids:
        heads = "".join(f"{name:>28}" for name in question_wording.GRAMMARS.values())
        yield f"  {f'right alone{question_wording.grid_set(grid)}':<20}{heads}"
        for name, cells in question_wording.grid_rows(grid):
            told = "".join(f"{wording.in_cell(cell):>28}" for cell in cells)
            yield f"  {name:<20}{told}"
        yield from _fold(question_wording.grid_short(grid))
    yield from _fold(question_wording.GRID_FOOT)


def _errors(digest: Digest) -> Iterator[str]:
    if not digest.errors:
        yield "  None."
    for error in digest.errors:
        yield from _fold(f"{wording.FOILS[error.foil]}: {error.count}")
        for example in error.examples:
            yield from _fold(f'{example.label}: "{example.sentence}"', indent=4)


def _gestures(digest: Digest) -> Iterator[str]:
    if not digest.gesture_lines:
        yield "  None practised."
        return
    yield from _fold(wording.GESTURE_TRIES, hang=0)
    yield (
        f"  {'':<24}{'n':>4}{'alone':>13}{'help':>8}{'mean':>7}"
        f"{'0':>4}{'1':>3}{'2':>3}{'3':>3}{'with':>7}"
    )
    yield f"  {'':<24}{'':>4}{'':>13}{'before':>8}{'score':>7}{'':>13}{'help':>7}"
    for line in digest.gesture_lines:
        yield from _gesture(line)


def _gesture(line: Line) -> Iterator[str]:
    gesture = line.gesture
    if gesture is None:
        return
    label = line.label if line.item_set is ItemSet.TREATED else f"{line.label}, {line.item_set}"
    label = wording.inert(label)
    if len(label) > 23:
        yield from _fold(label)
        label = ""
    zero, one, two, three = gesture.scores
    yield (
        f"  {label:<24}{gesture.of:>4}{wording.alone(line):>13}"
        f"{wording.mean(gesture.mean_help):>8}{wording.mean(gesture.mean):>7}"
        f"{zero:>4}{one:>3}{two:>3}{three:>3}{f'{line.aided.right}/{line.aided.of}':>7}"
    )
    if wording.ticks(line) != "-":
        yield from _fold(f"ticked: {wording.ticks(line)}", indent=4)


def _sessions(digest: Digest) -> Iterator[str]:
    if not digest.sittings:
        yield "  None."
        return
    yield f"  {'':<12}{'minutes':>8}{'active':>8}{'trials':>8}   tired (1-5)   ended"
    for sitting in digest.sittings:
        yield (
            f"  {wording.day(sitting.day):<12}{wording.number(sitting.minutes):>8}"
            f"{wording.number(sitting.active_minutes):>8}{sitting.trials:>8}   "
            f"{wording.tired(sitting):<13} {wording.REASONS[sitting.reason]}"
        )


def _checks(checks: Checks) -> Iterator[str]:
    yield from _fold(check_wording.counted(checks))
    for line in checks.lines:
        yield from _fold(check_wording.heading(line))
        for row in check_wording.rows(line):
            told = f"{row.right} [{row.interval}], against guessing: {row.verdict}"
            yield from _fold(f"{row.when}: {told}" if row.right else row.when, indent=4)
    yield from _fold(check_wording.FOOT)


def _upcoming(digest: Digest) -> Iterator[str]:
    if not digest.upcoming:
        yield from _fold(wording.NOTHING_DUE)
        return
    yield from _fold(wording.DUE_MOVES)
    for day, rows in wording.due_days(digest.upcoming):
        yield f"  {day}"
        for row in rows:
            yield from _fold(f"{row.what}: {row.why}", indent=4)


def _calendar(calendar: Calendar) -> Iterator[str]:
    yield from _fold(f"{calendar_wording.FOOT} {calendar_wording.pace(calendar.days)}")
    for row in calendar_wording.rows(calendar):
        yield from _fold(f"{row.day}: {row.minutes}. {row.what}")
        for put_off in row.put_off:
            yield from _fold(f"put off: {put_off}", indent=4)


def _notes(digest: Digest) -> Iterator[str]:
    if not digest.notes:
        yield "  None."
    for note in digest.notes:
        yield from _fold(f"{wording.day(note.day)}: {note.text}")


def _quality(digest: Digest) -> Iterator[str]:
    for name, value in wording.quality(digest):
        yield from _fold(f"{name}: {value}")
