"""The speaking process alone, spoken to as the program speaks to it."""

from __future__ import annotations

import json
import os
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from drills.speech.worker import is_speakable, spoken_forms

REPOSITORY = Path(__file__).parents[2]


class Talk:
    def __init__(self, process: subprocess.Popen[bytes]) -> None:
        self.process = process

    def tell(self, **job: object) -> None:
        assert self.process.stdin is not None
        sentence = {"phrases": ["Sit", "down."], "words_per_minute": 160, "pause_ms": 100}
        self.process.stdin.write((json.dumps(sentence | job) + "\n").encode())
        self.process.stdin.flush()

    def hear(self) -> dict[str, object]:
        assert self.process.stdout is not None
        return json.loads(self.process.stdout.readline())


@pytest.fixture
def talk(tmp_path: Path) -> Iterator[Talk]:
    (tmp_path / "scratch").mkdir()
    with subprocess.Popen(
        [sys.executable, "-m", "drills.speech.worker", "en-us", str(tmp_path / "scratch")],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=REPOSITORY,
        env={**os.environ, "SPEECH_AUDIO": "null"},
    ) as process:
        talk = Talk(process)
        assert talk.hear() == {"event": "ready", "sound": "Null"}
        yield talk
        process.kill()


def test_what_is_said_starts_at_once_and_ends_when_it_has_been_heard(talk: Talk) -> None:
    begun = time.monotonic()
    talk.tell(do="say", id=1)
    started = talk.hear()
    assert time.monotonic() - begun < 0.5
    assert (started["event"], started["id"]) == ("started", 1)
    assert talk.hear() == {"event": "ended", "id": 1}
    length = time.monotonic() - begun
    assert float(str(started["seconds"])) <= length <= float(str(started["seconds"])) + 0.6


def test_after_a_stop_nothing_ends_and_the_next_is_said(talk: Talk) -> None:
    talk.tell(do="say", id=1)
    assert talk.hear()["event"] == "started"
    talk.tell(do="stop")
    talk.tell(do="say", id=2)
    assert talk.hear()["id"] == 2
    assert talk.hear() == {"event": "ended", "id": 2}


def test_a_say_that_was_stopped_before_it_sounded_is_never_heard(talk: Talk) -> None:
    for number in range(20):
        talk.tell(do="say", id=number, phrases=[f"Say {number}."])
    talk.tell(do="stop")
    talk.tell(do="prepare", id=99)
    events = [talk.hear()]
    while events[-1]["event"] != "done":
        events.append(talk.hear())
    # Long enough for any of them to come to its end.
    time.sleep(1.5)
    talk.tell(do="write", id=100, path=os.devnull)
    while events[-1] != {"event": "done", "id": 100}:
        events.append(talk.hear())
    assert "ended" not in {event["event"] for event in events}


def test_a_sentence_that_fails_does_not_end_the_voice(talk: Talk) -> None:
    talk.tell(do="write", id=1, path="/no/such/folder/x.wav")
    assert talk.hear()["event"] == "failed"
    talk.tell(do="say", id=2, pause_ms="wrong")
    assert talk.hear()["event"] == "failed"
    talk.tell(do="prepare", id=3)
    assert talk.hear() == {"event": "done", "id": 3}


def test_the_end_of_its_input_ends_it_and_clears_up(talk: Talk, tmp_path: Path) -> None:
    talk.tell(do="say", id=1)
    assert talk.hear()["event"] == "started"
    out, errors = talk.process.communicate()
    assert talk.process.returncode == 0
    assert (out, errors) == (b"", b"")
    assert not (tmp_path / "scratch").exists()


def test_a_phrase_within_a_sentence_keeps_the_voice_up() -> None:
    assert spoken_forms(["The man", "who fell,", "is wet."]) == ["The man,", "who fell,", "is wet."]


def test_a_blank_is_not_given_to_the_voice() -> None:
    assert not is_speakable("____.")
    assert is_speakable("the ____ man")
