"""Gaps fitted to one person. The integral over what is likely is held against scipy's own."""

from __future__ import annotations

from math import exp, log
from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import dblquad
from scipy.stats import binom, norm

from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.schedule.forgetting import Recall, chance_right, fit

SETTINGS = SpacingSettings(policy=SpacingPolicy.FITTED)
LADDER = SETTINGS.ladder_days


def answers(rng: Random, count: int, times: float, k: int = 2) -> list[Recall]:
    """Answers of a person whose true gaps are `times` the ladder's."""
    recalls = []
    for _ in range(count):
        rung = rng.randrange(5)
        gap = max(1, round(LADDER[rung] * rng.uniform(0.5, 2.5)))
        blank = Recall(rung=rung, gap_days=gap, right=True, effective_k=k)
        right = rng.random() < chance_right(blank, LADDER[rung] * times, SETTINGS.retention)
        recalls.append(blank._replace(right=right))
    return recalls


def test_with_too_few_answers_the_gaps_are_the_ladder():
    few = answers(Random(1), SETTINGS.fitted_least_recalls - 1, 3.0)
    fitted = fit(few, SETTINGS)
    assert (fitted.gaps_days, fitted.recalls) == (LADDER, 0)


@pytest.mark.parametrize("times", [0.5, 1.0, 2.0])
def test_many_answers_find_the_true_gaps(times: float):
    fitted = fit(answers(Random(7), 3000, times, k=4), SETTINGS)
    for gap, days in zip(fitted.gaps_days[2:5], LADDER[2:5], strict=True):
        assert abs(log(gap / (days * times))) < log(1.35)


def test_the_fit_is_the_mean_over_all_that_is_likely():
    # scipy.integrate and scipy.stats on the same model: binomial answers, normal priors around
    # the ladder (spread .5 of the stretch and .2 of the growth).
    recalls = [Recall(rung=3, gap_days=7, right=True, effective_k=2)] * 65
    recalls += [Recall(rung=3, gap_days=7, right=False, effective_k=2)] * 15

    def likely(growth: float, stretch: float) -> float:
        gap = exp(stretch) * LADDER[3] ** growth
        known = 0.97 * SETTINGS.retention ** (7 / gap)
        chance = 0.5 + 0.5 * known
        prior = norm.pdf(stretch, 0, 0.5) * norm.pdf(growth, 1, 0.2)
        return float(prior * binom.pmf(65, 80, chance))

    def weighted(growth: float, stretch: float) -> float:
        return (stretch + growth * log(LADDER[4])) * likely(growth, stretch)

    whole, _ = dblquad(likely, -2, 2, 0.5, 1.5, epsabs=1e-9)
    mean, _ = dblquad(weighted, -2, 2, 0.5, 1.5, epsabs=1e-9)
    assert fit(recalls, SETTINGS).gaps_days[4] == pytest.approx(exp(mean / whole), abs=1)


@settings(max_examples=40, deadline=None)
@given(st.randoms(use_true_random=False), st.floats(0.1, 10), st.integers(60, 200))
def test_gaps_never_shrink_along_the_ladder_and_stay_within_bounds(rng, times, count):
    fitted = fit(answers(rng, count, times), SETTINGS)
    assert list(fitted.gaps_days) == sorted(fitted.gaps_days)
    assert len(fitted.gaps_days) == len(LADDER)
    for gap, days in zip(fitted.gaps_days, LADDER, strict=True):
        assert gap <= np.ceil(days * SETTINGS.fitted_most_times)
        assert gap >= max(1, np.floor(days / SETTINGS.fitted_most_times))


@given(st.integers(1, 400), st.floats(0.5, 400), st.sampled_from([1, 2, 3, 4]))
def test_the_chance_lies_between_guessing_and_sure_and_falls_with_time(gap, known_for, k):
    def chance(days: int) -> float:
        recall = Recall(rung=0, gap_days=days, right=True, effective_k=k)
        return chance_right(recall, known_for, SETTINGS.retention)

    assert (0 if k == 1 else 1 / k) <= chance(gap) < 1
    assert chance(gap + 1) <= chance(gap)
