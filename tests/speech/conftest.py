"""The real voice, and nobody to hear it."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from drills.core.words import Utterance
from drills.speech import start_voice, synthesise_to
from drills.speech.voice import ChildVoice
from drills.speech.waves import read_wave


@pytest.fixture
def spoken(tmp_path: Path) -> Callable[..., bytes]:
    """The samples of phrases as they would be heard."""

    def speak(
        *phrases: str, words_per_minute: int = 120, pause_ms: int = 400, voice: str = "en-us"
    ) -> bytes:
        path = tmp_path / "spoken.wav"
        synthesise_to(
            path,
            Utterance(phrases=phrases),
            words_per_minute=words_per_minute,
            pause_ms=pause_ms,
            voice=voice,
        )
        return read_wave(path)

    return speak


@pytest.fixture
def voice(monkeypatch: pytest.MonkeyPatch) -> Iterator[ChildVoice]:
    """Plays in real time, to nobody."""
    monkeypatch.setenv("SPEECH_AUDIO", "null")
    started = start_voice()
    assert isinstance(started, ChildVoice)
    yield started
    started.close()


def _wait(condition: Callable[[], object], seconds: float = 8.0) -> float:
    begun = time.monotonic()
    while not condition():
        assert time.monotonic() < begun + seconds, "waited too long"
        time.sleep(0.005)
    return time.monotonic() - begun


@pytest.fixture(scope="session")
def wait() -> Callable[..., float]:
    """Waits until something holds; how long it took, in seconds."""
    return _wait
