from __future__ import annotations

import csv
import json
import re
from dataclasses import replace
from io import StringIO

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.core.records import Observation, Trial
from drills.ledger import export, export_csv
from drills.ledger.rows import entry_of
from tests.ledger.made import made_session

# What OWASP's page on CSV injection lists as the start of a formula, and the full-width forms that
# it adds; a tab or line end before them as well.
FORMULAS = [
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "\t=1",
    "\r=1",
    "\n=1",
    "\uff1d1",
    "\uff0b1",
    "\uff0d1",
    "\uff201",
]
# Clears the screen; sets the title of the window; the same by C1 controls; turns text round.
ESCAPES = ["\x1b[2J", "\x1b]0;title\x07", "\x9b2J", "\x9d0;title\x9c", "\u202eabc", "\x00\x08\x7f"]
ACTIVE = re.compile("[\x00-\x09\x0b-\x1f\x7f-\x9f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069]")


def rows_of(lines: list[str]) -> list[dict[str, str]]:
    return list(csv.DictReader(StringIO("\r\n".join(lines), newline="")))


def with_note(note: str) -> list:
    opened, observation, *rest = made_session()
    assert isinstance(observation, Observation)
    return [replace(opened, plan_name=note), replace(observation, note=note), *rest]


def test_what_is_given_out_is_json_lines_with_a_format_and_reads_back() -> None:
    entries = made_session()
    rows = [json.loads(line) for line in export(entries)]
    assert {row["format"] for row in rows} == {1}
    assert [entry_of(row) for row in rows] == entries
    assert all("\n" not in line for line in export(entries))


def test_csv_has_one_row_an_entry_and_a_trial_as_last_kept() -> None:
    entries = made_session(trials=4)
    rows = rows_of(list(export_csv(entries)))
    assert [row["entry"] for row in rows] == ["opened", "observation", *["trial"] * 4, "closed"]
    trials = [row for row in rows if row["entry"] == "trial"]
    assert [row["right_alone"] for row in trials] == ["yes", "yes", "no", "yes"]
    assert [row["right_with_help"] for row in trials] == ["yes"] * 4
    assert [row["first_choice"] for row in trials] == ["0", "0", "1", "0"]
    assert [row["foil"] for row in trials] == ["", "", "reversal", ""]
    assert [row["responses"] for row in trials] == ["1", "1", "2", "1"]
    assert trials[0]["sentence"] == "The nurse pushed the man."
    assert trials[0]["started_at"] == "2026-11-25T08:04:50.250000-05:00"
    assert rows[1]["tiredness"] == "2"
    assert rows[-1]["reason"] == "finished"


@pytest.mark.parametrize("note", FORMULAS + [f"  {formula}" for formula in FORMULAS])
def test_a_formula_comes_out_as_text(note: str) -> None:
    for row in rows_of(list(export_csv(with_note(note))))[:2]:
        assert (row["note"] or row["plan_name"]).startswith("'")


@pytest.mark.parametrize("note", ESCAPES)
def test_what_a_terminal_would_act_on_comes_out_inert(note: str) -> None:
    entries = with_note(f"before {note} after")
    for lines in (list(export(entries)), list(export_csv(entries))):
        assert not any(ACTIVE.search(line) for line in lines)
        assert all("\n" not in line for line in lines)
    # JSON keeps the text itself.
    assert entry_of(json.loads(list(export(entries))[1])) == entries[1]


@given(note=st.text())
@settings(max_examples=150, deadline=None)
def test_no_text_breaks_out_of_its_cell(note: str) -> None:
    entries = with_note(note)
    lines = list(export_csv(entries))
    rows = rows_of(lines)
    # One trial of the session was kept twice.
    assert len(rows) == len(entries) - 1
    assert not any(ACTIVE.search(line) for line in lines)
    for row in rows:
        assert None not in row
        for value in row.values():
            assert not value.lstrip().startswith(tuple("=+-@\uff1d\uff0b\uff0d\uff20"))
    for line, entry in zip(export(entries), entries, strict=True):
        assert not ACTIVE.search(line)
        back = entry_of(json.loads(line))
        assert back == entry or any("\ud800" <= letter <= "\udfff" for letter in note)


def test_a_trial_without_an_answer_leaves_its_cells_empty() -> None:
    opened, _, trial, *_ = made_session()
    assert isinstance(trial, Trial)
    skipped = replace(trial, attempts=(), skipped=True)
    row = rows_of(list(export_csv([opened, skipped])))[1]
    assert row["right_alone"] == row["right_with_help"] == row["first_choice"] == ""
    assert row["skipped"] == "yes"
