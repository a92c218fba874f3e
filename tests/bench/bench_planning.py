"""How long a session takes to plan: 10,000 targets, ten years of history.

python -m pytest tests/bench/bench_planning.py -s

What is read of the history is what `days_that_decide` says, as the program does; reading it from
the disk and making the items are not counted here.
"""

from __future__ import annotations

import gc
import time
from datetime import timedelta
from random import Random

import pytest

from drills.core.items import Kind, Target
from drills.core.plans import BlockPlan, Plan, SpacingPolicy, SpacingSettings
from drills.schedule import days_that_decide, deal, standings
from tests.bench.schedule_world import MONDAY, trial_of

YEARS = 10
TIMES = 7
MOST_MS = 100
TARGETS = [
    Target(kind=Kind.MATCH, name=f"construction-{row:02d}", group=f"group-{column:03d}")
    for row in range(50)
    for column in range(200)
]


@pytest.mark.parametrize("policy", SpacingPolicy)
def test_a_session_is_planned_in_a_tenth_of_a_second(policy: SpacingPolicy) -> None:
    settings = SpacingSettings(policy=policy)
    back = min(365 * YEARS, days_that_decide(settings))
    rng = Random(1)
    trials = []
    for day in range(back, 0, -1):
        if rng.random() < 5 / 7:
            at = MONDAY - timedelta(days=day)
            for number in range(36):
                # Most of what is given is given often, and everything now and then.
                wide = rng.random() < 0.7
                target = TARGETS[rng.randrange(len(TARGETS) if wide else 300)]
                moment = at + timedelta(seconds=30 * number)
                trials.append(trial_of(target, rng.random() < 0.8, moment, len(trials)))
    plan = Plan(
        name="bench",
        version=1,
        locale="en-US",
        blocks=tuple(BlockPlan(kind=Kind.MATCH, names=("a",), trials=12) for _ in range(3)),
        spacing=settings,
    )
    blocks = [TARGETS[:3333], TARGETS[3333:6666], TARGETS[6666:]]
    # The records are there before a session is planned; to look through them for garbage is no
    # part of planning it.
    gc.collect()
    gc.freeze()
    spent = []
    for _ in range(TIMES):
        began = time.process_time()
        stand = standings(
            TARGETS, trials, settings=settings, day_turns_at_hour=4, today=MONDAY.date()
        )
        deal(plan, blocks, {due.target: due for due in stand}, today=MONDAY.date(), rng=Random(3))
        spent.append(1000 * (time.process_time() - began))
    gc.unfreeze()
    spent.sort()
    print(
        f"\n{policy.value}: {len(TARGETS)} targets, {len(trials)} trials of {back} days: "
        f"{spent[TIMES // 2]:.0f} ms in the middle of {TIMES}, {spent[0]:.0f} to {spent[-1]:.0f}"
    )
    assert spent[0] < MOST_MS
