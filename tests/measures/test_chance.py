"""Oracles: standard binomial tables; the random checks hold every tail against scipy."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom, binomtest

from drills.measures.chance import (
    Verdict,
    chance_corrected,
    least_above,
    lower_tail,
    upper_tail,
    verdict,
)


@pytest.mark.parametrize(
    ("right", "of", "chance", "tail"),
    [(9, 10, 0.5, 0.0107), (8, 10, 0.5, 0.0547), (15, 20, 0.5, 0.0207), (3, 15, 0.1, 0.1841)],
)
def test_upper_tails_are_those_of_the_standard_table(right, of, chance, tail):
    # Any table of the cumulative binomial distribution.
    assert upper_tail(right, [chance] * of) == pytest.approx(tail, abs=5e-5)


@pytest.mark.parametrize(
    ("chance", "least"),
    [
        (1 / 2, (7, 9, 10, 12, 15, 17, 20, 26)),
        (1 / 3, (6, 7, 8, 9, 11, 13, 15, 19)),
        (1 / 4, (5, 6, 7, 8, 9, 11, 13, 16)),
    ],
)
def test_the_least_number_above_chance_is_the_one_scipy_gave(chance, least):
    # Worked out once with scipy; 9 of 16 with three options is the close one, p = .04997.
    asked = (8, 10, 12, 16, 20, 24, 30, 40)
    assert tuple(least_above(of, chance) for of in asked) == least
    for of, right in zip(asked, least, strict=True):
        assert binomtest(right, of, chance, alternative="greater").pvalue < 0.05
        assert binomtest(right - 1, of, chance, alternative="greater").pvalue >= 0.05


@pytest.mark.parametrize(("of", "low", "high"), [(10, 2, 8), (12, 3, 9), (20, 6, 14), (24, 7, 17)])
def test_the_band_that_cannot_be_told_from_two_option_guessing(of, low, high):
    # Two-sided .05; for one half scipy's two-sided exact test doubles the tail, so it is a check.
    said = [verdict(right, [0.5] * of) for right in range(of + 1)]
    assert said == (
        [Verdict.BELOW] * low + [Verdict.SAME] * (high - low + 1) + [Verdict.ABOVE] * (of - high)
    )
    assert said == [
        Verdict.SAME
        if binomtest(right, of, 0.5).pvalue > 0.05
        else (Verdict.ABOVE if right > of / 2 else Verdict.BELOW)
        for right in range(of + 1)
    ]


def test_one_of_ten_is_below_chance_and_two_of_ten_is_not():
    assert verdict(1, [0.5] * 10) is Verdict.BELOW
    assert verdict(5, [0.5] * 20) is Verdict.BELOW
    assert verdict(2, [0.5] * 10) is Verdict.SAME


@pytest.mark.parametrize(
    ("right", "of", "chance", "corrected"),
    [(75, 100, 0.5, 0.5), (50, 100, 0.25, 1 / 3), (80, 100, 0.25, 0.7333), (40, 100, 0.5, -0.2)],
)
def test_chance_correction_is_abbotts_formula(right, of, chance, corrected):
    # Abbott 1925, J Econ Entomol 18:265 (formula from memory), worked out by hand.
    assert chance_corrected(right, of, chance) == pytest.approx(corrected, abs=5e-5)


@given(st.integers(0, 120), st.floats(0, 1), st.data())
def test_tails_agree_with_scipy(of, chance, data):
    right = data.draw(st.integers(0, of))
    assert upper_tail(right, [chance] * of) == pytest.approx(
        binom.sf(right - 1, of, chance), abs=1e-10
    )
    assert lower_tail(right, [chance] * of) == pytest.approx(
        binom.cdf(right, of, chance), abs=1e-10
    )


@given(st.lists(st.sampled_from([1 / 2, 1 / 3, 1 / 4]), max_size=9), st.data())
def test_mixed_chances_agree_with_counting_every_outcome(chances, data):
    right = data.draw(st.integers(0, len(chances)))
    total = 0.0
    for outcome in range(2 ** len(chances)):
        hits = [bool(outcome >> place & 1) for place in range(len(chances))]
        share = 1.0
        for hit, chance in zip(hits, chances, strict=True):
            share *= chance if hit else 1 - chance
        total += share * (sum(hits) >= right)
    assert upper_tail(right, chances) == pytest.approx(total)


@given(st.lists(st.floats(0, 1), max_size=40), st.data())
def test_both_tails_together_count_the_number_itself_twice(chances, data):
    right = data.draw(st.integers(0, len(chances)))
    upper, lower = upper_tail(right, chances), lower_tail(right, chances)
    assert 0 <= upper <= 1
    assert 0 <= lower <= 1
    assert upper + lower_tail(right - 1, chances) == pytest.approx(1)


def test_a_thousand_trials_are_counted_as_well():
    assert upper_tail(540, [0.5] * 1000) == pytest.approx(binom.sf(539, 1000, 0.5))


def test_where_nothing_can_be_guessed_there_is_no_verdict():
    assert verdict(0, []) is None
    assert verdict(4, [1.0] * 4) is None
    assert least_above(4, 0.5) is None
    assert chance_corrected(3, 4, 0) == 0.75
    with pytest.raises(ValueError, match="cannot be held against a chance of 1"):
        chance_corrected(1, 2, 1)
