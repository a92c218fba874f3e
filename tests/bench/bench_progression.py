"""How often people are moved on too soon, and how often the ready wait: 200 simulated people.

python -m pytest tests/bench/bench_progression.py -s
"""

from __future__ import annotations

import os
from dataclasses import replace

import pytest

from drills.core.plans import ProgressionSettings
from tests.bench.promotions import Errors, courses, errors_of, told_ready
from tests.bench.schedule_world import World

PEOPLE = int(os.environ.get("DRILLS_BENCH_PEOPLE", "200"))
SPEEDS = {"as published": 0.0, "half": -0.7, "a quarter": -1.4}
# The criterion itself, and what a therapist would hardly mind or surely not want to miss.
BARS = ((0.80, 0.80), (0.75, 0.85), (0.70, 0.90))
SURE = (0, 50, 70, 90)


def told(errors: Errors) -> str:
    return (
        f"too soon {100 * errors.too_soon / max(1, errors.promoted):4.1f} % of {errors.promoted}, "
        f"late {100 * errors.late / max(1, errors.ready):4.1f} % of {errors.ready}"
    )


@pytest.mark.timeout(7200)
@pytest.mark.parametrize("name", SPEEDS)
def test_moving_on(name: str) -> None:
    print(f"\nlearning {name}, {PEOPLE} people of 11 constructions")
    world = World(speed=SPEEDS[name])
    found = [course for person in range(PEOPLE) for course in courses(world, person)]
    for sure in SURE:
        settings = replace(ProgressionSettings(), sure_percent=sure)
        with_told = [(course, told_ready(course, settings)) for course in found]
        for least, ready_from in BARS:
            errors = errors_of(with_told, least=least, ready_from=ready_from)
            print(
                f"  sure_percent {sure:2}: true chance below {least:.2f} or from "
                f"{ready_from:.2f}: {told(errors)}",
                flush=True,
            )
