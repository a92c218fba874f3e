"""What the schedule asks of a person over weeks, held in the simulated world of the benchmark."""

from __future__ import annotations

from collections import Counter
from datetime import date, datetime, timedelta
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.core.items import Target
from drills.core.plans import SpacingPolicy
from tests.bench.schedule_world import (
    MONDAY,
    Chooser,
    Learner,
    Ours,
    SameList,
    World,
    felt_seconds,
    practise,
)

POLICIES = tuple(SpacingPolicy)


class Watched:
    """A chooser, and what it chose on which day."""

    def __init__(self, chooser: Chooser) -> None:
        self._chooser = chooser
        self.sessions: list[tuple[date, tuple[Target, ...]]] = []

    def session(self, day: date, trials: int) -> tuple[Target, ...]:
        chosen = tuple(self._chooser.session(day, trials))
        self.sessions.append((day, chosen))
        return chosen

    def answered(self, target: Target, right: bool, at: datetime) -> None:
        self._chooser.answered(target, right, at)


def weeks_of(
    world: World, policy: SpacingPolicy, person: int, *, away: range = range(0)
) -> Watched:
    """Practice in `world`; none on the days of `away`, counted from the first Monday."""
    watched = Watched(Ours(world, Random(person), policy))
    rng, learner = Random(f"days {person}"), Learner(world, Random(f"person {person}"))
    for week in range(world.weeks):
        for weekday in range(world.sessions_per_week):
            if 7 * week + weekday in away or rng.random() < world.missed:
                continue
            at = MONDAY + timedelta(weeks=week, days=weekday)
            for target in watched.session(at.date(), world.trials_per_session):
                at += timedelta(seconds=30)
                right = learner.answer(target, felt_seconds(at))
                learner.practise(target, felt_seconds(at))
                watched.answered(target, right, at)
    return watched


WORLDS = st.builds(
    World,
    constructions=st.integers(1, 8),
    groups=st.integers(1, 6),
    trials_per_session=st.integers(4, 30),
    sessions_per_week=st.integers(2, 7),
    weeks=st.just(3),
    missed=st.sampled_from([0.0, 0.15, 0.5]),
)


@settings(deadline=None, max_examples=12)
@given(WORLDS, st.sampled_from(POLICIES), st.integers(0, 999))
def test_no_day_asks_more_trials_than_are_prescribed(
    world: World, policy: SpacingPolicy, person: int
) -> None:
    for _, chosen in weeks_of(world, policy, person).sessions:
        assert len(chosen) == world.trials_per_session


@settings(deadline=None, max_examples=12)
@given(WORLDS, st.sampled_from(POLICIES), st.integers(0, 999))
def test_every_prescribed_target_is_met_within_twice_the_sessions_it_takes_to_give_each(
    world: World, policy: SpacingPolicy, person: int
) -> None:
    # New ones keep a place in four while old ones are due, and ends and runs of a name cost some.
    sessions = weeks_of(world, policy, person).sessions
    places = max(1, world.trials_per_session // 4)
    needed = 1 + 2 * -(-len(world.targets) // places)
    if len(sessions) >= needed:
        met = {target for _, chosen in sessions[:needed] for target in chosen}
        assert met == set(world.targets)


@pytest.mark.parametrize("policy", POLICIES)
@pytest.mark.parametrize("person", range(3))
def test_a_week_away_leaves_no_pile_behind(policy: SpacingPolicy, person: int) -> None:
    """Four weeks in, a week is missed; within two weeks nothing waits longer than before it."""
    world = World(missed=0.0, weeks=9)
    watched = weeks_of(world, policy, person, away=range(28, 35))

    def longest_wait(first: int, last: int) -> int:
        """Days since the last giving, at worst, over targets and days `first` to `last`."""
        waits = []
        for day in range(first, last):
            today = MONDAY.date() + timedelta(days=day)
            newest = {
                target: at for at, chosen in watched.sessions for target in chosen if at <= today
            }
            waits += [(today - at).days for at in newest.values()]
        return max(waits)

    sizes = Counter(len(chosen) for _, chosen in watched.sessions)
    assert set(sizes) == {world.trials_per_session}
    assert longest_wait(28, 35) > 7
    # The longest gap of a target that stands well may still run; 14 days is the rung reached by
    # then, and a weekend.
    assert longest_wait(49, 63) <= max(longest_wait(14, 28), 14) + 2


@pytest.mark.parametrize("policy", POLICIES)
def test_the_schedule_is_ahead_of_the_same_list_every_day(policy: SpacingPolicy) -> None:
    """The benchmark in small: more is prescribed than a session holds."""
    world = World(constructions=8, groups=8, trials_per_session=24, sessions_per_week=4, weeks=6)
    later = felt_seconds(MONDAY + timedelta(weeks=world.weeks + 12))
    ahead = []
    for person in range(6):
        left = []
        for chooser in (
            Ours(world, Random(person), policy),
            SameList(world, Random(person)),
        ):
            learner = Learner(world, Random(f"person {person}"))
            practise(world, learner, chooser, Random(f"days {person}"))
            left.append(learner.mean_success(later))
        ahead.append(left[0] - left[1])
    assert sum(ahead) / len(ahead) > 0.02
