"""A disk that refuses: at each call, for each reason, for a while or for good."""

from __future__ import annotations

import errno
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from drills.core.problems import Failure
from drills.ledger import disk, open_ledger, verify
from drills.ledger.lines import line_of
from drills.ledger.rows import row_of
from tests.ledger.made import keep, made_session
from tests.terminal import ROOT

REASONS = {
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk space allowed to this user is used up",
    errno.EFBIG: "the file may not grow further",
    errno.EROFS: "the disk can only be read",
    errno.EACCES: "this user may not write there",
    errno.EIO: "the disk reports a fault",
}
CALLS = ["write", "half a write", "flush", "open"]


def refuse(patch: pytest.MonkeyPatch, call: str, number: int, *, also_undo: bool = False) -> None:
    """Let `call` fail in the practice folder with error `number`."""

    def failing(*_: object, **__: object) -> None:
        raise OSError(number, os.strerror(number))

    if call == "write":
        patch.setattr(os, "write", failing)
    elif call == "half a write":
        write, calls = os.write, []

        def half(file: int, data: bytes) -> int:
            # The system takes a part, and nothing at the second call.
            calls.append(file)
            return write(file, data[: len(data) // 2]) if len(calls) % 2 else failing()

        patch.setattr(os, "write", half)
    elif call == "flush":
        patch.setattr(disk, "sync_file", failing)
    else:
        patch.setattr(disk, "open_file", failing)
        patch.setattr(disk, "create_file", failing)
    if also_undo:
        patch.setattr(os, "ftruncate", failing)


@pytest.mark.parametrize("also_undo", [False, True], ids=["", "and taking back"])
@pytest.mark.parametrize("call", CALLS)
@pytest.mark.parametrize("number", REASONS, ids=errno.errorcode.get)
def test_answers_are_held_and_written_once_when_the_disk_takes_them_again(
    folder: Path, number: int, call: str, also_undo: bool
) -> None:
    entries = made_session()
    ledger = open_ledger(folder, elsewhere=())
    ledger.open_session(entries[0])
    ledger.append(entries[1])
    if call == "open":
        # Nothing is open after an earlier failure.
        with pytest.MonkeyPatch.context() as patch:
            refuse(patch, "flush", number)
            with pytest.raises(Failure):
                ledger.append(entries[2])
    else:
        with pytest.MonkeyPatch.context() as patch:
            refuse(patch, call, number, also_undo=also_undo)
            with pytest.raises(Failure):
                ledger.append(entries[2])
    with pytest.MonkeyPatch.context() as patch:
        refuse(patch, call, number, also_undo=also_undo)
        with pytest.raises(Failure) as raised:
            ledger.append(entries[3])
    said = str(raised.value)
    assert said == f"Not saved yet, because {REASONS[number]}; go on, it is tried again."
    assert ledger.held == tuple(entries[2:4])
    for entry in entries[4:]:
        ledger.append(entry)
    assert ledger.held == ()
    ledger.close()
    again = open_ledger(folder, elsewhere=())
    assert list(again.entries()) == entries
    assert bool(again.notices) is (also_undo and call in {"flush", "half a write"})
    again.close()
    assert verify(folder) == ()


@pytest.mark.parametrize("call", CALLS)
def test_a_session_that_begins_on_a_full_disk_is_kept_whole(folder: Path, call: str) -> None:
    entries = made_session()
    ledger = open_ledger(folder, elsewhere=())
    with pytest.MonkeyPatch.context() as patch:
        refuse(patch, call, errno.ENOSPC)
        with pytest.raises(Failure, match="the disk is full"):
            ledger.open_session(entries[0])
        for entry in entries[1:4]:
            with pytest.raises(Failure, match="the disk is full"):
                ledger.append(entry)
    for entry in entries[4:]:
        ledger.append(entry)
    assert list(ledger.entries()) == entries
    ledger.close()


def test_what_could_not_be_written_by_the_end_is_said_saved_elsewhere_and_taken_in(
    folder: Path, tmp_path: Path
) -> None:
    entries = made_session()
    keep(folder, made_session("before"))
    ledger = open_ledger(folder, elsewhere=())
    ledger.open_session(entries[0])
    places = [tmp_path / "gone", tmp_path / "there"]
    places[1].mkdir()
    ledger.close()
    ledger = open_ledger(folder, elsewhere=places)
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(disk, "open_file", _fails(errno.EIO))
        for entry in entries[1:]:
            with pytest.raises(Failure, match="the disk reports a fault"):
                ledger.append(entry)
        with pytest.raises(Failure) as raised:
            ledger.close()
    count = len(entries) - 1
    saved = places[1] / "drills-unsaved.jsonl"
    assert str(raised.value) == (
        f"{count} entries could not be kept, because the disk reports a fault."
        f" Saved in {saved}; the next start takes them from there."
    )
    # Another folder's records leave it alone.
    keep(tmp_path / "other", made_session("other"))
    open_ledger(tmp_path / "other", elsewhere=places).close()
    assert saved.exists()
    for start in range(2):
        again = open_ledger(folder, elsewhere=places)
        assert list(again.entries())[-len(entries) :] == entries
        assert bool(again.notices) is (start == 0)
        again.close()
    assert not saved.exists()


def test_a_start_that_was_killed_while_it_took_answers_in_takes_none_twice(
    folder: Path, tmp_path: Path
) -> None:
    entries = made_session()
    ledger = open_ledger(folder, elsewhere=[tmp_path])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(disk, "create_file", _fails_in(folder, disk.create_file))
        with pytest.raises(Failure):
            ledger.open_session(entries[0])
        for entry in entries[1:]:
            with pytest.raises(Failure):
                ledger.append(entry)
        with pytest.raises(Failure):
            ledger.close()
    saved = tmp_path / "drills-unsaved.jsonl"
    data = saved.read_bytes()
    open_ledger(folder, elsewhere=[tmp_path]).close()
    # As it would lie there had the kill come just before it was removed.
    saved.write_bytes(data)
    again = open_ledger(folder, elsewhere=[tmp_path])
    assert list(again.entries()) == entries
    again.close()


def test_saved_answers_without_their_session_are_kept_aside(folder: Path, tmp_path: Path) -> None:
    keep(folder, made_session("here"))
    header = {"format": 1, "unsaved_in": str(folder.resolve())}
    stranger = made_session("gone")[1]
    saved = tmp_path / "drills-unsaved.jsonl"
    saved.write_bytes(line_of(header, 1) + line_of(row_of(stranger), 2))
    saved.chmod(0o600)
    open_ledger(folder, elsewhere=[tmp_path]).close()
    assert not saved.exists()
    assert (tmp_path / "drills-unsaved.damaged").exists()


def test_where_no_place_takes_them_that_is_said_as_well(folder: Path) -> None:
    entries = made_session()
    ledger = open_ledger(folder, elsewhere=[folder / "no such place"])
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(disk, "create_file", _fails(errno.ENOSPC))
        with pytest.raises(Failure):
            ledger.open_session(entries[0])
        with pytest.raises(Failure, match="No other place could take them"):
            ledger.close()


READ_ONLY = """
import os, sys
from pathlib import Path
from drills.core.problems import Failure
from drills.ledger import open_ledger
from tests.ledger.made import made_session
folder, elsewhere = map(Path, sys.argv[1:3])
if os.getuid() == 0:
    os.setgid(65534)
    os.setuid(65534)
ledger = open_ledger(folder, elsewhere=[elsewhere])
print(ledger.writable, repr(ledger.reason), len(ledger.entries()))
entries = made_session("second")
for entry in entries:
    try:
        ledger.open_session(entry) if entry is entries[0] else ledger.append(entry)
    except Failure as failure:
        print(failure)
try:
    ledger.close()
except Failure as failure:
    print(failure)
"""


@pytest.mark.skipif(os.name != "posix", reason="modes of files")
def test_a_folder_that_can_only_be_read_holds_answers_and_saves_them_elsewhere(
    folder: Path, tmp_path: Path
) -> None:
    entries = made_session("second")
    keep(folder, made_session("first"))
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir(mode=0o777)
    elsewhere.chmod(0o777)
    (folder / "writing.lock").unlink(missing_ok=True)
    _open_to_all(folder)
    for place in [folder, *folder.rglob("*")]:
        place.chmod(0o555 if place.is_dir() else 0o444)
    done = subprocess.run(
        [sys.executable, "-c", READ_ONLY, str(folder), str(elsewhere)],
        capture_output=True,
        text=True,
        check=False,
        cwd=ROOT,
    )
    assert done.returncode == 0, done.stderr
    first, *said, last = done.stdout.splitlines()
    assert first == f"False '' {len(made_session('old'))}"
    calm = "Not saved yet, because this user may not write there; go on, it is tried again."
    assert said == [calm] * len(entries)
    assert last.startswith(f"{len(entries)} entries could not be kept, because this user may not")
    (saved,) = elsewhere.iterdir()
    assert str(saved) in last
    for place in [folder, *folder.rglob("*")]:
        place.chmod(0o700 if place.is_dir() else 0o600)
    if os.getuid() == 0:
        os.chown(saved, 0, 0)
    again = open_ledger(folder, elsewhere=[elsewhere])
    assert list(again.entries()) == made_session("first") + entries
    again.close()


def _open_to_all(folder: Path) -> None:
    """Let another user come as far as `folder`."""
    for place in folder.parents:
        if place.stat().st_uid == os.getuid() and place != Path(place.root):
            place.chmod(place.stat().st_mode | 0o011)


def _fails(number: int) -> Callable[..., None]:
    def fail(*_: object, **__: object) -> None:
        raise OSError(number, os.strerror(number))

    return fail


def _fails_in(folder: Path, real: Callable[[Path], int]) -> Callable[[Path], int]:
    def fail(path: Path) -> int:
        if folder in path.parents:
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
        return real(path)

    return fail
