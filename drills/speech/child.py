"""The speaking process as its parent starts it, talks to it and ends it."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
from contextlib import suppress
from pathlib import Path
from typing import Any

from drills.core.utterances import Utterance

NO_VOICE = "no voice on this machine"
NO_DEVICE = "no sound device"


def sentence(
    do: str, number: int, utterance: Utterance, words_per_minute: int, pause_ms: int
) -> dict[str, Any]:
    """A command about one utterance; `worker` says what each does."""
    return {
        "do": do,
        "id": number,
        "phrases": list(utterance.phrases),
        "words_per_minute": words_per_minute,
        "pause_ms": pause_ms,
    }


def line_of(job: dict[str, Any]) -> bytes:
    return (json.dumps(job) + "\n").encode()


def start_child(
    voice: str, scratch: Path, *, log: Path | None = None, extra: dict[str, str] | None = None
) -> subprocess.Popen[bytes]:
    """scratch: for its passing files.   log: takes what its libraries print; None drops it."""
    package = str(Path(__file__).parents[2])
    path = os.pathsep.join(filter(None, [package, os.environ.get("PYTHONPATH")]))
    # Windows hands a library only what the environment held when its process began.
    environment = {**os.environ, "PYTHONPATH": path, "ESPEAK_DATA_PATH": ".", **(extra or {})}
    apart: dict[str, Any] = {}
    if sys.platform == "win32":
        apart["creationflags"] = subprocess.CREATE_NO_WINDOW
    else:
        # A group of its own: no Ctrl-C of the terminal's, and its players end with it.
        apart["start_new_session"] = True
    errors = None if log is None else log.open("ab")
    try:
        return subprocess.Popen(  # noqa: S603  (this program itself)
            [sys.executable, "-m", "drills.speech.worker", voice, str(scratch)],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL if errors is None else errors,
            env=environment,
            **apart,
        )
    finally:
        if errors is not None:
            errors.close()


def kill_child(child: subprocess.Popen[bytes]) -> None:
    """End the child and the player it may have started; it must not have been waited for."""
    if sys.platform == "win32":
        child.kill()
    else:
        with suppress(OSError):
            os.killpg(child.pid, signal.SIGKILL)


def close_pipes(child: subprocess.Popen[bytes]) -> None:
    for pipe in (child.stdin, child.stdout):
        # What was still to be written has nobody left to read it.
        with suppress(OSError):
            if pipe is not None:
                pipe.close()
