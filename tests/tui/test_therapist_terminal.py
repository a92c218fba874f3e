"""The therapist's part in a real terminal: a changed plan is on disk, one that is left is not."""

from __future__ import annotations

import sys
import time
from pathlib import Path

import pytest

from drills import wiring
from drills.catalogue import plan_text
from drills.ledger import TherapistFiles, plan_path, put_plan_in_force
from tests.terminal import Terminal

# A little longer than a press of the same key must wait to be meant.
SAME_KEY_SECONDS = 0.8
DOWN, ENTER, ESCAPE = "\x1b[B", "\r", "\x1b"

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    put_plan_in_force(tmp_path, plan_text(wiring.starter_plan("en-US")))
    return tmp_path


def opened(folder: Path, *, columns: int = 80, lines: int = 24) -> Terminal:
    command = [sys.executable, "-m", "drills", "--folder", str(folder)]
    return Terminal(command, columns=columns, lines=lines)


def to_minutes(terminal: Terminal) -> None:
    """From the first screen to a shorter session in the plan, by digits and arrows."""
    terminal.wait_for("T therapist")
    time.sleep(SAME_KEY_SECONDS)
    terminal.press("t")
    terminal.wait_for("I am the therapist")
    time.sleep(SAME_KEY_SECONDS)
    terminal.press("2")
    terminal.wait_for("For the therapist")
    terminal.press(DOWN * 3)
    terminal.settle()
    terminal.press(ENTER)
    terminal.wait_for("How much practice.")
    terminal.press("8")
    terminal.wait_for("minutes_per_session: 25")
    terminal.press("1")
    terminal.wait_for("length of one session", "Take this")
    terminal.settle()
    terminal.press("15" + ENTER)
    terminal.wait_for("minutes_per_session: 15   (was 25)")


@pytest.mark.parametrize(("columns", "lines"), [(80, 24), (120, 40)])
def test_a_shorter_session_is_put_in_force_by_keys_alone(
    columns: int, lines: int, folder: Path
) -> None:
    with opened(folder, columns=columns, lines=lines) as terminal:
        to_minutes(terminal)
        terminal.press(ESCAPE)
        terminal.wait_for("Add a block")
        assert "1 change. No fault." in terminal.text
        terminal.press("s")
        terminal.wait_for("after:  15")
        terminal.press("k")
        terminal.wait_for("Your name")
        terminal.settle()
        terminal.press("tires soon" + ENTER)
        terminal.settle()
        terminal.press("Sam" + ENTER)
        terminal.settle()
        terminal.press(ENTER)
        terminal.wait_for("version 2.")
        terminal.press(ESCAPE)
        terminal.wait_for("About 15 minutes.")
        terminal.press("\x03")
        assert terminal.end() == 0
        assert b"Traceback" not in terminal.raw
    plan = wiring.read_plan(plan_path(folder))
    assert (plan.version, plan.dose.minutes_per_session) == (2, 15)
    (decision,) = TherapistFiles(folder).entries()
    assert decision.by == "Sam"


def test_a_power_cut_in_the_middle_of_a_change_leaves_the_plan_and_the_room_opens_again(
    folder: Path,
) -> None:
    before = plan_path(folder).read_bytes()
    with opened(folder) as terminal:
        to_minutes(terminal)
        terminal.kill()
    assert plan_path(folder).read_bytes() == before
    assert not TherapistFiles(folder).entries()
    with opened(folder) as terminal:
        to_minutes(terminal)


def test_a_window_made_too_small_and_large_again_loses_nothing_of_a_change(folder: Path) -> None:
    with opened(folder) as terminal:
        to_minutes(terminal)
        terminal.resize(60, 15)
        terminal.wait_for("A larger window, please.")
        terminal.resize(120, 40)
        terminal.wait_for("minutes_per_session: 15   (was 25)")
        terminal.press(ESCAPE)
        terminal.wait_for("Add a block")
        assert "1 change. No fault." in terminal.text
