"""How soon the first usable screen stands, beside an empty Textual app in the same run.

Run it: python -m pytest tests/bench/bench_startup.py -s
"""

from __future__ import annotations

import sys
import time
from pathlib import Path
from statistics import median

from tests.terminal import Terminal, drills

ROUNDS = 9
LIMIT = 1.5
EMPTY = """
from textual.app import App, ComposeResult
from textual.widgets import Static
class Empty(App):
    def compose(self) -> ComposeResult:
        yield Static("ready-to-use")
Empty().run()
"""


def seconds_until(text: str, command: list[str]) -> float:
    began = time.perf_counter()
    with Terminal(command) as terminal:
        # Read in small steps: the time of one step is the error of the figure.
        while text not in terminal.text:
            terminal.read(0.002)
            if time.perf_counter() - began > 30:
                raise AssertionError(terminal.text)
        return time.perf_counter() - began


def test_first_screen_against_an_empty_app(tmp_path: Path) -> None:
    empty, ours = [], []
    commands = {
        "empty": [sys.executable, "-c", EMPTY],
        "ours": drills("--folder", str(tmp_path)),
    }
    seconds_until("ready-to-use", commands["empty"])
    seconds_until("Meet the people", commands["ours"])
    for _ in range(ROUNDS):
        empty.append(seconds_until("ready-to-use", commands["empty"]))
        ours.append(seconds_until("Meet the people", commands["ours"]))
    ratio = median(ours) / median(empty)
    print(
        f"\nfirst usable screen: {median(ours) * 1000:.0f} ms; "
        f"empty Textual app: {median(empty) * 1000:.0f} ms; ratio {ratio:.2f} (limit {LIMIT})"
    )
    assert ratio <= LIMIT
