"""How long a session takes to plan: 10,000 targets, ten years of history.

python -m pytest tests/bench/bench_planning.py -s

What is read of the history is what `days_that_decide` says, as the program does; reading it from
the disk and making the items are not counted here. Two figures for each policy: all of it folded
anew, as after a change of the spacing, and gone on with from what was put by a week ago, as the
program does on any other day.
"""

from __future__ import annotations

import gc
import json
import time
from collections.abc import Callable, Mapping
from datetime import timedelta
from random import Random
from typing import Any

import pytest

from drills.core.due import Due
from drills.core.items import Kind, Target
from drills.core.plans import BlockPlan, Plan, SpacingPolicy, SpacingSettings
from drills.core.records import Trial
from drills.schedule import days_that_decide, deal, standings
from drills.schedule.rungs import Rungs
from drills.schedule.spacing import standings_of
from tests.bench.schedule_world import MONDAY, trial_of

YEARS = 10
TIMES = 7
MOST_MS = 100
TARGETS = [
    Target(kind=Kind.MATCH, name=f"construction-{row:02d}", group=f"group-{column:03d}")
    for row in range(50)
    for column in range(200)
]


def put_by(trials: list[Trial], settings: SpacingSettings) -> Mapping[str, Any]:
    """All but the last week, as the checkpoint keeps it."""
    rungs = Rungs(settings, day_turns_at_hour=4, today=MONDAY.date())
    rungs.take([trial for trial in trials if trial.started_at < MONDAY - timedelta(days=7)])
    kept = rungs.put_by()
    assert kept is not None
    return json.loads(json.dumps(kept))


def gone_on(
    kept: Mapping[str, Any], newest: list[Trial], settings: SpacingSettings
) -> tuple[Due, ...]:
    rungs = Rungs(settings, day_turns_at_hour=4, today=MONDAY.date())
    rungs.go_on_from(kept)
    rungs.take(newest)
    return standings_of(rungs, TARGETS, settings=settings, today=MONDAY.date())


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
    kept = put_by(trials, settings)
    newest = [trial for trial in trials if trial.started_at >= MONDAY - timedelta(days=7)]
    ways: Mapping[str, Callable[[], tuple[Due, ...]]] = {
        "folded anew": lambda: standings(
            TARGETS, trials, settings=settings, day_turns_at_hour=4, today=MONDAY.date()
        ),
        "gone on with": lambda: gone_on(kept, newest, settings),
    }
    assert ways["folded anew"]() == ways["gone on with"]()
    least = {}
    for way, stand in ways.items():
        spent = []
        for _ in range(TIMES):
            began = time.process_time()
            dues = {due.target: due for due in stand()}
            deal(plan, blocks, dues, today=MONDAY.date(), rng=Random(3))
            spent.append(1000 * (time.process_time() - began))
        spent.sort()
        least[way] = spent[0]
        print(
            f"\n{policy.value}, {way}: {len(TARGETS)} targets, {len(trials)} trials of {back} "
            f"days: {spent[TIMES // 2]:.0f} ms in the middle of {TIMES}, "
            f"{spent[0]:.0f} to {spent[-1]:.0f}"
        )
    gc.unfreeze()
    assert max(least.values()) < MOST_MS, least
