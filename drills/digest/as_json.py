"""The digest as one JSON object, with every answer of its days."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from enum import StrEnum
from typing import Any

from drills.core.items import Target
from drills.core.therapist import Decision
from drills.digest import wording
from drills.digest.answers import AnswerLine
from drills.digest.checks import Checks
from drills.digest.figure_wording import missing
from drills.digest.patterns import Patterns
from drills.digest.raters import Agreement
from drills.digest.values import (
    Digest,
    DueLine,
    ErrorLine,
    Grid,
    Line,
    SittingLine,
)
from drills.measures.missing import Missing

DIGEST_FORMAT = 1


def render_json(digest: Digest) -> str:
    """Indented JSON; days as 2026-11-25, shares unrounded, words not escaped."""
    return json_text(as_json(digest))


def json_text(value: Any) -> str:
    """`value` as indented JSON that is safe to print; ends with a line break."""
    return inert_json(json.dumps(value, ensure_ascii=False, indent=2, allow_nan=False))


def inert_json(text: str) -> str:
    """JSON with what cannot be seen written out in it, and one line break at its end."""
    # A terminal may act on what cannot be seen, and half characters fit no file.
    return "".join(
        letter if letter.isprintable() or letter == "\n" else json.dumps(letter)[1:-1]
        for letter in f"{text.rstrip()}\n"
    )


def as_json(digest: Digest) -> dict[str, Any]:
    """The documented JSON form of `drills digest --format json`."""
    return {
        "format": DIGEST_FORMAT,
        "person": digest.person,
        "simulated": digest.simulated,
        "first": digest.first.isoformat(),
        "last": digest.last.isoformat(),
        "until": digest.until.isoformat(),
        "over": digest.is_over,
        "as_of": _plain(digest.as_of),
        "plan": {
            "name": digest.plan_name,
            "version": digest.plan_version,
            "therapist": digest.therapist,
            "locale": digest.locale,
        },
        "alerts": [{**_plain(alert), "text": wording.alert(alert)} for alert in digest.alerts],
        "dose": _plain(digest.dose),
        "sessions": [_sitting(sitting) for sitting in digest.sittings],
        "lines": [_line(line) for line in digest.lines],
        "grids": [_grid(grid) for grid in digest.grids],
        "checks": None if digest.checks is None else _checks(digest.checks),
        "errors": [_error(error) for error in digest.errors],
        "upcoming": [
            {"day": due_day.day.isoformat(), "due": [_due(due) for due in due_day.dues]}
            for due_day in digest.upcoming
        ],
        "calendar": _calendar(digest),
        "patterns": _patterns(digest.patterns),
        "dose_weeks": _plain(digest.dose_weeks),
        "cue_weeks": _plain(digest.cue_weeks),
        "kept": _plain(digest.kept),
        "trends": _plain(digest.trends),
        "progress": _plain(digest.progress),
        "agreement": None if digest.agreement is None else _agreement(digest.agreement),
        "course": _plain(digest.course),
        "suggestions": [
            {"number": number, **_plain(each)} for number, each in enumerate(digest.suggestions, 1)
        ],
        "decisions": [_decision(each) for each in digest.decisions],
        "notes": _plain(digest.notes),
        "quality": _plain(digest.quality),
        "answers": [_answer(answer) for answer in digest.answers],
    }


def _line(line: Line) -> dict[str, Any]:
    row: dict[str, Any] = {
        "kind": line.kind.value,
        "name": line.name,
        "label": line.label,
        "set": line.item_set.value,
        "unaided": {**_plain(line.unaided), **_plain(line.interval)},
        "aided": _plain(line.aided),
        "chance": {
            "effective_k": line.effective_k,
            "guess": line.chance,
            "verdict": _plain(line.verdict),
        },
        "cues": _plain(line.cues),
        "latency": _plain(line.latency),
        "errors": {foil.value: count for foil, count in line.errors.items()},
        "change": _plain(line.change),
    }
    if line.detection is not None:
        row["yes_no"] = {
            **_plain(line.detection),
            "d_prime": line.detection.d_prime,
            "criterion": line.detection.criterion,
            "liking": _plain(line.detection.liking),
        }
    if line.gesture is not None:
        row["gesture"] = {
            **_plain(line.gesture),
            "of": line.gesture.of,
            "mean": line.gesture.mean,
            "mean_help": line.gesture.mean_help,
        }
    return row


def _grid(grid: Grid) -> dict[str, Any]:
    return {
        "set": grid.item_set.value,
        "cells": [
            {
                "words": cell.band.value,
                "grammar": cell.grammar.value,
                **_plain(cell.unaided),
                **_plain(cell.interval),
            }
            for cell in grid.cells
        ],
    }


def _checks(checks: Checks) -> dict[str, Any]:
    lines = [
        {
            "set": line.item_set.value,
            "name": line.name,
            "label": line.label,
            "days": [
                {
                    "day": point.day.isoformat(),
                    "phase": point.phase.value,
                    **_plain(point.right),
                    **_plain(point.interval),
                    "verdict": _plain(point.verdict),
                }
                for point in line.points
            ],
            "phases": [
                {
                    "phase": each.phase.value,
                    "checks": each.checks,
                    **_plain(each.right),
                    **_plain(each.interval),
                    "verdict": _plain(each.verdict),
                }
                for each in line.phases
            ],
        }
        for line in checks.lines
    ]
    outcomes = checks.outcomes
    return {
        **_plain(checks),
        "lines": lines,
        "outcomes": {
            "phases": _plain(outcomes.phases),
            "lines": [
                {"set": line.item_set.value, **_without(_plain(line), "item_set")}
                for line in outcomes.lines
            ],
        },
    }


def _patterns(patterns: Patterns) -> dict[str, Any]:
    found = _plain(patterns)
    found["places"] = [{**_plain(each), "preferred": each.preferred} for each in patterns.places]
    return {**found, "repeats": patterns.repeats}


def _agreement(agreement: Agreement) -> dict[str, Any]:
    return {**_plain(agreement), "pairs": agreement.pairs}


def _without(row: dict[str, Any], key: str) -> dict[str, Any]:
    return {name: value for name, value in row.items() if name != key}


def _error(error: ErrorLine) -> dict[str, Any]:
    return {"foil": error.foil.value, "count": error.count, "examples": _plain(error.examples)}


def _sitting(sitting: SittingLine) -> dict[str, Any]:
    return {**_plain(sitting), "reason": wording.REASONS[sitting.reason]}


def _calendar(digest: Digest) -> list[dict[str, Any]]:
    return [
        {
            "day": day.day.isoformat(),
            "sessions": day.sessions,
            "minutes": day.minutes,
            "own_pace": day.own_pace,
            "given": {str(target): count for target, count in day.given},
            "put_off": _plain(day.put_off),
        }
        for day in (() if digest.calendar is None else digest.calendar.days)
    ]


def _due(due: DueLine) -> dict[str, Any]:
    return {**_plain(due), "target": str(due.target), "reason": _spaced(wording.due_reason(due))}


def _decision(decision: Decision) -> dict[str, Any]:
    return {**_plain(decision), "at": decision.at.isoformat()}


def _answer(answer: AnswerLine) -> dict[str, Any]:
    row = _plain(answer)
    row["set"] = row.pop("item_set")
    return {**row, "target": str(answer.target)}


def _spaced(text: str) -> str:
    return text.replace(wording.KEEP, " ")


def _plain(value: Any) -> Any:
    """The value as JSON knows it: enum values, ISO days, text keys."""
    match value:
        case Missing():
            plain: Any = {"missing": missing(value), "have": value.have, "need": value.need}
        case StrEnum():
            plain = value.value
        case date():
            plain = value.isoformat()
        case Target():
            plain = str(value)
        case Mapping():
            plain = {str(_plain(key)): _plain(each) for key, each in value.items()}
        case list() | tuple():
            plain = [_plain(each) for each in value]
        case _ if is_dataclass(value):
            plain = {field.name: _plain(getattr(value, field.name)) for field in fields(value)}
        case _:
            plain = value
    return plain
