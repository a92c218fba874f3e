"""Speech without a session: to a file, and to see what this machine can do."""

from __future__ import annotations

import json
import shutil
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from threading import Timer
from typing import Any

from drills.core.problems import Failure
from drills.core.utterances import Utterance
from drills.speech.child import (
    NO_DEVICE,
    NO_VOICE,
    close_pipes,
    kill_child,
    line_of,
    sentence,
    start_child,
)

_PATIENCE_SECONDS = 20.0


def synthesise_to(
    path: Path,
    utterance: Utterance,
    *,
    words_per_minute: int,
    pause_ms: int,
    voice: str = "en-us",
) -> None:
    """Write what would be heard to a wave file; needs no sound device, and waits.

    Raises: Failure when this machine has no voice or the file cannot be written.
    """
    job = sentence("write", 1, utterance, words_per_minute, pause_ms)
    job["path"] = str(path.absolute())
    with _child(voice, audio="none") as child:
        assert child.stdin is not None  # noqa: S101  (a pipe)
        # A child that has ended already says why in its events, or says nothing.
        with suppress(BrokenPipeError):
            child.stdin.write(line_of(job))
            child.stdin.flush()
        event = _first(child, "done", "failed")
    if event["event"] == "no voice":
        raise Failure(f"Nothing can be spoken to {path}: {NO_VOICE} ({event['why']}).")
    if event["event"] == "failed":
        raise Failure(f"Nothing can be spoken to {path}: {event['why']}.")


def try_voice(*, voice: str = "en-us") -> str:
    """How this machine speaks, in one clause; the voice is tried, nothing is heard.

    Raises: Failure with what is missing and how to mend it.
    """
    with _child(voice) as child:
        event = _first(child, "ready")
    if event["event"] != "ready":
        raise Failure(
            f"{NO_VOICE} ({event['why']}); install espeakng-loader."
            " Until then the words are shown and not said."
        )
    if event["sound"] is None:
        raise Failure(
            f"{NO_DEVICE}; plug in or turn on a loudspeaker."
            " Until then the words are shown and not said."
        )
    return f"{voice} by espeak-ng, heard by way of {event['sound']}"


@contextmanager
def _child(voice: str, *, audio: str | None = None) -> Iterator[subprocess.Popen[bytes]]:
    scratch = Path(tempfile.mkdtemp(prefix="drills-voice-"))
    child = start_child(voice, scratch, extra={} if audio is None else {"SPEECH_AUDIO": audio})
    # One that hangs is ended, and then its events end too.
    watchdog = Timer(_PATIENCE_SECONDS, kill_child, args=(child,))
    watchdog.start()
    try:
        yield child
    finally:
        watchdog.cancel()
        watchdog.join()
        kill_child(child)
        child.wait()
        close_pipes(child)
        shutil.rmtree(scratch, ignore_errors=True)


def _first(child: subprocess.Popen[bytes], *kinds: str) -> dict[str, Any]:
    """The first event of `kinds`, or the one that says there is no voice."""
    assert child.stdout is not None  # noqa: S101  (a pipe)
    for line in child.stdout:
        event: dict[str, Any] = json.loads(line)
        if event["event"] in (*kinds, "no voice"):
            return event
    return {"event": "no voice", "why": "it ended without a word"}
