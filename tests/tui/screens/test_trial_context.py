"""What fixes the word of a cloze, on the smallest window: the line before, calendar, answer."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import Asked
from drills.exercises import make_items
from drills.ledger.rows import asked_in, asked_out
from drills.tui.widgets.picture import Picture
from tests.tui.player import playing

LINE_WIDTH = 40


def plan(level: str, group: str) -> Plan:
    block = BlockPlan(kind=Kind.CLOZE, names=(level,), groups=(group,), trials=1, options=4)
    return Plan(name="Short", version=3, locale="en-US", blocks=(block,))


@pytest.mark.parametrize(
    ("level", "group"),
    [
        ("C6", "he-she-they"),
        ("C6", "it-them"),
        ("C11", "who-what-where-when"),
        ("C12", "before-on-after"),
        ("C14", "by-to-with"),
        ("C7", "because-but-or"),
        ("C13", "about-from-of-to"),
    ],
)
async def test_context_sentence_and_words_stand_in_full_at_80_by_24(
    level: str, group: str, material: Material
) -> None:
    async with playing(material, plan=plan(level, group)) as player:
        await player.begin()
        item = player.ask.item
        context = [line for line in item.context.split("\n") if line]
        assert bool(context) == (level in ("C6", "C11", "C12"))
        # The longest sentence breaks into two lines; each word of it is on one of them.
        await player.until_text(item.sentence.split()[-1])
        lines = [line.strip() for line in player.text.split("\n")]
        for line in context:
            assert line in lines
        shown = " ".join(lines)
        assert item.sentence in shown
        for option in item.options:
            assert option.text in shown.split()
        at = [lines.index(line) for line in context]
        sentence = next(
            number for number, line in enumerate(lines) if line and item.sentence.startswith(line)
        )
        if item.sentence.endswith("?"):
            assert all(number > sentence for number in at)
        else:
            assert all(number < sentence for number in at)
        assert bool(player.app.screen.query(Picture)) == (item.picture is not None)
        await player.until_text("stroke signs")


async def test_the_longest_sentence_leaves_the_words_and_the_keys_on_the_screen(
    material: Material,
) -> None:
    """Twelve words break into two lines of at most forty characters, below two of context."""
    async with playing(material, plan=plan("C5", "an-the")) as player:
        await player.begin()
        item = player.ask.item
        await player.until_text(item.sentence)
        assert all(len(line) <= LINE_WIDTH for line in item.context.split("\n"))


def test_the_record_of_a_trial_keeps_the_context(material: Material) -> None:
    target = Target(kind=Kind.CLOZE, name="C12", group="before-after")
    (item,) = make_items([target], options=2, material=material, rng=Random(1))
    asked = Asked.of(item)
    row = asked_out(asked)
    assert row["context"] == item.context != ""
    assert asked_in(row) == asked
    older = {key: value for key, value in row.items() if key != "context"}
    assert asked_in(older) == replace(asked, context="")
    assert "context" not in asked_out(replace(asked, context=""))
