"""The quick fold against the same rules written plainly, and against itself put by half-way."""

from __future__ import annotations

import json
from datetime import date, timedelta
from random import Random

import pytest
from hypothesis import given
from hypothesis import settings as fewer
from hypothesis import strategies as st

from drills.core.gestures import Tick
from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Trial
from drills.schedule import standings
from drills.schedule.rungs import Rungs
from drills.schedule.spacing import standings_of
from tests.measures.made import MONDAY, asked, trial
from tests.schedule import former

TARGETS = [
    *(Target(kind=Kind.MATCH, name=name, group=group) for name in "ab" for group in "xyz"),
    Target(kind=Kind.GESTURE, name="wave"),
]
SETTINGS = st.builds(
    SpacingSettings,
    policy=st.sampled_from(SpacingPolicy),
    ladder_days=st.sampled_from([(1, 2, 4, 7, 14, 28, 56), (1,), (2, 5, 30)]),
    steps_back=st.integers(1, 3),
    run_two_options=st.integers(1, 3),
    run_three_options=st.integers(1, 3),
    run_four_options=st.integers(1, 2),
    fitted_least_recalls=st.sampled_from([1, 10, 60]),
)


def history(rng: Random, days: int, a_day: int) -> list[Trial]:
    """With help, probes, hindered gestures, nights, and a clock that goes back now and then."""
    trials = []
    at = MONDAY
    for _ in range(days):
        at += timedelta(days=rng.choice([1, 1, 1, 2, 5, 40, -3]))
        for number in range(a_day):
            target = rng.choice(TARGETS)
            item_set = ItemSet.PROBE if rng.random() < 0.1 else ItemSet.TREATED
            of = asked(target, options=rng.choice([2, 3, 4]), item_set=item_set)
            moment = at + timedelta(hours=rng.choice([0, 0, 9, 17]), seconds=30 * number)
            if target.kind is Kind.GESTURE:
                ticks = (Tick.BODY,) if rng.random() < 0.2 else ()
                trials.append(trial(rng.choice([0, 1, 2, 3]), of=of, at=moment, ticks=ticks))
                continue
            right = rng.random() < 0.75
            levels = (rng.choice([0, 0, 0, 2]),)
            trials.append(trial("right" if right else "wrong", of=of, at=moment, levels=levels))
    return trials


@fewer(max_examples=60, deadline=None)
@given(st.integers(0, 10**6), SETTINGS, st.integers(1, 60), st.integers(-20, 400))
def test_standings_are_those_of_the_rules_written_plainly(
    seed: int, settings: SpacingSettings, days: int, later: int
) -> None:
    trials = history(Random(seed), days, 6)
    today = trials[-1].started_at.date() + timedelta(days=later)
    how = {"settings": settings, "day_turns_at_hour": 4, "today": today}
    assert standings(TARGETS, trials, **how) == former.standings(TARGETS, trials, **how)


@pytest.mark.parametrize("seed", range(4))
def test_gaps_fitted_to_many_answers_are_those_of_the_whole_grid(seed: int) -> None:
    settings = SpacingSettings(policy=SpacingPolicy.FITTED, run_two_options=1)
    trials = history(Random(seed), 300, 6)
    how = {"settings": settings, "day_turns_at_hour": 4, "today": trials[-1].started_at.date()}
    assert "fitted to" in standings(TARGETS, trials, **how)[0].reason
    assert standings(TARGETS, trials, **how) == former.standings(TARGETS, trials, **how)


@fewer(max_examples=60, deadline=None)
@given(st.integers(0, 10**6), SETTINGS, st.integers(1, 60), st.integers(0, 400), st.floats(0, 1))
def test_what_is_put_by_and_gone_on_from_is_the_whole_fold(
    seed: int, settings: SpacingSettings, days: int, later: int, share: float
) -> None:
    trials = history(Random(seed), days, 6)
    cut = round(share * len(trials))
    newest = max((each.started_at for each in trials[:cut]), default=MONDAY).date()

    def rungs(today: date) -> Rungs:
        return Rungs(settings, day_turns_at_hour=4, today=today)

    before = rungs(newest)
    before.take(trials[:cut])
    kept = before.put_by()
    assert kept is not None
    today = newest + timedelta(days=later)
    after = rungs(today)
    after.go_on_from(json.loads(json.dumps(kept)))
    after.take(trials[cut:])
    whole = rungs(today)
    whole.take(trials)
    assert standings_of(after, TARGETS, settings=settings, today=today) == standings_of(
        whole, TARGETS, settings=settings, today=today
    )
    assert after.put_by() == whole.put_by()


def test_days_to_come_are_not_put_by_nor_is_a_later_day_gone_on_from() -> None:
    trials = history(Random(1), 10, 3)
    newest = max(each.started_at for each in trials).date()
    early = Rungs(SpacingSettings(), day_turns_at_hour=4, today=newest - timedelta(days=3))
    early.take(trials)
    assert early.put_by() is None
    late = Rungs(SpacingSettings(), day_turns_at_hour=4, today=newest)
    late.take(trials)
    kept = late.put_by()
    assert kept is not None
    with pytest.raises(ValueError, match="later day"):
        early.go_on_from(kept)
