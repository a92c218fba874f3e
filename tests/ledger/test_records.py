from __future__ import annotations

import os
import random
import signal
import stat
import subprocess
import sys
import time
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from drills.core.problems import BadInput, Failure
from drills.ledger import disk, open_ledger, verify
from drills.ledger.lines import line_of

REPOSITORY = Path(__file__).parents[2]


@pytest.fixture
def unsynced(monkeypatch: pytest.MonkeyPatch) -> None:
    """Leaves flushing to the system: for tests that open thousands of folders."""
    monkeypatch.setattr(disk, "sync_file", lambda file: None)
    monkeypatch.setattr(disk, "sync_folder", lambda folder: None)


def keep(folder: Path, entries) -> None:
    ledger = open_ledger(folder)
    ledger.open_session(entries[0])
    for entry in entries[1:]:
        ledger.append(entry)
    ledger.close()


def files(folder: Path) -> list[Path]:
    return sorted((folder / "records").glob("*.jsonl"))


def test_what_is_kept_is_read_again(folder: Path, session) -> None:
    entries = session()
    keep(folder, entries)
    ledger = open_ledger(folder)
    assert ledger.writable
    assert list(ledger.entries()) == entries
    assert ledger.notices == ()
    assert verify(folder) == ()
    ledger.close()


def test_each_session_is_one_private_file_named_by_its_start_in_utc(folder: Path, session) -> None:
    keep(folder, session("../ward 3/é"))
    (file,) = files(folder)
    assert file.name == "2026-11-25T130420-ward-3.jsonl"
    if os.name == "posix":
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
        assert stat.S_IMODE(file.parent.stat().st_mode) == 0o700
        assert stat.S_IMODE(folder.stat().st_mode) == 0o700


def test_two_sessions_of_one_name_and_second_share_no_file(folder: Path, session) -> None:
    keep(folder, session("a/b"))
    keep(folder, session("a.b"))
    assert len(files(folder)) == 2
    ledger = open_ledger(folder)
    assert list(ledger.entries()) == session("a/b") + session("a.b")
    ledger.close()


def test_an_entry_is_on_disk_when_append_returns(folder: Path, session, monkeypatch) -> None:
    synced: list[tuple[int, int]] = []

    def sync(file: int) -> None:
        os.fsync(file)
        seen = os.fstat(file)
        synced.append((seen.st_ino, seen.st_size))

    monkeypatch.setattr(disk, "sync_file", sync)
    entries = session()
    ledger = open_ledger(folder)
    ledger.open_session(entries[0])
    for entry in entries[1:]:
        before = len(synced)
        ledger.append(entry)
        seen = files(folder)[0].stat()
        # The summary of a closed session follows.
        assert synced[before : before + 1] == [(seen.st_ino, seen.st_size)]
        assert len(synced) - before == 1 or entry == entries[-1]
    ledger.close()


def test_a_session_must_be_opened_once_and_first(folder: Path, session) -> None:
    entries = session()
    ledger = open_ledger(folder)
    with pytest.raises(ValueError, match="not been opened"):
        ledger.append(entries[1])
    ledger.open_session(entries[0])
    with pytest.raises(ValueError, match="opened before"):
        ledger.open_session(entries[0])
    ledger.close()


def test_a_session_from_before_can_be_closed_later(folder: Path, session) -> None:
    entries = session()
    keep(folder, entries[:-1])
    ledger = open_ledger(folder)
    ledger.append(entries[-1])
    ledger.close()
    ledger = open_ledger(folder)
    assert list(ledger.entries()) == entries
    ledger.close()


def test_only_the_sessions_asked_for_are_read(folder: Path, session, monkeypatch) -> None:
    starts = [datetime(2026, 11, day, 9, 0, 0, 500_000, tzinfo=UTC) for day in range(1, 11)]
    for number, start in enumerate(starts):
        keep(folder, session(f"s{number}", start=start))
    read: list[str] = []
    whole = Path.read_bytes

    def noted(path: Path) -> bytes:
        if path.parent.name == "records":
            read.append(path.name[:10])
        return whole(path)

    monkeypatch.setattr(Path, "read_bytes", noted)
    ledger = open_ledger(folder)
    assert read == ["2026-11-10"]
    # The range takes its start in and leaves its end out, to the microsecond.
    found = ledger.entries(since=starts[3], until=starts[5])
    assert {entry.session for entry in found} == {"s3", "s4"}
    assert read == ["2026-11-10", "2026-11-04", "2026-11-05", "2026-11-06"]
    later = timedelta(microseconds=1)
    found = ledger.entries(since=starts[3] + later, until=starts[5] + later)
    assert {entry.session for entry in found} == {"s4", "s5"}
    assert len(read) == 4
    ledger.close()


def test_a_file_cut_at_any_byte_gives_every_whole_entry_and_says_so(
    tmp_path: Path, session, unsynced
) -> None:
    entries = session(trials=1)
    keep(tmp_path / "whole", entries)
    (file,) = files(tmp_path / "whole")
    data = file.read_bytes()
    ends = [at + 1 for at, byte in enumerate(data) if byte == 10]
    folder = tmp_path / "cut"
    open_ledger(folder).close()
    for length in range(len(data)):
        place = folder / "records" / file.name
        place.write_bytes(data[:length])
        # The line end is no part of an entry; the first line is the header.
        whole = max(sum(end - 1 <= length for end in ends) - 1, 0)
        is_clean = length in ends and whole
        assert bool(verify(folder)) is not bool(is_clean)
        ledger = open_ledger(folder)
        assert list(ledger.entries()) == entries[:whole]
        assert bool(ledger.notices) is not bool(is_clean)
        ledger.close()
        aside = list((folder / "records").glob("*.damaged-*"))
        assert [kept.read_bytes() for kept in aside] == ([] if is_clean else [data[:length]])
        # Once mended, it stays mended.
        ledger = open_ledger(folder)
        assert ledger.notices == ()
        assert list(ledger.entries()) == entries[:whole]
        ledger.close()
        for kept in (folder / "records").iterdir():
            kept.unlink()


def test_a_flip_of_any_byte_is_found_and_changes_no_entry(
    tmp_path: Path, session, unsynced
) -> None:
    entries = session(trials=0)
    keep(tmp_path / "whole", entries)
    (file,) = files(tmp_path / "whole")
    data = file.read_bytes()
    folder = tmp_path / "flipped"
    open_ledger(folder).close()
    place = folder / "records" / file.name
    chance = random.Random(20261125)
    for at in range(len(data)):
        damaged = bytearray(data)
        damaged[at] ^= chance.choice([1, 4, 32, 128, 255])
        place.write_bytes(damaged)
        assert verify(folder)
        ledger = open_ledger(folder)
        found = list(ledger.entries())
        assert ledger.notices
        ledger.close()
        # Every entry but, at the most, the one that was hit.
        line = data.count(b"\n", 0, at) - 1
        spared = [entry for number, entry in enumerate(entries) if number != line]
        assert found in (entries, spared)
        (aside,) = (folder / "records").glob("*.damaged-*")
        assert aside.read_bytes() == damaged
        aside.unlink()


def test_a_newer_format_is_refused_and_not_touched(folder: Path, session) -> None:
    keep(folder, session())
    (file,) = files(folder)
    lines = file.read_bytes().splitlines(keepends=True)
    newer = line_of({"format": 99}, 1) + b"".join(lines[1:]) + b"torn"
    file.write_bytes(newer)
    with pytest.raises(BadInput, match="newer program"):
        open_ledger(folder)
    assert [problem.where for problem in verify(folder)] == [str(file)]
    assert files(folder) == [file]
    assert file.read_bytes() == newer
    # The refusal leaves nothing locked.
    file.rename(folder / "away")
    ledger = open_ledger(folder)
    assert ledger.writable
    ledger.close()


def test_an_entry_of_an_unknown_kind_is_reported_and_left_in_its_file(
    folder: Path, session
) -> None:
    entries = session()
    keep(folder, entries)
    (file,) = files(folder)
    data = file.read_bytes() + line_of({"entry": "dream", "at": "2026-11-25T13:04:20+00:00"}, 9)
    file.write_bytes(data)
    ledger = open_ledger(folder)
    assert list(ledger.entries()) == entries
    assert [":9:" in notice for notice in ledger.notices] == [True]
    ledger.close()
    assert file.read_bytes() == data


def test_a_clock_that_went_back_is_noticed_and_kept(folder: Path, session) -> None:
    entries = session()
    entries[2] = replace(entries[2], at=entries[1].at - timedelta(minutes=2))
    ledger = open_ledger(folder)
    ledger.open_session(entries[0])
    for entry in entries[1:]:
        ledger.append(entry)
    assert ledger.notices == ("The clock went back by 120 s in the session of 2026-11-25 08:04.",)
    earlier = session("s0", start=entries[0].at - timedelta(days=1))
    ledger.open_session(earlier[0])
    assert len(ledger.notices) == 2
    assert list(ledger.entries()) == [earlier[0], *entries]
    ledger.close()


def test_a_second_program_reads_along_and_may_not_write(folder: Path, session) -> None:
    entries = session()
    first = open_ledger(folder)
    first.open_session(entries[0])
    script = """
import sys
from pathlib import Path
from drills.core.problems import Failure
from drills.ledger import open_ledger
ledger = open_ledger(Path(sys.argv[1]))
print(ledger.writable, ledger.reason, sep="|")
input()
found = ledger.entries()
print(len(found))
try:
    ledger.append(found[0].__class__ and found[-1])
except Failure as failure:
    print(failure)
"""
    with subprocess.Popen(
        [sys.executable, "-c", script, str(folder)],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
        cwd=REPOSITORY,
    ) as second:
        assert second.stdout is not None
        assert second.stdout.readline() == (
            "False|another program is writing the records in this folder\n"
        )
        for entry in entries[1:]:
            first.append(entry)
        rest, _ = second.communicate("\n")
    assert rest.splitlines() == [
        str(len(entries)),
        "Nothing can be saved: another program is writing the records in this folder.",
    ]
    first.close()
    third = open_ledger(folder)
    assert third.writable
    third.close()


def test_a_reader_does_not_mend_what_the_writer_is_writing(folder: Path, session) -> None:
    entries = session()
    keep(folder, entries)
    (file,) = files(folder)
    writer = open_ledger(folder)
    file.write_bytes(file.read_bytes()[:-40])
    data = file.read_bytes()
    reader = open_ledger(folder)
    # Not a mistake of the caller's, though no session could be opened.
    for entry in session("s2"):
        with pytest.raises(Failure, match="another program"):
            reader.open_session(entry) if entry == session("s2")[0] else reader.append(entry)
    assert list(reader.entries()) == entries[:-1]
    assert len(reader.notices) == 1  # that it only reads
    reader.close()
    writer.close()
    assert file.read_bytes() == data


WRITER = """
import sys
import time
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from drills.core.records import Observation, SessionOpened, Topic
from drills.ledger import open_ledger
number = int(sys.argv[2])
at = datetime(2026, 11, 25, 9, tzinfo=UTC) + timedelta(hours=number)
ledger = open_ledger(Path(sys.argv[1]))
assert ledger.writable
name = f"s{number}"
ledger.open_session(SessionOpened(session=name, at=at, plan_name="p", plan_version=1,
    program="0", content_hash="", seed=number))
count = 0
while True:
    ledger.append(Observation(session=name, at=at, topic=Topic.REST, note=f"{count} " + "x" * 900))
    sys.stdout.write(f"{count}\\n")
    sys.stdout.flush()
    count += 1
"""


@pytest.mark.skipif(os.name != "posix", reason="kills by signal")
def test_a_killed_writer_loses_nothing_that_was_acknowledged(folder: Path) -> None:
    chance = random.Random(25)
    for number in range(20):
        with subprocess.Popen(
            [sys.executable, "-c", WRITER, str(folder), str(number)],
            stdout=subprocess.PIPE,
            text=True,
            cwd=REPOSITORY,
        ) as writer:
            assert writer.stdout is not None
            for _ in range(chance.randrange(1, 30)):
                writer.stdout.readline()
            writer.send_signal(signal.SIGKILL)
            rest = writer.stdout.read()
        assert writer.returncode == -signal.SIGKILL
        acknowledged = int(rest.splitlines()[-1]) if rest.endswith("\n") else None
        ledger = open_ledger(folder)
        assert ledger.writable
        day = datetime(2026, 11, 25, 9, tzinfo=UTC)
        found = ledger.entries(since=day + timedelta(hours=number))
        notes = [int(entry.note.split()[0]) for entry in found[1:]]
        assert notes == list(range(len(notes)))
        if acknowledged is not None:
            assert len(notes) > acknowledged
        ledger.close()


FULL = """
import resource, signal, sys
from pathlib import Path
from drills.core.problems import Failure
from drills.core.records import Observation, Topic
from drills.ledger import open_ledger
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
folder = Path(sys.argv[1])
elsewhere = folder.parent / "elsewhere"
elsewhere.mkdir()
ledger = open_ledger(folder, elsewhere=[elsewhere])
last = ledger.entries()[-1]
def observe(text):
    ledger.append(Observation(session=last.session, at=last.at, topic=Topic.REST, note=text))
observe("before")
size = next((folder / "records").glob("*.jsonl")).stat().st_size
resource.setrlimit(resource.RLIMIT_FSIZE, (size + 100, resource.RLIM_INFINITY))
for text in ("first", "second"):
    try:
        observe(text)
    except Failure as failure:
        print(failure)
assert next((folder / "records").glob("*.jsonl")).stat().st_size == size
if sys.argv[2] == "mended":
    resource.setrlimit(resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    observe("third")
    print(len(ledger.held))
try:
    ledger.close()
except Failure as failure:
    print(failure)
"""


@pytest.mark.skipif(sys.platform != "linux", reason="limits the size of a file")
@pytest.mark.parametrize("end", ["mended", "full"])
def test_a_full_disk_is_said_plainly_and_nothing_is_lost_once_there_is_room(
    folder: Path, session, end: str
) -> None:
    keep(folder, session())
    result = subprocess.run(
        [sys.executable, "-c", FULL, str(folder), end],
        capture_output=True,
        text=True,
        check=True,
        cwd=REPOSITORY,
    )
    why = "because the file may not grow further"
    *said, last = result.stdout.splitlines()
    assert said == [f"Not saved yet, {why}; go on, it is tried again."] * 2
    saved = folder.parent / "elsewhere" / "drills-unsaved.jsonl"
    if end == "mended":
        assert last == "0"
    else:
        assert last == (
            f"2 entries could not be kept, {why}."
            f" Saved in {saved}; the next start takes them from there."
        )
        assert stat.S_IMODE(saved.stat().st_mode) == 0o600
    for _ in range(2):
        ledger = open_ledger(folder, elsewhere=[saved.parent])
        notes = [entry.note for entry in ledger.entries()[len(session()) :]]
        assert notes == ["before", "first", "second"] + (["third"] if end == "mended" else [])
        ledger.close()
        assert not saved.exists()


def test_a_session_that_could_not_be_opened_is_opened_before_its_first_entry(
    folder: Path, session, monkeypatch
) -> None:
    entries = session()
    ledger = open_ledger(folder)

    def full(file: int) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(disk, "sync_file", full)
        with pytest.raises(Failure, match="the disk is full"):
            ledger.open_session(entries[0])
        assert ledger.held == (entries[0],)
        assert files(folder) == []
    for entry in entries[1:]:
        ledger.append(entry)
    assert ledger.held == ()
    assert list(ledger.entries()) == entries
    ledger.close()
    with pytest.raises(Failure, match="closed"):
        ledger.append(entries[1])


def test_a_file_with_another_name_is_reported_and_left_alone(folder: Path, session) -> None:
    keep(folder, session())
    stray = folder / "records" / "copy of session.jsonl"
    stray.write_text("mine")
    ledger = open_ledger(folder)
    assert list(ledger.entries()) == session()
    assert ledger.notices == (
        "copy of session.jsonl is not named like a session, so it is not read.",
    )
    ledger.close()
    assert [problem.where for problem in verify(folder)] == [str(stray)]
    assert stray.read_text() == "mine"


def test_years_of_sessions_do_not_slow_a_start(folder: Path, session) -> None:
    keep(folder, session())
    (file,) = files(folder)
    data = file.read_bytes()
    start = datetime(2020, 1, 1, tzinfo=UTC)
    for day in range(1500):
        name = f"{start + timedelta(days=day):%Y-%m-%dT%H%M%S}-old.jsonl"
        (folder / "records" / name).write_bytes(data)
    begun = time.perf_counter()
    ledger = open_ledger(folder)
    ledger.entries(since=session()[0].at)
    took = time.perf_counter() - begun
    ledger.close()
    assert took < 0.5
