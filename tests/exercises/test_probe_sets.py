"""Sets matched together: against trying everything, against another solver, and as asked."""

from __future__ import annotations

from collections import Counter
from itertools import combinations, product
from random import Random
from statistics import mean

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp

from drills.core.items import ItemSet
from drills.core.material import Material
from drills.core.plans import Probed
from drills.exercises.probes import BALANCED, exemplars_of
from drills.exercises.probes.choosing import as_row, each_once, references
from drills.exercises.probes.matching import (
    Row,
    choose_together,
    cost_together,
    difference,
    spread_of,
)
from drills.exercises.probes.sets import matched, practised_for
from drills.exercises.reserve import exemplar_key

ASKED = (
    Probed(construction="full-passive", item_set=ItemSet.PROBE),
    Probed(construction="object-cleft", item_set=ItemSet.RELATED),
    Probed(construction="subject-relative", item_set=ItemSet.CONTROL),
)
ITEMS = 20
LIKE = (spread_of([14.0, 12.0, 17.0, 13.0]), spread_of([4.4, 3.9, 4.1, 5.0]))


def rows_by_chance(rng: Random, count: int, name: str) -> list[Row]:
    return [
        Row(
            stratum="x",
            figures=(rng.uniform(8, 20), rng.gauss(4, 1)),
            tags=(f"{name}-{number}", rng.choice("pqrs")),
        )
        for number in range(count)
    ]


@pytest.mark.parametrize("anchored", [(True, True), (True, False)])
def test_two_sets_come_out_as_trying_all_pairs_of_sets_does(anchored: tuple[bool, bool]) -> None:
    exact = tried = 0
    for seed in range(20):
        rng = Random(seed)
        pools = [rows_by_chance(rng, 7, name) for name in ("one", "other")]
        every = list(
            product(combinations(range(len(pools[0])), 3), combinations(range(len(pools[1])), 3))
        )
        costs = sorted(cost_together(pools, LIKE, each, anchored) for each in every)
        taken = [{"x": 3}, {"x": 3}]
        found = choose_together(pools, LIKE, taken, Random(1), anchored=anchored, starts=20)
        reached = cost_together(pools, LIKE, found, anchored)
        # Never outside the best in a hundred of all choices, and mostly the best of all.
        assert costs[0] - 1e-9 <= reached <= costs[len(costs) // 100]
        exact += reached <= costs[0] + 1e-9
        tried += 1
    assert exact >= 0.9 * tried


def test_no_two_sets_share_a_row_with_the_same_tags() -> None:
    rows = rows_by_chance(Random(4), 12, "same")
    found = choose_together(
        [rows, rows, rows],
        LIKE,
        [{"x": 4}] * 3,
        Random(2),
        anchored=(True, False, False),
    )
    assert sorted(index for each in found for index in each) == list(range(12))


def distance(chosen: np.ndarray, like: np.ndarray, scale: np.ndarray) -> float:
    """Sum of standardised distances of means, over a fixed spread."""
    return float((abs(chosen.mean(axis=0) - like) / scale).sum())


def test_a_set_of_the_reserve_is_as_near_to_practice_as_another_solver_brings_it(
    material: Material,
) -> None:
    """Source: scipy.optimize.milp (HiGHS), by branch and bound, for three seconds.

    It chooses rows so that the summed standardised distances of the means are least; a linear
    stand-in for the sum of squares that the exchange search goes by.
    """
    reserve = each_once(exemplars_of("full-passive", material.lexicon, reserved=True))
    practised = exemplars_of("full-passive", material.lexicon, reserved=False)
    figures = np.array([as_row(each).figures for each in reserve])
    theirs = np.array([as_row(each).figures for each in practised])
    like, scale = theirs.mean(axis=0), theirs.std(axis=0, ddof=1)
    strata = Counter(each.stratum for each in practised)
    found = matched(ASKED[:1], material.lexicon, items=ITEMS, seed=1)["full-passive"].exemplars
    shares = Counter(each.stratum for each in found)
    assert set(shares) <= set(strata)

    rows, kinds = len(reserve), len(scale)
    # One 0-or-1 a row, then one distance a figure, each bounded below by plus and minus the mean.
    objective = np.concatenate([np.zeros(rows), np.ones(kinds)])
    limits = []
    for at in range(kinds):
        slope = (figures[:, at] - like[at]) / scale[at] / ITEMS
        for sign in (1, -1):
            row = np.concatenate([sign * slope, np.zeros(kinds)])
            row[rows + at] = -1
            limits.append(LinearConstraint(row, -np.inf, 0))
    for name, share in shares.items():
        row = np.concatenate([[float(e.stratum == name) for e in reserve], np.zeros(kinds)])
        limits.append(LinearConstraint(row, share, share))
    solved = milp(
        objective,
        constraints=limits,
        integrality=np.concatenate([np.ones(rows), np.zeros(kinds)]),
        bounds=Bounds(0, np.concatenate([np.ones(rows), np.full(kinds, np.inf)])),
        options={"time_limit": 3},
    )
    assert solved.x is not None
    best = distance(figures[solved.x[:rows] > 0.5], like, scale)
    mine = distance(np.array([as_row(each).figures for each in found]), like, scale)
    assert mine <= best + 0.02
    by_luck = mean(
        distance(figures[Random(seed).sample(range(rows), ITEMS)], like, scale)
        for seed in range(200)
    )
    assert mine < by_luck / 5


@pytest.mark.parametrize("seed", [1, 2])
def test_sets_of_one_plan_are_alike_and_share_no_pair(seed: int, material: Material) -> None:
    found = matched(ASKED, material.lexicon, items=ITEMS, seed=seed)
    practised = practised_for(ASKED, material.lexicon)
    wanted = references(practised)
    figures = {
        name: [spread_of(values) for values in zip(*map(figures_of, chosen), strict=True)]
        for name, chosen in ((name, each.exemplars) for name, each in found.items())
    }
    for one, other in combinations(figures.values(), 2):
        assert max(abs(difference(a, b)) for a, b in zip(one, other, strict=True)) <= BALANCED
    treated = figures["full-passive"]
    assert max(abs(difference(a, b)) for a, b in zip(treated, wanted, strict=True)) <= BALANCED
    keys = [
        exemplar_key(each.act, each.pair)
        for chosen in found.values()
        for each in (*chosen.exemplars, *chosen.spares)
    ]
    assert len(set(keys)) == len(keys)
    groups = [Counter(each.group for each in chosen.exemplars) for chosen in found.values()]
    assert groups[0] == groups[1] == groups[2]


def figures_of(exemplar: object) -> tuple[float, ...]:
    return as_row(exemplar).figures  # type: ignore[arg-type]


def test_what_is_left_out_is_not_chosen_again(material: Material) -> None:
    first = matched(ASKED[:1], material.lexicon, items=ITEMS, seed=3)["full-passive"]
    without = {("full-passive", exemplar_key(each.act, each.pair)) for each in first.exemplars}
    again = matched(ASKED[:1], material.lexicon, items=ITEMS, seed=3, without=without)
    keys = {exemplar_key(each.act, each.pair) for each in again["full-passive"].exemplars}
    assert not keys & {key for _, key in without}
