"""Free text that means harm to a terminal, a page or a spreadsheet, through the whole program."""

from __future__ import annotations

import csv
import json
import subprocess
from datetime import UTC, datetime
from io import StringIO
from pathlib import Path

import pytest

from drills.core.records import CloseReason, Observation, SessionClosed, SessionOpened, Topic
from drills.ledger import open_ledger
from tests.terminal import ROOT, Terminal, drills
from tests.whole.player import PLAN

# The title of the window, a cleared screen, colours, C1 forms, turned text, bells.
ESCAPES = "\x1b]0;pwned\x07\x1b[2J\x1b[31m\x9b31m\x9d0;pwned\x9c\u202edetrevni\x00\x08\x7f"
MARKUP = "[bold red]loud[/bold red] {{7*7}} {% raw %} `x` $(x) %s"
HTML = "<script>alert('pwned')</script><img src=x onerror=alert(1)>&\"'"
FORMULA = '=HYPERLINK("http://example.invalid","x")'
TEXTS = {"escapes": ESCAPES, "markup": MARKUP, "html": HTML, "formula": FORMULA}


def basic_string(text: str) -> str:
    """As TOML writes it: JSON's escapes are TOML's, but for the delete character."""
    return json.dumps(text).replace("\x7f", "\\u007f")


def kept(folder: Path, text: str) -> str:
    """A practice folder whose every free text is `text`, as far as a plan may hold it."""
    folder.mkdir()
    plan = PLAN.replace('therapist = ""', f"therapist = {basic_string(text)}")
    plan = plan.replace('note = ""', f"note = {basic_string(text)}")
    plan = plan.replace('"A short plan for a test"', basic_string(text[:80]))
    (folder / "plan.toml").write_text(plan, encoding="utf-8")
    now = datetime.now(UTC)  # noqa: TID251 - the program looks at today
    ledger = open_ledger(folder, elsewhere=())
    opened = SessionOpened(
        session="s",
        at=now,
        plan_name=text,
        plan_version=1,
        program=text,
        content_hash=text,
        seed=1,
    )
    ledger.open_session(opened)
    for topic in Topic:
        ledger.append(Observation(session="s", at=now, topic=topic, tiredness=2, note=text))
    ledger.append(SessionClosed(session="s", at=now, reason=CloseReason.STOPPED))
    ledger.close()
    return text


def output(folder: Path, *arguments: str) -> str:
    """All that a command says, on both ways out; a refusal is well too, a crash is not."""
    done = subprocess.run(
        drills(*arguments, "--folder", str(folder)),
        cwd=ROOT,
        capture_output=True,
        check=False,
        stdin=subprocess.DEVNULL,
    )
    said = (done.stdout + done.stderr).decode("utf-8")
    assert done.returncode in (0, 2), said
    assert "Traceback" not in said
    return said


COMMANDS = [
    ("plan", "show"),
    ("plan", "check", "{plan}"),
    ("digest",),
    ("digest", "--format", "html"),
    ("digest", "--format", "csv"),
    ("digest", "--format", "json"),
    ("records", "export"),
    ("records", "export", "--format", "csv"),
    ("records", "verify"),
]


@pytest.mark.parametrize("name", TEXTS)
def test_no_command_passes_on_what_a_terminal_page_or_spreadsheet_acts_on(
    tmp_path: Path, name: str
) -> None:
    folder = tmp_path / "practice"
    text = kept(folder, TEXTS[name])
    seen = {}
    for command in COMMANDS:
        arguments = [part.format(plan=folder / "plan.toml") for part in command]
        said = seen[command] = output(folder, *arguments)
        for letter in said:
            assert letter.isprintable() or letter in "\r\n\N{NO-BREAK SPACE}", (command, letter)
    assert "<script>" not in seen["digest", "--format", "html"]
    assert "<img" not in seen["digest", "--format", "html"]
    for command in (("digest", "--format", "csv"), ("records", "export", "--format", "csv")):
        for row in csv.reader(StringIO(seen[command], newline="")):
            for cell in row:
                assert not cell.lstrip().startswith(("=", "@", "+"))
    rows = map(json.loads, seen["records", "export"].splitlines())
    assert {row["note"] for row in rows if row["entry"] == "observation"} == {text}


@pytest.mark.parametrize("name", TEXTS)
def test_no_screen_passes_on_what_a_terminal_acts_on(tmp_path: Path, name: str) -> None:
    folder = tmp_path / "practice"
    kept(folder, TEXTS[name])
    with Terminal(drills("--folder", str(folder))) as terminal:
        seen = terminal.wait_for("This week, for helper", "plan.toml")
        if "plan.toml" not in seen:
            terminal.press("3")
            terminal.wait_until(lambda: "x" if "This week, for helper" not in terminal.text else "")
            terminal.settle()
            if name == "markup":
                assert "[bold red]loud" in terminal.text
            terminal.kill()
    for bad in (b"\x1b]0;pwned", "\x9b31m".encode(), "\u202e".encode()):
        assert bad not in terminal.raw
