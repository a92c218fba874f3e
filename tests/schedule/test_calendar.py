"""The week to come, counted by hand."""

from __future__ import annotations

from datetime import timedelta
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.core.items import Kind
from drills.core.plans import BlockPlan, Dose, Plan, SittingSettings
from drills.schedule.calendar import pace_of, week_ahead
from tests.measures.made import MONDAY, PASSIVE, asked, trial
from tests.schedule.test_sitting import GRID, TODAY, due


def plan(trials: int, *, sessions: int = 5, minutes: int = 25, blocks: int = 1) -> Plan:
    return Plan(
        name="invented",
        version=1,
        locale="en-US",
        blocks=tuple(
            BlockPlan(kind=Kind.MATCH, names=("a",), trials=trials) for _ in range(blocks)
        ),
        dose=Dose(sessions_per_week=sessions, minutes_per_session=minutes),
        sitting=SittingSettings(rest_seconds=120),
    )


@pytest.mark.parametrize(("sessions", "days"), [(1, 1), (3, 3), (5, 5), (7, 7), (10, 7), (14, 7)])
def test_the_sessions_of_the_plan_are_spread_over_seven_days(sessions: int, days: int) -> None:
    found = week_ahead(plan(6, sessions=sessions), [GRID], {}, [], today=TODAY)
    assert len(found) == days
    assert sum(day.sessions for day in found) == sessions
    assert all(TODAY < day.day <= TODAY + timedelta(days=7) for day in found)


def test_without_records_a_day_takes_the_minutes_of_the_plan() -> None:
    for day in week_ahead(plan(10, blocks=3), [GRID] * 3, {}, [], today=TODAY):
        assert day.minutes == pytest.approx(25)
        assert not day.own_pace


def test_twenty_spans_of_this_person_replace_the_plans() -> None:
    # 40 seconds from trial to trial, and one long silence that says nothing.
    starts = [MONDAY + timedelta(seconds=40 * number) for number in range(21)]
    starts.append(starts[-1] + timedelta(hours=1))
    trials = [trial("right", at=at) for at in starts]
    assert pace_of(Kind.MATCH, trials[:20], plan(10)).own is False
    found = pace_of(Kind.MATCH, trials, plan(10))
    assert (found.seconds, found.own) == (40, True)
    assert pace_of(Kind.CLOZE, trials, plan(10)).own is False
    # 3 blocks of 10 trials and two rests of two minutes.
    (day, *_) = week_ahead(plan(10, blocks=3), [GRID] * 3, {}, trials, today=TODAY)
    assert day.minutes == pytest.approx(30 * 40 / 60 + 4)


def test_two_sessions_or_blocks_are_no_span() -> None:
    trials = [
        trial("right", at=MONDAY + timedelta(seconds=40 * number), session=f"{number}")
        for number in range(30)
    ]
    assert not pace_of(Kind.MATCH, trials, plan(10)).own


def test_what_is_due_and_has_no_place_is_put_off_with_its_reason() -> None:
    dues = {each: due(each, overdue=late) for each, late in zip(GRID[:3], (9, 6, 3), strict=True)}
    week = week_ahead(plan(2, sessions=7), [GRID[:3]], dues, [], today=TODAY)
    assert [target for target, _ in week[0].given] == GRID[:2]
    (put_off,) = week[0].put_off
    assert put_off.target == GRID[2]
    assert put_off.reason == (
        "Due for 4 days, and the 2 places of its block go to what is more overdue."
    )
    # The day after it has its place.
    assert GRID[2] in dict(week[1].given)


def test_what_was_never_met_is_told_so() -> None:
    (first, *_) = week_ahead(plan(2, sessions=7), [GRID], {}, [], today=TODAY)
    assert len(first.put_off) == 4
    assert all(each.reason.startswith("Not met yet, and the 2 places") for each in first.put_off)


@settings(deadline=None)
@given(st.integers(1, 20), st.integers(1, 14), st.integers(0, 99))
def test_each_day_is_full_and_nothing_is_given_and_put_off(
    trials: int, sessions: int, seed: int
) -> None:
    rng = Random(seed)
    dues = {each: due(each, overdue=rng.randint(-9, 9), run=rng.randint(0, 2)) for each in GRID[:4]}
    for day in week_ahead(plan(trials, sessions=sessions), [GRID], dues, [], today=TODAY):
        given = dict(day.given)
        assert sum(given.values()) == trials * day.sessions
        assert not set(given) & {each.target for each in day.put_off}
        assert all(each.reason.endswith(".") for each in day.put_off)


def test_a_week_ahead_does_not_change_what_is_known() -> None:
    dues = {GRID[0]: due(GRID[0], overdue=2)}
    before = dict(dues)
    week_ahead(plan(6), [GRID], dues, [trial("right", of=asked(PASSIVE))], today=TODAY)
    assert dues == before
