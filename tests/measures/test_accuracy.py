"""Counts by hand: the definitions have no published worked example."""

from __future__ import annotations

from dataclasses import replace

from drills.core.gestures import Tick
from drills.measures.accuracy import Share, count, percent
from drills.measures.missing import Lack, Missing
from tests.measures.made import WAVE, asked, trial


def test_right_alone_right_with_help_and_never_right():
    found = count(
        [
            trial("right"),
            trial("wrong", "right"),
            # The person asked for help.
            trial("right", levels=(2,)),
            trial("wrong", "wrong", "right", levels=(0, 4, 7)),
            trial("wrong", "wrong", "right", levels=(0, 4, 6)),
        ]
    )
    # Level 7 is the shown answer of a ladder of seven: confirming it is not being right.
    assert found.unaided == Share(right=1, of=5)
    assert found.aided == Share(right=4, of=5)


def test_what_began_with_help_could_not_be_right_alone():
    begun = replace(trial("right", levels=(4,)), help_at_start=4)
    found = count([trial("right"), trial("wrong", "right"), begun])
    assert found.unaided == Share(right=1, of=2)
    assert found.aided == Share(right=3, of=3)
    assert count([begun]).unaided == Share(right=0, of=0)


def test_a_trial_without_a_response_is_in_no_number():
    assert count([trial(skipped=True)]).unaided == Share(right=0, of=0)


def test_leaving_one_out_after_a_wrong_answer_takes_nothing_back():
    left_out = trial("wrong", skipped=True)
    assert left_out.counts
    found = count([trial("right"), trial("right"), trial("right"), left_out])
    assert found.unaided == found.aided == Share(right=3, of=4)


def test_a_trial_left_in_the_middle_counts_alone_and_not_for_help():
    found = count([trial("wrong", ended=False), trial("right")])
    assert found.unaided == Share(right=1, of=2)
    assert found.aided == Share(right=1, of=1)


def test_without_a_ladder_the_first_response_is_all_there_is():
    found = count([trial("right", of=asked(top_level=0)), trial("wrong", of=asked(top_level=0))])
    assert (found.unaided, found.aided) == (Share(right=1, of=2), Share(right=1, of=2))


def test_a_gesture_that_pain_hindered_is_not_judged():
    hurt = trial(0, target=WAVE, ticks=(Tick.BODY,))
    assert hurt.skipped
    assert not hurt.counts
    assert count([hurt, trial(3, target=WAVE), trial(1, target=WAVE)]).unaided == Share(
        right=1, of=2
    )


def test_a_percentage_is_hidden_below_five_trials():
    assert percent(Share(right=3, of=5)) == 60
    assert percent(Share(right=4, of=4)) == Missing(lack=Lack.TRIALS, have=4, need=5)
    assert percent(Share(right=3, of=4), fewest=4) == 75
    assert percent(Share(right=0, of=0), fewest=0) == Missing(lack=Lack.TRIALS, have=0, need=1)
