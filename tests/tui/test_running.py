"""However the program fails, records are closed, the terminal is clean, and one sentence tells."""

from __future__ import annotations

import sys
import time
from datetime import UTC, datetime
from pathlib import Path

import pytest

from drills.core.records import SessionClosed
from drills.ledger import open_ledger
from drills.tui.running import LAST_ERROR, write_account
from tests.terminal import Terminal
from tests.tui.test_app import SAME_KEY_SECONDS, to_first_trial

pytestmark = pytest.mark.skipif(sys.platform == "win32", reason="pseudo-terminals")

# The program with one fault in it, run as the program is run.
FAULTY = """
import sys
from drills.cli.run import run
from drills.tui.screens.asking import AskScreen
from drills.tui.screens.trial import TrialScreen
def fail(*_):
    secret = "what stood in memory"
    raise RuntimeError("a fault of the program")
async def fail_soon(*_):
    fail()
{fault}
sys.exit(run(["practice", "--folder", {folder!r}]))
"""


@pytest.mark.parametrize(
    "fault",
    [
        pytest.param("AskScreen._want_next = fail", id="on a key"),
        pytest.param("TrialScreen.draw_ahead = fail_soon", id="beside the screen"),
    ],
)
def test_a_fault_closes_the_records_and_is_told_in_one_sentence(fault: str, tmp_path: Path) -> None:
    code = FAULTY.format(fault=fault, folder=str(tmp_path))
    with Terminal([sys.executable, "-c", code]) as terminal:
        if "draw_ahead" in fault:
            # It fails as soon as a trial is asked.
            for question, key in {
                "Glasses": "1",
                "new today?": "2",
                "pain": "1",
                "How": "1",
            }.items():
                terminal.wait_for(question)
                time.sleep(SAME_KEY_SECONDS)
                terminal.press(key)
        else:
            to_first_trial(terminal)
            for key in "1212":
                time.sleep(SAME_KEY_SECONDS)
                terminal.press(key)
                terminal.settle()
                if "go on" in terminal.text:
                    break
            time.sleep(SAME_KEY_SECONDS)
            terminal.press(" ")
        assert terminal.end() == 1
        for sequence in (b"\x1b[?1049l", b"\x1b[?25h", b"\x1b[?1000l"):
            assert sequence in terminal.raw
        said = terminal.raw.rpartition(b"\x1b[?1049l")[2].decode()
        assert "The program had to stop. Your answers are kept." in said
        assert f"What happened is written in {tmp_path / LAST_ERROR}." in said.replace("\r\n", "")
        assert "Traceback" not in terminal.raw.decode(errors="replace")
    account = (tmp_path / LAST_ERROR).read_text(encoding="utf-8")
    assert "RuntimeError: a fault of the program" in account
    assert account.count("what stood in memory") == 0
    assert (tmp_path / LAST_ERROR).stat().st_mode & 0o077 == 0
    ledger = open_ledger(tmp_path)
    try:
        entries = ledger.entries()
    finally:
        ledger.close()
    assert isinstance(entries[-1], SessionClosed)


def test_the_account_replaces_the_one_before_and_a_folder_that_is_gone_gives_none(
    tmp_path: Path,
) -> None:
    at = datetime(2026, 11, 25, tzinfo=UTC)
    for text in ("one", "two"):
        place = write_account(ValueError(text), tmp_path, at)
    assert place is not None
    assert "two" in place.read_text(encoding="utf-8")
    assert "one" not in place.read_text(encoding="utf-8")
    assert write_account(ValueError("x"), tmp_path / "gone", at) is None
