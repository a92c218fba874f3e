"""Windows that storm, programs that are suspended, disks that fill: no answer is lost."""

from __future__ import annotations

import contextlib
import json
import os
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest

from drills.ledger import verify
from tests.terminal import Terminal
from tests.whole.player import (
    Player,
    assert_all_kept,
    installed,
    kept_trials,
    put_plan_in_force,
    run,
)

PROGRAM = installed()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    place = tmp_path / "practice"
    put_plan_in_force(place, PROGRAM)
    return place


def opened(folder: Path) -> Terminal:
    return Terminal([*PROGRAM, "--folder", str(folder)])


def test_a_storm_of_resizes_loses_nothing(folder: Path) -> None:
    chance = Random(4)
    with opened(folder) as terminal:
        player = Player(terminal, seed=4)
        player.begin()
        for done in range(1, 4):
            player.play(stop_after=1)
            for _ in range(60):
                terminal.resize(chance.randrange(20, 200), chance.randrange(5, 70))
                terminal.read(0.002)
            terminal.resize(80, 24)
            terminal.wait_for("H help", "S score", "How tired", "Did someone", "Space go on")
            terminal.settle()
            assert len(player.given) == done
        player.play(stop_after=1)
        terminal.kill()
    assert len(player.given) == 4
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))


@pytest.mark.parametrize("sent", [signal.SIGSTOP, signal.SIGTSTP], ids=lambda sent: sent.name)
def test_a_program_that_is_suspended_and_resumed_loses_nothing(
    folder: Path, sent: signal.Signals
) -> None:
    with opened(folder) as terminal:
        player = Player(terminal, seed=5)
        player.begin()
        for _ in range(2):
            player.play(stop_after=1)
            os.kill(terminal.pid, sent)
            terminal.read(0.3)
            time.sleep(0.2)
            os.kill(terminal.pid, signal.SIGCONT)
            terminal.settle()
            assert terminal.process.isalive()
        player.play(stop_after=2)
        terminal.kill()
    assert len(player.given) == 4
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))


def test_a_window_closed_while_suspended_keeps_all_and_the_next_start_goes_on(
    folder: Path,
) -> None:
    with opened(folder) as terminal:
        first = Player(terminal, seed=6)
        first.begin()
        first.play(stop_after=2)
        for sent in (signal.SIGSTOP, signal.SIGHUP, signal.SIGCONT):
            os.kill(terminal.pid, sent)
        terminal.end()
    with opened(folder) as terminal:
        second = Player(terminal, seed=7)
        second.begin(choice="Go on")
        second.play(stop_after=2)
        terminal.kill()
    assert_all_kept([*first.given, *second.given], kept_trials(folder, PROGRAM))
    assert verify(folder) == ()


# While the mark is there, a call refuses for one reason whatever is for the practice folder.
REFUSED = """
import errno, os, sys
from pathlib import Path
mark, call, reason = Path(sys.argv.pop(1)), sys.argv.pop(1), sys.argv.pop(1)
folder, number = sys.argv[-1], getattr(errno, reason)
from drills.ledger import disk
real = getattr(disk, call)
def refuse(file, *data):
    if mark.exists() and os.readlink(f"/proc/self/fd/{file}").startswith(folder):
        raise OSError(number, os.strerror(number))
    real(file, *data)
setattr(disk, call, refuse)
from drills.__main__ import main
sys.exit(main())
"""


@pytest.mark.skipif(sys.platform != "linux", reason="finds a file by its number")
@pytest.mark.parametrize(
    ("refused", "why", "mended"),
    [
        ("write_all ENOSPC", "the disk is full", True),
        ("write_all ENOSPC", "the disk is full", False),
        ("write_all EROFS", "the disk can only be read", True),
        ("write_all EFBIG", "the file may not grow further", True),
        ("sync_file EIO", "the disk reports a fault", False),
    ],
)
def test_a_disk_that_refuses_is_one_calm_sentence_and_practice_goes_on(
    folder: Path, tmp_path: Path, refused: str, why: str, mended: bool
) -> None:
    mark, own = tmp_path / "full", tmp_path / "own"
    own.mkdir()
    python = str(Path(PROGRAM[0]).with_name("python"))
    home = {"HOME": str(own), "TMPDIR": str(own)}
    command = [python, "-c", REFUSED, str(mark), *refused.split(), "--folder", str(folder)]
    with Terminal(command, environment=home) as terminal:
        player = Player(terminal, seed=8)
        player.begin()
        player.play(stop_after=1)
        mark.touch()
        player.play(stop_after=1)
        terminal.settle()
        said = " ".join(terminal.text.split())
        assert f"Not saved yet, because {why}; go on, it is tried again." in said
        if mended:
            mark.unlink()
        player.play(stop_after=1)
        terminal.settle()
        assert ("Not saved" in terminal.text) is not mended
        if mended:
            # Nothing is left to be written at an end.
            terminal.kill()
        else:
            terminal.process.kill(signal.SIGTERM)
            assert terminal.end() == 1
            said = " ".join(terminal.text.split())
            assert f"entries could not be kept, because {why}." in said
            (saved,) = own.glob("*.jsonl")
            assert saved.name in "".join(terminal.text.split())  # a long path is wrapped
            mark.unlink()
            with Terminal(command, environment=home) as again:
                again.wait_for("Go on with today")
                again.kill()
            assert not saved.exists()
    assert len(player.given) == 3
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))
    assert verify(folder) == ()


def test_ctrl_c_in_mid_session_keeps_all_and_closes_the_session(folder: Path) -> None:
    with opened(folder) as terminal:
        player = Player(terminal, seed=11)
        player.begin()
        player.play(stop_after=2)
        terminal.press("\x03")
        assert terminal.end() == 0
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))
    rows = run(PROGRAM, "records", "export", "--folder", str(folder)).splitlines()
    assert json.loads(rows[-1])["reason"] == "stopped"
    assert verify(folder) == ()


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A disk of its own, a quarter of a megabyte, where this user may make one."""
    place = tmp_path / "disk"
    place.mkdir()
    mount, unmount = shutil.which("mount"), shutil.which("umount")
    if mount is None or unmount is None:
        pytest.skip("no program mounts a disk here")
    made = subprocess.run(
        [mount, "-t", "tmpfs", "-o", "size=256k", "tmpfs", str(place)],
        capture_output=True,
        check=False,
    )
    if made.returncode:
        pytest.skip("this user may mount no disk")
    yield place
    subprocess.run([unmount, "--lazy", str(place)], check=True)


def test_a_disk_that_is_truly_full_is_said_and_all_is_written_once_there_is_room(
    small_disk: Path, tmp_path: Path
) -> None:
    folder = small_disk / "practice"
    put_plan_in_force(folder, PROGRAM)
    own = tmp_path / "own"
    own.mkdir()
    ballast = small_disk / "ballast"
    calm = "Not saved yet, because the disk is full; go on, it is tried again."

    def said() -> str:
        terminal.settle()
        return " ".join(terminal.text.split())

    command = [*PROGRAM, "--folder", str(folder)]
    with Terminal(command, environment={"HOME": str(own), "TMPDIR": str(own)}) as terminal:
        player = Player(terminal, seed=12)
        player.begin()
        player.play(stop_after=1)
        with contextlib.suppress(OSError), ballast.open("wb", buffering=0) as file:
            while True:
                file.write(b"x" * 512)
        # The rest of the last block is still the session's own.
        while calm not in said():
            assert len(player.given) < 6
            player.play(stop_after=1)
        player.play(stop_after=1)
        assert calm in said()
        ballast.unlink()
        player.play(stop_after=1)
        assert "Not saved" not in said()
        terminal.kill()
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))
    assert verify(folder) == ()
