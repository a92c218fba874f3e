"""Small fakes for the edges: a clock moved by hand, a voice that only listens."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone

from drills.core.problems import Failure
from drills.core.records import Entry, SessionOpened
from drills.core.utterances import Utterance
from drills.rehearsal import MemoryRecords

MORNING = datetime(2026, 11, 25, 10, 0, tzinfo=timezone(timedelta(hours=-5)))


class HandClock:
    """A clock that moves only when told."""

    def __init__(self, at: datetime = MORNING) -> None:
        self.at = at
        self._start = at

    def now(self) -> datetime:
        return self.at

    def monotonic_ms(self) -> float:
        return (self.at - self._start).total_seconds() * 1000

    def wait(self, seconds: float) -> None:
        self.at += timedelta(seconds=seconds)


class QuietVoice:
    """A voice that keeps what it was asked to say."""

    def __init__(self, state: str = "off") -> None:
        self.state = state
        self.said: list[str] = []

    def say(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        self.said.append(utterance.text)

    def prepare(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        """Nothing to make ready."""

    def is_speaking(self) -> bool:
        return False

    def stop(self) -> None:
        """Nothing sounds."""

    def close(self) -> None:
        """Nothing to close."""


class FullDisk(MemoryRecords):
    """Records that can be kept only while `is_full` is False; held until then, as the port says."""

    def __init__(self) -> None:
        super().__init__()
        self.is_full = False
        self.held: list[Entry] = []

    def open_session(self, opened: SessionOpened) -> None:
        super().open_session(opened)

    def append(self, entry: Entry) -> None:
        self.held.append(entry)
        if self.is_full:
            raise Failure("The disk is full. Answers are held and written when there is room.")
        for held in self.held:
            super().append(held)
        self.held.clear()
