"""The intervals are checked in test_intervals; here stands what is put around them."""

from __future__ import annotations

import pytest
from statsmodels.stats.proportion import confint_proportions_2indep

from drills.measures.accuracy import Share
from drills.measures.comparing import Difference, difference
from drills.measures.missing import Lack, Missing
from tests.measures.draws import draws


def test_a_difference_says_both_sides_its_points_and_its_interval():
    # Newcombe 1998, Stat Med 17:873, table II (a).
    found = difference(Share(right=56, of=70), Share(right=48, of=80))
    assert isinstance(found, Difference)
    assert found.points == pytest.approx(0.2)
    assert (found.interval.low, found.interval.high) == pytest.approx((0.0524, 0.3339), abs=5e-5)


def test_fewer_than_five_on_a_side_have_no_difference():
    few = Missing(lack=Lack.TRIALS, have=4, need=5)
    assert difference(Share(right=4, of=4), Share(right=1, of=9)) == few
    assert difference(Share(right=4, of=9), Share(right=1, of=4)) == few
    nothing = Missing(lack=Lack.TRIALS, have=0, need=1)
    assert difference(Share(right=0, of=0), Share(right=1, of=4), fewest=0) == nothing


def test_a_thousand_differences_agree_with_statsmodels():
    for source in draws():
        one, other = (
            Share(right=source.randint(0, of), of=of)
            for of in (source.randint(5, 200), source.randint(5, 200))
        )
        confidence = source.choice([0.9, 0.95, 0.99])
        found = difference(one, other, confidence=confidence)
        assert isinstance(found, Difference)
        assert (found.interval.low, found.interval.high) == pytest.approx(
            confint_proportions_2indep(
                one.right,
                one.of,
                other.right,
                other.of,
                method="newcomb",
                compare="diff",
                alpha=1 - confidence,
            ),
            abs=1e-9,
        )
