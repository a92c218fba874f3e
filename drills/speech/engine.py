"""The voice itself: text -> sound, by pyttsx3 over the espeak-ng library of a wheel.

Runs in the worker's process only: a library that finds no data ends its whole process.
pyttsx3 2.99 is used in the one way that proved sure: `save_to_file`, one text at a time, on the
thread that made the engine, and each sound is looked at before it is believed.
"""

from __future__ import annotations

import ctypes
import importlib
import os
from pathlib import Path
from typing import Any
from unittest.mock import patch

from drills.speech.pace import Pace
from drills.speech.waves import peak_of, read_wave, seconds_of, trimmed

# Names by which espeak-ng knows its voices; its name for British English is plain "en".
VOICES = {"en-us": "gmw/en-us", "en-gb": "gmw/en"}

_WORD_GAP = 7  # espeak-ng's number for the parameter; unit 10 ms
_TRIES = 3
_LEAST_PEAK = 3_000
_LEAST_SECONDS_PER_WORD = 0.06


class NoVoiceError(Exception):
    """The voice cannot be had on this machine."""


class Engine:
    """scratch: an absolute folder for the passing wave file."""

    def __init__(self, voice: str, scratch: Path) -> None:
        self._wave = scratch / "spoken.wav"
        try:
            self._engine, self._library = _loaded()
            name = VOICES[voice]
            self._engine.setProperty("voice", name)
            if self._engine.getProperty("voice") != name:
                raise NoVoiceError(f"no voice {voice}")
        except (ImportError, OSError, RuntimeError, KeyError, ValueError) as error:
            raise NoVoiceError(str(error)) from error

    def spoken(self, text: str, pace: Pace) -> bytes:
        """The samples of `text`, from its first sound to its last.

        Raises: NoVoiceError when nothing sounds, tried again and again.
        """
        # Now and then espeak says that it is done and gives nothing.
        for _ in range(_TRIES):
            pcm = self._once(text, pace)
            words = len(text.split())
            if peak_of(pcm) > _LEAST_PEAK and seconds_of(pcm) > words * _LEAST_SECONDS_PER_WORD:
                return pcm
        raise NoVoiceError("the voice gives no sound")

    def _once(self, text: str, pace: Pace) -> bytes:
        self._wave.unlink(missing_ok=True)
        self._engine.setProperty("rate", pace.rate)
        self._library.SetParameter(_WORD_GAP, pace.word_gap, 0)
        self._engine.save_to_file(text, str(self._wave))
        self._engine.runAndWait()
        try:
            return trimmed(read_wave(self._wave))
        except (OSError, EOFError, ValueError):
            return b""


def _loaded() -> tuple[Any, Any]:
    """pyttsx3's engine and its binding, both on the library that came as a wheel."""
    loader = importlib.import_module("espeakng_loader")
    data = Path(loader.get_data_path())
    if not (data / "phontab").is_file():
        raise NoVoiceError(f"{data} holds no voice data")
    # espeak-ng cuts a long path off and then ends the process; a dot is never too long.
    os.chdir(data.parent)
    os.environ["ESPEAK_DATA_PATH"] = "."
    library = ctypes.CDLL(loader.get_library_path())

    def wheel_first(_: object, name: str) -> ctypes.CDLL:
        return library if "espeak" in name.lower() else ctypes.CDLL(name)

    with patch.object(type(ctypes.cdll), "LoadLibrary", wheel_first):
        pyttsx3 = importlib.import_module("pyttsx3")
        binding = importlib.import_module("pyttsx3.drivers._espeak")
    engine = pyttsx3.init("espeak")
    # The driver cancels a synthesis that its own thread has already begun anew.
    engine.proxy._driver.stop = lambda: None
    # Else the first call comes back at once, with no file.
    engine.proxy.setBusy(False)
    return engine, binding
