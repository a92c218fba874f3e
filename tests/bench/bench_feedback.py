"""From the key to the painted feedback, beside a Textual app that only changes a label.

Both in a pseudo-terminal of the same run. The program writes each answer to the disk, flushed,
before it says a word; the other app writes nothing.

Run it: python -m pytest tests/bench/bench_feedback.py -s
"""

from __future__ import annotations

import os
import sys
import time
from pathlib import Path
from select import select
from statistics import median

from tests.terminal import Terminal, drills
from tests.whole.player import Player, run

ANSWERS = 240
LIMIT_MS = 50.0
PLAN = """
format = 1
name = "A plan for a benchmark"
version = 1
locale = "en-US"
therapist = ""
note = ""

[sitting]
response_gap_seconds = 0
second_press_ms = 0
rest_seconds = 0

[session_rules]
errors_to_full_help = 0
errors_to_easier = 0
fall_points = 0
slower_times = 0

"""
BLOCK = """
[[block]]
kind = "match"
names = ["active", "subject-cleft", "full-passive", "object-cleft"]
trials = 60
options = 2
"""
LABEL = """
from textual.app import App, ComposeResult
from textual.widgets import Static
class Label(App):
    count = 0
    def compose(self) -> ComposeResult:
        yield Static("ready-to-use")
    def on_key(self) -> None:
        self.count += 1
        self.query_one(Static).update(f"changed<{self.count}>")
Label().run()
"""
CARDS = ("Did someone help", "I am ready", "How tired are you?")
NOT_YET, DONE = b"Not this one", b"Space: go on"


def press_until(terminal: Terminal, key: str, *wanted: bytes) -> float:
    """Milliseconds from the key to one of the texts in what the program writes."""
    fd = terminal.process.fd
    written = bytearray()
    began = time.perf_counter()
    terminal.press(key)
    while not any(text in written for text in wanted):
        ready, _, _ = select([fd], [], [], 10)
        if not ready:
            raise AssertionError(f"nothing came of {key!r}:\n{terminal.text}")
        written += os.read(fd, 65536)
    took = (time.perf_counter() - began) * 1000
    # The screen is read only now: reading it takes time of its own.
    terminal.raw += written
    terminal._stream.feed(bytes(written))
    return took


def ours(folder: Path) -> list[float]:
    """The waits of a session in which option 1 is always tried first."""
    plan = folder / "plan.toml"
    plan.write_text(PLAN + BLOCK * 6)
    home = folder / "home"
    run(drills(), "plan", "use", str(plan), "--folder", str(home))
    took: list[float] = []
    with Terminal(drills("--folder", str(home))) as terminal:
        player = Player(terminal, seed=1)
        player.begin()
        player.play(stop_after=1)
        while len(took) < ANSWERS:
            terminal.wait_for("H help")
            terminal.settle(quiet=0.1)
            took.append(press_until(terminal, "1", NOT_YET, DONE))
            terminal.settle(quiet=0.1)
            if "go on" not in terminal.text:
                took.append(press_until(terminal, "2", DONE))
                terminal.settle(quiet=0.1)
            terminal.press(" ")
            terminal.wait_until(lambda: "" if "go on" in terminal.text else "gone")
            while (seen := terminal.wait_for("H help", *CARDS)) != "H help":
                terminal.settle(quiet=0.1)
                terminal.press("1")
                terminal.wait_until(lambda: "" if seen in terminal.text else "gone")
        terminal.kill()
    return took


def peer() -> list[float]:
    took = []
    with Terminal([sys.executable, "-c", LABEL]) as terminal:
        terminal.wait_for("ready-to-use")
        for number in range(1, ANSWERS + 1):
            terminal.settle(quiet=0.05)
            took.append(press_until(terminal, "x", b"changed", f"<{number}>".encode()))
        terminal.kill()
    return took


def percentile(values: list[float], share: float) -> float:
    """The smallest value that at least `share` of `values` do not exceed."""
    ordered = sorted(values)
    return ordered[max(0, -(-len(ordered) * round(share * 100) // 100) - 1)]


def test_feedback_stands_within_fifty_milliseconds(tmp_path: Path) -> None:
    bare, answers = peer(), ours(tmp_path)
    print()
    for name, took in (("key to feedback", answers), ("bare Textual label", bare)):
        print(
            f"{name}: {len(took)} keys, median {median(took):.1f} ms, "
            f"p95 {percentile(took, 0.95):.1f} ms, p99 {percentile(took, 0.99):.1f} ms, "
            f"most {max(took):.1f} ms"
        )
    ratio = median(answers) / median(bare)
    print(f"limit of the p99: {LIMIT_MS:.0f} ms; ratio of the medians: {ratio:.1f}")
    assert len(answers) >= ANSWERS
    assert percentile(answers, 0.99) <= LIMIT_MS
