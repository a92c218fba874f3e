"""Each trouble that a profile plants shows in the records, by the measures of the program."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from random import Random

import pytest
from scipy.stats import binomtest

from drills.core.gestures import Tick
from drills.core.items import Item, Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, SessionRules
from drills.core.records import Observation, latest_trials
from drills.core.words import Band
from drills.exercises import make_items, targets_of
from drills.measures import detection, dose, perseveration
from drills.measures.agreement import compare_scores
from drills.measures.missing import Missing
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


def unruled(*blocks: BlockPlan) -> Plan:
    """No rule changes the block after old answers."""
    rules = SessionRules(errors_to_full_help=0, errors_to_easier=0, perseverations_to_change=0)
    return replace(plan(*blocks), session_rules=replace(rules, fall_points=0, slower_times=0))


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


def test_what_wears_off_comes_back_after_a_rest(material: Material) -> None:
    (item,) = items(material, ACTIVES, 1)
    patient = Patient(replace(KNOWS_ALL, wearing=0.1), material.lexicon, Random(1))
    patient.sits(on=DAY, tiredness=1)
    for trials in range(4):
        assert patient.share_understood(item, 0) == pytest.approx(0.9**trials)
        patient.learn(item)
    patient.sits(on=DAY, tiredness=1)
    assert patient.share_understood(item, 0) == 1


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


def test_a_place_that_is_always_liked_is_always_chosen(material: Material) -> None:
    profile = replace(KNOWS_ALL, place=2, place_liking=1.0)
    records = rehearsed(material, profile, weeks=1, seed=5, plan=plan(ACTIVES))
    chosen = [choice for choice, _ in choices_of(latest_trials(records.entries()))[2]]
    assert len(chosen) > 20
    assert set(chosen) == {1}


def test_who_says_old_words_again_does_so_oftener_than_chance(material: Material) -> None:
    words = BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=20, options=4)
    found = []
    for share in (0.0, 0.8):
        profile = replace(KNOWS_NOTHING, perseveration=share)
        records = rehearsed(material, profile, weeks=2, seed=5, plan=unruled(words))
        trials = latest_trials(records.entries())
        sessions = dict.fromkeys(trial.session for trial in trials)
        found.append(
            perseveration.perseveration(
                perseveration.responses_of(t for t in trials if t.session == session)
                for session in sessions
            )
        )
    assert not any(isinstance(each, Missing) for each in found)
    assert found[0].p > 0.01
    assert found[1].p < 0.001


def test_an_old_act_comes_in_place_of_the_gesture(material: Material) -> None:
    waves = BlockPlan(kind=Kind.GESTURE, names=("wave", "stop"), trials=10)
    records = rehearsed(
        material, replace(KNOWS_ALL, perseveration=1.0), weeks=1, seed=5, plan=unruled(waves)
    )
    old = perseveration.old_acts(latest_trials(records.entries()))
    assert old.of > 20
    assert old.right == old.of


def test_from_one_day_on_a_share_of_what_was_understood_is_lost(material: Material) -> None:
    (item,) = items(material, ACTIVES, 1)
    profile = replace(KNOWS_ALL, drop=0.5, drop_after_days=14)
    patient = Patient(profile, material.lexicon, Random(1), first=DAY)
    for days, share in ((0, 1.0), (13, 1.0), (14, 0.5), (30, 0.5)):
        patient.sits(on=DAY + timedelta(days=days), tiredness=1)
        assert patient.share_understood(item, 0) == pytest.approx(share)


def test_pain_leaves_the_gestures_out_and_new_signs_end_the_session(material: Material) -> None:
    waves = BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=4)
    for trouble, kinds in (("pain", {Kind.MATCH}), ("new_signs", set())):
        profile = replace(KNOWS_ALL, **{trouble: 1.0})
        records = rehearsed(material, profile, weeks=1, seed=5, plan=plan(ACTIVES, waves))
        told = [each for each in records.entries() if isinstance(each, Observation)]
        assert any(getattr(each, trouble) for each in told)
        assert {trial.asked.kind for trial in latest_trials(records.entries())} == kinds


def test_a_kind_caregiver_scores_higher_than_the_gesture_deserves(material: Material) -> None:
    (item,) = items(material, BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=1), 1)
    profile = replace(KNOWS_ALL, knows={"gesture": 0.4}, lenience=1.0)
    patient = Patient(profile, material.lexicon, Random(4))
    deserved = []
    perform = patient.perform

    def kept(item: Item, *, cue_level: int) -> tuple[int, tuple[Tick, ...]]:
        deserved.append(perform(item, cue_level=cue_level))
        return deserved[-1]

    patient.perform = kept  # type: ignore[method-assign]
    given = [patient.score(item, cue_level=0) for _ in range(40)]
    pairs = [(one, other) for (one, _), (other, _) in zip(given, deserved, strict=True)]
    assert all(one == min(3, other + 1) for one, other in pairs)
    found = compare_scores(pairs)
    assert found.lenience is not None
    assert found.lenience > 0.5


def test_a_clock_that_is_set_back_shows_in_the_records_and_not_in_the_waits(
    material: Material,
) -> None:
    profile = replace(KNOWS_ALL, clock_back=1.0)
    records = rehearsed(material, profile, weeks=1, seed=5, plan=plan(ACTIVES))
    entries = records.entries()
    sessions = {entry.session for entry in entries}
    back = {
        one.session
        for one, other in pairwise(entries)
        if one.session == other.session and other.at < one.at
    }
    assert back == sessions
    waits = [attempt.latency_ms for trial in latest_trials(entries) for attempt in trial.attempts]
    assert all(wait is not None and 0 < wait < 60_000 for wait in waits)


def test_the_content_has_a_profile_for_each_trouble() -> None:
    profiles = PROFILES.values()
    for trouble in (
        *("forgetting", "fading", "guessing", "yes_bias", "neglect", "first_noun"),
        *("place_liking", "perseveration", "drop", "pain", "new_signs", "lenience", "clock_back"),
    ):
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
