"""The truth of simulated patients is worked out exactly, and the digest's intervals hold it.

`tests/bench/bench_recovery.py` counts five hundred patients; these are some of them.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random
from statistics import fmean

import pytest
from scipy.stats import binomtest, chisquare

from drills.core.items import Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.rehearsal.patient import Patient
from tests.rehearsal.exact import chances_of, scores_of
from tests.rehearsal.recovery import NAMES, held, outcomes, random_profile, rehearse, told
from tests.rehearsal.test_troubles import DAY, GRID, KNOWS_ALL, YES_NO, items

PATIENTS = 6
TROUBLED = replace(
    KNOWS_ALL,
    knows=dict.fromkeys((*KNOWS_ALL.knows, "gesture"), 0.45),
    words=0.9,
    first_noun=0.6,
    guessing=0.2,
    fading=0.2,
    yes_bias=0.5,
    neglected=Side.LEFT,
    neglect=0.3,
    rare_words=0.6,
    place=2,
    place_liking=0.2,
    perseveration=0.2,
    lenience=0.3,
)


@pytest.mark.parametrize(
    "block",
    [
        BlockPlan(kind=Kind.MATCH, names=("full-passive",), trials=1),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=1),
        BlockPlan(kind=Kind.ACT_OUT, names=("object-cleft",), trials=1),
        YES_NO,
        GRID,
    ],
)
def test_the_chance_of_each_answer_is_what_comes_out_of_many_draws(
    block: BlockPlan, material: Material
) -> None:
    """By the chi-squared test (scipy)."""
    patient = Patient(TROUBLED, material.lexicon, Random(5))
    patient.sits(on=DAY, tiredness=2)
    for item in items(material, block, 3):
        patient.said(item, 0)
        chances = chances_of(patient, item)
        assert sum(chances.values()) == pytest.approx(1)
        drawn = Counter(patient.choose(item, cue_level=0, removed=frozenset()) for _ in range(4000))
        assert set(drawn) <= set(chances)
        seen = [drawn[option] for option in chances]
        assert chisquare(seen, [4000 * share for share in chances.values()]).pvalue > 0.0001


def test_the_chance_of_each_score_is_what_comes_out_of_many_draws(material: Material) -> None:
    (item,) = items(material, BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=1), 1)
    patient = Patient(TROUBLED, material.lexicon, Random(6))
    chances = scores_of(patient, item)
    drawn = Counter(patient.score(item, cue_level=0) for _ in range(4000))
    assert set(drawn) <= set(chances)
    seen = [drawn[score] for score in chances]
    assert chisquare(seen, [4000 * share for share in chances.values()]).pvalue > 0.0001


def test_the_chances_of_numbers_right_are_the_binomial_where_all_are_alike() -> None:
    """Binomial table, n = 10, p = .5: P(X >= 9) = .0107."""
    assert sum(outcomes([0.5] * 10)[9:]) == pytest.approx(0.0107, abs=5e-5)


def test_what_a_rule_begins_with_help_is_in_no_share_right_alone(material: Material) -> None:
    nobody = replace(random_profile(1, learning=False), knows=dict.fromkeys(NAMES, 0.0))
    digest, known = rehearse(nobody, material, seed=1)
    trials = [trial for trial, _ in known if trial.started_at.date() >= digest.first]
    # Nobody asks for help here, so what began with it did so by a rule.
    begun = [t for t in trials if t.first is not None and t.first.cue_level]
    assert len(begun) > 5
    assert all(trial.help_at_start == trial.attempts[0].cue_level for trial in begun)
    for line in digest.lines:
        own = [t for t in trials if t.attempts and t.asked.target.name == line.name]
        of_set = [t for t in own if t.asked.item_set is line.item_set]
        assert line.unaided.of == sum(t.attempts[0].cue_level == 0 for t in of_set)


@pytest.mark.parametrize("learning", [False, True])
def test_the_intervals_cover_the_truth_as_often_as_they_should(
    material: Material, *, learning: bool
) -> None:
    every = [
        each
        for number in range(1000, 1000 + PATIENTS)
        for each in held(
            *rehearse(random_profile(number, learning=learning), material, seed=number)
        )
    ]
    expected = fmean(each.expected for each in every)
    assert 0.93 <= expected <= 0.97
    covered = sum(each.is_covered for each in every)
    assert len(every) > 120
    assert binomtest(covered, len(every), expected).pvalue > 0.001, told(every)
