"""A session in a terminal that is killed at a moment of chance, and what must be kept of it."""

from __future__ import annotations

import contextlib
import os
import signal
from dataclasses import dataclass
from pathlib import Path
from random import Random
from threading import Timer

from drills.core.records import Trial, latest_trials
from drills.ledger.names import session_names
from drills.ledger.sessions import read_session
from tests.terminal import Terminal
from tests.whole.player import RIGHT, Given, Player

LONGEST_SECONDS = 7.0
MOST_PRESSES = 40
NEAR_A_PRESS_SECONDS = 0.05


class Watched(Player):
    """Remembers a score only once its feedback was seen."""

    def _gesture(self) -> None:
        super()._gesture()
        self.given[-1].verdicts.append("scored")


@dataclass(frozen=True, slots=True, kw_only=True)
class Killed:
    """seen: trials whose feedback was on the screen.   finished: the kill came too late."""

    seen: int
    kept: int
    torn: bool
    finished: bool


def play_until_killed(program: list[str], folder: Path, *, seed: int) -> Killed:
    """Start the program, go on with today's practice, kill it, and hold the records to the screen.

    Half the kills come at any moment, half within a few hundredths of a second of a key.
    Raises: AssertionError when the program does not start, or an answer that had feedback is lost.
    """
    chance = Random(seed)
    before = set(session_names(folder / "records"))
    terminal = Terminal([*program, "--folder", str(folder)])
    player = Watched(terminal, seed=seed)

    def kill() -> None:
        with contextlib.suppress(ProcessLookupError):
            os.kill(terminal.pid, signal.SIGKILL)

    timers: list[Timer] = []

    def kill_in(seconds: float) -> None:
        timers.append(Timer(seconds, kill))
        timers[-1].start()

    near_a_key = chance.random() < 0.5
    left = chance.randrange(1, MOST_PRESSES)
    press = terminal.press

    def press_and_count(keys: str) -> None:
        nonlocal left
        left -= 1
        if near_a_key and left == 0:
            kill_in(chance.uniform(0, NEAR_A_PRESS_SECONDS))
        press(keys)

    finished = False
    with terminal:
        # The start is the start after the last kill: it must work.
        choice = terminal.wait_for("Go on with today", "Start", seconds=60)
        terminal.press = press_and_count  # type: ignore[method-assign]
        if not near_a_key:
            kill_in(chance.uniform(0, LONGEST_SECONDS))
        try:
            player.begin(choice=choice)
            # The first screen of a day that is done has words of the last card.
            terminal.wait_for("Glasses on?")
            player.play()
            player.finish()
            finished = True
        except (AssertionError, OSError, EOFError):
            # Mostly the kill; a player who reads a screen half painted may lose its place as well,
            # and the kill comes then.
            kill()
        finally:
            for timer in timers:
                timer.cancel()
    new = [name for name in session_names(folder / "records") if name not in before]
    reads = [read_session(folder / "records" / name) for name in new]
    trials = [trial for read in reads for trial in latest_trials(read.entries)]
    seen = [given for given in player.given if given.verdicts]
    for given, trial in zip(seen, trials, strict=False):
        assert_kept(given, trial)
    assert len(trials) >= len(seen)
    return Killed(
        seen=len(seen),
        kept=len(trials),
        torn=any(read.damage for read in reads),
        finished=finished,
    )


def assert_kept(given: Given, trial: Trial) -> None:
    """Each response whose feedback was seen is there, under the sentence that it was for."""
    words = " ".join(given.screen.split())
    for word in trial.asked.sentence.split():
        assert word.strip("_.") in words
    keys = given.keys[: len(given.verdicts)]
    if trial.asked.kind == "gesture":
        assert [str(attempt.score) for attempt in trial.attempts] == keys
        return
    choices = [str((attempt.choice or 0) + 1) for attempt in trial.attempts]
    # A screen that is still being painted may be read as the verdict before; then one key more is
    # pressed, after the end of the trial, and is no answer.
    assert choices[: len(keys)] == keys[: len(choices)]
    assert len(choices) >= len(keys) or trial.ended
    assert RIGHT not in given.verdicts or trial.attempts[-1].right
