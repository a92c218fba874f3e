"""Where options stand, read from a pseudo-terminal: all of it in the left part where the plan asks.

Whoever does not see the right side needs nothing there (Rowe et al. 2013, Biomed Res Int 719096,
on how often that is; that options belong in the left two thirds is common practice).
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.terminal import Terminal
from tests.whole.player import Player, installed, run

PROGRAM = installed()
PLAN = """
format = 1
name = "A plan for a test"
version = 1
locale = "en-US"
therapist = ""
note = ""

[sitting]
response_gap_seconds = 0
second_press_ms = 20
layout = "{layout}"
animation = false

[[block]]
kind = "{kind}"
names = ["{name}"]
trials = 4
options = {options}
"""
LOW, HIGH = (80, 24), (120, 40)
TWO, FOUR, WORDS = ("match", "full-passive", 2), ("match", "full-passive", 4), ("cloze", "C3", 2)


def shown(
    folder: Path, layout: str, asked: tuple[str, str, int], size: tuple[int, int]
) -> list[str]:
    """The lines of the second trial, but for the line of keys."""
    kind, name, options = asked
    plan = folder / "plan.toml"
    plan.write_text(PLAN.format(layout=layout, kind=kind, name=name, options=options))
    home = folder / "home"
    run(PROGRAM, "plan", "use", str(plan), "--folder", str(home))
    command = [*PROGRAM, "--folder", str(home)]
    with Terminal(command, columns=size[0], lines=size[1]) as terminal:
        player = Player(terminal, seed=1)
        player.begin()
        player.play(stop_after=1)
        terminal.wait_for("hear again")
        terminal.settle()
        lines = [line.ljust(size[0]) for line in terminal.text.split("\n")][: size[1] - 1]
        terminal.kill()
    return lines


def frames(lines: list[str]) -> dict[str, tuple[int, int]]:
    """Where each option's frame begins: its line and column, by its number."""
    return {
        number: (row, line.index(f"╭─ {number} ─"))
        for row, line in enumerate(lines)
        for number in "1234"
        if f"╭─ {number} ─" in line
    }


@pytest.mark.parametrize(("asked", "size"), [(TWO, LOW), (FOUR, LOW), (WORDS, LOW), (FOUR, HIGH)])
def test_in_the_left_layout_all_stands_in_the_left_two_thirds(
    asked: tuple[str, str, int], size: tuple[int, int], tmp_path: Path
) -> None:
    lines = shown(tmp_path, "left", asked, size)
    assert len(frames(lines)) == asked[2]
    edge = size[0] * 2 // 3
    assert [line for line in lines if line[edge:].strip()] == []
    # A picture is there, and not only its frame.
    assert sum(character in "▀▄█▌▐▖▗▘▝▚▞▁▂▃▅▆▇▉▊▋▍▎▏" for line in lines for character in line) > 60


def test_stacked_pictures_stand_one_under_the_other(tmp_path: Path) -> None:
    two = frames(shown(tmp_path, "stacked", TWO, LOW))
    assert two["1"][1] == two["2"][1]
    assert two["1"][0] < two["2"][0]
