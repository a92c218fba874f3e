"""Each trouble that a profile plants shows in the records, by the measures of the program."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from random import Random

import pytest
from scipy.stats import binomtest

from drills.core.items import Item, Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import latest_trials
from drills.core.words import Band
from drills.exercises import make_items, targets_of
from drills.measures import detection, dose
from drills.measures.sides import choices_of
from drills.rehearsal.patient import Patient
from tests.rehearsal.test_weeks import KNOWS_NOTHING, PROFILES, STARTER, rehearsed

KNOWS_ALL = replace(KNOWS_NOTHING, knows=dict.fromkeys(KNOWS_NOTHING.knows, 1.0))
DAY = date(2026, 1, 5)
ACTIVES = BlockPlan(kind=Kind.MATCH, names=("active",), trials=12)
GRID = BlockPlan(kind=Kind.QUESTION, names=("grid",), trials=16)
YES_NO = BlockPlan(kind=Kind.QUESTION, names=("yes-no:active",), trials=12)


def plan(*blocks: BlockPlan) -> Plan:
    return Plan(name="One trouble", version=1, locale="en-US", blocks=blocks)


def items(material: Material, block: BlockPlan, count: int) -> tuple[Item, ...]:
    targets = targets_of(block, material)
    asked = [targets[number % len(targets)] for number in range(count)]
    return make_items(asked, options=2, material=material, rng=Random(3))


def test_who_likes_yes_says_yes_to_what_is_not_understood(material: Material) -> None:
    profile = replace(KNOWS_NOTHING, yes_bias=0.9)
    records = rehearsed(material, profile, weeks=1, seed=4, plan=plan(YES_NO))
    found = detection.count(latest_trials(records.entries()))
    assert found is not None
    yes, of = found.hits + found.false_alarms, found.true + found.false
    # 95 of 100: nine in ten, and half of the rest.
    assert binomtest(yes, of, 0.95).pvalue > 0.001
    assert found.criterion < 0


@pytest.mark.parametrize(("side", "left"), [(Side.LEFT, 0), (Side.RIGHT, 1)])
def test_a_side_that_is_never_seen_is_never_chosen(
    material: Material, side: Side, left: int
) -> None:
    profile = replace(KNOWS_NOTHING, neglected=side, neglect=1.0)
    records = rehearsed(material, profile, weeks=1, seed=5, plan=plan(ACTIVES))
    # With two options; help may take one away, so first answers without help alone.
    trials = [
        each
        for each in latest_trials(records.entries())
        if each.first is not None and each.first.cue_level == 0
    ]
    chosen = [choice for choice, _ in choices_of(trials)[2]]
    assert len(chosen) > 20
    assert set(chosen) == {1 - left}


def test_who_guesses_is_right_half_the_time_whatever_is_known(material: Material) -> None:
    records = rehearsed(
        material, replace(KNOWS_ALL, guessing=1.0), weeks=1, seed=6, plan=plan(ACTIVES)
    )
    trials = [
        each
        for each in latest_trials(records.entries())
        if each.first is not None and each.first.cue_level == 0
    ]
    right = sum(each.unaided_right for each in trials)
    assert binomtest(right, len(trials), 0.5).pvalue > 0.001


def test_what_was_learned_fades_by_a_power_of_the_days(material: Material) -> None:
    (item,) = items(material, ACTIVES, 1)
    for forgetting, kept in ((0.0, True), (0.6, False)):
        profile = replace(KNOWS_NOTHING, learning=0.1, forgetting=forgetting)
        patient = Patient(profile, material.lexicon, Random(1))
        patient.sits(on=DAY, tiredness=1)
        before = patient.share_understood(item, 0)
        for _ in range(20):
            patient.learn(item)
        learned = patient.share_understood(item, 0)
        assert learned > before + 0.5
        patient.sits(on=DAY + timedelta(days=27), tiredness=1)
        # 20 trials after 27 days count as 20 * 28 ** -0.6 = 2.7: 1 - exp(-0.27) = 0.24.
        expected = learned if kept else 0.237
        assert patient.share_understood(item, 0) == pytest.approx(expected, abs=0.005)


def test_a_point_of_tiredness_takes_its_share(material: Material) -> None:
    (item,) = items(material, ACTIVES, 1)
    patient = Patient(replace(KNOWS_ALL, fading=0.25), material.lexicon, Random(1))
    patient.sits(on=DAY, tiredness=3)
    assert patient.share_understood(item, 0) == pytest.approx(0.75**2)


def test_rare_words_are_harder_and_everyday_words_are_not(material: Material) -> None:
    patient = Patient(replace(KNOWS_ALL, rare_words=0.4), material.lexicon, Random(1))
    shares = {band: set[float]() for band in Band}
    for item in items(material, GRID, 24):
        band = Band.RARE if item.level.startswith(Band.RARE.value) else Band.EVERYDAY
        shares[band].add(round(patient.share_understood(item, 0), 6))
    assert shares == {Band.RARE: {0.4}, Band.EVERYDAY: {1.0}}


def test_who_misses_every_day_leaves_no_records(material: Material) -> None:
    profile = replace(KNOWS_ALL, missed=1.0)
    assert not rehearsed(material, profile, weeks=1, seed=1, plan=plan(ACTIVES)).entries()


def test_the_content_has_a_profile_for_each_trouble() -> None:
    profiles = PROFILES.values()
    for trouble in ("forgetting", "fading", "guessing", "yes_bias", "neglect", "first_noun"):
        assert any(getattr(profile, trouble) > 0 for profile in profiles), trouble
    assert any(profile.rare_words < 1 for profile in profiles)
    assert any(profile.missed > 0.3 for profile in profiles)


@pytest.mark.parametrize("name", sorted(PROFILES))
def test_no_session_of_the_starter_plan_runs_a_tenth_over_its_minutes(
    material: Material, name: str
) -> None:
    records = rehearsed(material, PROFILES[name], weeks=1, seed=8)
    minutes = [each.minutes for each in dose.sittings(records.entries(), day_turns_at_hour=4)]
    assert minutes
    assert max(minutes) <= 1.1 * STARTER.dose.minutes_per_session, minutes
