"""What a session is dealt from: names in the plan's order, the same on every machine."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, Order, Plan
from drills.core.records import Trial
from drills.practice.dealing import open_targets, plan_targets, week_to_come
from tests.measures.made import MONDAY, asked, trial

CONTENT = Path(__file__).parents[2] / "content"
NAMES = ("full-passive", "active", "object-cleft")
PLAN = Plan(
    name="Ordered",
    version=1,
    locale="en-US",
    blocks=(BlockPlan(kind=Kind.MATCH, names=NAMES, trials=8),),
)
DEAL = """
from datetime import date
from pathlib import Path
from random import Random
from drills.catalogue import load, read_plan
from drills.practice.dealing import plan_targets
from drills.schedule import deal
from drills.schedule import standings
import sys
content = Path(sys.argv[1])
material, plan = load(content, locale="en-US"), read_plan(content / "plans" / "starter.toml")
targets = plan_targets(plan, material)
dues = standings([each for own in targets for each in own], [], settings=plan.spacing,
                 day_turns_at_hour=4, today=date(2026, 11, 27))
for block in deal(plan, targets, {due.target: due for due in dues}, today=date(2026, 11, 27),
                  rng=Random(7)):
    print(*block.targets, sep="\\n")
"""


def in_order(order: Order) -> Plan:
    return replace(PLAN, blocks=(replace(PLAN.blocks[0], order=order),))


def names_open(plan: Plan, material: Material, trials: Sequence[Trial] = ()) -> list[str]:
    (targets,) = open_targets(plan, material, trials)
    return list(dict.fromkeys(target.name for target in targets))


def mastered(name: str) -> list[Trial]:
    of = asked(Target(kind=Kind.MATCH, name=name, group="contact"))
    return [
        trial("right", at=MONDAY + timedelta(days=day, minutes=minute), of=of, session=f"{day}")
        for day in range(3)
        for minute in range(8)
    ]


def test_together_opens_all_at_once(material: Material) -> None:
    assert open_targets(PLAN, material, ()) == plan_targets(PLAN, material)


def test_simple_to_complex_begins_with_the_easiest_and_goes_on_when_it_is_mastered(
    material: Material,
) -> None:
    plan = in_order(Order.SIMPLE_FIRST)
    assert names_open(plan, material) == ["active"]
    assert names_open(plan, material, mastered("active")[:8]) == ["active"]
    assert set(names_open(plan, material, mastered("active"))) == {"active", "full-passive"}
    both = mastered("active") + mastered("full-passive")
    assert set(names_open(plan, material, both)) == set(NAMES)


def test_complex_to_simple_begins_with_the_hardest(material: Material) -> None:
    assert names_open(in_order(Order.COMPLEX_FIRST), material) == ["object-cleft"]


def test_the_week_to_come_gives_only_what_is_open(material: Material) -> None:
    days = week_to_come(in_order(Order.SIMPLE_FIRST), material, (), date(2026, 11, 27))
    assert len(days) == 5
    assert {target.name for day in days for target, _ in day.given} == {"active"}


@pytest.mark.parametrize("seed", ["1", "77"])
def test_the_deal_is_the_same_in_every_process(seed: str) -> None:
    dealt = [
        subprocess.run(
            [sys.executable, "-c", DEAL, str(CONTENT)],
            env={**os.environ, "PYTHONHASHSEED": each},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for each in (seed, "0")
    ]
    assert dealt[0] == dealt[1]
    assert len(dealt[0].splitlines()) == 36
