from __future__ import annotations

import sys
from pathlib import Path
from threading import Event

import pytest

from drills.speech.players import CommandPlayer, DevicePlayer, open_player
from drills.speech.waves import read_wave, silence


def command(tmp_path: Path, body: str) -> str:
    path = tmp_path / "player"
    path.write_text(f"#!{sys.executable}\nimport shutil, sys, time\n{body}\n")
    path.chmod(0o700)
    return str(path)


@pytest.mark.skipif(sys.platform == "win32", reason="scripts with a first line")
def test_the_systems_player_is_given_the_sound_and_its_end_is_told(tmp_path: Path) -> None:
    copy = tmp_path / "copy.wav"
    player = CommandPlayer(command(tmp_path, f"shutil.copy(sys.argv[1], {str(copy)!r})"), tmp_path)
    told, results = Event(), []
    player.play(silence(100), lambda heard: (results.append(heard), told.set()))
    assert told.wait(5)
    assert results == [True]
    assert read_wave(copy) == silence(100)


@pytest.mark.skipif(sys.platform == "win32", reason="scripts with a first line")
def test_a_player_that_refuses_is_told_as_no_sound(tmp_path: Path) -> None:
    player = CommandPlayer(command(tmp_path, "sys.exit(1)"), tmp_path)
    told, results = Event(), []
    player.play(silence(100), lambda heard: (results.append(heard), told.set()))
    assert told.wait(5)
    assert results == [False]


@pytest.mark.skipif(sys.platform == "win32", reason="scripts with a first line")
def test_a_stopped_player_ends_at_once_and_tells_nothing(tmp_path: Path) -> None:
    player = CommandPlayer(command(tmp_path, "time.sleep(30)"), tmp_path)
    results: list[bool] = []
    player.play(silence(100), results.append)
    playing = player._playing
    assert playing is not None
    player.stop()
    assert playing.wait(5) != 0
    assert results == []


def test_a_device_can_rest_and_play_again(tmp_path: Path) -> None:
    player = open_player(tmp_path, audio="null")
    assert isinstance(player, DevicePlayer)
    for _ in range(2):
        told = Event()
        player.play(silence(100), lambda heard, told=told: told.set())
        player.rest()  # not while it plays
        assert told.wait(5)
        player.rest()


def test_a_machine_may_have_no_sound(tmp_path: Path) -> None:
    assert open_player(tmp_path, audio="none") is None
