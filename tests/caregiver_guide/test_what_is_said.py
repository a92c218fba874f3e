"""The caregiver guide leaves nothing unsaid: kinds, keys, scores, ticks, signs and what to do."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from scipy.stats import binomtest

from drills.core.gestures import GestureClass, Tick
from drills.core.items import Kind
from drills.exercises import KINDS
from tests.caregiver_guide.reading import FILES, chapter, explained, name, section, sections

every_chapter = pytest.mark.parametrize("file", FILES, ids=name)


@pytest.mark.parametrize("kind", KINDS)
def test_every_kind_of_exercise_is_explained(kind: Kind) -> None:
    assert explained(section("a-session", "The kinds of exercise"), kind.value)


def test_no_kind_is_explained_that_no_plan_can_use() -> None:
    told = section("a-session", "The kinds of exercise")
    assert set(re.findall(r"^- \*\*(.+?)\*\*", told, flags=re.MULTILINE)) == set(KINDS)


@pytest.mark.parametrize(
    ("heading", "phrase"),
    [
        ("Starting", "a sign of a stroke new today?"),
        ("Starting", "asks once more"),
        ("Starting", "no more practice today"),
        ("The end", "a note for the therapist"),
    ],
)
def test_what_the_screens_ask_is_told(heading: str, phrase: str) -> None:
    assert phrase in section("a-session", heading)


def test_the_signs_are_asked_for_before_pain_and_pain_before_tiredness() -> None:
    told = section("a-session", "Starting")
    assert told.index("stroke") < told.index("pain") < told.index("how tired")


def test_a_yes_to_new_signs_is_said_to_end_the_day() -> None:
    assert "ends practice for the day" in section("warning-signs", "What to do")


def test_large_letters_are_promised_for_word_choices_only() -> None:
    told = section("getting-ready", "The screen")
    assert "word choices in large letters" in told
    assert "enlarge the font" in told


@pytest.mark.parametrize("tick", Tick)
def test_every_tick_is_explained(tick: Tick) -> None:
    assert explained(chapter("gestures"), tick.value)


def test_no_tick_is_explained_that_is_not_there() -> None:
    ticks = [
        term
        for part in sections(chapter("gestures"))
        if part.heading.startswith("Ticks")
        for term in re.findall(r"^- \*\*(.+?)\*\*", "\n".join(part.lines), flags=re.MULTILINE)
    ]
    assert sorted(ticks) == sorted(Tick)


@pytest.mark.parametrize("gesture_class", GestureClass)
def test_every_sort_of_gesture_is_explained(gesture_class: GestureClass) -> None:
    assert explained(section("gestures", "The four sorts of gesture"), gesture_class.value)


@pytest.mark.parametrize("score", range(4))
def test_every_score_is_explained(score: int) -> None:
    assert explained(section("gestures", "The score"), str(score))


@pytest.mark.parametrize("key", ["1 2 3 4", "Space", "H", "P", "G", "E", "S"])
def test_every_key_is_explained(key: str) -> None:
    assert explained(section("a-session", "The keys"), key)


@pytest.mark.parametrize(
    "phrase",
    [
        "face",
        "arm or a leg",
        "Speech is worse",
        "understand less",
        "sight",
        "balance",
        "headache",
        "suddenly",
    ],
)
def test_every_new_sign_of_a_stroke_is_named(phrase: str) -> None:
    assert phrase in section("warning-signs", "New signs of a stroke")


@pytest.mark.parametrize(
    ("heading", "phrase"),
    [
        ("What to do", "Call the emergency number now."),
        ("What to do", "number on the card. Your plan holds it."),
        ("What to do", "Note the time."),
        ("What to do", "last well"),
        ("Aphasia can hide a new stroke", "Suddenly worse than usual counts."),
        ("A seizure", "time when it starts"),
        ("A seizure", "Put nothing in the mouth."),
        ("A seizure", "roll them on to their side"),
        ("When a seizure needs the emergency number", "first one ever"),
        ("When a seizure needs the emergency number", "more than five minutes"),
        ("When a seizure needs the emergency number", "comes back"),
        ("When a seizure needs the emergency number", "hurt"),
        ("When a seizure needs the emergency number", "wake up"),
        ("Choking", "no food or drink"),
        ("Choking", "emergency number"),
        ("Check the card today", "therapist"),
    ],
)
def test_what_to_do_in_an_emergency_is_said(heading: str, phrase: str) -> None:
    assert phrase in section("warning-signs", heading)


@pytest.mark.parametrize(
    "thing",
    ["blades", "needles", "razors", "flames", "irons", "hot drinks", "glass", "medicines", "power"],
)
def test_everything_unsafe_is_named_as_never_to_be_used(thing: str) -> None:
    assert thing in section("gestures", "What never to use")


def test_the_example_of_luck_agrees_with_the_binomial() -> None:
    """Seven of twelve is no news with two pictures, ten of twelve is (scipy's exact test)."""
    guessing = section("reading-the-week", "Guessing")
    assert "seven of twelve can be" in guessing
    assert "Ten of twelve is hard" in guessing
    assert binomtest(7, 12, 0.5, alternative="greater").pvalue > 0.05
    assert binomtest(10, 12, 0.5, alternative="greater").pvalue < 0.05


@every_chapter
def test_every_chapter_leaves_the_decision_to_those_whose_it_is(file: Path) -> None:
    assert re.search(r"therapist|care team", file.read_text(encoding="utf-8"))
