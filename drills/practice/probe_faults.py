"""What a plan asks of checks that cannot be."""

from __future__ import annotations

from drills.core.items import ItemSet, Kind
from drills.core.material import Material
from drills.core.plans import PROBE_ROLES, PROBED, Plan
from drills.core.problems import Problem
from drills.exercises import check_block, names_of, targets_of
from drills.practice.probed import asked_of


def check_probes(plan: Plan, material: Material) -> tuple[Problem, ...]:
    """What the plan asks of checks that cannot be, or that would be practised as well."""
    if any(check_block(block, material) for block in plan.blocks):
        return ()  # what is practised is not known yet
    practised = practised_in(plan, material)
    problems: list[Problem] = []
    known = names_of(Kind.MATCH, material)
    for key in PROBE_ROLES:
        for name in getattr(plan.probes, key):
            message, mend = "", f"Use some of: {', '.join(PROBED)}."
            if name not in known:
                message = f"there is no construction {name!r}."
            elif name not in PROBED:
                message = f"no checks are made of {name!r}."
            elif key == "treated" and name not in practised:
                message = f"{name!r} is in no block of this plan."
                mend = "Practise it, or name it under finished, related or control."
            elif key != "treated" and name in practised:
                message = f"{name!r} is practised in this plan."
                mend = "Name it under treated, or leave it out."
            if message:
                problems.append(Problem(where=f"probes.{key}", message=message, mend=mend))
    if problems or not (plan.probes.on or plan.probes.treated or plan.probes.finished):
        return tuple(problems)
    if not asked_of(plan):
        return (
            Problem(
                where="probes.on",
                message="checks are on, and nothing of this plan can be checked.",
                mend="Practise one of: " + ", ".join(PROBED) + ".",
            ),
        )
    return _set_faults(plan, material) if plan.probes.sets else ()


_MAKE_SETS = "Make the sets anew: drills plan sets FILE."


def _set_faults(plan: Plan, material: Material) -> tuple[Problem, ...]:
    """Sets that no check asks, constructions without one, and pairs that cannot be asked."""
    from drills.exercises.probes.sets import faults_of  # noqa: PLC0415 - few plans have sets

    asked = {(each.item_set, each.construction): each for each in asked_of(plan)}
    problems: list[Problem] = []
    for number, each in enumerate(plan.probes.sets, start=1):
        if (each.item_set, each.construction) not in asked:
            message = f"no check of this plan asks {each.construction!r} as {each.role}."
            mend = f"Remove it. {_MAKE_SETS}"
            if each.item_set is ItemSet.PROBE:
                mend = f"If it was practised before, name it under finished. Otherwise: {mend}"
            problems.append(Problem(where=f"set {number}", message=message, mend=mend))
            continue
        problems += [
            Problem(where=f"set {number}, {exemplar}", message=message, mend=_MAKE_SETS)
            for exemplar, message in faults_of(each, material.lexicon)
        ]
    problems += [
        Problem(
            where="probes.seed",
            message=f"{each.construction!r} is to be checked and has no set, others have.",
            mend=_MAKE_SETS,
        )
        for each in asked.values()
        if not each.exemplars
    ]
    return tuple(problems)


def practised_in(plan: Plan, material: Material) -> frozenset[str]:
    """Constructions that are practised, in any kind of exercise; a question names its own last."""
    return frozenset(
        target.name.rpartition(":")[2]
        for block in plan.blocks
        for target in targets_of(block, material)
    )
