"""Counts by hand: the definitions have no published worked example."""

from __future__ import annotations

from drills.core.gestures import Tick
from drills.core.items import Foil
from drills.measures.errors import by_foil, foil_of, gesture_scores
from tests.measures.made import WAVE, asked, trial


def test_first_responses_are_counted_by_kind_of_foil():
    four = asked(options=4)
    found = by_foil(
        [trial("right", of=four), trial(1, 2, 0, of=four), trial(1, of=four), trial(3, of=four)]
    )
    assert found == {Foil.REVERSAL: 2, Foil.VERB: 0, Foil.NOUN: 1, Foil.WORD: 0}
    assert list(found) == list(Foil)


def test_right_answers_gestures_and_no_answers_have_no_foil():
    assert foil_of(trial("right")) is None
    assert foil_of(trial(0, target=WAVE)) is None
    assert foil_of(trial(skipped=True)) is None


def test_gestures_are_counted_by_score_and_tick():
    found = gesture_scores(
        [
            trial(3, target=WAVE),
            trial(3, target=WAVE),
            trial(2, target=WAVE, ticks=(Tick.GRIP,)),
            trial(0, 3, target=WAVE, ticks=(Tick.GRIP, Tick.PATH)),
            trial(0, target=WAVE, ticks=(Tick.BODY, Tick.PATH)),
            trial("right"),
        ]
    )
    assert found.scores == (1, 0, 1, 2)
    assert (found.of, found.mean, found.hindered) == (4, 2.0, 1)
    assert {tick: n for tick, n in found.ticks.items() if n} == {Tick.GRIP: 2, Tick.PATH: 1}


def test_help_before_the_first_try_is_the_mean_level_of_the_cues():
    found = gesture_scores(
        [
            trial(3, target=WAVE),
            trial(3, target=WAVE, levels=(6,)),
            trial(1, target=WAVE, levels=(3,)),
            trial(0, target=WAVE, levels=(6,), ticks=(Tick.BODY,)),
        ]
    )
    assert (found.of, found.mean_help) == (3, 3.0)


def test_no_gestures_have_no_mean():
    assert gesture_scores([]).mean is None
    assert gesture_scores([]).mean_help is None
