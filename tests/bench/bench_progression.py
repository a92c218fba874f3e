"""How often people are moved on too soon, and how often the ready wait: 200 simulated people.

python -m pytest tests/bench/bench_progression.py -s

Wanted: at most 10 % of those moved on below the true criterion, and at most 10 % of the ready
waiting more than three sessions. No rule can tell 79 of 100 from 80, so beside the strict line
stands the smallest zone around it within which neither error counts and both are 10 % or less.
Intervals are 95 %, by drawing people anew (their constructions are not independent). The rule of
the newest sessions alone stands beside the program's.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import replace

import numpy as np
import pytest

from drills.core.plans import ProgressionSettings
from tests.bench.promotions import (
    Course,
    Errors,
    courses,
    errors_of,
    told_by_share,
    told_ready,
)
from tests.bench.schedule_world import World

PEOPLE = int(os.environ.get("DRILLS_BENCH_PEOPLE", "200"))
SPEEDS = {"as published": 0.0, "half": -0.7, "a quarter": -1.4}
CRITERION = 0.80
ZONES = [step / 100 for step in range(31)]
SURE = (50, 65, 80)
MOST = 0.10
RULES: dict[str, Callable[[Course, ProgressionSettings], int | None]] = {
    "all sessions and their rise": told_ready,
    "newest sessions alone": told_by_share,
}

Told = list[tuple[Course, int | None]]


def rate(wrong: float, of: float) -> float:
    return wrong / max(1.0, of)


def errors_at(found: Sequence[Told], zone: float) -> list[Errors]:
    """One a person."""
    return [errors_of(each, least=CRITERION - zone, ready_from=CRITERION + zone) for each in found]


def told(errors: Sequence[Errors]) -> str:
    rng = np.random.default_rng(1)
    said = []
    for name, wrong, of in (("too soon", "too_soon", "promoted"), ("late", "late", "ready")):
        counts = np.array([[getattr(each, wrong), getattr(each, of)] for each in errors])
        drawn = counts[rng.integers(0, len(counts), (2000, len(counts)))].sum(axis=1)
        low, high = np.quantile(drawn[:, 0] / np.maximum(1, drawn[:, 1]), (0.025, 0.975))
        wrongs, ofs = counts.sum(axis=0)
        said.append(
            f"{name} {100 * rate(wrongs, ofs):.1f} % ({100 * low:.1f} to {100 * high:.1f}) of {ofs}"
        )
    return ", ".join(said)


def smallest_zone(found: Sequence[Told]) -> float | None:
    for zone in ZONES:
        both = errors_at(found, zone)
        soon = rate(sum(each.too_soon for each in both), sum(each.promoted for each in both))
        late = rate(sum(each.late for each in both), sum(each.ready for each in both))
        if max(soon, late) <= MOST:
            return zone
    return None


@pytest.mark.timeout(7200)
@pytest.mark.parametrize("name", SPEEDS)
def test_moving_on(name: str) -> None:
    print(f"\nlearning {name}, {PEOPLE} people of 11 constructions")
    world = World(speed=SPEEDS[name])
    people = [courses(world, person) for person in range(PEOPLE)]
    for rule, ready in RULES.items():
        # All of one course in turn, so that what is reckoned once serves each setting.
        settings = [replace(ProgressionSettings(), sure_percent=sure) for sure in SURE]
        ready_at = [
            [(course, [ready(course, each) for each in settings]) for course in person]
            for person in people
        ]
        for place, sure in enumerate(SURE):
            found = [[(course, at[place]) for course, at in person] for person in ready_at]
            zone = smallest_zone(found)
            print(
                f"  {rule}, sure_percent {sure}: {told(errors_at(found, 0))}; both 10 % or less "
                + ("nowhere" if zone is None else f"beyond {CRITERION:.2f} -+ {zone:.2f}"),
                flush=True,
            )
