from __future__ import annotations

from pathlib import Path

import pytest

from drills.core.problems import Failure
from drills.core.utterances import Utterance
from drills.speech import synthesis, synthesise_to, try_voice
from drills.speech.waves import read_wave, seconds_of

SHORT = Utterance(phrases=("Sit down.",))
LONG = Utterance(phrases=("The nurse", "was pushed", "by the man."))


def test_what_would_be_heard_can_be_kept_in_a_file(tmp_path: Path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    synthesise_to(Path("said.wav"), LONG, words_per_minute=160, pause_ms=1000)
    assert 3.0 < seconds_of(read_wave(tmp_path / "said.wav")) < 6.0
    with pytest.raises(Failure, match="No such file"):
        synthesise_to(tmp_path / "none" / "x.wav", LONG, words_per_minute=160, pause_ms=0)


@pytest.mark.parametrize(
    "body", ["raise ImportError('not for this machine')", "import os; os._exit(1)"]
)
def test_without_a_voice_there_is_a_plain_failure(body: str, tmp_path: Path, monkeypatch) -> None:
    (tmp_path / "espeakng_loader.py").write_text(body)
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    with pytest.raises(Failure, match=r"no voice on this machine \((not for|it ended)"):
        synthesise_to(tmp_path / "x.wav", SHORT, words_per_minute=120, pause_ms=0)
    assert not (tmp_path / "x.wav").exists()


def test_a_machine_that_can_speak_says_how(monkeypatch) -> None:
    monkeypatch.setenv("SPEECH_AUDIO", "null")
    assert try_voice(voice="en-gb") == "en-gb by espeak-ng, heard by way of Null"


def test_a_machine_that_cannot_speak_says_what_is_missing(tmp_path: Path, monkeypatch) -> None:
    monkeypatch.setenv("SPEECH_AUDIO", "none")
    with pytest.raises(Failure, match="no sound device; plug in"):
        try_voice()
    (tmp_path / "espeakng_loader.py").write_text("raise ImportError('not for this machine')")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    with pytest.raises(Failure, match=r"no voice .*not for this machine.*espeakng-loader"):
        try_voice()


def test_a_voice_that_hangs_is_not_waited_for_for_ever(tmp_path: Path, monkeypatch) -> None:
    (tmp_path / "espeakng_loader.py").write_text("import time; time.sleep(60)")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    monkeypatch.setattr(synthesis, "_PATIENCE_SECONDS", 1.0)
    with pytest.raises(Failure, match="no voice"):
        try_voice()
