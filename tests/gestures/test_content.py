"""What content says of each gesture, and the drawing that shows it."""

import re
import tomllib
from pathlib import Path

import pytest

import drills
from drills.core.gestures import Gesture, GestureClass
from drills.gestures import KEYS, frame_seconds, frames
from drills.pictures.cells import Encoding

FILE = Path(drills.__file__).parent.parent / "content" / "gestures.toml"
ENTRIES = tomllib.loads(FILE.read_text(encoding="utf-8"))["gesture"]
GESTURES = [
    Gesture(
        gesture_class=GestureClass(entry["class"]),
        right=tuple(entry["right"]),
        **{name: entry[name] for name in entry if name not in {"class", "right"}},
    )
    for entry in ENTRIES
]
# Safety list of the clinical brief: nothing sharp, hot or breakable, no food or drink to swallow.
UNSAFE = {
    "blade", "candle", "cigarette", "flame", "glass", "hot", "iron", "knife", "lighter", "match",
    "medicine", "needle", "razor", "saw", "scissors", "straw", "swallow",
}  # fmt: skip


def sentences(text: str) -> list[str]:
    return [part for part in re.split(r"[.?:]\s*", text) if part]


def grade(text: str) -> float:
    """Flesch-Kincaid grade (Kincaid 1975, from memory), syllables by groups of vowels."""
    words = re.findall(r"[A-Za-z']+", text.lower())
    syllables = sum(
        max(1, len(re.findall(r"[aeiouy]+", re.sub(r"(?<![lr])e\b|es\b", "", word))))
        for word in words
    )
    return 0.39 * len(words) / len(sentences(text)) + 11.8 * syllables / len(words) - 15.59


def test_every_gesture_has_a_drawing_and_every_drawing_a_gesture() -> None:
    assert sorted(gesture.drawing for gesture in GESTURES) == sorted(KEYS)


def test_keys_and_prompts_are_each_used_once() -> None:
    for of in ([g.key for g in GESTURES], [g.prompt for g in GESTURES]):
        assert len(of) == len(set(of))


@pytest.mark.parametrize(
    ("gesture_class", "least"),
    [
        (GestureClass.TOOL, 6),
        (GestureClass.SIGNAL, 5),
        (GestureClass.POSITION, 2),
        (GestureClass.MOUTH, 1),
    ],
)
def test_each_class_has_enough_gestures(gesture_class: GestureClass, least: int) -> None:
    assert sum(gesture.gesture_class is gesture_class for gesture in GESTURES) >= least


@pytest.mark.parametrize("gesture", GESTURES, ids=lambda gesture: gesture.key)
def test_a_still_gesture_has_one_frame_and_a_moving_one_a_loop(gesture: Gesture) -> None:
    count = len(frames(gesture.drawing, columns=10, lines=5, encoding=Encoding.HALVES))
    assert count == 1 if gesture.still else 6 <= count <= 8
    assert 0.2 <= frame_seconds(gesture.drawing) <= 2


@pytest.mark.parametrize("gesture", GESTURES, ids=lambda gesture: gesture.key)
def test_the_patients_text_is_short_and_plain(gesture: Gesture) -> None:
    for text in (gesture.prompt, gesture.hold):
        assert len(text) <= 40
        assert text.endswith(".")
        assert all(len(sentence.split()) <= 8 for sentence in sentences(text))


@pytest.mark.parametrize("gesture", GESTURES, ids=lambda gesture: gesture.key)
def test_the_caregivers_text_is_short_and_plain(gesture: Gesture) -> None:
    for text in gesture.right:
        assert len(text) <= 66
        assert text.endswith(".")
        assert all(len(sentence.split()) <= 15 for sentence in sentences(text))
    assert grade(" ".join(gesture.right)) <= 6


@pytest.mark.parametrize("gesture", GESTURES, ids=lambda gesture: gesture.key)
def test_nothing_is_sharp_hot_or_breakable(gesture: Gesture) -> None:
    text = " ".join((gesture.name, gesture.prompt, gesture.hold, *gesture.right)).lower()
    assert not UNSAFE & set(re.findall(r"[a-z]+", text))


@pytest.mark.parametrize("gesture", GESTURES, ids=lambda gesture: gesture.key)
def test_a_right_performance_is_said_in_several_lines(gesture: Gesture) -> None:
    assert 3 <= len(gesture.right) <= 4
    assert all("\n" not in line for line in gesture.right)
