"""Oracles: those of the difference of two shares, Newcombe 1998, Stat Med 17:873, table II."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from statsmodels.stats.proportion import confint_proportions_2indep

from drills.core.gestures import Tick
from drills.measures.accuracy import Share
from drills.measures.decline import Answer, Decline, answers_of, decline
from drills.measures.missing import Lack, Missing
from tests.measures.draws import draws
from tests.measures.made import WAVE, trial

answers = st.builds(Answer, right=st.booleans(), latency_ms=st.none() | st.integers(300, 20_000))


def of(right: int, count: int, latency_ms: float | None = None) -> list[Answer]:
    return [Answer(right=place < right, latency_ms=latency_ms) for place in range(count)]


def test_nine_of_ten_at_first_and_three_of_ten_at_last():
    # Newcombe's table II (b): 9/10 - 3/10.
    found = decline([of(9, 10, 2000) + of(5, 10) + of(3, 10, 3000)])
    assert isinstance(found, Decline)
    assert (found.first, found.last) == (Share(right=9, of=10), Share(right=3, of=10))
    assert found.drop == pytest.approx(0.6)
    assert (found.interval.low, found.interval.high) == pytest.approx((0.1705, 0.8090), abs=5e-5)
    assert found.latency_ratio == pytest.approx(1.5)


def test_the_thirds_of_several_sessions_are_put_together():
    # Newcombe's table II (c): 6/7 - 2/7, over three sessions with something left in the middle.
    sessions = [of(3, 3) + of(1, 5) + of(0, 3), of(2, 3) + of(0, 4) + of(1, 3), of(1, 1) * 3]
    found = decline(sessions)
    assert isinstance(found, Decline)
    assert (found.first, found.last) == (Share(right=6, of=7), Share(right=2, of=7))
    assert (found.interval.low, found.interval.high) == pytest.approx((0.0582, 0.8062), abs=5e-5)


def test_too_few_answers_show_no_decline():
    assert decline([]) == Missing(lack=Lack.TRIALS, have=0, need=5)
    assert decline([of(1, 14)]) == Missing(lack=Lack.TRIALS, have=4, need=5)
    found = decline([of(1, 3, 1000)], fewest=1)
    assert isinstance(found, Decline)
    assert (found.drop, found.latency_ratio) == (1, 1)
    found = decline([of(9, 15)])
    assert isinstance(found, Decline)
    assert found.latency_ratio == Missing(lack=Lack.TRIALS, have=0, need=5)


def test_only_right_answers_without_help_are_timed_and_gestures_are_not():
    found = answers_of(
        [
            trial("right", latency_ms=4000),
            trial("right", latency_ms=299),
            trial("right", latency_ms=None),
            trial("wrong", "right", latency_ms=4000),
            trial("right", levels=(2,), latency_ms=4000),
            trial(3, target=WAVE, latency_ms=4000),
            trial(0, target=WAVE, ticks=(Tick.BODY,)),
            trial(skipped=True),
        ]
    )
    assert [answer.latency_ms for answer in found] == [4000, None, None, None, None, None]
    assert [answer.right for answer in found] == [True, True, True, False, False, True]


def test_a_thousand_weeks_agree_with_statsmodels_and_numpy():
    for source in draws():
        sessions = [
            [
                Answer(
                    right=source.random() < 0.6,
                    latency_ms=source.randint(300, 9000) if source.random() < 0.8 else None,
                )
                for _ in range(source.randint(15, 40))
            ]
            for _ in range(source.randint(1, 6))
        ]
        found = decline(sessions, fewest=1)
        split = [
            np.array_split(np.arange(len(one)), [len(one) // 3, -(len(one) // 3)])
            for one in sessions
        ]
        first = [one[at] for one, thirds in zip(sessions, split, strict=True) for at in thirds[0]]
        last = [one[at] for one, thirds in zip(sessions, split, strict=True) for at in thirds[2]]
        assert isinstance(found, Decline)
        assert (found.interval.low, found.interval.high) == pytest.approx(
            confint_proportions_2indep(
                sum(answer.right for answer in first),
                len(first),
                sum(answer.right for answer in last),
                len(last),
                method="newcomb",
                compare="diff",
            ),
            abs=1e-9,
        )
        slow, fast = (
            np.nanmedian([np.nan if a.latency_ms is None else a.latency_ms for a in third])
            for third in (last, first)
        )
        assert found.latency_ratio == pytest.approx(slow / fast)


@given(st.lists(st.lists(answers, max_size=30), max_size=4))
def test_sessions_run_backwards_turn_the_decline_round(sessions: list[list[Answer]]):
    there = decline(sessions, fewest=1)
    back = decline([list(reversed(one)) for one in sessions], fewest=1)
    if isinstance(there, Missing) or isinstance(back, Missing):
        assert there == back
        return
    assert there.drop == pytest.approx(-back.drop)
    assert -1 <= there.interval.low <= there.drop <= there.interval.high <= 1
    if isinstance(there.latency_ratio, float):
        assert there.latency_ratio * back.latency_ratio == pytest.approx(1)
