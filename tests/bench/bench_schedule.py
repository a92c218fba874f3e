"""What is still understood after practice, by what chose the practice: 200 simulated people.

    python -m pip install --editable '.[test,bench]'
    python -m pytest tests/bench/bench_schedule.py -s

The same people meet each way to choose, in worlds that `schedule_world` makes. Intervals are 95 %,
of the differences between pairs (Student's t). What could be reached stands beside it: right alone
by guessing only, without any practice, and by a chooser that knows each person's truth and takes
as many trials. Every difference of 12 weeks after is told with its interval.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from random import Random

import numpy as np
import pytest
from scipy.stats import t as student

from drills.core.items import Target
from drills.core.plans import SpacingPolicy
from tests.bench.schedule_world import (
    MONDAY,
    OPTIONS,
    Chooser,
    Knowing,
    Learner,
    NoPractice,
    Ours,
    SameList,
    World,
    felt_seconds,
    practise,
)

fsrs = pytest.importorskip("fsrs", reason="the scheduler beside ours is in the extra `bench`")

PEOPLE = int(os.environ.get("DRILLS_BENCH_PEOPLE", "200"))
WEEKS_AFTER = (0, 1, 4, 12)
WORLDS = {
    "starter plan, learning as published": World(),
    "half the speed of learning": World(speed=-0.7),
    "a quarter of the speed": World(speed=-1.4),
    "64 targets, 24 trials, 4 days a week": World(
        constructions=8, groups=8, trials_per_session=24, sessions_per_week=4
    ),
}
WANTED_POINTS = 10
POWERS = (0.25, 0.5, 1.0)


class Fsrs:
    """The scheduler of the `fsrs` package on the same targets: due, then new, then soonest due."""

    def __init__(self, world: World, rng: Random) -> None:
        self._scheduler = fsrs.Scheduler(
            enable_fuzzing=False, learning_steps=(), relearning_steps=()
        )
        self._cards = {
            target: fsrs.Card(card_id=number) for number, target in enumerate(world.targets)
        }
        self._seen: set[Target] = set()
        self._rng = rng

    def session(self, day: date, trials: int) -> Sequence[Target]:
        end = datetime(day.year, day.month, day.day, 23, 59, tzinfo=UTC)
        seen = sorted(self._seen, key=lambda target: (self._cards[target].due, str(target)))
        due = [target for target in seen if self._cards[target].due <= end]
        new = [target for target in self._cards if target not in self._seen]
        later = [target for target in seen if self._cards[target].due > end]
        queue = [*due, *new, *later]
        chosen = [queue[number % len(queue)] for number in range(trials)]
        self._rng.shuffle(chosen)
        return chosen

    def answered(self, target: Target, right: bool, at: datetime) -> None:
        self._seen.add(target)
        rating = fsrs.Rating.Good if right else fsrs.Rating.Again
        self._cards[target], _ = self._scheduler.review_card(self._cards[target], rating, at)


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """One person's chances, once for each of WEEKS_AFTER."""

    success: tuple[float, ...]
    understood: tuple[float, ...]


Maker = Callable[[World, Random, Learner], Chooser]
CHOOSERS: Mapping[str, Maker] = {
    "none": lambda *_: NoPractice(),
    "same list": lambda world, rng, _: SameList(world, rng),
    "ladder": lambda world, rng, _: Ours(world, rng, SpacingPolicy.LADDER),
    "fitted": lambda world, rng, _: Ours(world, rng, SpacingPolicy.FITTED),
    "fsrs": lambda world, rng, _: Fsrs(world, rng),
    # Ceilings: no program can see the truth that these go by.
    **{
        f"knowing {power}": lambda world, rng, learner, power=power: Knowing(
            world, rng, learner, power
        )
        for power in POWERS
    },
}


def outcome(world: World, make: Maker, person: int) -> Outcome:
    learner = Learner(world, Random(f"person {person}"))
    chooser = make(world, Random(f"chooser {person}"), learner)
    practise(world, learner, chooser, Random(f"days {person}"))
    end = MONDAY + timedelta(weeks=world.weeks)
    moments = [felt_seconds(end + timedelta(weeks=weeks)) for weeks in WEEKS_AFTER]
    return Outcome(
        success=tuple(learner.mean_success(at) for at in moments),
        understood=tuple(learner.mean_understood(at) for at in moments),
    )


def interval(differences: np.ndarray) -> tuple[float, float, float]:
    """Mean, and the ends of its 95 % interval."""
    mean = float(differences.mean())
    reach = float(student.ppf(0.975, len(differences) - 1) * differences.std(ddof=1))
    reach /= len(differences) ** 0.5
    return mean, mean - reach, mean + reach


def _print_attainable(found: Mapping[str, Sequence[Outcome]]) -> None:
    """Where the ladder lies between the same list and the best that knows the truth."""

    def less(one: str, other: str) -> tuple[float, float, float]:
        pairs = zip(found[one], found[other], strict=True)
        return interval(
            np.array([100 * (mine.success[-1] - theirs.success[-1]) for mine, theirs in pairs])
        )

    print(f"  guessing only: {100 / OPTIONS:.1f} right alone, 0.0 with guessing taken away")
    best = max(
        (name for name in found if name.startswith("knowing")),
        key=lambda name: less(name, "same list")[0],
    )
    for one, other in (
        ("same list", "none"),
        ("ladder", "none"),
        (best, "same list"),
        (best, "ladder"),
    ):
        mean, low, high = less(one, other)
        print(
            f"  {one} less {other}, success, 12 weeks after: "
            f"{mean:+.1f} points ({low:+.1f} to {high:+.1f})",
            flush=True,
        )
    share = less("ladder", "same list")[0] / less(best, "same list")[0]
    print(f"  of what knowing the truth would add to the same list, the ladder adds {share:.0%}")


@pytest.mark.timeout(7200)
@pytest.mark.parametrize("name", WORLDS)
def test_what_is_left_after_practice(name: str) -> None:
    world = WORLDS[name]
    print(f"\n{name}: {PEOPLE} people, weeks after the last practice: {WEEKS_AFTER}")
    found: dict[str, list[Outcome]] = {}
    for chooser, make in CHOOSERS.items():
        found[chooser] = [outcome(world, make, person) for person in range(PEOPLE)]
        means = np.array([each.success for each in found[chooser]]).mean(axis=0)
        understood = np.array([each.understood for each in found[chooser]]).mean(axis=0)
        print(
            f"  {chooser:12}",
            "right alone " + " ".join(f"{100 * mean:5.1f}" for mean in means),
            "| guessing taken away " + " ".join(f"{100 * mean:5.1f}" for mean in understood),
            flush=True,
        )
    _print_attainable(found)
    ahead = {}
    for ours in ("ladder", "fitted"):
        for other in ("same list", "fsrs"):
            for kind in ("success", "understood"):
                pairs = [
                    100 * (getattr(mine, kind)[-1] - getattr(theirs, kind)[-1])
                    for mine, theirs in zip(found[ours], found[other], strict=True)
                ]
                mean, low, high = interval(np.array(pairs))
                ahead[ours, other, kind] = low, high
                print(
                    f"  {ours} less {other}, {kind}, 12 weeks after: "
                    f"{mean:+.1f} points ({low:+.1f} to {high:+.1f})",
                    flush=True,
                )
    if world == World():
        low, high = ahead["ladder", "same list", "success"]
        met = "reached" if low >= WANTED_POINTS else "missed" if high < WANTED_POINTS else "open"
        print(f"  {WANTED_POINTS} points ahead of the same list every day: {met}")
        # What the program must hold in the world of the starter plan.
        assert low > 0
        assert ahead["ladder", "fsrs", "success"][1] >= 0
