from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue.gestures import read_gestures
from drills.core.gestures import Gesture, GestureClass
from drills.core.problems import Problem

WAVE = (
    '[[gesture]]\nkey = "wave"\nclass = "signal"\nname = "wave"\nprompt = "Wave goodbye."\n'
    'hold = "Open your hand."\nright = ["The hand is open."]\ndrawing = "wave"\n'
)


def read(tmp_path: Path, text: str) -> tuple[dict[str, Gesture], list[str]]:
    (tmp_path / "gestures.toml").write_text(text, encoding="utf-8")
    problems: list[Problem] = []
    gestures = read_gestures(tmp_path, problems)
    return gestures, [str(problem).partition("/")[2] for problem in problems]


def test_a_gesture_is_read_whole(tmp_path: Path) -> None:
    gestures, problems = read(tmp_path, WAVE)
    assert not problems
    assert gestures["wave"] == Gesture(
        key="wave",
        gesture_class=GestureClass.SIGNAL,
        name="wave",
        prompt="Wave goodbye.",
        hold="Open your hand.",
        right=("The hand is open.",),
        drawing="wave",
    )
    assert read(tmp_path, WAVE + "still = true\n")[0]["wave"].still


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('"signal"', '"signals"', 'gestures.toml:3: `class` cannot be "signals". Did you mean'),
        ('["The hand is open."]', "[]", "gestures.toml:7: `right` is empty."),
        ('drawing = "wave"\n', "", "gestures.toml:1: `drawing` is missing."),
        ("Wave goodbye.", "Wave goodbye " * 4, "gestures.toml:5: `prompt` has 52 letters."),
        (
            "Open your hand.",
            "Hold the Knife.",
            "gestures.toml:6: `hold` names something unsafe: Knife",
        ),
        (
            '"The hand is open."',
            '"a", "It holds hot water."',
            "gestures.toml:7: `right` names something unsafe",
        ),
        ("hold =", "holds =", "gestures.toml:1: `hold` is missing."),
    ],
)
def test_a_fault_is_noted_at_its_line(old: str, new: str, said: str, tmp_path: Path) -> None:
    _, problems = read(tmp_path, WAVE.replace(old, new))
    assert problems[0].startswith(said)


def test_two_gestures_of_one_key_are_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, WAVE + WAVE)
    assert problems == ["gestures.toml:10: There are two gestures `wave`. Remove one."]


def test_a_key_that_nobody_reads_is_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, WAVE + "nmae = 1\n")
    assert problems == ["gestures.toml:9: There is no setting `nmae` here. Did you mean `name`?"]
