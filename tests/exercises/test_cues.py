"""Plain text for patients: at most 8 words a sentence, 40 characters a line, 6 lines.

Source: the measurable text rules of the trade (common practice) as the project keeps them.
"""

from __future__ import annotations

import re

import pytest

from drills.core.items import Cue, CueKind, Item, Kind
from drills.core.material import Material
from drills.exercises.cues import say_text
from tests.exercises.batches import make

KINDS = [Kind.MATCH, Kind.ACT_OUT, Kind.CLOZE, Kind.QUESTION, Kind.GESTURE]
PRACTISED = (CueKind.TEXT, CueKind.ANSWER)
"""These show the sentence that is practised, which has the length that it has."""


def plain_faults(text: str) -> list[str]:
    faults = []
    lines = text.split("\n")
    if len(lines) > 6:
        faults.append("lines")
    faults += [f"long line: {line}" for line in lines if len(line) > 40]
    for sentence in re.split(r"[.?:\n]", text):
        if len(sentence.split()) > 8:
            faults.append(f"long sentence: {sentence}")
    if "!" in text:
        faults.append("shouts")
    return faults


def items_of(kind: Kind, material: Material) -> tuple[Item, ...]:
    return make(material, kind, count=150, options=4)


@pytest.mark.parametrize("kind", KINDS)
def test_prompts_and_help_are_plain(kind: Kind, material: Material) -> None:
    for item in items_of(kind, material):
        assert plain_faults(item.prompt) == []
        for cue in item.cues:
            if cue.kind not in PRACTISED:
                assert plain_faults(cue.text) == [], cue


@pytest.mark.parametrize("kind", KINDS)
def test_all_help_that_is_said_is_said_in_short_phrases(kind: Kind, material: Material) -> None:
    for item in items_of(kind, material):
        for cue in item.cues:
            assert cue.spoken is not None
            assert all(0 < len(phrase.split()) <= 8 for phrase in cue.spoken.phrases)


def test_a_text_is_said_a_sentence_at_a_time() -> None:
    assert say_text("Open your hand. Palm forward.\nNow?").phrases == (
        "Open your hand.",
        "Palm forward.",
        "Now?",
    )


def cue_of(item: Item, kind: CueKind) -> Cue:
    return next(cue for cue in item.cues if cue.kind is kind)


def test_help_repeats_what_was_said_then_slowly_then_stresses_the_small_words(
    material: Material,
) -> None:
    for item in make(material, Kind.MATCH, "full-passive", count=20):
        assert cue_of(item, CueKind.REPLAY).spoken == item.spoken
        assert not cue_of(item, CueKind.REPLAY).slow
        assert cue_of(item, CueKind.SLOW_REPLAY).spoken == item.spoken
        assert cue_of(item, CueKind.SLOW_REPLAY).slow
        text = cue_of(item, CueKind.TEXT).text
        assert text.lower() == item.sentence.lower()
        assert [word for word in text.split() if word.isupper()] == ["THE", "WAS", "BY", "THE"]


def test_the_doer_is_named_without_the_other(material: Material) -> None:
    for item in make(material, Kind.MATCH, "object-cleft", count=40):
        verb, doer, done_to = item.words
        named = cue_of(item, CueKind.NAME_DOER).text
        assert named.startswith(f"The {doer} ")
        assert done_to not in named
        asked = cue_of(item, CueKind.ROLE_QUESTION).text
        assert asked.startswith("Who was ")
        assert asked.endswith(("ing?", "ing someone?", "ing another animal?"))
        assert verb[:3] in asked
