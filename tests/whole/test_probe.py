"""A check in a pseudo-terminal: no help, no feedback, kept at once, gone on with."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.terminal import Terminal
from tests.whole.player import Player, installed, kept_trials, run

PROGRAM = installed()
PLAN = """
format = 1
name = "A plan with checks"
version = 1
locale = "en-US"
therapist = ""
note = ""

[sitting]
response_gap_seconds = 0
second_press_ms = 20
animation = false

[probes]
on = true

[[block]]
kind = "match"
names = ["full-passive"]
trials = 3
"""
FEEDBACK = ("Yes.", "Not this one", "Look again", "This one", "the answer", "alone", "with help")


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    plan = tmp_path / "plan.toml"
    plan.write_text(PLAN, encoding="utf-8")
    run(PROGRAM, "plan", "use", str(plan), "--folder", str(tmp_path / "practice"))
    return tmp_path / "practice"


def check_in(terminal: Terminal) -> None:
    cards = {
        "Glasses on?": "1",
        "Do you have pain now?": "1",
        "Is one of these new today?": "2",
        "How tired are you?": "1",
    }
    while (seen := terminal.wait_for(*cards, "Which picture fits?")) in cards:
        Player(terminal, seed=1)._press_and_wait(cards[seen], seen)
    terminal.wait_for("Space hear again")
    terminal.settle()


def answer(terminal: Terminal, key: str) -> None:
    terminal.press(key)
    terminal.wait_for("Thank you.")
    terminal.wait_for("Space go on")
    terminal.settle()
    assert [word for word in FEEDBACK if word in terminal.text] == []
    terminal.press(" ")
    terminal.wait_until(
        lambda: "gone" if "Space hear again" in terminal.text else "", what="the next sentence"
    )
    terminal.settle()


def test_a_check_says_only_thank_you_and_goes_on_after_leaving(folder: Path) -> None:
    with Terminal([*PROGRAM, "--folder", str(folder)]) as terminal:
        terminal.wait_for("Helper: a check is due.")
        terminal.settle()
        terminal.press("c")
        terminal.wait_for("A check.")
        check_in(terminal)
        assert "Helper: please do not help or nod." in terminal.text
        assert "H help" not in terminal.text
        sentences = [terminal.text.splitlines()[1]]
        terminal.press("h")
        terminal.settle()
        assert "This is a check, without help." in terminal.text
        terminal.press(" ")
        terminal.wait_until(
            lambda: "gone" if "Space hear again" not in terminal.text else "",
            what="the one replay to be used",
        )
        terminal.settle()
        terminal.press("1")
        terminal.wait_for("Thank you.")
        (kept,) = kept_trials(folder, PROGRAM)
        assert kept["asked"]["set"] == "probe"
        assert kept["attempts"][0]["replays"] == 1
        terminal.wait_for("Space go on")
        terminal.settle()
        assert [word for word in FEEDBACK if word in terminal.text] == []
        terminal.press(" ")
        terminal.wait_for("2 of 20")
        terminal.wait_for("Space hear again")
        terminal.settle()
        for key in "212":
            sentences.append(terminal.text.splitlines()[1])
            answer(terminal, key)
        fifth = terminal.text.splitlines()[1]
        terminal.press("\x11")  # Ctrl+Q
        assert terminal.end() == 0
    trials = kept_trials(folder, PROGRAM)
    assert len(trials) == 4
    assert all(len(trial["attempts"]) == 1 and trial["ended"] for trial in trials)
    # Right and wrong both came, and the screen never said which.
    assert {trial["attempts"][0]["right"] for trial in trials} <= {True, False}
    with Terminal([*PROGRAM, "probe", "--folder", str(folder)]) as terminal:
        check_in(terminal)
        assert "5 of 20" in terminal.text
        assert terminal.text.splitlines()[1] == fifth
        assert fifth not in sentences
        answer(terminal, "1")
        terminal.press("p")
        terminal.wait_for("Stop for today")
        terminal.settle()
        terminal.press("3")
        terminal.wait_for("We stop here today.")
        terminal.settle()
        assert [word for word in FEEDBACK if word in terminal.text] == [], terminal.text
        terminal.kill()
    assert len(kept_trials(folder, PROGRAM)) == 5


def test_a_list_is_printed_and_the_same_each_time(folder: Path) -> None:
    lists = [
        run(PROGRAM, "items", "--set", "probe", "--list", letter, "--folder", str(folder))
        for letter in ("A", "A", "B")
    ]
    assert lists[0] == lists[1] != lists[2]
    sentences = [
        {line.strip() for line in each.splitlines() if line.startswith("  The ")} for each in lists
    ]
    assert sentences[0] == sentences[2]
    assert len(sentences[0]) == 20
