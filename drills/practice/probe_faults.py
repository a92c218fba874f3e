"""What a plan asks of checks that cannot be."""

from __future__ import annotations

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import PROBED, Plan
from drills.core.problems import Problem
from drills.exercises import check_block, names_of, targets_of
from drills.practice.probed import asked_of


def check_probes(plan: Plan, material: Material) -> tuple[Problem, ...]:
    """What the plan asks of checks that cannot be, or that would be practised as well."""
    if any(check_block(block, material) for block in plan.blocks):
        return ()  # what is practised is not known yet
    practised = _practised(plan, material)
    problems: list[Problem] = []
    known = names_of(Kind.MATCH, material)
    for key in ("treated", "related", "control"):
        for name in getattr(plan.probes, key):
            message, mend = "", f"Use some of: {', '.join(PROBED)}."
            if name not in known:
                message = f"there is no construction {name!r}."
            elif name not in PROBED:
                message = f"no checks are made of {name!r}."
            elif key == "treated" and name not in practised:
                message = f"{name!r} is in no block of this plan."
                mend = "Practise it, or name it under related or control."
            elif key != "treated" and name in practised:
                message = f"{name!r} is practised in this plan."
                mend = "Name it under treated, or leave it out."
            if message:
                problems.append(Problem(where=f"probes.{key}", message=message, mend=mend))
    if problems or not (plan.probes.on or plan.probes.treated):
        return tuple(problems)
    if not asked_of(plan):
        return (
            Problem(
                where="probes.on",
                message="checks are on, and nothing of this plan can be checked.",
                mend="Practise one of: " + ", ".join(PROBED) + ".",
            ),
        )
    return ()


def _practised(plan: Plan, material: Material) -> frozenset[str]:
    """Constructions that are practised, in any kind of exercise; a question names its own last."""
    return frozenset(
        target.name.rpartition(":")[2]
        for block in plan.blocks
        for target in targets_of(block, material)
    )
