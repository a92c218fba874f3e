"""Windows that storm, programs that are suspended, disks that fill: no answer is lost."""

from __future__ import annotations

import os
import signal
import sys
import time
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


# While the mark is there, the disk takes nothing more in the practice folder.
FULL = """
import errno, os, sys
from pathlib import Path
mark, folder = Path(sys.argv.pop(1)), sys.argv[-1]
from drills.ledger import disk
write_all = disk.write_all
def refuse(file, data):
    if mark.exists() and os.readlink(f"/proc/self/fd/{file}").startswith(folder):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))
    write_all(file, data)
disk.write_all = refuse
from drills.__main__ import main
sys.exit(main())
"""


@pytest.mark.skipif(sys.platform != "linux", reason="finds a file by its number")
@pytest.mark.parametrize("mended", [True, False], ids=["for a while", "to the end"])
def test_a_disk_that_fills_is_one_calm_sentence_and_practice_goes_on(
    folder: Path, tmp_path: Path, mended: bool
) -> None:
    mark, own = tmp_path / "full", tmp_path / "own"
    own.mkdir()
    python = str(Path(PROGRAM[0]).with_name("python"))
    home = {"HOME": str(own), "TMPDIR": str(own)}
    command = [python, "-c", FULL, str(mark), "--folder", str(folder)]
    with Terminal(command, environment=home) as terminal:
        player = Player(terminal, seed=8)
        player.begin()
        player.play(stop_after=1)
        mark.touch()
        player.play(stop_after=1)
        terminal.settle()
        said = " ".join(terminal.text.split())
        assert "Not saved yet, because the disk is full; go on, it is tried again." in said
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
            assert "entries could not be kept, because the disk is full." in said
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
