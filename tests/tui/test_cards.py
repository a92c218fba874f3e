"""The words on cards follow the text rules for patients (clinical brief, section 7)."""

from __future__ import annotations

import re

import pytest

from drills.core.gestures import Tick
from drills.core.items import Kind
from drills.core.records import CloseReason
from drills.practice.steps import CheckIn, Finish, Rest
from drills.tui import cards
from drills.tui.cards import Card

FIXED = [value for value in vars(cards).values() if isinstance(value, Card)]
MADE = [
    *(cards.ready_card(CheckIn(minutes=90, resumed=resumed)) for resumed in (True, False)),
    *(
        cards.rest_card(Rest(done_blocks=10, blocks=12, next_kind=kind, seconds=120))
        for kind in Kind
    ),
    *(
        cards.finish_card(
            Finish(reason=reason, done=done, right_alone=19, right_helped=16),
            emergency_number="911",
        )
        for reason in CloseReason
        for done in (0, 128)
    ),
    cards.rest_card(Rest(done_blocks=0, blocks=2, next_kind=Kind.MATCH, seconds=120, within=True)),
    cards.finish_card(
        Finish(reason=CloseReason.TIRED, done=20, right_alone=10, right_helped=6, by_rule=True),
        emergency_number="911",
    ),
    *(cards.pain_card(emergency_number=number) for number in ("911", "0" * 20)),
]


@pytest.mark.parametrize("card", [*FIXED, *MADE], ids=lambda card: card.lines[0])
def test_cards_are_short_plain_and_calm(card: Card) -> None:
    assert len(card.lines) <= 6
    # Every sign must be on the one card that asks for them.
    assert len(card.lines) + len(card.choices) <= (8 if card is cards.NEW_SIGNS else 6)
    for line in (*card.lines, *card.choices):
        assert len(line) <= 40
        assert "!" not in line
        for sentence in re.split(r"[.?:]", line):
            assert len(sentence.split()) <= 8


def test_only_the_tiredness_scale_has_more_than_four_answers() -> None:
    assert [card for card in FIXED if len(card.choices) > 4] == [cards.TIRED]


def test_every_tick_and_score_has_words_and_no_tick_takes_a_key_that_opens_something() -> None:
    assert set(cards.TICKS) == set(Tick)
    assert set(cards.TICK_LETTERS.values()) == set(Tick)
    assert set(cards.TICK_LETTERS).isdisjoint("eghps0123456789")
    assert set(cards.SCORES) == {0, 1, 2, 3}
