"""Oracle: Leys et al. 2013, J Exp Soc Psychol 49:764; random checks against scipy and numpy."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import median_abs_deviation

from drills.measures.latency import bounds, scaled_deviation, summarise
from tests.measures.draws import DRAWS
from tests.measures.made import WAVE, trial

LEYS = [1, 3, 3, 6, 8, 10, 10, 1000]


def test_the_published_example_gives_its_published_bounds():
    assert scaled_deviation(LEYS) == pytest.approx(5.1891, abs=5e-5)
    assert bounds(LEYS) == pytest.approx((-8.57, 22.57), abs=5e-3)


@settings(max_examples=DRAWS)
@given(st.lists(st.integers(0, 10**5), min_size=1, max_size=60))
def test_median_and_deviation_agree_with_numpy_and_scipy(values: list[int]):
    # scipy's "normal" scale is 1.482602..., the paper's 1.4826.
    assert scaled_deviation(values) == pytest.approx(
        median_abs_deviation(values, scale="normal"), rel=1e-5
    )
    low, high = bounds(values)
    assert (low + high) / 2 == pytest.approx(np.median(values))


def test_only_right_answers_without_help_are_timed():
    found = summarise(
        [
            trial("right", latency_ms=2000),
            trial("right", latency_ms=4000),
            trial("wrong", "right", latency_ms=9000),
            trial("right", levels=(1,), latency_ms=9000),
            trial("right", latency_ms=None),
            trial("right", latency_ms=299),
            trial("right", latency_ms=300),
        ]
    )
    assert (found.of, found.median_ms, found.too_soon) == (3, 2000, 1)


def test_a_very_slow_answer_is_marked_and_kept():
    found = summarise([trial("right", latency_ms=1000 * ms) for ms in LEYS])
    assert (found.of, found.median_ms, found.slow) == (8, 7000, 1)


def test_a_gesture_is_not_timed_for_its_time_is_the_caregivers():
    found = summarise([trial(3, target=WAVE, latency_ms=ms) for ms in (100, 9000, 9000, 90_000)])
    assert (found.of, found.median_ms, found.slow, found.too_soon) == (0, None, 0, 0)


def test_nothing_timed_gives_no_median():
    assert summarise([]).median_ms is None
