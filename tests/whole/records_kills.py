"""A session in a terminal that is killed at a moment of chance, and what must be kept of it.

The terminal says that it can hold a frame back until it is whole (DEC private mode 2026, see
https://gist.github.com/christianparpart/d8a62cc1ab659194337d73e399004036), so the program marks
where each frame begins and ends, and a screen is read only between two of them: what is seen was
painted whole, and every feedback that was seen has its response on disk.
"""

from __future__ import annotations

import contextlib
import os
import re
import signal
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from threading import Timer

import pyte

from drills.core.records import Trial, latest_trials
from drills.ledger.names import session_names
from drills.ledger.sessions import SessionRead, read_session
from drills.practice import feedback
from tests.terminal import Terminal
from tests.whole.player import Given, Player

LONGEST_SECONDS = 7.0
MOST_PRESSES = 40
NEAR_A_PRESS_SECONDS = 0.05
IGNORED_AFTER_SECONDS = 3.0
# Above the plan's `second_press_ms`, or the second press would be no answer.
BETWEEN_PRESSES_SECONDS = 0.05

_ASKED, _SUPPORTED = b"\x1b[?2026$p", b"\x1b[?2026;2$y"
_BEGIN, _END = b"\x1b[?2026h", b"\x1b[?2026l"
_PLACE = re.compile(r"Part \d+ of \d+ +\d+ of \d+")
_WRONG = (feedback.NOT_THIS_ONE, feedback.SHOWN)
_OVER = (feedback.RIGHT, feedback.CONFIRMED, feedback.SCORED)


class WholeFrames:
    """Feeds a screen one whole frame after the other; half a frame waits for its end."""

    def __init__(self, stream: pyte.ByteStream, after: Callable[[], None]) -> None:
        self._stream = stream
        self._after = after
        self._waiting = b""

    def feed(self, data: bytes) -> None:
        self._waiting += data
        while (end := self._waiting.find(_END)) != -1:
            frame, self._waiting = self._waiting[:end], self._waiting[end + len(_END) :]
            self._stream.feed(frame)
            self._after()
        # What belongs to no frame: up to where one begins, or may be about to.
        begun = self._waiting.find(_BEGIN)
        loose = self._waiting.rfind(b"\x1b", -len(_BEGIN) + 1) if begun == -1 else begun
        if loose == -1:
            loose = len(self._waiting)
        self._stream.feed(self._waiting[:loose])
        self._waiting = self._waiting[loose:]


class FrameTerminal(Terminal):
    """A terminal that shows whole frames alone, with a person who presses key after key.

    after_frame: called with what then stands.   before_press: called when a key is about to go.
    """

    def __init__(self, command: list[str], after_frame: Callable[[str], None]) -> None:
        super().__init__(command)
        self.frames = 0
        self.before_press: Callable[[], None] = lambda: None
        self._after_frame = after_frame
        self._has_answered = False
        self._stream = WholeFrames(self._stream, self._framed)  # type: ignore[assignment]

    def read(self, seconds: float = 0.05) -> None:
        super().read(seconds)
        if not self._has_answered and _ASKED in self.raw:
            self._has_answered = True
            self.process.write(_SUPPORTED)

    def settle(self, *, quiet: float = 0.03, seconds: float = 10) -> None:
        super().settle(quiet=quiet, seconds=seconds)

    def press(self, keys: str) -> None:
        self.settle(quiet=BETWEEN_PRESSES_SECONDS)
        self.before_press()
        super().press(keys)

    def _framed(self) -> None:
        self.frames += 1
        self._after_frame(self.text)


class Lost(AssertionError):
    """The records do not hold what was seen."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """One feedback on the screen, and the key that it came after."""

    key: str
    over: bool
    right: bool


@dataclass
class Seen:
    """Every feedback of one start, by the place of its trial in the session.

    key: pressed as a response and without feedback so far; empty for none.
    """

    told: dict[str, list[Told]] = field(default_factory=dict)
    key: str = ""
    _verdict: tuple[str, str] = ("", "")
    _help: str = ""

    @property
    def count(self) -> int:
        return sum(len(each) for each in self.told.values())

    def look(self, text: str) -> None:
        """Take in a whole frame: is there a feedback on it that was not there before?"""
        place = _PLACE.search(text)
        if place is None:
            return
        verdict, rest = feedback_on(text)
        before, self._verdict = self._verdict, (place[0], verdict)
        helped, self._help = self._help, rest
        if not verdict or ((place[0], verdict) == before and not self._is_another(helped)):
            return
        self.told.setdefault(place[0], []).append(
            Told(
                key=self.key,
                over=verdict not in _WRONG,
                right=verdict in (feedback.RIGHT, feedback.CONFIRMED),
            )
        )
        self.key = ""

    def _is_another(self, helped: str) -> bool:
        """Whether the same words tell of another wrong response: with it comes another help."""
        return self._verdict[1] == feedback.NOT_THIS_ONE and helped != self._help


def feedback_on(text: str) -> tuple[str, str]:
    """The words of a feedback that stand on a screen, and what stands under them."""
    lines = [line.strip() for line in text.splitlines()]
    for number, line in enumerate(lines):
        for words in (*_WRONG, *_OVER):
            if line.startswith(words):
                return words, " ".join(lines[number:-1]).removeprefix(words)
    return "", ""


class Watched(Player):
    """Presses one key at a time, and the next only when the first has had its feedback."""

    def __init__(self, terminal: FrameTerminal, seen: Seen, *, seed: int) -> None:
        super().__init__(terminal, seed=seed)
        self._seen = seen

    def _choose(self) -> None:
        given = Given(screen=self.terminal.text)
        self.given.append(given)
        while "Space go on" not in self.terminal.text and not self._is_over():
            self._seen.key = self._rng.choice(self._left(given))
            given.keys.append(self._seen.key)
            told = self._seen.count
            self.terminal.press(given.keys[-1])
            self.terminal.wait_until(
                lambda told=told: "told" if self._seen.count > told else "",
                seconds=IGNORED_AFTER_SECONDS,
                what=f"feedback on {given.keys}",
            )
        self.terminal.wait_for("Space go on")
        self._press_and_wait(" ", "Space go on")

    def _left(self, given: Given) -> str:
        """The keys of what can still be chosen: a cue may have taken some away."""

        def left() -> str:
            text = self.terminal.text
            return "".join(key for key in "1234" if f"─ {key} ─" in text and key not in given.keys)

        return self.terminal.wait_until(left, what=f"a choice other than {given.keys}")

    def _is_over(self) -> bool:
        """Whether the trial on the screen has had its last feedback."""
        place = _PLACE.search(self.terminal.text)
        told = [] if place is None else self._seen.told.get(place[0], [])
        return bool(told) and told[-1].over

    def _gesture(self) -> None:
        self.given.append(Given(screen=self.terminal.text))
        self.terminal.press("s")
        self.terminal.wait_for("Right looks like this")
        self.terminal.settle()
        score = self._rng.choice("0123")
        self.terminal.press(score)
        self.terminal.wait_for(f"Score {score}")
        self.terminal.settle()
        self._seen.key = score
        self.terminal.press(" ")
        self.terminal.wait_for("Space go on")
        self._press_and_wait(" ", "Space go on")


@dataclass(frozen=True, slots=True, kw_only=True)
class Killed:
    """told: responses whose feedback was on the screen.   kept: responses on disk.

    finished: the kill came too late.   seconds: from the first screen to the kill.
    """

    told: int
    kept: int
    torn: bool
    finished: bool
    frames: int
    seconds: float


def play_until_killed(program: list[str], folder: Path, *, seed: int) -> Killed:
    """Start the program, go on with today's practice, kill it, and hold the records to the screen.

    Half the kills come at any moment, half within a few hundredths of a second of a key.
    Raises: Lost; AssertionError when the program does not start or the player loses its place.
    """
    chance = Random(seed)
    before = set(session_names(folder / "records"))
    seen = Seen()
    terminal = FrameTerminal([*program, "--folder", str(folder)], seen.look)
    player = Watched(terminal, seen, seed=seed)
    killed_at: list[float] = []

    def kill() -> None:
        killed_at.append(time.monotonic())
        with contextlib.suppress(ProcessLookupError):
            os.kill(terminal.pid, signal.SIGKILL)

    timers: list[Timer] = []

    def kill_in(seconds: float) -> None:
        timers.append(Timer(seconds, kill))
        timers[-1].start()

    near_a_key = chance.random() < 0.5
    left = chance.randrange(1, MOST_PRESSES)

    def count_down() -> None:
        nonlocal left
        left -= 1
        if near_a_key and left == 0:
            kill_in(chance.uniform(0, NEAR_A_PRESS_SECONDS))

    finished = False
    with terminal:
        # The start is the start after the last kill: it must work.
        choice = terminal.wait_for("Go on with today", "Start", seconds=60)
        began = time.monotonic()
        terminal.before_press = count_down
        if not near_a_key:
            kill_in(chance.uniform(0, LONGEST_SECONDS))
        try:
            player.begin(choice=choice)
            # The first screen of a day that is done has words of the last card.
            terminal.wait_for("Glasses on?")
            player.play()
            player.finish()
            finished = True
            kill()
        except (AssertionError, OSError, EOFError):
            # The kill, and nothing else: a player who has lost its place proves nothing.
            if not killed_at:
                raise
            terminal.read(0.2)  # what the program still wrote, the person still saw
        finally:
            for timer in timers:
                timer.cancel()
    new = [name for name in session_names(folder / "records") if name not in before]
    reads = [read_session(folder / "records" / name) for name in new]
    try:
        kept = hold_to(seen, reads)
    except AssertionError as error:
        raise Lost(f"{folder}, seed {seed}: {error}") from error
    return Killed(
        told=seen.count,
        kept=kept,
        torn=any(read.damage for read in reads),
        finished=finished,
        frames=terminal.frames,
        seconds=killed_at[0] - began,
    )


def hold_to(seen: Seen, reads: list[SessionRead]) -> int:
    """Hold the records of one start to what was seen; how many responses they keep.

    Each feedback has its response, in order and under its key; nothing is kept beyond that but one
    response whose feedback the kill may have come before.
    """
    trials = [trial for read in reads for trial in latest_trials(read.entries) if trial.attempts]
    told = list(seen.told.values())
    assert len(trials) - len(told) in (0, 1), f"{len(told)} trials had feedback: {trials}"
    beyond = 0
    for number, trial in enumerate(trials):
        mine = told[number] if number < len(told) else []
        keys = keys_of(trial)
        assert keys[: len(mine)] == [each.key for each in mine], (keys, mine)
        for attempt, each in zip(trial.attempts, mine, strict=False):
            if trial.asked.kind != "gesture":
                assert attempt.right is each.right
        if mine and mine[-1].over:
            assert trial.ended
        beyond += len(keys) - len(mine)
        if keys[len(mine) :]:
            assert keys[len(mine) :] == [seen.key], (keys, mine)
            assert trial is trials[-1]
    assert beyond in (0, 1)
    return sum(len(trial.attempts) for trial in trials)


def keys_of(trial: Trial) -> list[str]:
    """The keys that were pressed for the responses of a trial."""
    if trial.asked.kind == "gesture":
        return [str(attempt.score) for attempt in trial.attempts]
    return [str((attempt.choice or 0) + 1) for attempt in trial.attempts]
