from __future__ import annotations

import json
from pathlib import Path

import pytest

from drills.core.problems import BadInput
from drills.core.records import RECORD_FORMAT, Observation
from drills.ledger import folder as practice_folder
from drills.ledger import open_ledger, sessions, tables, verify
from drills.ledger.lines import Row, lines_of, read_lines
from drills.ledger.rows import row_of
from drills.ledger.upgrades import STEPS, steps_from
from tests.ledger.made import made_session, session_files

# Written by the program when format 1 was the newest; it never changes, whatever is newest now.
OLD = Path(__file__).with_name("format_1.jsonl").read_bytes()
NAME = "2026-11-25T130420-kept-in-2026.jsonl"
ENTRIES = made_session("kept-in-2026", trials=4)


def test_every_older_format_has_a_step() -> None:
    assert set(STEPS) == set(range(1, RECORD_FORMAT))
    assert steps_from(RECORD_FORMAT, where="file") == ()


def test_steps_run_in_order_from_the_format_of_the_file() -> None:
    chain = {version: lambda row, version=version: {**row, version: True} for version in (1, 2, 3)}
    row: dict[object, object] = {}
    for step in steps_from(2, where="file", steps=chain, now=4):
        row = step(row)
    assert list(row) == [2, 3]


@pytest.mark.parametrize(
    ("written_as", "said"),
    [(2, "newer program"), (0, "none such"), ("1", "none such"), (True, "none such")],
)
def test_a_format_that_is_not_known_is_refused(written_as: object, said: str) -> None:
    with pytest.raises(BadInput, match=said) as raised:
        steps_from(written_as, where="that file", now=1)
    assert raised.value.problems[0].where == "that file"


@pytest.fixture
def old(folder: Path) -> Path:
    """A practice folder as format 1 left it; the file in it."""
    open_ledger(folder, elsewhere=()).close()
    (folder / "records" / NAME).write_bytes(OLD)
    return folder / "records" / NAME


def test_what_format_1_kept_is_read_as_it_was_meant(folder: Path, old: Path) -> None:
    ledger = open_ledger(folder, elsewhere=())
    assert list(ledger.entries()) == ENTRIES
    assert ledger.notices == ()
    ledger.close()
    assert old.read_bytes() == OLD


@pytest.fixture
def next_format(monkeypatch: pytest.MonkeyPatch) -> int:
    """The program as it will be once a format after today's has come.

    The change is of the usual sort: tiredness was from 1 to 5 and will be from 0 to 4 under
    another name, so that what is not brought over is no entry any more.
    """
    new = RECORD_FORMAT + 1

    def renamed(row: Row) -> Row:
        if row.get("entry") != "observation":
            return row
        rest = {key: value for key, value in row.items() if key != "tiredness"}
        tired = row["tiredness"]
        return rest | {"tired_of_4": None if tired is None else tired - 1}

    real = sessions.entry_of

    def understood(row: Row) -> object:
        if row.get("entry") != "observation":
            return real(row)
        tired = row["tired_of_4"]
        return real({**row, "tiredness": None if tired is None else tired + 1})

    monkeypatch.setattr(sessions, "entry_of", understood)
    for module in (sessions, tables, practice_folder):
        monkeypatch.setattr(module, "RECORD_FORMAT", new)

    def known(written_as: object, *, where: str) -> object:
        return steps_from(written_as, where=where, steps={**STEPS, new - 1: renamed}, now=new)

    monkeypatch.setattr(sessions, "steps_from", known)
    return new


def test_an_older_file_is_upgraded_as_it_is_read_and_stays_as_it_was_written(
    folder: Path, old: Path, next_format: int
) -> None:
    ledger = open_ledger(folder, elsewhere=())
    assert list(ledger.entries()) == ENTRIES
    assert ledger.notices == ()
    assert len(ledger.history()) == 4
    ledger.close()
    assert verify(folder) == ()
    assert old.read_bytes() == OLD
    assert (folder / "format").read_text() == f"{next_format}\n"
    assert {json.loads(line)["format"] for line in tables.export(ENTRIES)} == {next_format}


def test_a_file_that_is_gone_on_with_is_upgraded_whole_and_the_older_one_kept(
    folder: Path, old: Path, next_format: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    note = ENTRIES[-1]
    monkeypatch.setattr("drills.ledger.records.row_of", _row_of_the_next_format)
    ledger = open_ledger(folder, elsewhere=())
    last = Observation(session=note.session, at=note.at, topic=_topic(), tiredness=3)
    ledger.append(last)
    assert list(ledger.entries()) == [*ENTRIES, last]
    assert any(f"{NAME}.format-1-1" in notice for notice in ledger.notices)
    ledger.close()
    assert old.with_name(f"{NAME}.format-1-1").read_bytes() == OLD
    rows = [row for _, row in read_lines(old.read_bytes()).rows]
    assert rows[0]["format"] == next_format
    assert [row["tired_of_4"] for row in rows if row.get("entry") == "observation"] == [1, 2]
    assert verify(folder) == ()


def test_a_damaged_older_file_is_mended_in_the_newer_format(
    folder: Path, old: Path, next_format: int
) -> None:
    lines = OLD.splitlines(keepends=True)
    del lines[4]
    old.write_bytes(b"".join(lines))
    for start in range(2):
        ledger = open_ledger(folder, elsewhere=())
        assert list(ledger.entries()) == ENTRIES[:3] + ENTRIES[4:]
        assert bool(ledger.notices) is (start == 0)
        ledger.close()
    assert old.with_name(f"{NAME}.damaged-1").read_bytes() == b"".join(lines)


def test_an_older_program_stays_out_of_a_folder_that_a_newer_one_used(
    folder: Path, old: Path
) -> None:
    (folder / "format").write_text("2\n")
    before = {path.name: path.stat().st_mtime_ns for path in folder.rglob("*")}
    with pytest.raises(BadInput, match="newer program"):
        open_ledger(folder, elsewhere=())
    assert {path.name: path.stat().st_mtime_ns for path in folder.rglob("*")} == before


def test_one_newer_file_among_others_is_left_out_and_told(folder: Path, old: Path) -> None:
    # Without the folder's own mark, as after copying files about by hand.
    earlier = folder / "records" / "2026-11-01T080000-other.jsonl"
    earlier.write_bytes(lines_of([{"format": 9, "session": "other"}, {"entry": "dream"}]))
    ledger = open_ledger(folder, elsewhere=())
    assert list(ledger.entries()) == ENTRIES
    assert len(ledger.history()) == 4
    assert ["newer program" in notice for notice in ledger.notices] == [True]
    ledger.close()
    assert [problem.where for problem in verify(folder)] == [str(earlier)]
    assert len(session_files(folder)) == 2


def _topic():
    return next(entry.topic for entry in ENTRIES if isinstance(entry, Observation))


def _row_of_the_next_format(entry: object) -> Row:
    row = row_of(entry)
    if isinstance(entry, Observation):
        tired = row.pop("tiredness")
        row["tired_of_4"] = None if tired is None else tired - 1
    return row
