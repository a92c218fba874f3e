from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from drills.core.utterances import Utterance
from drills.speech import start_voice
from drills.speech import voice as voices
from drills.speech.voice import ChildVoice

REPOSITORY = Path(__file__).parents[2]
SHORT = Utterance(phrases=("Sit down.",))
LONG = Utterance(phrases=("The nurse", "was pushed", "by the man."))
PACE = {"words_per_minute": 160, "pause_ms": 200}

posix = pytest.mark.skipif(os.name != "posix", reason="sends signals")


def kill(voice: ChildVoice, number: int = 9) -> int:
    child = voice._child
    assert child is not None
    os.kill(child.pid, number)
    return child.pid


def test_nothing_is_waited_for(voice: ChildVoice, wait) -> None:
    begun = time.monotonic()
    for call in (
        lambda: voice.say(LONG, **PACE),
        lambda: voice.prepare(SHORT, **PACE),
        voice.stop,
        lambda: voice.say(SHORT, **PACE),
    ):
        call()
    assert time.monotonic() - begun < 0.05
    assert voice.is_speaking()
    wait(lambda: voice.state == "ready")
    wait(lambda: not voice.is_speaking())


def test_it_speaks_as_long_as_it_takes_and_stops_at_once(voice: ChildVoice, wait) -> None:
    wait(lambda: voice.state == "ready")
    voice.say(SHORT, **PACE)
    assert 0.3 < wait(lambda: not voice.is_speaking()) < 2
    voice.say(LONG, **PACE)
    time.sleep(0.3)
    assert voice.is_speaking()
    voice.stop()
    assert not voice.is_speaking()


def test_the_end_of_what_was_cut_off_is_not_the_end_of_the_next(voice: ChildVoice, wait) -> None:
    wait(lambda: voice.state == "ready")
    voice.say(SHORT, **PACE)
    time.sleep(0.1)
    voice.say(LONG, **PACE)
    # Told late: it was on its way when the next was asked for.
    voice._heard({"event": "ended", "id": 1})
    assert wait(lambda: not voice.is_speaking()) > 1.5


@posix
def test_a_voice_killed_in_mid_sentence_speaks_again(voice: ChildVoice, wait) -> None:
    wait(lambda: voice.state == "ready")
    voice.say(LONG, **PACE)
    time.sleep(0.4)
    before = kill(voice)
    wait(lambda: voice._child is not None and voice._child.pid != before)
    assert voice.is_speaking()
    # The whole sentence again.
    assert wait(lambda: not voice.is_speaking()) > 1.5
    voice.say(SHORT, **PACE)
    assert wait(lambda: not voice.is_speaking()) > 0.3
    assert voice.state == "ready"


@posix
def test_a_voice_that_hangs_is_started_again(voice: ChildVoice, wait, monkeypatch) -> None:
    wait(lambda: voice.state == "ready")
    monkeypatch.setattr(voices, "_ANSWER_SECONDS", 0.3)
    before = kill(voice, signal.SIGSTOP)
    voice.say(SHORT, **PACE)
    wait(lambda: not voice.is_speaking())
    assert voice._child is not None
    assert voice._child.pid != before


@posix
def test_it_is_started_again_three_times_and_no_more(voice: ChildVoice, wait) -> None:
    pids = set()
    for _ in range(4):
        wait(lambda: voice._child is not None and voice._child.pid not in pids)
        pids.add(kill(voice))
    wait(lambda: voice.state not in ("ready", "starting"))
    assert len(pids) == 4
    voice.say(SHORT, **PACE)
    assert not voice.is_speaking()


def test_without_a_device_it_says_so_and_stays_silent(monkeypatch, wait) -> None:
    monkeypatch.setenv("SPEECH_AUDIO", "none")
    voice = start_voice()
    voice.say(LONG, **PACE)
    wait(lambda: voice.state == "no sound device")
    assert not voice.is_speaking()
    voice.say(SHORT, **PACE)
    assert not voice.is_speaking()
    voice.close()


@pytest.mark.parametrize(
    "loader", ["raise ImportError", "import os; os._exit(1)", "get_data_path = lambda: '/none'"]
)
def test_without_a_voice_it_says_so(loader: str, tmp_path: Path, monkeypatch, wait) -> None:
    (tmp_path / "espeakng_loader.py").write_text(loader)
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    voice = start_voice()
    voice.say(SHORT, **PACE)
    wait(lambda: voice.state == "no voice on this machine")
    assert not voice.is_speaking()
    voice.close()


def test_off_means_off() -> None:
    voice = start_voice(on=False)
    voice.say(SHORT, **PACE)
    assert (voice.state, voice.is_speaking()) == ("off", False)
    voice.close()


def test_closing_ends_the_child_and_leaves_no_file(monkeypatch, tmp_path: Path, wait) -> None:
    monkeypatch.setenv("SPEECH_AUDIO", "null")
    monkeypatch.setenv("TMPDIR", str(tmp_path))
    monkeypatch.setattr("tempfile.tempdir", None)
    voice = start_voice()
    assert isinstance(voice, ChildVoice)
    voice.say(LONG, **PACE)
    wait(lambda: voice.state == "ready")
    child = voice._child
    assert child is not None
    assert list(tmp_path.iterdir())
    begun = time.monotonic()
    voice.close()
    voice.close()
    assert time.monotonic() - begun < 1
    assert child.returncode is not None
    assert voice.state == "off"
    assert list(tmp_path.iterdir()) == []


def test_nothing_to_say_is_silence(voice: ChildVoice, wait) -> None:
    wait(lambda: voice.state == "ready")
    voice.say(Utterance(phrases=()), **PACE)
    assert not voice.is_speaking()
    voice.say(Utterance(phrases=("____.",)), **PACE)
    wait(lambda: not voice.is_speaking())
    assert voice.state == "ready"


PROGRAM = """
import sys, time
from drills.core.utterances import Utterance
from drills.speech import start_voice
voice = start_voice()
while voice.state == "starting":
    time.sleep(0.01)
voice.say(Utterance(phrases=("The nurse", "sat down.")), words_per_minute=120, pause_ms=100)
if len(sys.argv) > 1:
    print(voice._child.pid, flush=True)
    time.sleep(60)
while voice.is_speaking():
    time.sleep(0.01)
print("state:", voice.state)
voice.close()
"""


@posix
@pytest.mark.parametrize(("audio", "state"), [("null", "ready"), ("", None)])
def test_no_foreign_byte_comes_to_the_terminal(audio: str, state: str | None) -> None:
    import ptyprocess  # noqa: PLC0415  (not on Windows)

    # Without a sound device, and that is what most test machines have, ALSA writes many lines.
    process = ptyprocess.PtyProcess.spawn(
        [sys.executable, "-c", PROGRAM],
        cwd=str(REPOSITORY),
        env={**os.environ, "SPEECH_AUDIO": audio},
    )
    out = b""
    try:
        while True:
            out += process.read()
    except EOFError:
        process.close()
    if state is None:
        assert out in (b"state: no sound device\r\n", b"state: ready\r\n")
    else:
        assert out == f"state: {state}\r\n".encode()


@posix
@pytest.mark.parametrize("number", [signal.SIGKILL, signal.SIGTERM, signal.SIGINT])
def test_the_child_does_not_outlive_the_program(number: int, wait) -> None:
    with subprocess.Popen(
        [sys.executable, "-c", PROGRAM, "wait"],
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        cwd=REPOSITORY,
        env={**os.environ, "SPEECH_AUDIO": "null"},
    ) as program:
        assert program.stdout is not None
        child = int(program.stdout.readline())
        assert Path(f"/proc/{child}").exists() or sys.platform != "linux"
        program.send_signal(number)

    def is_gone() -> bool:
        try:
            os.kill(child, 0)
        except ProcessLookupError:
            return True
        # An orphan that has ended may stay in the table until somebody reads its end.
        stat = Path(f"/proc/{child}/stat")
        return sys.platform == "linux" and (not stat.exists() or " Z " in stat.read_text())

    wait(is_gone, 3)
