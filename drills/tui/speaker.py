"""Says one thing after another with a voice that never blocks, and tells when all is said."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from drills.core.plans import SpeechSettings
from drills.core.ports import Voice
from drills.core.utterances import Utterance


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One thing to say, slowly or at the plan's usual pace."""

    utterance: Utterance
    slow: bool = False


class Speaker:
    """A queue of lines over the voice; `tick` is called many times a second by the screen."""

    def __init__(self, voice: Voice, settings: SpeechSettings) -> None:
        self._voice = voice
        self._settings = settings
        self._waiting: list[Line] = []
        self._then: Callable[[], None] | None = None
        self._is_busy = False

    @property
    def is_heard(self) -> bool:
        """Whether the voice takes what is said: one that is starting says it once it can."""
        return self._settings.read_aloud and self._voice.state in ("ready", "starting")

    def say(self, lines: Sequence[Line], then: Callable[[], None] | None = None) -> None:
        """Stop what is being said, say `lines` in turn, then call `then` once."""
        self.stop()
        self._then = then
        self._waiting = list(lines) if self.is_heard else []
        self._next()

    def prepare(self, line: Line) -> None:
        if self.is_heard:
            words_per_minute, pause_ms = self._pace(line)
            self._voice.prepare(
                line.utterance, words_per_minute=words_per_minute, pause_ms=pause_ms
            )

    def stop(self) -> None:
        """Be silent at once; what should have followed does not."""
        self._waiting = []
        self._then = None
        if self._is_busy:
            self._voice.stop()
        self._is_busy = False

    def tick(self) -> None:
        if self._is_busy and not self._voice.is_speaking():
            self._next()

    def _next(self) -> None:
        if self._waiting and self.is_heard:
            line = self._waiting.pop(0)
            words_per_minute, pause_ms = self._pace(line)
            self._is_busy = True
            self._voice.say(line.utterance, words_per_minute=words_per_minute, pause_ms=pause_ms)
            return
        self._waiting = []
        self._is_busy = False
        then, self._then = self._then, None
        if then is not None:
            then()

    def _pace(self, line: Line) -> tuple[int, int]:
        if line.slow:
            return self._settings.slow_words_per_minute, self._settings.slow_pause_ms
        return self._settings.words_per_minute, self._settings.pause_ms
