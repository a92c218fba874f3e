"""The voice as the program has it: never waited for, and none the worse when it dies."""

from __future__ import annotations

import json
import shutil
import subprocess
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path
from queue import Empty, Queue
from threading import Lock, Thread
from typing import TYPE_CHECKING, Any

from drills.speech.child import (
    NO_DEVICE,
    NO_VOICE,
    close_pipes,
    kill_child,
    line_of,
    sentence,
    start_child,
)

if TYPE_CHECKING:
    from drills.core.ports import Voice
    from drills.core.utterances import Utterance

OFF = "off"
STARTING = "starting"
READY = "ready"
GAVE_UP = "the voice has stopped working"

_RESTARTS = 3
_START_SECONDS = 10.0
_ANSWER_SECONDS = 6.0
_OVERRUN_SECONDS = 2.0
_TICK_SECONDS = 0.2
_MOST_PREPARED = 16


def start_voice(*, voice: str = "en-us", on: bool = True, log: Path | None = None) -> Voice:
    """A voice that gets ready in the background; `on=False` gives one that stays silent.

    voice: "en-us" or "en-gb".   log: takes what the sound libraries print; None drops it.
    """
    return ChildVoice(voice, log=log) if on else SilentVoice()


class SilentVoice:
    """Says nothing, by wish."""

    state = OFF

    def say(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        """Nothing is said."""

    def prepare(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        """Nothing is made ready."""

    def is_speaking(self) -> bool:
        return False

    def stop(self) -> None:
        """Nothing is being said."""

    def close(self) -> None:
        """Nothing is open."""


@dataclass(slots=True)
class _Saying:
    """What is being said. deadline: on the monotonic clock; past it the child is given up."""

    job: dict[str, Any]
    deadline: float
    has_started: bool = False


class ChildVoice:
    """Speaks through a child process; one thread here looks after it.

    The child is started again after it died or hung, three times at the most. A sentence that had
    not come to its end is then said again.
    """

    def __init__(self, voice: str, *, log: Path | None = None) -> None:
        self._voice = voice
        self._log = log
        self._lock = Lock()
        self._state = STARTING
        self._saying: _Saying | None = None
        self._number = 0
        self._prepared = 0
        self._is_closed = False
        self._child: subprocess.Popen[bytes] | None = None
        # Commands from this side, events from the child's reader; None: look at what has changed.
        self._inbox: Queue[tuple[object, dict[str, Any] | None]] = Queue()
        self._thread = Thread(target=self._look_after, name="voice", daemon=True)
        self._thread.start()

    @property
    def state(self) -> str:
        return self._state

    def say(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        if not utterance.text.strip():
            self.stop()
            return
        with self._lock:
            if self._is_over():
                return
            self._number += 1
            job = sentence("say", self._number, utterance, words_per_minute, pause_ms)
            allowed = _ANSWER_SECONDS if self._state == READY else _START_SECONDS
            self._saying = _Saying(job, time.monotonic() + allowed)
            self._inbox.put((self, job))

    def prepare(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        with self._lock:
            # Only a help: a child that is slow to answer is not buried in them.
            if self._is_over() or self._prepared >= _MOST_PREPARED or not utterance.text.strip():
                return
            self._prepared += 1
            self._number += 1
            job = sentence("prepare", self._number, utterance, words_per_minute, pause_ms)
            self._inbox.put((self, job))

    def is_speaking(self) -> bool:
        """From the moment of `say` until the last sound has been heard."""
        return self._saying is not None

    def stop(self) -> None:
        with self._lock:
            self._saying = None
            if not self._is_over():
                self._inbox.put((self, {"do": "stop"}))

    def close(self) -> None:
        with self._lock:
            if self._is_closed:
                return
            self._is_closed = True
            self._saying = None
            self._state = OFF
            if self._child is not None:
                kill_child(self._child)
        self._inbox.put((self, None))
        self._thread.join(timeout=2)

    def _is_over(self) -> bool:
        return self._is_closed or self._state not in (READY, STARTING)

    def _look_after(self) -> None:
        for _ in range(1 + _RESTARTS):
            scratch = Path(tempfile.mkdtemp(prefix="drills-voice-"))
            try:
                child = start_child(self._voice, scratch, log=self._log)
            except OSError:
                self._finish(NO_VOICE)
                return
            with self._lock:
                self._child, self._prepared = child, 0
                if self._is_closed:
                    kill_child(child)
            reader = Thread(target=self._read, args=(child,), name="voice reader", daemon=True)
            reader.start()
            self._serve(child)
            with self._lock:
                kill_child(child)
                self._child = None
            child.wait()
            reader.join()
            close_pipes(child)
            shutil.rmtree(scratch, ignore_errors=True)
            if self._is_over():
                return
        self._finish(GAVE_UP if self._state == READY else NO_VOICE)

    def _finish(self, state: str) -> None:
        with self._lock:
            if not self._is_closed:
                self._state = state
            self._saying = None

    def _read(self, child: subprocess.Popen[bytes]) -> None:
        assert child.stdout is not None  # noqa: S101  (a pipe)
        for line in child.stdout:
            self._inbox.put((child, json.loads(line)))
        self._inbox.put((child, None))

    def _serve(self, child: subprocess.Popen[bytes]) -> None:
        """Pass words on until the child dies, hangs, can do nothing, or is no longer wanted."""
        is_ready = False
        ready_by = time.monotonic() + _START_SECONDS
        waiting: list[dict[str, Any]] = []
        if self._saying is not None:
            waiting.append(self._saying.job)
        while not self._is_over():
            try:
                source, message = self._inbox.get(timeout=_TICK_SECONDS)
            except Empty:
                source, message = self, {}
            if source is child:
                if message is None:
                    return
                is_ready = self._heard(message) or is_ready
            elif source is self and message:
                waiting.append(message)
            if is_ready and waiting and not self._pass_on(child, waiting):
                return
            if time.monotonic() > ready_by and not is_ready:
                return
            if is_ready and self._is_overdue():
                return

    def _pass_on(self, child: subprocess.Popen[bytes], waiting: list[dict[str, Any]]) -> bool:
        assert child.stdin is not None  # noqa: S101  (a pipe)
        try:
            child.stdin.write(b"".join(line_of(job) for job in waiting))
            child.stdin.flush()
        except OSError:
            return False
        waiting.clear()
        return True

    def _heard(self, event: dict[str, Any]) -> bool:
        """Take in an event of the child; True when it says that it is ready."""
        kind = event["event"]
        if kind == "no voice":
            self._finish(NO_VOICE)
        elif kind == "no sound" or (kind == "ready" and event["sound"] is None):
            self._finish(NO_DEVICE)
        elif kind == "ready":
            with self._lock:
                if not self._is_closed:
                    self._state = READY
                if self._saying is not None:
                    self._saying.deadline = time.monotonic() + _ANSWER_SECONDS
            return True
        elif kind == "started":
            with self._lock:
                if self._saying is not None and self._saying.job["id"] == event["id"]:
                    length = event["seconds"] + _OVERRUN_SECONDS
                    self._saying.deadline = time.monotonic() + length
                    self._saying.has_started = True
        else:
            with self._lock:
                if self._saying is not None and self._saying.job["id"] == event["id"]:
                    self._saying = None
                elif kind in ("done", "failed"):
                    self._prepared = max(self._prepared - 1, 0)
        return False

    def _is_overdue(self) -> bool:
        with self._lock:
            if self._saying is None or time.monotonic() < self._saying.deadline:
                return False
            # It has sounded, or its device has gone: to say it again would help nobody.
            if self._saying.has_started:
                self._saying = None
            return True
