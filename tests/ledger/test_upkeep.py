from __future__ import annotations

from pathlib import Path

from drills.ledger import open_ledger, set_aside_in, verify
from tests.ledger.made import keep, made_session, session_files


def test_checking_changes_nothing_and_says_where(folder: Path) -> None:
    keep(folder, made_session())
    (file,) = session_files(folder)
    lines = file.read_bytes().splitlines(keepends=True)
    lines[3] = lines[3].replace(b"nurse", b"NURSE", 1)
    file.write_bytes(b"".join(lines))
    (problem,) = verify(folder)
    assert (problem.where, problem.line) == (str(file), 4)
    assert file.read_bytes() == b"".join(lines)
    assert list((folder / "records").iterdir()) == [file]


def test_an_empty_folder_has_no_faults(folder: Path) -> None:
    assert verify(folder) == ()


def test_what_is_set_aside_is_named_and_is_no_fault(folder: Path) -> None:
    keep(folder, made_session())
    (file,) = session_files(folder)
    file.write_bytes(file.read_bytes()[:-7])
    assert set_aside_in(folder) == ()
    open_ledger(folder, elsewhere=()).close()
    assert [path.name for path in set_aside_in(folder)] == [f"{file.name}.damaged-1"]
    assert verify(folder) == ()


def test_a_format_that_cannot_be_read_is_told_and_stops_nothing(folder: Path) -> None:
    keep(folder, made_session())
    for said in (b"\xff\xfe", b"one", b""):
        (folder / "format").write_bytes(said)
        (problem,) = verify(folder)
        assert problem.where == str(folder / "format")
    ledger = open_ledger(folder, elsewhere=())
    assert ledger.writable
    ledger.close()
    assert (folder / "format").read_text() == "1\n"
