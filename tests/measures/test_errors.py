"""Counts by hand: the definitions have no published worked example."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st
from scipy.stats.contingency import crosstab

from drills.core.gestures import Tick
from drills.core.items import Foil
from drills.measures.accuracy import Share
from drills.measures.errors import (
    breakdown,
    by_foil,
    chosen_for_wanted,
    foil_of,
    gesture_scores,
    matrix,
)
from tests.measures.draws import draws
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


def test_errors_are_shares_of_all_errors_with_no_answer_among_them():
    four = asked(options=4)
    found = breakdown(
        [
            trial("right", of=four),
            trial(1, of=four),
            trial(1, 0, of=four),
            trial(3, of=four),
            trial(skipped=True),
            trial(ended=False),
            trial(0, target=WAVE),
        ]
    )
    assert (found.of, found.no_answer) == (4, 1)
    assert found.share(Foil.REVERSAL) == Share(right=2, of=4)
    assert found.share(Foil.VERB) == Share(right=0, of=4)
    assert found.share(None) == Share(right=1, of=4)


def test_without_errors_the_shares_are_of_nothing():
    assert breakdown([]).share(Foil.NOUN) == Share(right=0, of=0)


def test_words_are_named_as_they_stand_and_pictures_by_what_is_wrong_with_them():
    assert chosen_for_wanted(trial("right")) == ("right", "right")
    assert chosen_for_wanted(trial("wrong")) == ("right", "wrong reversal")
    of = asked()
    pictures = replace(of, options=tuple({**row, "text": None} for row in of.options))
    assert chosen_for_wanted(trial("right", of=pictures)) == ("full_passive", "right")
    assert chosen_for_wanted(trial("wrong", of=pictures)) == ("full_passive", "reversal")
    assert chosen_for_wanted(trial(skipped=True)) is None
    assert chosen_for_wanted(trial(2, target=WAVE)) is None


def test_a_matrix_has_a_row_for_what_was_wanted():
    found = matrix([("is", "is"), ("is", "are"), ("are", "are"), ("is", "are")])
    assert (found.wanted, found.chosen) == (("are", "is"), ("are", "is"))
    assert found.counts == ((1, 0), (2, 1))
    assert matrix([]).counts == ()


def test_a_thousand_matrices_agree_with_scipy():
    for source in draws():
        pairs = [
            (source.choice("abcd"), source.choice("abcde")) for _ in range(source.randint(1, 30))
        ]
        found = matrix(pairs)
        table = crosstab(*zip(*pairs, strict=True))
        assert (found.wanted, found.chosen) == tuple(map(tuple, table.elements))
        assert found.counts == tuple(map(tuple, table.count.tolist()))


@given(st.lists(st.tuples(st.sampled_from("abc"), st.sampled_from("abcd"))))
def test_a_matrix_counts_every_pair_once(pairs):
    assert sum(map(sum, matrix(pairs).counts)) == len(pairs)
