"""A log fixed by hand; the definitions have no published worked example."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.gestures import Tick
from drills.core.records import CloseReason, Observation, SessionClosed, SessionOpened, Topic
from drills.core.sessions import session_seconds
from drills.measures.dose import (
    active_seconds,
    adherence,
    amount,
    cumulative_hours,
    hours_per_week,
    sittings,
)
from tests.measures.made import MONDAY, WAVE, trial


def opened(session: str, *, continues: str | None = None, days: int = 0) -> SessionOpened:
    return SessionOpened(
        session=session,
        at=MONDAY + timedelta(days=days),
        plan_name="invented",
        plan_version=1,
        program="0",
        content_hash="c0ffee",
        seed=1,
        continues=continues,
    )


def closed(session: str, reason: CloseReason = CloseReason.FINISHED) -> SessionClosed:
    return SessionClosed(session=session, at=MONDAY, reason=reason)


def test_a_trial_of_twenty_seconds_is_twenty_seconds():
    assert active_seconds(trial("right", seconds=20)) == 20


def test_each_wait_over_a_minute_is_cut_to_a_minute():
    # Two responses, at 100 s and 200 s: both waits are cut.
    assert active_seconds(trial("wrong", "right", seconds=200)) == 120
    assert active_seconds(trial("wrong", "right", seconds=80)) == 80


def test_a_clock_that_went_backwards_adds_nothing():
    gone_back = replace(trial("right"), started_at=MONDAY + timedelta(hours=1))
    assert active_seconds(gone_back) == 0


def test_what_was_gone_on_with_is_one_sitting():
    log = [
        opened("a"),
        trial("right", session="a", seconds=30),
        opened("b", continues="a"),
        trial("right", session="b", seconds=45),
        opened("c", continues="b"),
        trial("right", session="c", seconds=15),
        closed("c"),
    ]
    (sitting,) = sittings(log, day_turns_at_hour=4)
    assert sitting.sessions == ("a", "b", "c")
    assert (sitting.trials, sitting.active_minutes) == (3, 1.5)
    assert sitting.reason is CloseReason.FINISHED


def test_a_session_lasts_from_opening_to_closing_with_its_rests():
    log = [
        opened("a"),
        trial("right", session="a", at=MONDAY + timedelta(minutes=2), seconds=30),
        Observation(session="a", at=MONDAY + timedelta(minutes=5), topic=Topic.REST),
        trial("right", session="a", at=MONDAY + timedelta(minutes=7), seconds=30),
        replace(closed("a"), at=MONDAY + timedelta(minutes=10)),
    ]
    (sitting,) = sittings(log, day_turns_at_hour=4)
    assert (sitting.minutes, sitting.active_minutes) == (10, 1)
    # Broken off: to the last entry.
    assert session_seconds(log[:-1]) == 7.5 * 60


def test_a_session_left_open_over_night_is_not_a_night_long():
    log = [
        opened("a"),
        trial("right", session="a", seconds=30),
        replace(closed("a"), at=MONDAY + timedelta(hours=12)),
    ]
    assert session_seconds(log) == 30 + 600


def test_the_time_between_breaking_off_and_going_on_is_no_session():
    log = [
        opened("a"),
        trial("right", session="a", seconds=30),
        replace(opened("b", continues="a"), at=MONDAY + timedelta(minutes=9)),
        trial("right", session="b", at=MONDAY + timedelta(minutes=9), seconds=30),
    ]
    (sitting,) = sittings(log, day_turns_at_hour=4)
    assert sitting.minutes == 1


def test_a_clock_that_goes_back_and_entries_without_an_opening_make_no_minutes_of_their_own():
    assert session_seconds([]) == 0
    log = [
        trial("right", session="a", seconds=30),
        trial("right", session="a", at=MONDAY - timedelta(hours=1), seconds=30),
    ]
    assert session_seconds(log) == 30


def test_a_session_of_hindered_gestures_only_was_held():
    log = [opened("a")] + [trial(0, target=WAVE, ticks=(Tick.BODY,), session="a") for _ in range(4)]
    (sitting,) = sittings(log, day_turns_at_hour=4)
    assert sitting.trials == 4


def test_a_session_that_was_only_opened_is_none():
    log = [opened("a"), trial(session="a", skipped=True), closed("a")]
    assert sittings(log, day_turns_at_hour=4) == ()
    assert amount(()).sessions == 0


def test_a_session_broken_off_has_no_reason():
    (sitting,) = sittings([opened("a"), trial("right", session="a")], day_turns_at_hour=4)
    assert sitting.reason is None


def test_a_session_that_continues_one_outside_the_range_stands_alone():
    assert (
        len(
            sittings([opened("b", continues="a"), trial("right", session="b")], day_turns_at_hour=4)
        )
        == 1
    )


def test_trials_whose_opening_was_lost_are_still_a_sitting():
    (sitting,) = sittings([trial("right", session="a")], day_turns_at_hour=4)
    assert (sitting.day, sitting.trials) == (MONDAY.date(), 1)


def test_a_chain_that_bites_its_tail_still_ends():
    log = [
        opened("a", continues="b"),
        trial("right", session="a"),
        opened("b", continues="a"),
        trial("right", session="b"),
    ]
    assert sum(sitting.trials for sitting in sittings(log, day_turns_at_hour=4)) == 2


def test_amounts_are_by_practice_day_and_a_rewritten_trial_counts_once():
    first = trial("wrong", session="a", seconds=10, ended=False)
    log = [
        opened("a"),
        first,
        replace(first, at=MONDAY + timedelta(seconds=30), ended=True),
        trial("right", session="a", at=MONDAY + timedelta(hours=17), seconds=60),
        opened("b", days=2),
        trial("right", session="b", at=MONDAY + timedelta(days=2), seconds=30),
    ]
    found = amount(sittings(log, day_turns_at_hour=4))
    # A session belongs to the day on which it was opened, however late it goes on.
    assert found.minutes_by_day == {
        MONDAY.date(): 10.5,
        MONDAY.date() + timedelta(days=2): 0.5,
    }
    assert (found.active_minutes, found.days, found.sessions, found.trials) == (2.0, 2, 2, 3)


def test_adherence_is_capped_and_needs_a_prescription():
    assert adherence(3, 5) == pytest.approx(0.6)
    assert adherence(9, 5) == 1
    assert adherence(3, 0) is None


@given(st.floats(0, 4000), st.integers(1, 5))
def test_active_time_never_exceeds_the_clock_nor_a_minute_a_wait(seconds: float, responses: int):
    made = trial(*["wrong"] * responses, seconds=seconds)
    active = active_seconds(made)
    assert 0 <= active <= min(seconds, 60 * (responses + 1)) + 1e-3


def test_hours_a_week_go_by_the_days_that_were_there():
    assert hours_per_week(90, 7) == 1.5
    assert hours_per_week(60, 14) == 0.5
    assert hours_per_week(60, 0) is None


def test_hours_add_up_day_by_day_in_order():
    tuesday = MONDAY.date() + timedelta(days=1)
    assert cumulative_hours({tuesday: 30, MONDAY.date(): 60}) == {MONDAY.date(): 1, tuesday: 1.5}
    assert cumulative_hours({}) == {}


@given(st.dictionaries(st.dates(), st.floats(0, 600), max_size=20))
def test_hours_never_go_down_and_end_with_all_of_them(minutes):
    found = list(cumulative_hours(minutes).values())
    assert found == sorted(found)
    assert not minutes or found[-1] == pytest.approx(sum(minutes.values()) / 60)
