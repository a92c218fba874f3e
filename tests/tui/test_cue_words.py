"""Help in writing keeps to the measure of a patient's line."""

from __future__ import annotations

import pytest

from drills.core.items import Kind
from drills.core.material import Material
from drills.tui.cue_words import cue_lines
from drills.tui.layout import LINE_WIDTH
from tests.exercises.batches import make

MOST_LINES = 6


@pytest.mark.parametrize(
    ("kind", "name"),
    [
        (Kind.QUESTION, "who-did-what:object-relative-centre"),
        (Kind.QUESTION, "before-after"),
        (Kind.QUESTION, "comparison"),
        (Kind.QUESTION, "kin:K6"),
        (Kind.QUESTION, "grid"),
        (Kind.ACT_OUT, "dative"),
        (Kind.ACT_OUT, "object-relative-centre"),
    ],
)
def test_no_line_of_help_is_too_long_and_no_word_of_it_is_lost(
    kind: Kind, name: str, material: Material
) -> None:
    for item in make(material, kind, name, count=60):
        for cue in item.cues:
            lines = cue_lines(cue)
            assert len(lines) <= MOST_LINES
            assert all(len(line) <= LINE_WIDTH for line in lines), lines
            said = cue.spoken.text if cue.spoken is not None else cue.text
            if cue.kind.value == "family tree":
                assert " ".join(lines) == said
            else:
                assert " ".join(lines).startswith(" ".join(cue.text.split()))
