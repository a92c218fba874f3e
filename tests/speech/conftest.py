"""The real voice, and nobody to hear it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from drills.speech import start_voice
from drills.speech.voice import ChildVoice
from drills.speech.waves import read_wave

REPOSITORY = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def spoken(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Callable[..., bytes]]:
    """The samples of phrases as they would be heard; one speaking process for all tests."""
    folder = tmp_path_factory.mktemp("spoken")
    workers: dict[str, subprocess.Popen[bytes]] = {}

    def worker(voice: str) -> subprocess.Popen[bytes]:
        if voice not in workers:
            (folder / voice).mkdir()
            workers[voice] = subprocess.Popen(
                [sys.executable, "-m", "drills.speech.worker", voice, str(folder / voice)],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
                stderr=subprocess.DEVNULL,
                cwd=REPOSITORY,
                env={**os.environ, "SPEECH_AUDIO": "none"},
            )
            assert workers[voice].stdout.readline() == b'{"event": "ready", "sound": null}\n'
        return workers[voice]

    def speak(
        *phrases: str, words_per_minute: int = 120, pause_ms: int = 400, voice: str = "en-us"
    ) -> bytes:
        process = worker(voice)
        job = {
            "do": "write",
            "id": 1,
            "phrases": phrases,
            "words_per_minute": words_per_minute,
            "pause_ms": pause_ms,
            "path": str(folder / "spoken.wav"),
        }
        process.stdin.write((json.dumps(job) + "\n").encode())
        process.stdin.flush()
        assert process.stdout.readline() == b'{"event": "done", "id": 1}\n'
        return read_wave(folder / "spoken.wav")

    yield speak
    for process in workers.values():
        process.communicate()


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
