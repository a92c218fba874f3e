"""Sound to the loudspeaker: miniaudio where there is a wheel, else the system's own player.

Runs in the worker's process only: sound libraries write to the terminal from C.
"""

from __future__ import annotations

import importlib
import shutil
import subprocess
import sys
from collections.abc import Callable, Generator
from pathlib import Path
from threading import Lock, Thread, Timer
from typing import Any, Protocol

from drills.speech.waves import (
    BYTES_PER_SAMPLE,
    SAMPLES_PER_SECOND,
    seconds_of,
    write_wave,
)

# True: played to its end; False: the device refused. Not called after `stop`.
Ended = Callable[[bool], None]

_PERIOD_MS = 20
# miniaudio keeps three periods on their way to the loudspeaker.
_HELD_BY_DEVICE = 3 * _PERIOD_MS * SAMPLES_PER_SECOND // 1000
_PLAYERS = ("pw-play", "paplay", "aplay", "afplay")


class Player(Protocol):
    """name: the device or program that is heard."""

    name: str

    def play(self, pcm: bytes, ended: Ended) -> None:
        """Stop what is playing and play this; returns at once."""

    def stop(self) -> None: ...

    def rest(self) -> None:
        """Nothing is to be played for a while."""


def open_player(scratch: Path, *, audio: str = "") -> Player | None:
    """The best player of this machine; None where no sound can be made.

    audio: "null" plays to nobody in real time, "none" finds no device; for tests.
    """
    if audio == "none":
        return None
    try:
        miniaudio = importlib.import_module("miniaudio")
    except ImportError:
        return _system_player(scratch)
    backends = miniaudio.Backend
    if audio == "null":
        wanted = [backends.NULL]
    else:
        # One by one: left to choose, it falls back to playing to nobody, without a word.
        wanted = [each for each in backends if each.name not in ("NULL", "CUSTOM")]
    for backend in wanted:
        try:
            device = miniaudio.PlaybackDevice(
                output_format=miniaudio.SampleFormat.SIGNED16,
                nchannels=1,
                sample_rate=SAMPLES_PER_SECOND,
                buffersize_msec=_PERIOD_MS,
                backends=[backend],
            )
        except miniaudio.MiniaudioError:
            continue
        return DevicePlayer(device)
    return None


def _system_player(scratch: Path) -> Player | None:
    if sys.platform == "win32":
        return WindowsPlayer(scratch)
    found = next((path for name in _PLAYERS if (path := shutil.which(name))), None)
    return None if found is None else CommandPlayer(found, scratch)


class DevicePlayer:
    """Feeds a miniaudio device, which goes on with silence between sounds."""

    def __init__(self, device: Any) -> None:
        self.name: str = device.backend
        self._device = device
        self._lock = Lock()
        self._pcm = b""
        self._at = 0
        self._ended: Ended | None = None
        self._is_running = False

    def play(self, pcm: bytes, ended: Ended) -> None:
        with self._lock:
            self._pcm, self._at, self._ended = pcm, 0, ended
        if not self._is_running:
            frames = self._frames()
            next(frames)
            self._device.start(frames)
            self._is_running = True

    def stop(self) -> None:
        with self._lock:
            self._pcm, self._at, self._ended = b"", 0, None

    def rest(self) -> None:
        with self._lock:
            if self._ended is not None:
                return
        if self._is_running:
            self._device.stop()
            self._is_running = False

    def _frames(self) -> Generator[bytes, int, None]:
        wanted = yield b""
        still = 0
        while True:
            size = wanted * BYTES_PER_SAMPLE
            ended = None
            with self._lock:
                chunk = self._pcm[self._at : self._at + size]
                self._at += len(chunk)
                # The end is when the last piece has been heard, not when it is handed over.
                still = 0 if chunk else still + wanted
                if still > _HELD_BY_DEVICE:
                    ended, self._ended = self._ended, None
            if ended is not None:
                ended(True)
            wanted = yield chunk.ljust(size, b"\0")


class CommandPlayer:
    """Starts the system's player for each sound."""

    def __init__(self, command: str, scratch: Path) -> None:
        self.name = Path(command).name
        self._command = command
        self._wave = scratch / "played.wav"
        self._lock = Lock()
        self._playing: subprocess.Popen[bytes] | None = None

    def play(self, pcm: bytes, ended: Ended) -> None:
        self.stop()
        write_wave(self._wave, pcm)
        playing = subprocess.Popen(  # noqa: S603  (found by its fixed name)
            [self._command, str(self._wave)],
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        with self._lock:
            self._playing = playing
        Thread(target=self._wait, args=(playing, ended), daemon=True).start()

    def _wait(self, playing: subprocess.Popen[bytes], ended: Ended) -> None:
        code = playing.wait()
        with self._lock:
            if self._playing is not playing:
                return
            self._playing = None
        ended(code == 0)

    def stop(self) -> None:
        with self._lock:
            playing, self._playing = self._playing, None
        if playing is not None:
            playing.kill()

    def rest(self) -> None:
        """Nothing is kept open between sounds."""


class WindowsPlayer:
    """Windows' own player; it does not tell when it ends, so the length of the sound does."""

    name = "winsound"

    def __init__(self, scratch: Path) -> None:
        self._winsound: Any = importlib.import_module("winsound")
        self._wave = scratch / "played.wav"
        self._timer: Timer | None = None

    def play(self, pcm: bytes, ended: Ended) -> None:
        self.stop()
        write_wave(self._wave, pcm)
        kind = self._winsound
        try:
            kind.PlaySound(str(self._wave), kind.SND_FILENAME | kind.SND_ASYNC | kind.SND_NODEFAULT)
        except RuntimeError:
            ended(False)
            return
        self._timer = Timer(seconds_of(pcm), ended, args=(True,))
        self._timer.daemon = True
        self._timer.start()

    def stop(self) -> None:
        if self._timer is not None:
            self._timer.cancel()
            self._timer = None
        self._winsound.PlaySound(None, 0)

    def rest(self) -> None:
        """Nothing is kept open between sounds."""
