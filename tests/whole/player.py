"""A person at the keys: reads the screen, presses what it asks for, and remembers."""

from __future__ import annotations

import json
import subprocess
from dataclasses import dataclass, field
from pathlib import Path
from random import Random

from tests.terminal import ROOT, Terminal, drills

PLAN = """
format = 1
name = "A short plan for a test"
version = 5
locale = "en-US"
therapist = ""
note = ""

[sitting]
response_gap_seconds = 0
second_press_ms = 20
animation = false

[[block]]
kind = "match"
names = ["active", "full-passive", "locative"]
trials = 3
options = 2

[[block]]
kind = "cloze"
names = ["C3", "C4"]
trials = 2
options = 2

[[block]]
kind = "question"
names = ["who-did-what"]
trials = 2
options = 2

[[block]]
kind = "match"
names = ["subject-cleft", "object-cleft"]
trials = 2
options = 4

[[block]]
kind = "gesture"
names = ["wave", "brush-teeth"]
trials = 2
"""
TRIALS = 11


def run(program: list[str], *arguments: str) -> str:
    """What a command prints.   Raises: CalledProcessError."""
    return subprocess.run(
        [*program, *arguments], cwd=ROOT, capture_output=True, text=True, check=True
    ).stdout


def put_plan_in_force(folder: Path, program: list[str]) -> None:
    plan = folder.parent / f"{folder.name}-plan.toml"
    plan.write_text(PLAN, encoding="utf-8")
    run(program, "plan", "use", str(plan), "--folder", str(folder))


@dataclass
class Given:
    """One trial as the player lived it: the keys pressed, and what the screen said."""

    screen: str
    keys: list[str] = field(default_factory=list)
    verdicts: list[str] = field(default_factory=list)


# What stands on the screen, in the order in which it is looked for.
RIGHT, WRONG, SHOWN = "Yes.", "Look again.", "Here is the answer."
_CARDS = {
    "I am ready": "1",
    "Glasses on?": "1",
    "Do you have pain now?": "1",
    "Is one of these new today?": "2",
    "a note for the therapist?": "1",
    "How tired are you?": "1",
    "Did someone help": "1",
    "Did a gesture hurt?": "1",
}


class Player:
    """Plays at `terminal`; chance decides what is chosen first."""

    def __init__(self, terminal: Terminal, *, seed: int) -> None:
        self.terminal = terminal
        self.given: list[Given] = []
        self._rng = Random(seed)

    def begin(self, *, choice: str = "Start") -> None:
        """From the first screen into the session, up to the first trial."""
        self.terminal.wait_for(choice)
        line = next(line for line in self.terminal.text.splitlines() if choice in line)
        self.terminal.press(line.split()[0])

    def check_in(self, *, choice: str = "Start") -> None:
        """From the first screen through the cards, until a first trial waits for its answer."""
        self.begin(choice=choice)
        while (seen := self.terminal.wait_for(*_CARDS, "H help")) in _CARDS:
            self._press_and_wait(_CARDS[seen], seen)
        self.terminal.settle()

    def play(self, *, stop_after: int | None = None) -> None:
        """Answer until the finish card, or until `stop_after` trials have had their feedback."""
        done = 0
        while True:
            seen = self.terminal.wait_for(
                *_CARDS, "Today's practice is done.", "S score", "H help", "Space go on"
            )
            if seen == "Today's practice is done.":
                return
            if seen in _CARDS:
                self._press_and_wait(_CARDS[seen], seen)
            elif seen == "S score":
                self._gesture()
                done += 1
            elif seen == "H help":
                self._choose()
                done += 1
            if done == stop_after:
                return

    def finish(self) -> None:
        """From the finish card back to the first screen."""
        self._press_and_wait("1", "Today's practice is done.")
        while True:
            seen = self.terminal.wait_for(*_CARDS, "Meet the people")
            if seen == "Meet the people":
                return
            self._press_and_wait(_CARDS[seen], seen)

    def _press_and_wait(self, key: str, old: str) -> None:
        self.terminal.settle()
        self.terminal.press(key)
        self.terminal.wait_until(
            lambda: "gone" if old not in self.terminal.text else "", what=f"{old!r} to go"
        )

    def _choose(self) -> None:
        self.terminal.settle()
        given = Given(screen=self.terminal.text)
        self.given.append(given)
        keys = ["1", "2", "3", "4"] if " 4 ─" in given.screen else ["1", "2"]
        self._rng.shuffle(keys)
        for key in keys:
            before = self.terminal.text
            self.terminal.press(key)
            self.terminal.read(2)
            self.terminal.settle()
            if self.terminal.text == before:
                continue  # a cue has taken this choice away
            given.keys.append(key)
            if f" {RIGHT}" in self.terminal.text:
                # What is said of an answer is painted first, the keys after it.
                self.terminal.wait_for("Space go on")
                given.verdicts.append(RIGHT)
                break
            assert WRONG in self.terminal.text or SHOWN in self.terminal.text
            given.verdicts.append(WRONG)
        else:
            raise AssertionError(f"no choice was right:\n{self.terminal.text}")
        self._press_and_wait(" ", "Space go on")

    def _gesture(self) -> None:
        self.terminal.settle()
        given = Given(screen=self.terminal.text)
        self.given.append(given)
        self.terminal.press("s")
        self.terminal.wait_for("Right looks like this")
        self.terminal.settle()
        score = self._rng.choice("0123")
        self.terminal.press(score)
        self.terminal.wait_for(f"Score {score}")
        given.keys.append(score)
        self.terminal.settle()
        self.terminal.press(" ")
        self.terminal.wait_for("Space go on")
        self._press_and_wait(" ", "Space go on")


def kept_trials(folder: Path, program: list[str]) -> list[dict]:
    """Each trial as last kept in the practice folder, in order."""
    rows = [
        json.loads(line)
        for line in run(program, "records", "export", "--folder", str(folder)).splitlines()
    ]
    latest = {row["trial"]: row for row in rows if "asked" in row}
    return list(latest.values())


def assert_all_kept(given: list[Given], trials: list[dict]) -> None:
    """Every key that had its feedback is in the records, and under the sentence it was for."""
    assert len(trials) >= len(given)
    for lived, kept in zip(given, trials, strict=False):
        words = " ".join(lived.screen.split())
        for word in kept["asked"]["sentence"].split():
            assert word.strip("_.") in words
        if kept["asked"]["kind"] == "gesture":
            assert [str(attempt["score"]) for attempt in kept["attempts"]] == lived.keys
        else:
            assert [str(attempt["choice"] + 1) for attempt in kept["attempts"]] == lived.keys
            assert [attempt["right"] for attempt in kept["attempts"]] == [
                verdict == RIGHT for verdict in lived.verdicts
            ]


def installed() -> list[str]:
    return drills()
