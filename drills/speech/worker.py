"""The process that speaks: `python -m drills.speech.worker VOICE SCRATCH`.

Commands come as JSON lines on stdin, events go as JSON lines to stdout; the end of stdin ends the
process, so it cannot outlive the program that started it.

    {"do": "say", "id": 7, "phrases": [...], "words_per_minute": 120, "pause_ms": 400}
    {"do": "prepare", "id": 8, ...}    {"do": "write", "id": 9, ..., "path": "x.wav"}
    {"do": "stop"}                     silence at once, also of a `say` that is not yet sounding

    {"event": "ready", "sound": "ALSA"}            null for no device; or, instead,
    {"event": "no voice", "why": "..."}            and the process ends
    {"event": "started", "id": 7, "seconds": 2.1}  then {"event": "ended", "id": 7}
    {"event": "done", "id": 8}                     {"event": "failed", "id": 9, "why": "..."}
    {"event": "no sound", "id": 7}                 the device has gone

The environment's SPEECH_AUDIO is for tests: see `players.open_player`.
"""

from __future__ import annotations

import json
import os
import shutil
import sys
from collections import OrderedDict
from pathlib import Path
from queue import Empty, Queue
from threading import Lock, Thread
from typing import Any

from drills.speech.engine import Engine, NoVoiceError
from drills.speech.pace import pace_for
from drills.speech.players import Player, open_player
from drills.speech.waves import joined, seconds_of, silence, write_wave

_CACHE_SIZE = 48
_BLANK_MS = 300
_REST_AFTER_SECONDS = 10.0


class Worker:
    def __init__(self, voice: str, scratch: Path, events: int) -> None:
        self._voice = voice
        self._scratch = scratch
        self._events = events
        self._writing = Lock()
        self._jobs: Queue[dict[str, Any]] = Queue()
        # Goes up at each `say` and `stop`; what belongs to an older turn must not sound.
        self._turn = 0
        self._turning = Lock()
        self._player: Player | None = None
        self._cache: OrderedDict[tuple[Any, ...], bytes] = OrderedDict()

    def run(self) -> None:
        # First, so that a program that dies while the voice loads is noticed.
        Thread(target=self._listen, daemon=True).start()
        try:
            engine = Engine(self._voice, self._scratch)
            engine.spoken("Ready.", pace_for(120))
        except NoVoiceError as error:
            self._tell(event="no voice", why=str(error))
            return
        player = open_player(self._scratch, audio=os.environ.get("SPEECH_AUDIO", ""))
        with self._turning:
            self._player = player
        self._tell(event="ready", sound=None if player is None else player.name)
        while True:
            try:
                job = self._jobs.get(timeout=_REST_AFTER_SECONDS)
            except Empty:
                if player is not None:
                    player.rest()
                continue
            try:
                self._do(job, engine)
            except Exception as error:
                # One sentence is lost, not the voice.
                self._tell(event="failed", id=job["id"], why=str(error))

    def _listen(self) -> None:
        for line in sys.stdin.buffer:
            job = json.loads(line)
            if job["do"] in ("say", "stop"):
                with self._turning:
                    self._turn += 1
                    job["turn"] = self._turn
                    if self._player is not None:
                        self._player.stop()
            if job["do"] != "stop":
                self._jobs.put(job)
        with self._turning:
            if self._player is not None:
                self._player.stop()
        shutil.rmtree(self._scratch, ignore_errors=True)
        # The main thread may hang inside a library.
        os._exit(0)

    def _do(self, job: dict[str, Any], engine: Engine) -> None:
        if job["do"] == "say" and job["turn"] != self._turn:
            return
        pcm = self._sound(job, engine)
        if job["do"] == "prepare":
            self._tell(event="done", id=job["id"])
        elif job["do"] == "write":
            write_wave(Path(job["path"]), pcm)
            self._tell(event="done", id=job["id"])
        elif job["do"] == "say":
            self._say(job, pcm)

    def _sound(self, job: dict[str, Any], engine: Engine) -> bytes:
        key = (*job["phrases"], job["words_per_minute"], job["pause_ms"])
        if key in self._cache:
            self._cache.move_to_end(key)
            return self._cache[key]
        pace = pace_for(job["words_per_minute"])
        phrases = [
            engine.spoken(text, pace) if is_speakable(text) else silence(_BLANK_MS)
            for text in spoken_forms(job["phrases"])
        ]
        self._cache[key] = joined(phrases, pause_ms=job["pause_ms"])
        if len(self._cache) > _CACHE_SIZE:
            self._cache.popitem(last=False)
        return self._cache[key]

    def _say(self, job: dict[str, Any], pcm: bytes) -> None:
        with self._turning:
            if job["turn"] != self._turn:
                return
            if self._player is None:
                self._tell(event="no sound", id=job["id"])
                return
            self._tell(event="started", id=job["id"], seconds=round(seconds_of(pcm), 3))
            try:
                self._player.play(pcm, lambda heard: self._ended(job["id"], heard=heard))
            except Exception:
                self._tell(event="no sound", id=job["id"])

    def _ended(self, number: int, *, heard: bool) -> None:
        self._tell(event="ended" if heard else "no sound", id=number)

    def _tell(self, **event: Any) -> None:
        line = (json.dumps(event) + "\n").encode()
        with self._writing:
            os.write(self._events, line)


def is_speakable(text: str) -> bool:
    """A blank to be filled in has no sound."""
    return any(character.isalnum() for character in text)


def spoken_forms(phrases: list[str]) -> list[str]:
    """Each phrase as it is given to the voice; one that is not the last keeps its voice up."""
    *before, last = phrases
    return [text if text[-1:] in ",;:.?" else text + "," for text in before] + [last]


def main() -> None:
    voice, scratch = sys.argv[1], Path(sys.argv[2])
    # Libraries print; what they print must not be taken for events.
    events = os.dup(1)
    quiet = os.open(os.devnull, os.O_WRONLY)
    os.dup2(quiet, 1)
    os.close(quiet)
    Worker(voice, scratch, events).run()


if __name__ == "__main__":
    main()
