"""Records given out: as JSON Lines, whole, and as CSV for a spreadsheet."""

from __future__ import annotations

import csv
import json
import re
from collections.abc import Iterable, Iterator
from io import StringIO
from itertools import groupby
from typing import Any

from drills.core.records import (
    RECORD_FORMAT,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Trial,
    latest_trials,
)
from drills.ledger.rows import row_of

_CONTROLS = re.compile("[\x00-\x1f]")

# What a spreadsheet takes for the start of a formula, in either width.
_FORMULA_STARTS = tuple("=+-@|%\uff1d\uff0b\uff0d\uff20")

COLUMNS = (
    *("session", "entry", "at"),
    *("plan_name", "plan_version", "program", "content_hash", "seed", "continues", "minutes"),
    *("simulated", "check"),
    *("topic", "tiredness", "pain", "new_signs", "helped", "note"),
    *("trial", "started_at", "block", "kind", "target", "construction", "level", "set", "item"),
    *("sentence", "options", "answer", "effective_k", "side", "first_choice", "foil"),
    *("right_alone", "right_with_help", "cue_level_at_success", "score", "ticks"),
    *("latency_ms", "responses", "ended", "skipped", "words_per_minute"),
    "help_at_start",
    "reason",
)


def export(entries: Iterable[Entry]) -> Iterator[str]:
    """Entries as JSON Lines, each with its `format` number; without line ends."""
    for entry in entries:
        line = json.dumps({"format": RECORD_FORMAT, **row_of(entry)}, ensure_ascii=False)
        yield line if line.isprintable() else "".join(map(_escaped, line))


def export_csv(entries: Iterable[Entry]) -> Iterator[str]:
    """A heading, then one row an entry, a trial as last kept; without line ends.

    Text that a spreadsheet could run as a formula starts with an apostrophe; what cannot be seen
    is left out or shown by a sign.
    """
    yield ",".join(COLUMNS)
    for _, of_session in groupby(entries, key=lambda entry: entry.session):
        kept = list(of_session)
        latest = {trial.trial: trial for trial in latest_trials(kept)}
        for entry in kept:
            if not isinstance(entry, Trial) or latest[entry.trial] is entry:
                yield _csv_line(_cells(entry))


def _csv_line(cells: dict[str, Any]) -> str:
    out = StringIO()
    writer = csv.DictWriter(out, COLUMNS, lineterminator="")
    writer.writerow({key: _safe(value) for key, value in cells.items()})
    return out.getvalue()


def _cells(entry: Entry) -> dict[str, Any]:
    match entry:
        case SessionOpened() | Observation() | SessionClosed():
            return row_of(entry)
        case Trial():
            return _trial_cells(entry)


def _trial_cells(trial: Trial) -> dict[str, Any]:
    asked, first = trial.asked, trial.first
    chosen = None if first is None else first.choice
    foil = None if chosen is None else asked.foil(chosen)
    return {
        "session": trial.session,
        "entry": "trial",
        "at": trial.at.isoformat(),
        "trial": trial.trial,
        "started_at": trial.started_at.isoformat(),
        "block": trial.block,
        "kind": asked.kind.value,
        "target": str(asked.target),
        "construction": asked.construction,
        "level": asked.level,
        "set": asked.item_set.value,
        "item": asked.item_id,
        "sentence": asked.sentence,
        "options": len(asked.options),
        "answer": asked.answer,
        "effective_k": asked.effective_k,
        "side": None if asked.side is None else asked.side.value,
        "first_choice": chosen,
        "foil": None if foil is None else foil.value,
        "right_alone": None if first is None else trial.unaided_right,
        "right_with_help": None if first is None else trial.aided_right,
        "cue_level_at_success": trial.level_at_success,
        "score": None if first is None else first.score,
        "ticks": None if first is None else " ".join(f"{tick.value};" for tick in first.ticks),
        "latency_ms": None if first is None else first.latency_ms,
        "responses": len(trial.attempts),
        "ended": trial.ended,
        "skipped": trial.skipped,
        "words_per_minute": trial.words_per_minute,
        "help_at_start": trial.help_at_start,
    }


def _safe(value: Any) -> Any:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if not isinstance(value, str):
        return value
    # Tabs and line ends can hide the start of a formula; the others are shown by their sign.
    text = re.sub(r"[\t\r\n]+", " ", value)
    text = _CONTROLS.sub(lambda control: chr(0x2400 + ord(control[0])), text)
    text = "".join(map(_shown, text))
    return f"'{text}" if text.lstrip().startswith(_FORMULA_STARTS) else text


def _escaped(letter: str) -> str:
    """As JSON writes it: what cannot be seen a terminal may act on."""
    return letter if letter.isprintable() else json.dumps(letter)[1:-1]


def _shown(letter: str) -> str:
    return letter if letter.isprintable() else " " if letter.isspace() else "\ufffd"
