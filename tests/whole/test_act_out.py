"""Sentences acted out in a pseudo-terminal: what was chosen is seen, and was on disk before."""

from __future__ import annotations

from pathlib import Path

import pytest

from drills.core.cells import Cells, Colour, Encoding
from drills.core.kinds import Side
from drills.core.meaning_json import from_json
from drills.core.meanings import Scene
from drills.pictures import frames
from tests.terminal import Terminal
from tests.whole.player import Player, installed, kept_trials, run

PROGRAM = installed()
PLAN = """
format = 1
name = "A plan to act out"
version = 1
locale = "en-US"
therapist = ""
note = ""

[sitting]
response_gap_seconds = 0
second_press_ms = 20
animation = false

[[block]]
kind = "act-out"
names = ["full-passive", "object-cleft"]
trials = 3
options = 2
"""
SHOWN = "You showed this."
# The room for the event in a window of 80 x 24.
COLUMNS, LINES = 39, 15


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    plan = tmp_path / "plan.toml"
    plan.write_text(PLAN, encoding="utf-8")
    run(PROGRAM, "plan", "use", str(plan), "--folder", str(tmp_path / "practice"))
    return tmp_path / "practice"


def opened(folder: Path) -> Terminal:
    return Terminal([*PROGRAM, "--folder", str(folder)])


def doer_and_done_to(terminal: Terminal) -> tuple[str, str]:
    """Read off the screen as a person would: which numbers have the two whom the sentence names."""
    lines = terminal.text.splitlines()
    words = " ".join(lines[1:3]).replace(".", "").split()
    named = [words[1], words[-1]] if "by" in words else [words[3], words[6]]
    # Both kinds of sentence name first the one it is done to.
    under = next(line for line in lines if line.startswith("╰"))
    numbers = sorted(named, key=lambda name: under.index(f" {name} "))
    done_to, doer = (str(numbers.index(name) + 1) for name in named)
    return doer, done_to


def build(terminal: Terminal, first: str, second: str) -> None:
    terminal.press(first)
    terminal.wait_for("Who is it done to?")
    terminal.settle()
    terminal.press(second)


def last_trial(folder: Path) -> dict:
    return kept_trials(folder, PROGRAM)[-1]


def hexed(colour: Colour) -> str:
    return bytes(colour).hex()


def shows(terminal: Terminal, cells: Cells) -> bool:
    """Whether this very picture stands somewhere on the screen, colours and all."""
    wanted = [
        [(cell.character, hexed(cell.ink), hexed(cell.paper)) for cell in row] for row in cells.rows
    ]
    screen = terminal.cells
    return any(
        all(screen[y + row][x : x + cells.columns] == wanted[row] for row in range(cells.lines))
        for y in range(len(screen) - cells.lines + 1)
        for x in range(len(screen[0]) - cells.columns + 1)
        if screen[y][x] == wanted[0][0]
    )


def picture_of(option: dict) -> Cells:
    """The first picture of the movement, which stands for it where nothing moves."""
    scene = Scene(meaning=from_json(option["meaning"]), side=Side(option["side"]))
    return frames(scene, columns=COLUMNS, lines=LINES, encoding=Encoding.BLOCKS)[0]


def test_the_picture_performs_what_was_chosen_right_or_wrong(folder: Path) -> None:
    with opened(folder) as terminal:
        Player(terminal, seed=1).check_in()
        doer, done_to = doer_and_done_to(terminal)
        for cast, verdict in (((done_to, doer), "Not this one."), ((doer, done_to), "Yes.")):
            build(terminal, *cast)
            terminal.wait_for(SHOWN)
            attempts = last_trial(folder)["attempts"]
            assert attempts[-1]["right"] == (verdict == "Yes.")
            options = last_trial(folder)["asked"]["options"]
            chosen = attempts[-1]["choice"]
            terminal.wait_until(
                lambda: "seen" if shows(terminal, picture_of(options[chosen])) else "",  # noqa: B023
                what="the event that was chosen",
            )
            assert not shows(terminal, picture_of(options[1 - chosen]))
            assert options[chosen]["text"] in terminal.text
            terminal.wait_for(verdict)
            terminal.settle()
        assert [each["right"] for each in last_trial(folder)["attempts"]] == [False, True]


@pytest.mark.parametrize("is_right", [True, False])
def test_the_answer_is_on_disk_when_the_event_is_first_seen(folder: Path, is_right: bool) -> None:
    with opened(folder) as terminal:
        Player(terminal, seed=1).check_in()
        doer, done_to = doer_and_done_to(terminal)
        build(terminal, *((doer, done_to) if is_right else (done_to, doer)))
        terminal.wait_for(SHOWN)
        terminal.kill()
    (trial,) = kept_trials(folder, PROGRAM)
    assert [attempt["right"] for attempt in trial["attempts"]] == [is_right]


def test_quitting_with_one_in_place_loses_no_trial_and_asks_it_again(folder: Path) -> None:
    with opened(folder) as terminal:
        Player(terminal, seed=1).check_in()
        sentence = terminal.text.splitlines()[1]
        terminal.press("1")
        terminal.wait_for("Who is it done to?")
        terminal.press("\x11")  # Ctrl+Q
        assert terminal.end() == 0
    assert kept_trials(folder, PROGRAM) == []
    with opened(folder) as terminal:
        Player(terminal, seed=1).check_in(choice="Go on")
        assert terminal.text.splitlines()[1] == sentence
        done = 0
        while done < 3:
            doer, done_to = doer_and_done_to(terminal)
            build(terminal, doer, done_to)
            terminal.wait_for("Yes.")
            done += 1
            terminal.settle()
            terminal.press(" ")
            if done < 3:
                # The question is painted before the figures are; numbers count from the moment
                # that help is offered.
                terminal.wait_for("H help")
        terminal.wait_for("Today's practice is done.")
        terminal.kill()
    trials = kept_trials(folder, PROGRAM)
    assert [trial["attempts"][0]["right"] for trial in trials] == [True, True, True]
    digest = run(PROGRAM, "digest", "--folder", str(folder))
    assert "act it out" in digest
