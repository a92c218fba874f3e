"""The installed program, played by keys in a pseudo-terminal; then its records and its digest."""

from __future__ import annotations

import json
import signal
from pathlib import Path

import pytest

from tests.terminal import Terminal
from tests.whole.player import (
    RIGHT,
    TRIALS,
    Player,
    assert_all_kept,
    installed,
    kept_trials,
    put_plan_in_force,
    run,
)

PROGRAM = installed()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    place = tmp_path / "practice"
    put_plan_in_force(place, PROGRAM)
    return place


def opened(folder: Path, **how: int) -> Terminal:
    return Terminal([*PROGRAM, "--folder", str(folder)], **how)


@pytest.mark.parametrize(("columns", "lines"), [(80, 24), (120, 40)])
def test_a_whole_session_is_found_in_records_and_digest(
    folder: Path, columns: int, lines: int
) -> None:
    with opened(folder, columns=columns, lines=lines) as terminal:
        player = Player(terminal, seed=columns)
        player.begin()
        player.play()
        player.finish()
        terminal.press("4")
        assert terminal.end() == 0
    assert len(player.given) == TRIALS
    trials = kept_trials(folder, PROGRAM)
    assert len(trials) == TRIALS
    assert all(trial["ended"] for trial in trials)
    assert_all_kept(player.given, trials)

    digest = json.loads(run(PROGRAM, "digest", "--format", "json", "--folder", str(folder)))
    answers = {answer["trial"]: answer for answer in digest["answers"]}
    assert set(answers) == {trial["trial"] for trial in trials}
    for lived, kept in zip(player.given, trials, strict=True):
        answer = answers[kept["trial"]]
        assert answer["sentence"] == kept["asked"]["sentence"]
        if kept["asked"]["kind"] == "gesture":
            assert str(answer["score"]) == lived.keys[0]
        else:
            assert str(answer["first_choice"] + 1) == lived.keys[0]
            assert answer["right"] == (lived.verdicts[0] == RIGHT)
    text = run(PROGRAM, "digest", "--folder", str(folder))
    assert "A short plan for a test" in text
    page = run(PROGRAM, "digest", "--format", "html", "--folder", str(folder))
    assert "A short plan for a test" in page


@pytest.mark.parametrize("stop_after", [1, 4, 8])
def test_a_kill_in_mid_session_loses_no_answer(folder: Path, stop_after: int) -> None:
    with opened(folder) as terminal:
        first = Player(terminal, seed=stop_after)
        first.begin()
        first.play(stop_after=stop_after)
        terminal.kill()
    assert_all_kept(first.given, kept_trials(folder, PROGRAM))

    with opened(folder) as terminal:
        second = Player(terminal, seed=stop_after + 1)
        second.begin(choice="Go on")
        second.play()
        second.finish()
        terminal.press("4")
        assert terminal.end() == 0
    trials = kept_trials(folder, PROGRAM)
    assert len(trials) == TRIALS
    assert_all_kept([*first.given, *second.given], trials)


@pytest.mark.parametrize("sent", [signal.SIGTERM, signal.SIGHUP, signal.SIGINT])
def test_a_closing_window_keeps_all_and_closes_the_session(
    folder: Path, sent: signal.Signals
) -> None:
    with opened(folder) as terminal:
        player = Player(terminal, seed=3)
        player.begin()
        player.play(stop_after=2)
        terminal.process.kill(sent)
        terminal.end()
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))
    rows = run(PROGRAM, "records", "export", "--folder", str(folder)).splitlines()
    assert json.loads(rows[-1])["reason"] == "stopped"


def test_a_second_program_on_one_folder_says_so(folder: Path) -> None:
    with opened(folder) as terminal:
        terminal.wait_for("Start")
        with opened(folder) as other:
            assert "Start" not in other.wait_for("another program") + other.text
        terminal.press("4")
        assert terminal.end() == 0


def test_a_window_made_small_and_large_again_keeps_the_trial(folder: Path) -> None:
    with opened(folder) as terminal:
        player = Player(terminal, seed=9)
        player.begin()
        player.play(stop_after=1)
        terminal.wait_for("H help")
        terminal.settle()
        before = terminal.text
        terminal.resize(40, 10)
        terminal.wait_for("larger")
        terminal.press("1")
        terminal.settle()
        terminal.resize(80, 24)
        terminal.wait_for("H help")
        terminal.wait_until(lambda: "same" if terminal.text == before else "")
        player.play()
        assert len(player.given) == TRIALS
        terminal.kill()
    assert_all_kept(player.given, kept_trials(folder, PROGRAM))
