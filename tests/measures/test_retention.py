"""Counts by hand: the definition has no published worked example. Random checks against scipy, the
intervals against statsmodels.
"""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binned_statistic
from statsmodels.stats.proportion import proportion_confint

from drills.core.gestures import Tick
from drills.measures.accuracy import Share
from drills.measures.retention import INTERVALS_DAYS, Recall, recalls_of, retention
from tests.measures.draws import draws
from tests.measures.made import ACTIVE, MONDAY, WAVE, trial

START = date(2026, 11, 2)


def recall(key: str, day: int, right: bool = True) -> Recall:
    return Recall(key=key, day=START + timedelta(days=day), right=right)


def shares(recalls: list[Recall]) -> dict[int, Share]:
    return {one.days: one.share for one in retention(recalls) if one.share.of}


def test_each_gap_counts_with_the_longest_interval_that_it_reaches():
    gaps = [1, 2, 3, 4, 6, 7, 13, 14, 27, 28, 55, 56, 200]
    days = [sum(gaps[:place]) for place in range(len(gaps) + 1)]
    found = shares([recall("a", day) for day in days])
    assert found == {
        1: Share(right=1, of=1),
        2: Share(right=2, of=2),
        4: Share(right=2, of=2),
        7: Share(right=2, of=2),
        14: Share(right=2, of=2),
        28: Share(right=2, of=2),
        56: Share(right=2, of=2),
    }


def test_the_same_day_stands_apart_and_only_the_first_of_a_day_tells_of_keeping():
    found = shares(
        [
            recall("a", 0, False),
            recall("a", 0),
            recall("b", 0),
            recall("a", 0),
            recall("a", 2, False),
            recall("a", 2),
            recall("b", 2),
        ]
    )
    assert found == {0: Share(right=3, of=3), 2: Share(right=1, of=2)}


def test_every_interval_has_a_line_and_an_empty_one_says_nothing():
    found = retention([])
    assert [one.days for one in found] == [0, *INTERVALS_DAYS]
    assert {(one.share.of, one.interval.low, one.interval.high) for one in found} == {(0, 0, 1)}


def test_a_clock_set_back_is_passed_over():
    assert shares([recall("a", 5), recall("a", 1), recall("a", 6)]) == {1: Share(right=1, of=1)}


def test_a_gap_below_the_first_interval_is_neither_kept_nor_the_same_day():
    found = retention([recall("a", 0), recall("a", 1), recall("a", 3)], intervals_days=(2, 9))
    assert [(one.days, one.share.of) for one in found] == [(0, 0), (2, 1), (9, 0)]
    for bad in ((0, 2), (2, 2), (4, 1)):
        with pytest.raises(ValueError, match="do not rise"):
            retention([], intervals_days=bad)


def test_trials_are_recalls_of_their_target_on_their_practice_day():
    late = MONDAY + timedelta(hours=16)  # two in the morning still belongs to Monday
    found = recalls_of(
        [
            trial("right"),
            trial("wrong", "right", at=late, target=ACTIVE),
            trial(skipped=True),
            trial(0, target=WAVE, ticks=(Tick.BODY,)),
        ],
        day_turns_at_hour=4,
    )
    assert found == [
        Recall(key="match/full_passive/contact", day=MONDAY.date(), right=True),
        Recall(key="match/active/contact", day=MONDAY.date(), right=False),
    ]
    (item,) = recalls_of([trial("right")], day_turns_at_hour=4, key=lambda one: one.asked.sentence)
    assert item.key == "The nurse was pushed by the baker."


def test_a_thousand_courses_agree_with_scipy_and_statsmodels():
    edges = [0, *INTERVALS_DAYS, 10**4]
    for source in draws():
        days = sorted(source.randrange(120) for _ in range(source.randint(1, 25)))
        recalls = [recall(source.choice("abc"), day, source.random() < 0.7) for day in days]
        gaps, right = [], []
        for key in "abc":
            of_key = [one for one in recalls if one.key == key]
            gaps += np.diff([one.day.toordinal() for one in of_key]).tolist()
            right += [one.right for one in of_key[1:]]
        sums = binned_statistic(gaps, right, "sum", bins=edges).statistic if gaps else [0] * 8
        counts = np.histogram(gaps, bins=edges)[0]
        for one, hits, of in zip(retention(recalls), sums, counts, strict=True):
            assert one.share == Share(right=hits, of=of)
            if of:
                assert (one.interval.low, one.interval.high) == pytest.approx(
                    proportion_confint(hits, of, method="wilson"), abs=1e-9
                )


@given(
    st.lists(
        st.builds(recall, st.sampled_from("abcd"), st.integers(0, 200), st.booleans()), max_size=40
    )
)
def test_each_recall_but_the_first_of_its_key_counts_once(recalls: list[Recall]):
    recalls.sort(key=lambda one: one.day)
    found = retention(recalls)
    assert sum(one.share.of for one in found) == len(recalls) - len({one.key for one in recalls})
    assert all(0 <= one.share.right <= one.share.of for one in found)
