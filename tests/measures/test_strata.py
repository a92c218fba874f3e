"""Several fourfold tables at once, against R, scipy and every way of dealing out the answers."""

from __future__ import annotations

from itertools import combinations, product
from random import Random

import pytest
from scipy.stats import fisher_exact

from drills.measures import strata
from drills.measures.accuracy import Share
from drills.measures.strata import Comparison, Stratum, compare


def stratum(right: int, of: int, other_right: int, other_of: int) -> Stratum:
    return Stratum(one=Share(right=right, of=of), other=Share(right=other_right, of=other_of))


def compared(*of: Stratum) -> Comparison:
    found = compare(of)
    assert found is not None
    return found


def test_penicillin_and_rabbits_come_out_as_in_the_r_manual():
    # Agresti 1990, pages 231-237; help page of mantelhaen.test in R: exact p .040 (.0399449), and
    # .020 for a higher rate of cure in the first row.
    rabbits = [
        stratum(0, 6, 0, 5),
        stratum(3, 6, 0, 6),
        stratum(6, 6, 2, 6),
        stratum(5, 6, 6, 6),
        stratum(2, 2, 5, 5),
    ]
    found = compared(*rabbits)
    assert found.one.right == 16
    assert found.either == pytest.approx(0.0399449, abs=1e-6)
    assert found.higher == pytest.approx(0.020, abs=5e-4)


def test_the_lady_tasting_tea_is_told_by_luck_in_17_of_70():
    # Fisher 1935, The Design of Experiments (from memory): 3 of 4 cups right.
    assert compared(stratum(3, 4, 1, 4)).higher == pytest.approx(17 / 70)


def test_one_name_is_fishers_exact_test_for_a_thousand_random_tables():
    rng = Random(11)
    for _ in range(1000):
        of, other_of = rng.randint(1, 60), rng.randint(1, 60)
        right, other_right = rng.randint(0, of), rng.randint(0, other_of)
        found = compared(stratum(right, of, other_right, other_of))
        table = [[right, of - right], [other_right, other_of - other_right]]
        assert found.lower == pytest.approx(fisher_exact(table, "less").pvalue, abs=1e-9)
        assert found.higher == pytest.approx(fisher_exact(table, "greater").pvalue, abs=1e-9)
        assert found.points == pytest.approx(right / of - other_right / other_of)


def test_two_names_are_every_way_of_dealing_out_the_right_answers():
    tables = [stratum(1, 4, 3, 4), stratum(2, 3, 3, 3)]
    ways = []
    for each in tables:
        everyone = range(each.one.of + each.other.of)
        total = each.one.right + each.other.right
        ways.append(
            [sum(one < each.one.of for one in dealt) for dealt in combinations(everyone, total)]
        )
    sums = [sum(both) for both in product(*ways)]
    found = compared(*tables)
    assert found.lower == pytest.approx(sum(each <= 3 for each in sums) / len(sums))
    assert found.higher == pytest.approx(sum(each >= 3 for each in sums) / len(sums))


def test_a_name_given_on_one_side_only_says_nothing():
    assert compare([stratum(0, 0, 3, 9), stratum(2, 5, 0, 0)]) is None
    both = compared(stratum(2, 5, 4, 5), stratum(0, 0, 9, 9))
    assert both == compared(stratum(2, 5, 4, 5))


def test_harder_names_on_one_side_are_no_difference():
    # 18 of 20 and 1 of 10 against 9 of 10 and 2 of 20: 63 points less of all, none in any name.
    found = compared(stratum(18, 20, 9, 10), stratum(1, 10, 2, 20))
    assert found.points == pytest.approx(0)
    assert found.either > 0.5


def test_the_limit_for_many_trials_is_near_the_exact_one(monkeypatch: pytest.MonkeyPatch):
    tables = [stratum(300, 400, 330, 400), stratum(210, 300, 205, 300)]
    exact = compared(*tables)
    monkeypatch.setattr(strata, "MOST_EXACT", 0)
    assert compared(*tables).lower == pytest.approx(exact.lower, rel=0.03)
    assert compared(*tables).higher == pytest.approx(exact.higher, rel=0.03)


def test_a_million_trials_are_no_trouble():
    found = compared(*[stratum(40_000, 50_000, 40_100, 50_000)] * 10)
    assert 0 < found.lower < 0.01 < found.higher
