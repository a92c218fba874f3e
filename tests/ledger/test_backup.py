from __future__ import annotations

import hashlib
import stat
import zipfile
from pathlib import Path
from random import Random

import pytest

from drills.core.problems import BadInput, Failure
from drills.ledger import (
    back_up,
    disk,
    open_ledger,
    put_plan_in_force,
    rebuild,
    restore,
    verify,
)
from tests.ledger.made import keep, made_session, session_files

PLAN = 'format = 1\nname = "one"\nversion = {}\n'


@pytest.fixture
def kept(folder: Path, unsynced: None) -> Path:
    put_plan_in_force(folder, PLAN.format(1))
    put_plan_in_force(folder, PLAN.format(2))
    keep(folder, made_session("a/b"))
    keep(folder, made_session("c", trials=9))
    # A damaged file that was set aside goes along.
    newest = session_files(folder)[-1]
    newest.write_bytes(newest.read_bytes()[:-5])
    open_ledger(folder, elsewhere=()).close()
    return folder


def contents(folder: Path) -> dict[str, bytes]:
    """What a backup holds: everything but the lock and what can be made again."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file() and path.name != "writing.lock" and path.parent.name != "summaries"
    }


def test_a_backup_put_into_an_empty_folder_gives_every_byte_back(kept: Path, tmp_path) -> None:
    place, other = tmp_path / "b.zip", tmp_path / "other"
    expected = contents(kept)
    assert len(expected) == 6
    assert back_up(kept, place) == 6
    assert stat.S_IMODE(place.stat().st_mode) == 0o600
    assert restore(other, place).files == 6
    assert contents(other) == expected
    assert all(stat.S_IMODE((other / name).stat().st_mode) == 0o600 for name in expected)
    assert verify(other) == ()
    # Once more changes nothing.
    assert restore(other, place).same == 6
    with open_both(kept, other) as (one, two):
        assert one.entries() == two.entries()
        assert one.history() == two.history()


class open_both:  # noqa: N801 - reads as a sentence
    def __init__(self, *folders: Path) -> None:
        self.ledgers = [open_ledger(folder, elsewhere=()) for folder in folders]

    def __enter__(self):
        return self.ledgers

    def __exit__(self, *_: object) -> None:
        for ledger in self.ledgers:
            ledger.close()


def test_any_program_can_open_and_check_a_backup(kept: Path, tmp_path: Path) -> None:
    place = tmp_path / "b.zip"
    back_up(kept, place)
    with zipfile.ZipFile(place) as archive:
        assert archive.testzip() is None
        assert {name: archive.read(name) for name in archive.namelist()} == contents(kept)
        sign = archive.comment.decode()
    digest = hashlib.sha256(place.read_bytes()[: -len(sign)]).hexdigest()
    assert sign == f"sha256:{digest}"


def test_a_backup_that_was_cut_or_changed_anywhere_is_refused_and_nothing_put_back(
    kept: Path, tmp_path: Path
) -> None:
    place, other = tmp_path / "b.zip", tmp_path / "other"
    back_up(kept, place)
    data = place.read_bytes()
    chance = Random(5)
    places = [*range(120), *chance.sample(range(len(data)), 200)]
    for at in (*places, *range(len(data) - 120, len(data))):
        changed = bytearray(data)
        changed[at] ^= 1 << chance.randrange(8)
        for bad in (bytes(changed), data[:at], data[at + 1 :]):
            place.write_bytes(bad)
            with pytest.raises(BadInput):
                restore(other, place)
    assert not other.exists()


def test_nothing_that_is_there_is_overwritten(kept: Path, tmp_path: Path) -> None:
    place, other = tmp_path / "b.zip", tmp_path / "other"
    back_up(kept, place)
    put_plan_in_force(other, PLAN.format(7))
    before = contents(other)
    with pytest.raises(BadInput, match=r"plan\.toml is there already"):
        restore(other, place)
    assert contents(other) == before
    with pytest.raises(BadInput, match="is there already"):
        back_up(kept, place)
    with pytest.raises(BadInput, match="nothing to back up"):
        back_up(tmp_path / "empty", tmp_path / "c.zip")


def test_a_session_that_has_grown_since_is_not_put_back_to_what_it_was(
    folder: Path, tmp_path: Path
) -> None:
    entries = made_session()
    keep(folder, entries[:3])
    back_up(folder, tmp_path / "b.zip")
    ledger = open_ledger(folder, elsewhere=())
    ledger.append(entries[3])
    with pytest.raises(Failure, match="Another program"):
        restore(folder, tmp_path / "b.zip")
    with pytest.raises(Failure, match="Another program"):
        rebuild(folder)
    ledger.close()
    with pytest.raises(BadInput, match="is another file"):
        restore(folder, tmp_path / "b.zip")


@pytest.mark.parametrize(
    "name", ["../x", "/etc/x", "records/../x", "records/a/b", "x\x1b[2J", "C:x"]
)
def test_an_archive_that_reaches_out_of_the_folder_is_refused(tmp_path: Path, name: str) -> None:
    place = tmp_path / "b.zip"
    with zipfile.ZipFile(place, "w") as archive:
        archive.writestr(zipfile.ZipInfo("records/good.jsonl"), b"x")
        archive.writestr(zipfile.ZipInfo(name), b"x")
        archive.comment = b"0" * 71
    body = place.read_bytes()[:-71]
    place.write_bytes(body + b"sha256:" + hashlib.sha256(body).hexdigest().encode())
    with pytest.raises(BadInput) as raised:
        restore(tmp_path / "other", place)
    assert "\x1b" not in str(raised.value)
    assert not (tmp_path / "other").exists()


def test_a_full_disk_leaves_no_half_backup_and_no_half_folder(
    kept: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    place, other = tmp_path / "b.zip", tmp_path / "other"
    calls = 0

    def full_at(number: int):
        def sync(file: int) -> None:
            nonlocal calls
            calls += 1
            if calls >= number:
                raise OSError(28, "No space left on device")

        return sync

    with monkeypatch.context() as patch:
        patch.setattr(disk, "sync_file", full_at(1))
        with pytest.raises(Failure, match="the disk is full"):
            back_up(kept, place)
    assert list(tmp_path.glob("b.zip*")) == []
    back_up(kept, place)
    with monkeypatch.context() as patch:
        calls = 0
        patch.setattr(disk, "sync_file", full_at(4))
        with pytest.raises(Failure, match="the disk is full"):
            restore(other, place)
    assert contents(other) == {}
    assert restore(other, place).files == 6


def test_a_backup_beside_a_writer_ends_at_a_whole_line(folder: Path, tmp_path: Path) -> None:
    entries = made_session()
    writer = open_ledger(folder, elsewhere=())
    writer.open_session(entries[0])
    writer.append(entries[1])
    (file,) = session_files(folder)
    whole = file.read_bytes()
    with file.open("ab") as half:
        half.write(b'{"crc32":"0123')
    back_up(folder, tmp_path / "b.zip")
    restore(tmp_path / "other", tmp_path / "b.zip")
    (put_back,) = session_files(tmp_path / "other")
    assert put_back.read_bytes() == whole
    writer.close()


def test_a_backup_of_a_newer_program_is_refused(folder: Path, tmp_path: Path) -> None:
    keep(folder, made_session())
    place = tmp_path / "b.zip"
    (folder / "format").write_text("9\n")
    with pytest.raises(BadInput, match="newer program"):
        back_up(folder, place)
    with zipfile.ZipFile(place, "w") as archive:
        archive.writestr(zipfile.ZipInfo("format"), b"9\n")
        archive.comment = b"0" * 71
    body = place.read_bytes()[:-71]
    place.write_bytes(body + b"sha256:" + hashlib.sha256(body).hexdigest().encode())
    with pytest.raises(BadInput, match="newer program"):
        restore(tmp_path / "other", place)
