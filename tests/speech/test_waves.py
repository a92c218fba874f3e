from __future__ import annotations

import math
import wave
from array import array
from pathlib import Path

import pytest

from drills.speech.waves import (
    joined,
    peak_of,
    read_wave,
    seconds_of,
    silence,
    trimmed,
    write_wave,
)


def tone(seconds: float, peak: int = 20_000) -> bytes:
    count = round(22_050 * seconds)
    return array("h", (round(peak * math.sin(0.06 * at)) for at in range(count))).tobytes()


def test_silence_at_the_ends_goes_and_a_little_room_stays() -> None:
    sound = tone(0.5)
    cut = trimmed(silence(300) + sound + silence(100) + sound + silence(700))
    assert 1.1 <= seconds_of(cut) <= 1.13
    assert peak_of(cut) == peak_of(sound)


@pytest.mark.parametrize("nothing", [b"", silence(500), tone(0.5, peak=100)])
def test_what_does_not_sound_is_empty(nothing: bytes) -> None:
    assert trimmed(nothing) == b""


def test_phrases_are_joined_by_exactly_the_pause() -> None:
    pieces = joined([tone(0.2), tone(0.3)], pause_ms=400)
    assert seconds_of(pieces) == pytest.approx(0.9, abs=1e-4)
    assert joined([tone(0.2)], pause_ms=400) == tone(0.2)


def test_a_wave_file_is_what_the_standard_library_reads(tmp_path: Path) -> None:
    write_wave(tmp_path / "a.wav", tone(0.1))
    with wave.open(str(tmp_path / "a.wav")) as file:
        assert file.getparams()[:4] == (1, 2, 22_050, 2205)
    assert read_wave(tmp_path / "a.wav") == tone(0.1)
    with wave.open(str(tmp_path / "b.wav"), "wb") as file:
        file.setnchannels(2)
        file.setsampwidth(2)
        file.setframerate(44_100)
    with pytest.raises(ValueError, match="not one channel"):
        read_wave(tmp_path / "b.wav")
