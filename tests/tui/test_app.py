"""The program in a real terminal: however it ends, records are closed and the terminal is clean."""

from __future__ import annotations

import os
import signal
import sys
import time
from pathlib import Path

import pytest

from drills.core.records import CloseReason, SessionClosed, latest_trials
from drills.ledger import open_ledger
from tests.terminal import Terminal

# A little longer than a press of the same key must wait to be meant.
SAME_KEY_SECONDS = 0.8

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals")


def command(folder: Path) -> list[str]:
    return [sys.executable, "-m", "drills", "practice", "--folder", str(folder)]


def to_first_trial(terminal: Terminal) -> None:
    check_in = {"Glasses on?": "1", "new today?": "2", "pain now?": "1", "How tired": "1"}
    for question, key in check_in.items():
        terminal.wait_for(question)
        time.sleep(SAME_KEY_SECONDS)
        terminal.press(key)
    terminal.wait_for("hear again   H help")
    time.sleep(SAME_KEY_SECONDS)
    terminal.press("1")
    terminal.wait_for("Yes.", "Not this one.")


@pytest.mark.parametrize("how", ["asked to end", "ctrl+c", "window closed"])
def test_however_it_is_ended_the_session_is_closed_and_the_terminal_clean(
    how: str, tmp_path: Path
) -> None:
    with Terminal(command(tmp_path)) as terminal:
        to_first_trial(terminal)
        if how == "window closed":
            terminal.process.fileobj.close()
            terminal.process.wait()
        else:
            if how == "ctrl+c":
                terminal.press("\x03")
            else:
                os.kill(terminal.pid, signal.SIGTERM)
            assert terminal.end() == 0
            # The alternate screen is left, the cursor shown, the mouse given back.
            for sequence in (b"\x1b[?1049l", b"\x1b[?25h", b"\x1b[?1000l"):
                assert sequence in terminal.raw
            assert b"Traceback" not in terminal.raw
    ledger = open_ledger(tmp_path)
    try:
        entries = ledger.entries()
    finally:
        ledger.close()
    assert isinstance(entries[-1], SessionClosed)
    assert entries[-1].reason is CloseReason.STOPPED
    assert len(latest_trials(entries)) == 1


@pytest.mark.skipif(not Path("/proc/self/task").exists(), reason="threads are counted in /proc")
def test_told_to_go_on_without_a_stop_it_starts_no_second_reader_of_keys(tmp_path: Path) -> None:
    # A closed window sends this signal too, and a second reader might never be told of the end.
    with Terminal(command(tmp_path)) as terminal:
        terminal.wait_for("Glasses on?")
        terminal.settle()
        threads = Path(f"/proc/{terminal.pid}/task")
        before = len(list(threads.iterdir()))
        for _ in range(3):
            os.kill(terminal.pid, signal.SIGCONT)
            terminal.settle()
        assert len(list(threads.iterdir())) == before
        os.kill(terminal.pid, signal.SIGTERM)
        assert terminal.end() == 0


def test_a_terminal_without_colour_shows_grey(tmp_path: Path) -> None:
    with Terminal(command(tmp_path), environment={"NO_COLOR": "1"}) as terminal:
        to_first_trial(terminal)
        assert b"38;2;" in terminal.raw
        for part in terminal.raw.split(b"\x1b[")[1:]:
            numbers = part.partition(b"m")[0].split(b";")
            for at, number in enumerate(numbers):
                if number in (b"38", b"48") and numbers[at + 1 : at + 2] == [b"2"]:
                    assert len({bytes(level) for level in numbers[at + 2 : at + 5]}) == 1
