"""The caseload as plain text of at most 78 columns, and as JSON."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict
from textwrap import wrap
from typing import Any

from drills.digest.as_json import json_text
from drills.digest.caseload import NEVER_SHORTENED, Case, Caseload, Reason
from drills.digest.plain import day, day_and_year, inert, span
from drills.digest.wording import number

CASELOAD_FORMAT = 1
WIDTH = 78
_IN_FULL = 2


def caseload_json(load: Caseload) -> str:
    """One JSON object, safe to print; most urgent first."""
    return json_text(
        {
            "format": CASELOAD_FORMAT,
            "today": load.today.isoformat(),
            "people": [_case_json(case) for case in load.cases],
            "not_read": [asdict(each) for each in load.not_read],
            "older": load.older,
            "left_alone": load.left_alone,
        }
    )


def _case_json(case: Case) -> dict[str, Any]:
    days = {name: getattr(case, name).isoformat() for name in ("first", "last", "until")}
    return {**asdict(case), **days}


def caseload_text(load: Caseload) -> str:
    """Plain text; ends with a line break."""
    return "\n".join(line.rstrip() for line in _lines(load)) + "\n"


def _lines(load: Caseload) -> Iterator[str]:
    urgent = [case for case in load.cases if case.reasons]
    quiet = [case for case in load.cases if not case.reasons]
    yield f"CASELOAD on {day_and_year(load.today)}"
    yield f"{len(urgent)} with something noted, {len(quiet)} with nothing, {_not_read(load)}."
    if urgent:
        yield from _title("MOST URGENT FIRST")
    for place, case in enumerate(urgent, 1):
        if place > 1:
            yield ""
        yield from _fold(f"{place}. {_who(case)}: {_when(case, load)}. {_practised(case)}", "", 3)
        yield from _reasons(case)
    if quiet:
        yield from _title("NOTHING NOTED")
    for case in quiet:
        yield from _fold(f"{_who(case)}: {_when(case, load)}. {_practised(case)}", "", 3)
    if load.not_read:
        yield from _title("NOT READ")
    for each in load.not_read:
        yield from _fold(each.message, "", 3)
    yield from _foot(load)


def _not_read(load: Caseload) -> str:
    return f"{_counted(len(load.not_read), 'file')} not read"


def _reasons(case: Case) -> Iterator[str]:
    """The first reason of a kind in full; of kinds that can wait only the first ones."""
    kinds: dict[str, list[Reason]] = {}
    for reason in case.reasons:
        kinds.setdefault(reason.kind, []).append(reason)
    shown = [
        kind for place, kind in enumerate(kinds) if place < _IN_FULL or kind in NEVER_SHORTENED
    ]
    for kind in shown:
        first, *more = kinds[kind]
        yield from _fold(f"! {first.text}" + (f" And {len(more)} more." if more else ""), "   ", 2)
    rest = [_times(kind, len(kinds[kind])) for kind in kinds if kind not in shown]
    if rest:
        yield from _fold(f"Also: {', '.join(rest)}.", "   ", 2)


def _times(kind: str, count: int) -> str:
    return kind if count == 1 else f"{kind} ({count} times)"


def _title(text: str) -> Iterator[str]:
    yield from ("", text, "-" * len(text))


def _who(case: Case) -> str:
    name = case.code or f"No code ({case.file})"
    simulated = ", SIMULATED PATIENT" if case.simulated else ""
    return f"{name}, {case.plan}{simulated}"


def _when(case: Case, load: Caseload) -> str:
    if case.until < case.first:
        return f"from {day(case.first)}, not begun yet"
    year = "" if case.until.year == load.today.year else f" {case.until.year}"
    return f"{span(case.first, case.until)}{year}"


def _practised(case: Case) -> str:
    if not case.sessions_planned:
        return f"{_counted(case.sessions, 'session')}."
    return f"{case.sessions} of {number(case.sessions_planned)} sessions."


def _foot(load: Caseload) -> Iterator[str]:
    told = []
    if without := sum(not case.code for case in load.cases):
        told.append(
            f"{_counted(without, 'digest')} without a code of the person, each shown by itself. "
            "Write `code` at the top of the plan: then only the newest is shown."
        )
    for code in _shared(load):
        told.append(
            f"{code} is the code in two plans. If these are two people, give each their own code."
        )
    if load.older:
        told.append(f"{_counted(load.older, 'older digest')} of the same people not shown.")
    if load.left_alone:
        left = f"Left alone in the folder: {load.left_alone}."
        told.append(f"{left} A digest is a file that ends in .json or .age.")
    for text in told:
        yield ""
        yield from _fold(text, "", 0)


def _shared(load: Caseload) -> list[str]:
    """The codes that stand in more than one plan."""
    plans: dict[str, set[str]] = {}
    for case in load.cases:
        plans.setdefault(case.code, set()).add(case.plan)
    return sorted(code for code, found in plans.items() if code and len(found) > 1)


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def _fold(text: str, indent: str, hang: int) -> list[str]:
    return wrap(
        inert(text),
        WIDTH,
        initial_indent=indent,
        subsequent_indent=indent + " " * hang,
    )
