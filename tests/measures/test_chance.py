"""Oracles: standard binomial tables; the random checks hold every tail against scipy."""

from __future__ import annotations

from collections import Counter

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binom, binomtest, poisson_binom

from drills.measures.chance import (
    ChanceBand,
    Verdict,
    chance_band,
    chance_corrected,
    least_above,
    lower_tail,
    most_below,
    two_sided,
    upper_tail,
    verdict,
)
from drills.measures.missing import Lack, Missing
from tests.measures.draws import draws


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
    assert chance_band([0.5] * of) == ChanceBand(low=low, high=high)
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


def test_a_year_of_trials_with_three_chances_is_counted_in_a_moment():
    chances = [1 / 2] * 9000 + [1 / 3] * 6000 + [1 / 4] * 5000
    halves, thirds, quarters = (
        binom.pmf(np.arange(of + 1), of, chance) for chance, of in Counter(chances).items()
    )
    spread = np.convolve(np.convolve(halves, thirds), quarters)
    for right in (7450, 7750, 7882):
        assert upper_tail(right, chances) == pytest.approx(spread[right:].sum(), rel=1e-9)


def test_a_thousand_tails_and_two_sided_tests_agree_with_scipy():
    for source in draws():
        of = source.randint(1, 120)
        chance = source.choice([1 / 2, 1 / 3, 1 / 4, source.random()])
        right = source.randint(0, of)
        assert upper_tail(right, [chance] * of) == pytest.approx(
            binom.sf(right - 1, of, chance), rel=1e-9, abs=1e-15
        )
        assert lower_tail(right, [chance] * of) == pytest.approx(
            binom.cdf(right, of, chance), rel=1e-9, abs=1e-15
        )
        assert two_sided(right, of, chance) == pytest.approx(
            binomtest(right, of, chance).pvalue, rel=1e-9, abs=1e-15
        )


def test_a_thousand_mixed_chances_agree_with_scipy():
    for source in draws():
        chances = source.choices([1, 1 / 2, 1 / 3, 1 / 4, 0.9], k=source.randint(1, 40))
        right = source.randint(0, len(chances))
        assert upper_tail(right, chances) == pytest.approx(
            poisson_binom.sf(right - 1, chances), abs=1e-12
        )
        assert lower_tail(right, chances) == pytest.approx(
            poisson_binom.cdf(right, chances), abs=1e-12
        )


def test_a_thousand_limits_agree_with_scipy():
    for source in draws():
        of, level = source.randint(0, 60), source.choice([0.01, 0.05, 0.1])
        chance = source.choice([1 / 2, 1 / 3, 1 / 4, source.uniform(0.01, 0.99)])
        numbers = np.arange(of + 1)
        above = numbers[binom.sf(numbers - 1, of, chance) < level]
        below = numbers[binom.cdf(numbers, of, chance) < level]
        assert least_above(of, chance, level=level) == (above[0] if above.size else None)
        assert most_below(of, chance, level=level) == (below[-1] if below.size else None)


@pytest.mark.parametrize(("right", "p"), [(15, 0.0414), (5, 0.0414), (14, 0.1153), (10, 1)])
def test_choices_of_one_side_are_tested_both_ways(right, p):
    # Twice the tail of any table of the binomial distribution with 20 trials.
    assert two_sided(right, 20, 0.5) == pytest.approx(p, abs=5e-5)


def test_what_cannot_be_counted_is_refused():
    assert two_sided(0, 0, 0.5) == 1
    for right, of, chance in ((3, 2, 0.5), (-1, 2, 0.5), (1, 2, 1.5)):
        with pytest.raises(ValueError, match="cannot be held against a chance"):
            two_sided(right, of, chance)


@given(st.lists(st.sampled_from([1, 1 / 2, 1 / 3, 1 / 4]), max_size=30))
def test_the_band_holds_what_the_verdict_cannot_tell_from_guessing(chances):
    band = chance_band(chances)
    said = [verdict(right, chances) for right in range(len(chances) + 1)]
    if isinstance(band, Missing):
        assert band == Missing(lack=Lack.TRIALS, have=0, need=1)
        assert set(said) == {None}
        return
    same = [right for right, one in enumerate(said) if one is Verdict.SAME]
    assert (band.low, band.high) == (same[0], same[-1])


@given(st.integers(0, 80), st.floats(0, 1), st.data())
def test_two_sided_chances_are_chances_and_mirror(of, chance, data):
    right = data.draw(st.integers(0, of))
    assert 0 <= two_sided(right, of, chance) <= 1
    assert two_sided(right, of, 0.5) == pytest.approx(two_sided(of - right, of, 0.5))


def test_where_nothing_can_be_guessed_there_is_no_verdict():
    assert verdict(0, []) is None
    assert verdict(4, [1.0] * 4) is None
    assert least_above(4, 0.5) is None
    assert chance_corrected(3, 4, 0) == 0.75
    with pytest.raises(ValueError, match="cannot be held against a chance of 1"):
        chance_corrected(1, 2, 1)
