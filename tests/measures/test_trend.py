"""Oracle: Kendall 1970, Rank Correlation Methods, example 3.1; random checks against scipy."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import kendalltau, theilslopes

from drills.measures.missing import NO_SPREAD, Lack, Missing
from drills.measures.trend import Trend, kendall_s, kendall_tau_b, theil_sen, trend
from tests.measures.draws import draws, scores

KENDALL_X = [1, 2.5, 2.5, 4.5, 4.5, 6.5, 6.5, 8, 9.5, 9.5]
KENDALL_Y = [1, 2, 4.5, 4.5, 4.5, 4.5, 8, 8, 8, 10]

series = st.lists(st.integers(-20, 20), min_size=2, max_size=25)


def test_kendalls_example_gives_his_printed_coefficient():
    assert kendall_s(KENDALL_X, KENDALL_Y) == 33
    # Printed .859.
    assert kendall_tau_b(KENDALL_X, KENDALL_Y) == pytest.approx(0.8590, abs=5e-5)


def test_six_sessions_worked_out_with_scipy():
    found = trend([1, 2, 3, 4, 5, 6], [50, 55, 53, 60, 66, 70])
    assert isinstance(found, Trend)
    assert found.of == 6
    assert found.tau == pytest.approx(0.8667, abs=5e-5)
    assert found.slope == pytest.approx(4.0)


def test_a_thousand_series_agree_with_scipy():
    missing = 0
    for source in draws():
        y = scores(source, 2, 25)
        x = (
            list(range(len(y)))
            if source.random() < 0.5
            else [source.randint(0, 8) for _ in range(len(y))]
        )
        tau, slope = kendall_tau_b(x, y), theil_sen(x, y)
        if isinstance(tau, Missing):
            missing += 1
            assert len(set(x)) == 1 or len(set(y)) == 1
        else:
            assert tau == pytest.approx(kendalltau(x, y, variant="b").statistic, abs=1e-12)
        if isinstance(slope, Missing):
            assert len(set(x)) == 1
        else:
            assert slope == pytest.approx(theilslopes(y, x).slope, abs=1e-9)
    assert missing < 100


def test_the_same_score_in_every_session_has_a_slope_and_no_order():
    found = trend([1, 2, 3], [4, 4, 4])
    assert isinstance(found, Trend)
    assert (found.tau, found.slope) == (NO_SPREAD, 0)


def test_too_few_sessions_have_no_trend():
    assert trend([], []) == Missing(lack=Lack.SESSIONS, have=0, need=3)
    assert trend([1, 2], [3, 4]) == Missing(lack=Lack.SESSIONS, have=2, need=3)
    assert trend([1], [3], fewest=0) == Missing(lack=Lack.SESSIONS, have=1, need=2)
    assert trend([1, 1, 1], [3, 4, 5]) == NO_SPREAD
    for measure in (kendall_tau_b, theil_sen):
        assert measure([], []) == Missing(lack=Lack.SESSIONS, have=0, need=2)
        with pytest.raises(ValueError, match="zip"):
            measure([1, 2, 3], [1, 2])


@given(series)
def test_order_lies_between_full_and_reversed_and_turns_with_its_sides(values: list[int]):
    times = range(len(values))
    tau = kendall_tau_b(times, values)
    if isinstance(tau, Missing):
        assert len(set(values)) == 1
        return
    assert -1 <= tau <= 1
    assert kendall_tau_b(values, times) == pytest.approx(tau)
    assert kendall_tau_b(times, [-value for value in values]) == pytest.approx(-tau)


@given(series, st.integers(-5, 5), st.integers(-9, 9))
def test_a_slope_follows_what_is_added_to_the_scores(values: list[int], rise: int, shift: int):
    times = range(len(values))
    slope = theil_sen(times, values)
    assert isinstance(slope, float | int)
    lifted = [value + rise * time + shift for time, value in zip(times, values, strict=True)]
    assert theil_sen(times, lifted) == pytest.approx(slope + rise)


@given(st.lists(st.integers(-99, 99), min_size=2, max_size=20, unique=True))
def test_what_only_rises_is_in_full_order(values: list[int]):
    assert kendall_tau_b(range(len(values)), sorted(values)) == 1
