"""Sound as 16-bit samples in bytes: what of it sounds, and how pieces are joined."""

from __future__ import annotations

import sys
import wave
from array import array
from collections.abc import Sequence
from pathlib import Path

SAMPLES_PER_SECOND = 22_050
BYTES_PER_SAMPLE = 2

# Of 32,768; speech peaks at about 25,000, and a breath of room is kept around what is louder.
_QUIET = 150
_BLOCK = SAMPLES_PER_SECOND // 200
_ROOM_BLOCKS = 2


def seconds_of(pcm: bytes) -> float:
    return len(pcm) / (SAMPLES_PER_SECOND * BYTES_PER_SAMPLE)


def silence(milliseconds: int) -> bytes:
    return bytes(SAMPLES_PER_SECOND * milliseconds // 1000 * BYTES_PER_SAMPLE)


def trimmed(pcm: bytes) -> bytes:
    """`pcm` without the silence at both its ends; empty when nothing in it sounds."""
    loud = [at for at, peak in enumerate(_peaks(pcm)) if peak > _QUIET]
    if not loud:
        return b""
    first = max(loud[0] - _ROOM_BLOCKS, 0) * _BLOCK
    last = (loud[-1] + 1 + _ROOM_BLOCKS) * _BLOCK
    return pcm[first * BYTES_PER_SAMPLE : last * BYTES_PER_SAMPLE]


def joined(phrases: Sequence[bytes], *, pause_ms: int) -> bytes:
    return silence(pause_ms).join(phrases)


def peak_of(pcm: bytes) -> int:
    return max(_peaks(pcm), default=0)


def read_wave(path: Path) -> bytes:
    """The samples of a wave file.   Raises: ValueError when it is not of our form."""
    with wave.open(str(path), "rb") as file:
        form = (file.getnchannels(), file.getsampwidth(), file.getframerate())
        if form != (1, BYTES_PER_SAMPLE, SAMPLES_PER_SECOND):
            raise ValueError(f"{path} holds {form}, not one channel of 16 bits at 22050 Hz")
        return file.readframes(file.getnframes())


def write_wave(path: Path, pcm: bytes) -> None:
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(BYTES_PER_SAMPLE)
        file.setframerate(SAMPLES_PER_SECOND)
        file.writeframes(pcm)


def _peaks(pcm: bytes) -> list[int]:
    """The loudest sample of each 5 ms."""
    samples = array("h", pcm)
    if sys.byteorder == "big":
        samples.byteswap()
    blocks = (samples[at : at + _BLOCK] for at in range(0, len(samples), _BLOCK))
    return [max(abs(max(block)), abs(min(block))) for block in blocks]
