from __future__ import annotations

import os
import stat
from pathlib import Path

import pytest

from drills.core.problems import Failure
from drills.ledger import disk, plan_path, prepare, put_plan_in_force

FIRST = 'plan_format = 1\nname = "one"\nversion = 1\n'
SECOND = FIRST.replace("version = 1", "version = 2")


def test_a_new_folder_is_private_and_one_that_was_there_keeps_its_mode(tmp_path: Path) -> None:
    (tmp_path / "mine").mkdir(mode=0o755)
    for folder, mode in ((tmp_path / "new", 0o700), (tmp_path / "mine", 0o755)):
        prepare(folder)
        prepare(folder)
        assert stat.S_IMODE(folder.stat().st_mode) == mode
        for part in ("records", "plans"):
            assert stat.S_IMODE((folder / part).stat().st_mode) == 0o700


def test_a_place_that_cannot_be_written_is_named_with_a_way_out(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    place = tmp_path / "file" / "practice"
    with pytest.raises(Failure) as raised:
        prepare(place)
    text = str(raised.value)
    assert str(place) in text
    assert "a file is in the way" in text
    assert "--folder" in text


def test_the_plan_before_is_kept_under_its_version(folder: Path) -> None:
    assert put_plan_in_force(folder, FIRST) == plan_path(folder)
    os.utime(plan_path(folder), (1_795_600_000, 1_795_600_000))
    put_plan_in_force(folder, SECOND)
    assert plan_path(folder).read_text() == SECOND
    (kept,) = (folder / "plans").iterdir()
    assert kept.name == "plan-v1-2026-11-25T094640.toml"
    assert kept.read_text() == FIRST
    for file in (kept, plan_path(folder)):
        assert stat.S_IMODE(file.stat().st_mode) == 0o600
    # The same plan again changes nothing.
    put_plan_in_force(folder, SECOND)
    assert len(list((folder / "plans").iterdir())) == 1


def test_a_plan_that_cannot_be_read_is_kept_all_the_same(folder: Path) -> None:
    prepare(folder)
    plan_path(folder).write_bytes(b"\xff no plan")
    put_plan_in_force(folder, FIRST)
    (kept,) = (folder / "plans").iterdir()
    assert kept.name.startswith("plan-v0-")
    assert kept.read_bytes() == b"\xff no plan"


def test_a_failed_change_leaves_the_plan_in_force(folder: Path, monkeypatch) -> None:
    put_plan_in_force(folder, FIRST)

    def full(file: int) -> None:
        raise OSError(28, "No space left on device")

    with monkeypatch.context() as patch:
        patch.setattr(disk, "sync_file", full)
        with pytest.raises(Failure, match="the disk is full"):
            put_plan_in_force(folder, SECOND)
    assert plan_path(folder).read_text() == FIRST
    put_plan_in_force(folder, SECOND)
    assert plan_path(folder).read_text() == SECOND
