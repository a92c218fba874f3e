"""A session of 300 trials, cut and changed at every byte.

A line is judged by its own bytes, so every cut and every flip is tried on the line that it hits
and the lines around it; whole files are read at points chosen by chance, which shows that the
rest of a file changes nothing.
"""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest

from drills.ledger import open_ledger, verify
from drills.ledger.lines import Fault, line_of, read_lines
from drills.ledger.sessions import understand
from tests.ledger.made import keep, made_session, session_files, written

ENTRIES = made_session("long", trials=300)
DATA = written(ENTRIES)
LINES = DATA.splitlines(keepends=True)
ROWS = [row for _, row in read_lines(DATA).rows]
PLACE = Path("2026-11-25T130420-long.jsonl")


def test_the_session_is_what_it_is_said_to_be() -> None:
    assert len({entry.trial for entry in ENTRIES if hasattr(entry, "trial")}) == 300
    assert len(LINES) == len(ENTRIES) + 1
    assert understand(PLACE, DATA).entries == tuple(ENTRIES)


def neighbour(number: int) -> bytes:
    """A short line of that number, to stand beside the one that is hit."""
    return line_of({"n": number}, number) if number else b""


def test_a_cut_at_every_byte_keeps_every_whole_line_and_is_seen() -> None:
    tried = 0
    for number, line in enumerate(LINES, start=1):
        before = neighbour(number - 1)
        rows_before = [{"n": number - 1}] if before else []
        for length in range(1, len(line)):
            reading = read_lines(before + line[:length], first=max(number - 1, 1))
            # The line end is no part of an entry.
            whole = length == len(line) - 1
            assert [row for _, row in reading.rows] == rows_before + [ROWS[number - 1]] * whole
            assert [damage.fault for damage in reading.damage] == [Fault.TORN]
            tried += 1
    assert tried == len(DATA) - len(LINES)


def test_a_flip_of_every_byte_is_seen_and_changes_no_entry() -> None:
    chance = Random(20261125)
    tried = 0
    for number, line in enumerate(LINES, start=1):
        before, after = neighbour(number - 1), neighbour(number + 1)
        spared = [{"n": each} for each in (number - 1, number + 1) if each]
        intact = [*spared[:-1], ROWS[number - 1], spared[-1]]
        for at in range(len(line)):
            flipped = bytearray(line)
            flipped[at] ^= 1 << chance.randrange(8)
            reading = read_lines(before + bytes(flipped) + after, first=max(number - 1, 1))
            rows = [row for _, row in reading.rows]
            assert reading.damage
            # Every row but the one that was hit; a flipped line end spares even that.
            assert rows == (intact if at == len(line) - 1 else spared)
            tried += 1
    assert tried == len(DATA)


def test_whole_files_cut_or_flipped_at_points_chosen_by_chance() -> None:
    chance = Random(6)
    ends = [at + 1 for at, byte in enumerate(DATA) if byte == 10]
    for _ in range(60):
        length = chance.randrange(1, len(DATA))
        found = understand(PLACE, DATA[:length]).entries
        assert list(found) == ENTRIES[: max(sum(end - 1 <= length for end in ends) - 1, 0)]
        at = chance.randrange(len(DATA))
        flipped = bytearray(DATA)
        flipped[at] ^= chance.choice([1, 4, 32, 128, 255])
        read = understand(PLACE, bytes(flipped))
        hit = DATA.count(b"\n", 0, at) - 1
        assert read.problems or not read.has_header
        assert list(read.entries) in (ENTRIES, ENTRIES[:hit] + ENTRIES[hit + 1 :])


def test_a_cut_at_the_end_of_any_line_is_told_by_the_summary(folder: Path, unsynced: None) -> None:
    keep(folder, ENTRIES)
    (file,) = session_files(folder)
    assert file.read_bytes() == DATA
    ends = [at + 1 for at, byte in enumerate(DATA) if byte == 10]
    for number in [*range(1, 6), *Random(1).sample(range(6, len(ends) - 1), 8), len(ends) - 2]:
        file.write_bytes(DATA[: ends[number]])
        gone = f"{len(ENTRIES) - number} of its {len(ENTRIES)} entries are gone"
        for _ in range(2):
            # It stays told: the summary is not made anew from what is left.
            assert [gone in str(problem) for problem in verify(folder)] == [True]
            ledger = open_ledger(folder, elsewhere=())
            assert list(ledger.entries()) == ENTRIES[:number]
            ledger.history()
            assert [gone in notice for notice in ledger.notices] == [True]
            ledger.close()


@pytest.mark.parametrize("damage", ["swapped", "removed", "twice", "from another session"])
def test_lines_moved_about_are_found_set_aside_and_mended(folder: Path, damage: str) -> None:
    entries = made_session()
    keep(folder, entries)
    (file,) = session_files(folder)
    lines = file.read_bytes().splitlines(keepends=True)
    expected = entries
    if damage == "swapped":
        lines[3], lines[4] = lines[4], lines[3]
    elif damage == "removed":
        del lines[3]
        expected = entries[:2] + entries[3:]
    elif damage == "twice":
        lines.insert(3, lines[3])
    else:
        lines[3] = written(made_session("other")).splitlines(keepends=True)[3]
        expected = entries[:2] + entries[3:]
    file.write_bytes(b"".join(lines))
    assert verify(folder)
    ledger = open_ledger(folder, elsewhere=())
    assert list(ledger.entries()) == expected
    assert ledger.notices
    ledger.close()
    if damage != "from another session":
        (aside,) = (folder / "records").glob("*.damaged-*")
        assert aside.read_bytes() == b"".join(lines)
        assert verify(folder) == ()
