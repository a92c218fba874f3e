"""Counts by hand: the definitions have no published worked example."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.measures.accuracy import Share
from drills.measures.cues import right_by_level, summarise
from tests.measures.made import WAVE, asked, trial


def test_help_is_the_level_at_which_the_answer_came_or_the_top():
    found = summarise(
        [
            trial("right"),
            trial("wrong", "right", levels=(0, 3)),
            trial("wrong", "wrong", "right", levels=(0, 5, 7)),
        ]
    )
    assert found.of == 3
    assert found.mean_level == pytest.approx(10 / 3)
    assert found.dependence == pytest.approx((0 + 3 / 7 + 1) / 3)


def test_ladders_of_different_length_weigh_the_same():
    found = summarise(
        [trial("wrong", of=asked(top_level=5)), trial("right"), trial(0, target=WAVE)]
    )
    assert found.dependence == pytest.approx(2 / 3)


def test_probes_and_trials_left_in_the_middle_are_passed_over():
    found = summarise(
        [trial("wrong", of=asked(top_level=0)), trial("wrong", ended=False), trial(skipped=True)]
    )
    assert (found.of, found.mean_level, found.dependence) == (0, None, None)


@given(st.lists(st.tuples(st.booleans(), st.integers(0, 7)), min_size=1, max_size=30))
def test_dependence_stays_between_none_and_all(made: list[tuple[bool, int]]):
    found = summarise(
        [trial("right" if right else "wrong", levels=(level,)) for right, level in made]
    )
    assert found.dependence is not None
    assert 0 <= found.dependence <= 1


def test_a_trial_left_out_did_not_take_all_the_help_there_is():
    found = summarise([trial("wrong", skipped=True), trial("wrong", "right")])
    assert (found.of, found.mean_level) == (1, 1.0)


def test_what_each_level_of_help_brought():
    found = right_by_level(
        [
            trial("right"),
            trial("wrong", "right", levels=(0, 3)),
            trial("wrong", "wrong", "right", levels=(0, 3, 7)),
            trial("wrong", ended=False),
            trial(skipped=True),
        ]
    )
    # Level 7 shows the answer.
    assert found == {0: Share(right=1, of=4), 3: Share(right=1, of=2)}
    assert list(found) == [0, 3]


def test_without_a_ladder_there_is_one_level_and_without_trials_none():
    assert right_by_level([trial("wrong", of=asked(top_level=0))]) == {0: Share(right=0, of=1)}
    assert right_by_level([]) == {}


@given(st.lists(st.lists(st.booleans(), min_size=1, max_size=6), max_size=20))
def test_every_response_below_the_top_is_counted_at_its_level(made: list[list[bool]]):
    found = right_by_level(
        [trial(*["right" if right else "wrong" for right in responses]) for responses in made]
    )
    assert sum(share.of for share in found.values()) == sum(map(len, made))
    assert sum(share.right for share in found.values()) == sum(map(sum, made))
    assert list(found) == sorted(found)
