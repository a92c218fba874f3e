"""From plan and history to the items of one session; the same inputs deal the same session."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from random import Random

from drills.core.due import Due, PlannedDay
from drills.core.items import Item, ItemSet, Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, Order, Plan
from drills.core.problems import Problem
from drills.core.records import Trial
from drills.exercises import check_block, make_items, targets_of
from drills.practice.easier import difficulty
from drills.practice.past import Past
from drills.practice.probe_faults import check_probes
from drills.schedule import deal, fit


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    kind: Kind
    items: tuple[Item, ...]


def check_plan(plan: Plan, material: Material) -> tuple[Problem, ...]:
    """What the plan asks for that the content does not hold."""
    known = material.lexicon.kin
    problems = [
        Problem(
            where="without_kin",
            message=f"there is no relative {term!r}.",
            mend=f"Use words of: {', '.join(known)}.",
        )
        for term in plan.without_kin
        if term not in known
    ]
    said = material.without_kin(plan.without_kin)
    problems += [problem for block in plan.blocks for problem in check_block(block, said)]
    problems += check_probes(plan, said)
    return tuple(problems)


def plan_targets(plan: Plan, material: Material) -> tuple[tuple[Target, ...], ...]:
    """The targets of each block of the plan, in its order."""
    return tuple(targets_of(block, material) for block in plan.blocks)


def open_targets(
    plan: Plan, material: Material, trials: Sequence[Trial]
) -> tuple[tuple[Target, ...], ...]:
    """The targets that each block may give now: all, or those opened so far in its order."""
    return tuple(
        targets if block.order is Order.TOGETHER else _opened(block, targets, trials, plan)
        for block, targets in zip(plan.blocks, plan_targets(plan, material), strict=True)
    )


def _opened(
    block: BlockPlan, targets: Sequence[Target], trials: Sequence[Trial], plan: Plan
) -> tuple[Target, ...]:
    from drills.schedule.progression import opened, progress_of  # noqa: PLC0415 - rarely asked for

    ranks = {target.name: difficulty(target) for target in targets}
    names = list(ranks)
    known = [rank for rank in ranks.values() if rank is not None]
    # Names that cannot be compared go as the plan has them.
    if len(known) == len(names) and len({scale for scale, _ in known}) == 1:
        rank_of = {name: rank[1] for name, rank in ranks.items() if rank is not None}
        sign = -1 if block.order is Order.COMPLEX_FIRST else 1
        names.sort(key=lambda name: sign * rank_of[name])
    own = [trial for trial in trials if trial.asked.kind is block.kind]
    progress = progress_of([(block.kind, name) for name in names], own, plan.progression)
    practised = {
        trial.asked.target.name
        for trial in own
        if trial.counts and trial.asked.item_set is ItemSet.TREATED
    }
    open_names = opened(names, {each.name: each for each in progress}, practised)
    return tuple(target for target in targets if target.name in open_names)


def week_to_come(
    plan: Plan,
    material: Material,
    trials: Sequence[Trial],
    today: date,
    *,
    dues: Sequence[Due] = (),
    recent: Sequence[Trial] = (),
) -> tuple[PlannedDay, ...]:
    """The practice days of the next seven, as they stand now.

    dues: where each target stands after `trials`; what is left out is new.
    recent: the newest of `trials`, for the pace.
    """
    from drills.schedule.calendar import week_ahead  # noqa: PLC0415 - asked for by the digest only

    targets = open_targets(plan, material, trials)
    return week_ahead(plan, targets, {due.target: due for due in dues}, recent, today=today)


def plan_standings(plan: Plan, material: Material, past: Past) -> tuple[Due, ...]:
    """Where every target of the plan stands, each once, in plan order."""
    return past.standings(target for block in plan_targets(plan, material) for target in block)


def deal_session(
    plan: Plan,
    material: Material,
    trials: Sequence[Trial],
    *,
    today: date,
    minutes: int | None,
    rng: Random,
    dues: Sequence[Due] = (),
) -> tuple[Block, ...]:
    """Today's blocks of items.   minutes: shorter or longer than prescribed, None for as is.

    dues: where each target stands after `trials`; what is left out is new.
    """
    stand = {due.target: due for due in dues}
    dealt = deal(plan, open_targets(plan, material, trials), stand, today=today, rng=rng)
    if minutes is not None:
        dealt = fit(dealt, minutes, plan)
    return tuple(
        Block(
            kind=block.kind,
            items=make_items(block.targets, options=block.options, material=material, rng=rng),
        )
        for block in dealt
    )
