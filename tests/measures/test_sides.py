"""Oracles: the binomial table, and those of a difference of two shares; counts by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest
from statsmodels.stats.proportion import confint_proportions_2indep

from drills.core.kinds import Side
from drills.core.records import Trial
from drills.measures.accuracy import Share
from drills.measures.comparing import Difference
from drills.measures.missing import Lack, Missing
from drills.measures.sides import PlaceBias, choices_of, place_bias, side_difference
from tests.measures.draws import draws
from tests.measures.made import WAVE, asked, trial

LEFT, RIGHT = replace(asked(), side=Side.LEFT), replace(asked(), side=Side.RIGHT)


def some(count: int, of: Trial) -> list[Trial]:
    return [of] * count


@pytest.mark.parametrize(("top", "p"), [(15, 0.0414), (14, 0.1153)])
def test_one_place_chosen_more_often_than_the_other(top: int, p: float):
    # Twice the tail of any table of the binomial distribution with 20 trials.
    found = place_bias([(0, 0)] * top + [(1, 0)] * (20 - top), 2)
    assert isinstance(found, PlaceBias)
    assert (found.chosen, found.wanted, found.of) == ((top, 20 - top), (20, 0), 20)
    assert found.p == pytest.approx((p, p), abs=5e-5)


def test_too_few_choices_show_no_bias_and_places_beyond_the_last_are_refused():
    assert place_bias([], 2, fewest=0) == Missing(lack=Lack.TRIALS, have=0, need=1)
    assert place_bias([(0, 0)] * 4, 2) == Missing(lack=Lack.TRIALS, have=4, need=5)
    with pytest.raises(ValueError, match="2 and 0 are not both within 0 to 1"):
        place_bias([(2, 0)] * 5, 2)


def test_a_thousand_sets_of_choices_agree_with_scipy():
    for source in draws():
        places, of = source.randint(2, 4), source.randint(5, 60)
        lean = [source.random() + 0.1 for _ in range(places)]
        choices = [
            (source.choices(range(places), lean)[0], source.randrange(places)) for _ in range(of)
        ]
        found = place_bias(choices, places)
        assert isinstance(found, PlaceBias)
        for place, p in enumerate(found.p):
            count = sum(choice == place for choice, _ in choices)
            assert found.chosen[place] == count
            assert p == pytest.approx(binomtest(count, of, 1 / places).pvalue)


def test_first_choices_without_help_go_by_the_number_of_options():
    two, four = asked(), asked(options=4)
    found = choices_of(
        [
            trial(3, of=four),
            trial("right", of=two),
            trial("wrong", "right", of=two),
            trial("right", of=two, levels=(5,)),
            trial(2, target=WAVE),
            trial(skipped=True),
        ]
    )
    assert found == {2: [(0, 0), (1, 0)], 4: [(3, 0)]}
    assert list(found) == [2, 4]


def test_left_against_right():
    # Newcombe 1998, Stat Med 17:873, table II (b): 9/10 - 3/10.
    found = side_difference(
        some(9, trial("right", of=LEFT))
        + some(1, trial("wrong", of=LEFT))
        + some(3, trial("right", of=RIGHT))
        + some(7, trial("wrong", of=RIGHT))
        + some(2, trial(of=RIGHT, skipped=True))
        + some(3, trial(of=LEFT, ended=False))
        + some(4, trial("right"))
    )
    assert isinstance(found.accuracy, Difference)
    assert found.accuracy.points == pytest.approx(0.6)
    interval = found.accuracy.interval
    assert (interval.low, interval.high) == pytest.approx((0.1705, 0.8090), abs=5e-5)
    assert found.omitted_left == Share(right=0, of=10)
    assert found.omitted_right == Share(right=2, of=12)
    assert isinstance(found.omissions, Difference)
    assert found.omissions.points == pytest.approx(2 / 12)


def test_without_pictures_there_are_no_sides():
    found = side_difference([trial("right")])
    few = Missing(lack=Lack.TRIALS, have=0, need=5)
    assert (found.accuracy, found.omissions) == (few, few)
    assert found.omitted_left == found.omitted_right == Share(right=0, of=0)


def test_a_thousand_pairs_of_sides_agree_with_statsmodels():
    kinds = {
        side: {
            "right": trial("right", of=of),
            "wrong": trial("wrong", of=of),
            "": trial(of=of, skipped=True),
        }
        for side, of in ((Side.LEFT, LEFT), (Side.RIGHT, RIGHT))
    }
    for source in draws():
        made = {
            side: source.choices(["right", "wrong", ""], [5, 3, 1], k=source.randint(20, 50))
            for side in Side
        }
        found = side_difference([kinds[side][one] for side in Side for one in made[side]], fewest=1)
        left, right = made[Side.LEFT], made[Side.RIGHT]
        for difference, counts in (
            (
                found.accuracy,
                [
                    n
                    for one in (left, right)
                    for n in (one.count("right"), len(one) - one.count(""))
                ],
            ),
            (found.omissions, [n for one in (right, left) for n in (one.count(""), len(one))]),
        ):
            assert isinstance(difference, Difference)
            assert (difference.interval.low, difference.interval.high) == pytest.approx(
                confint_proportions_2indep(*counts, method="newcomb", compare="diff"), abs=1e-9
            )


@given(st.lists(st.integers(0, 3), min_size=5, max_size=40), st.permutations(range(4)))
def test_a_bias_goes_with_its_place(choices: list[int], moved: list[int]):
    here = place_bias([(choice, 0) for choice in choices], 4)
    there = place_bias([(moved[choice], 0) for choice in choices], 4)
    assert isinstance(here, PlaceBias)
    assert isinstance(there, PlaceBias)
    assert sum(here.chosen) == len(choices)
    assert all(0 <= p <= 1 for p in here.p)
    for place in range(4):
        assert there.chosen[moved[place]] == here.chosen[place]
        assert there.p[moved[place]] == here.p[place]
