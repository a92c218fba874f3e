from __future__ import annotations

import json
from pathlib import Path

from drills.ledger import export, open_ledger, verify
from drills.ledger.rows import entry_of


def test_what_is_given_out_is_json_lines_with_a_format_and_reads_back(session) -> None:
    entries = session()
    rows = [json.loads(line) for line in export(entries)]
    assert {row["format"] for row in rows} == {1}
    assert [entry_of(row) for row in rows] == entries
    assert all("\n" not in line for line in export(entries))


def test_checking_changes_nothing_and_says_where(folder: Path, session) -> None:
    entries = session()
    ledger = open_ledger(folder)
    ledger.open_session(entries[0])
    for entry in entries[1:]:
        ledger.append(entry)
    ledger.close()
    (file,) = (folder / "records").iterdir()
    lines = file.read_bytes().splitlines(keepends=True)
    lines[3] = lines[3].replace(b"nurse", b"NURSE", 1)
    file.write_bytes(b"".join(lines))
    (problem,) = verify(folder)
    assert (problem.where, problem.line) == (str(file), 4)
    assert file.read_bytes() == b"".join(lines)
    assert list((folder / "records").iterdir()) == [file]


def test_an_empty_folder_has_no_faults(folder: Path) -> None:
    assert verify(folder) == ()
