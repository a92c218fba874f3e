"""Spacing over days. Run lengths are held against scipy's exact binomial test."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest

from drills.core.due import Due
from drills.core.gestures import Tick
from drills.core.items import ItemSet, Target
from drills.core.plans import SpacingSettings
from drills.core.records import Trial
from drills.schedule.rungs import run_needed
from drills.schedule.spacing import LadderGaps, standing, standings
from tests.measures.made import ACTIVE, MONDAY, PASSIVE, WAVE, asked, trial

SETTINGS = SpacingSettings()
TODAY = MONDAY.date()


def stand(*trials: Trial, target: Target = PASSIVE, today: date = TODAY) -> Due:
    return standing(target, trials, settings=SETTINGS, day_turns_at_hour=4, today=today)


def days_of(*days: str, target: Target = PASSIVE, options: int = 2) -> list[Trial]:
    """One practice day a word: `+` right alone, `-` wrong, `h` right after asking for help."""
    return [
        trial(
            "wrong" if mark == "-" else "right",
            at=MONDAY + timedelta(days=number, minutes=minute),
            of=asked(target, options=options),
            levels=(2,) if mark == "h" else (0,),
        )
        for number, day in enumerate(days)
        for minute, mark in enumerate(day)
    ]


def day(number: int) -> date:
    return TODAY + timedelta(days=number)


def test_a_target_never_met_is_due_today():
    due = stand()
    assert (due.day, due.rung, due.run, due.last) == (TODAY, -1, 0, None)
    assert due.reason == "New: not met yet."


def test_four_right_of_two_options_are_no_evidence_and_five_are():
    assert stand(*days_of("++++")).rung == -1
    fifth = stand(*days_of("+++++"))
    assert (fifth.rung, fifth.run, fifth.day) == (0, 5, day(1))


@pytest.mark.parametrize(("options", "needed"), [(2, 5), (3, 3), (4, 3)])
def test_the_run_asked_for_is_the_least_that_beats_guessing(options: int, needed: int):
    # scipy.stats.binomtest is the reference; the brief's figures: 5/5 at 1/2 p = .031, 3/3 at 1/4
    # p = .016.
    assert run_needed(trial("right", of=asked(options=options)), SETTINGS) == needed
    chance = 1 / options
    assert binomtest(needed, needed, chance, alternative="greater").pvalue < 0.05
    assert binomtest(needed - 1, needed - 1, chance, alternative="greater").pvalue > 0.05


def test_four_pictures_that_words_narrow_to_two_ask_for_the_run_of_two():
    assert run_needed(trial("right", of=asked(options=4, effective_k=2)), SETTINGS) == 5


def test_one_easy_option_count_in_a_run_does_not_lower_what_the_run_needs():
    mixed = [trial("right", of=asked(options=2))] + [
        trial("right", of=asked(options=4)) for _ in range(3)
    ]
    assert stand(*mixed).rung == -1


def test_the_run_may_grow_over_days():
    due = stand(*days_of("++", "++", "+"), today=day(2))
    assert (due.rung, due.run, due.day) == (0, 5, day(3))


def test_a_climb_asks_for_a_new_run_each_time():
    assert stand(*days_of("+++++", "++++"), today=day(1)).rung == 0
    assert stand(*days_of("+++++", "+++++"), today=day(1)).rung == 1


def test_massed_successes_of_one_day_climb_one_rung_only():
    assert stand(*days_of("+" * 25)).rung == 0


def test_a_gesture_scored_by_a_person_climbs_with_each_good_day():
    good = [trial(3, at=MONDAY + timedelta(days=step), target=WAVE) for step in range(7)]
    gaps = []
    for number in range(1, 8):
        due = stand(*good[:number], target=WAVE, today=day(number - 1))
        assert due.last is not None
        gaps.append((due.day - due.last).days)
    assert gaps == [1, 2, 4, 7, 14, 28, 56]


def test_the_ladder_ends_on_its_last_rung():
    good = [trial(3, at=MONDAY + timedelta(days=step), target=WAVE) for step in range(9)]
    due = stand(*good, target=WAVE, today=day(8))
    assert (due.rung, due.day) == (6, day(8 + 56))


def test_a_failure_goes_two_rungs_back_and_once_a_day_only():
    climbed = days_of("+++++", "+++++", "+++++", "+++++", "+++++", "----")
    before = stand(*climbed[:25], today=day(4))
    after = stand(*climbed, today=day(5))
    assert (before.rung, after.rung, after.run) == (4, 2, 0)
    assert after.day == day(5 + 4)


def test_a_failure_never_goes_below_the_first_rung():
    assert stand(*days_of("+++++", "-"), today=day(1)).rung == 0
    assert stand(*days_of("-", "-"), today=day(1)).rung == -1


def test_right_after_asking_for_help_ends_the_run_and_takes_no_rung():
    due = stand(*days_of("+++++", "+++++", "++h"), today=day(2))
    assert (due.rung, due.run) == (1, 0)
    assert due.reason == "Not yet due: last right with help today."


def test_the_later_right_answer_does_not_heal_a_first_wrong_one():
    assert stand(*days_of("++++"), trial("wrong", "right")).run == 0


def test_probes_skipped_trials_and_painful_tries_leave_the_schedule_alone():
    quiet = (
        trial("wrong", of=asked(item_set=ItemSet.PROBE)),
        trial(skipped=True),
        trial("wrong", target=ACTIVE),
    )
    assert stand(*quiet).last is None
    assert stand(trial(0, target=WAVE, ticks=(Tick.BODY,)), target=WAVE).last is None


def test_a_session_after_midnight_belongs_to_the_day_before():
    late = trial("right", at=MONDAY.replace(hour=2))
    assert stand(late).last == day(-1)


def test_a_trial_from_a_clock_that_ran_ahead_counts_as_today():
    due = stand(trial("right", at=MONDAY + timedelta(days=400)))
    assert (due.last, due.day) == (TODAY, day(1))


def test_the_reason_is_one_plain_sentence():
    three = days_of("+++")
    assert stand(*three, today=day(7)).reason == (
        "Due: last right alone 7 days ago, third in a row."
    )
    assert stand(*days_of("++"), today=day(1)).reason == (
        "Due: last right alone yesterday, second in a row."
    )
    assert stand(*days_of("+")).reason == "Not yet due: last right alone today."
    assert stand(*three).reason == "Not yet due: last right alone today, third in a row."
    assert stand(*days_of("+-"), today=day(1)).reason == (
        "Due: last missed yesterday, so it comes sooner."
    )


def test_standings_keep_the_order_asked_for_and_name_each_target_once():
    dues = standings(
        [WAVE, PASSIVE, WAVE], days_of("+"), settings=SETTINGS, day_turns_at_hour=4, today=TODAY
    )
    assert [due.target for due in dues] == [WAVE, PASSIVE]
    assert [due.last for due in dues] == [None, TODAY]


marks = st.lists(st.text("+-h", min_size=1, max_size=8), min_size=1, max_size=10)


@given(marks)
def test_rung_run_and_day_stay_in_bounds_whatever_happened(days: list[str]):
    due = stand(*days_of(*days), today=day(len(days) - 1))
    assert -1 <= due.rung < len(SETTINGS.ladder_days)
    assert 0 <= due.run <= sum(map(len, days))
    assert due.last == day(len(days) - 1)
    assert due.day - due.last == timedelta(days=LadderGaps(settings=SETTINGS).days(due.rung))
    assert due.reason.endswith(".")


@given(marks)
def test_one_more_right_day_never_brings_a_target_sooner(days: list[str]):
    before = stand(*days_of(*days), today=day(len(days)))
    after = stand(*days_of(*days, "+"), today=day(len(days)))
    assert after.rung >= before.rung
    assert after.day >= before.day


@given(marks)
def test_one_more_failed_day_never_makes_the_gap_longer(days: list[str]):
    before = stand(*days_of(*days), today=day(len(days)))
    after = stand(*days_of(*days, "-"), today=day(len(days)))
    assert after.rung <= before.rung
    assert after.run == 0
