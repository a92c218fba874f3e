"""A start that reads only so far back deals as if it had read all."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from drills.core.due import Due
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Trial
from drills.schedule import standings
from drills.schedule.horizon import days_that_decide
from tests.measures.made import MONDAY, PASSIVE, asked, trial


def stands(trials: list[Trial], settings: SpacingSettings, *, on: int) -> Due:
    today = (MONDAY + timedelta(days=on)).date()
    (due,) = standings([PASSIVE], trials, settings=settings, day_turns_at_hour=4, today=today)
    return due


def years_of_right_answers(
    settings: SpacingSettings, *, options: int, visits: int
) -> list[tuple[int, Trial]]:
    """One trial a visit, each on its due day, by what all the trials before it say."""
    given: list[tuple[int, Trial]] = []
    day = 0
    for _ in range(visits):
        of = asked(PASSIVE, options=options)
        given.append((day, trial("right", at=MONDAY + timedelta(days=day), of=of)))
        due = stands([each for _, each in given], settings, on=day)
        day = (due.day - MONDAY.date()).days
    return given


LADDERS = [
    SpacingSettings(),
    SpacingSettings(ladder_days=(1,), run_two_options=1),
    SpacingSettings(ladder_days=(1, 3, 365), run_two_options=4),
    SpacingSettings(ladder_days=(1, 2, 4, 8, 16, 32, 64, 128), run_two_options=20),
]


@pytest.mark.parametrize("options", [2, 4])
@pytest.mark.parametrize("settings", LADDERS, ids=lambda each: str(each.ladder_days))
def test_a_target_that_is_right_each_time_stands_where_all_its_records_put_it(
    settings: SpacingSettings, options: int
) -> None:
    rungs = len(settings.ladder_days)
    visits = rungs * max(settings.run_two_options, settings.run_four_options)
    given = years_of_right_answers(settings, options=options, visits=2 * visits + 20)
    back = days_that_decide(settings)
    top = 0
    for number, (day, _) in enumerate(given):
        before = [each for _, each in given[: number + 1]]
        seen = [each for at, each in given[: number + 1] if day - at <= back]
        whole, near = stands(before, settings, on=day), stands(seen, settings, on=day)
        assert (near.day, near.rung) == (whole.day, whole.rung)
        top = max(top, whole.rung)
    assert top == rungs - 1
    # The records do reach further back than is read.
    assert given[-1][0] > back


def test_eight_climbs_of_the_ladder_were_too_few() -> None:
    settings = SpacingSettings()
    given = years_of_right_answers(settings, options=2, visits=80)
    last = given[-1][0]
    near = [each for at, each in given if last - at <= 8 * sum(settings.ladder_days)]
    assert stands([each for _, each in given], settings, on=last).rung == 6
    assert stands(near, settings, on=last).rung < 6


def test_fitted_gaps_may_be_longer_and_so_is_the_time_looked_back() -> None:
    fitted = replace(SpacingSettings(), policy=SpacingPolicy.FITTED)
    assert days_that_decide(SpacingSettings()) == 7 * 5 * 56
    assert days_that_decide(fitted) == 3 * 7 * 5 * 56
