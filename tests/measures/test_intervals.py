"""Oracles: Newcombe 1998, Stat Med 17:857 table I method 3 and 17:873 table II method 10.

Figures without a paper beside them were worked out once with scipy and statsmodels. The random
checks hold every result against statsmodels, which nobody here wrote.
"""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from drills.measures.intervals import newcombe_difference, wilson
from tests.measures.draws import DRAWS

counts = st.integers(1, 400).flatmap(lambda of: st.tuples(st.integers(0, of), st.just(of)))


@pytest.mark.parametrize(
    ("right", "of", "low", "high"),
    [
        (81, 263, 0.2553, 0.3662),
        (15, 148, 0.0624, 0.1605),
        (0, 20, 0.0, 0.1611),
        (1, 29, 0.0061, 0.1718),
    ],
)
def test_wilson_gives_newcombes_printed_intervals(right, of, low, high):
    interval = wilson(right, of)
    assert (interval.low, interval.high) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize(
    ("right", "of", "low", "high"),
    [(8, 10, 0.4902, 0.9433), (0, 10, 0.0, 0.2775), (10, 10, 0.7225, 1.0)],
)
def test_wilson_gives_the_intervals_worked_out_with_scipy(right, of, low, high):
    interval = wilson(right, of)
    assert (interval.low, interval.high) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize(
    ("counts", "low", "high"),
    [
        ((56, 70, 48, 80), 0.0524, 0.3339),
        ((9, 10, 3, 10), 0.1705, 0.8090),
        ((6, 7, 2, 7), 0.0582, 0.8062),
        ((5, 56, 0, 29), -0.0381, 0.1926),
        ((10, 10, 0, 20), 0.6791, 1.0),
    ],
)
def test_differences_give_newcombes_printed_intervals(counts, low, high):
    interval = newcombe_difference(*counts)
    assert (interval.low, interval.high) == pytest.approx((low, high), abs=5e-5)


@settings(max_examples=DRAWS)
@given(counts)
def test_wilson_agrees_with_statsmodels(count):
    right, of = count
    interval = wilson(right, of)
    assert (interval.low, interval.high) == pytest.approx(
        proportion_confint(right, of, method="wilson"), abs=1e-9
    )


@settings(max_examples=DRAWS)
@given(counts, counts)
def test_differences_agree_with_statsmodels(now, earlier):
    interval = newcombe_difference(*now, *earlier)
    assert (interval.low, interval.high) == pytest.approx(
        confint_proportions_2indep(*now, *earlier, method="newcomb", compare="diff"), abs=1e-9
    )


@given(counts)
def test_the_share_lies_in_its_interval_and_misses_mirror_hits(count):
    right, of = count
    interval, mirror = wilson(right, of), wilson(of - right, of)
    assert 0 <= interval.low <= right / of <= interval.high <= 1
    assert (interval.low, interval.high) == pytest.approx((1 - mirror.high, 1 - mirror.low))


@given(counts, counts)
def test_a_difference_lies_in_its_interval_and_turns_sign_with_its_sides(now, earlier):
    there, back = newcombe_difference(*now, *earlier), newcombe_difference(*earlier, *now)
    assert -1 <= there.low <= now[0] / now[1] - earlier[0] / earlier[1] <= there.high <= 1
    assert (there.low, there.high) == pytest.approx((-back.high, -back.low))


def test_nothing_asked_says_nothing_and_impossible_counts_are_refused():
    assert (wilson(0, 0).low, wilson(0, 0).high) == (0, 1)
    with pytest.raises(ValueError, match="3 right of 2"):
        wilson(3, 2)
    with pytest.raises(ValueError, match="both sides"):
        newcombe_difference(1, 2, 0, 0)
