"""Sets for a plan: made and matched once, then written into it, so that its checks stay the same.

Later words, another seed or another program choose nothing any more: `[[set]]` in the plan does.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from drills.core.material import Material
from drills.core.plans import Plan, Probed
from drills.core.probe_sets import ProbeSet
from drills.core.problems import BadInput
from drills.exercises.probes import asked_in
from drills.exercises.probes.lists import items_of_choice, items_of_set
from drills.exercises.probes.sets import (
    SetReport,
    matched,
    read_exemplars,
    reports,
    written,
)
from drills.exercises.reserve import Exemplar, exemplar_key
from drills.practice.checks import OPTIONS
from drills.practice.probed import asked_of

_ROUNDS = 6


def without_sets(plan: Plan) -> Plan:
    return replace(plan, probes=replace(plan.probes, sets=()))


def with_sets(plan: Plan, material: Material, *, seed: int | None = None) -> Plan:
    """The plan with a set for each construction that it checks; sets that it had are left out.

    seed: kept in the plan; None for the plan's own.
    Raises: BadInput when there is nothing to check, or too little to choose from.
    """
    bare = without_sets(plan)
    asked = asked_of(bare)
    if not asked:
        raise BadInput("This plan practises nothing that can be checked.")
    chance = bare.probes.seed if seed is None else seed
    bare = replace(bare, probes=replace(bare.probes, seed=chance))
    best: tuple[float, Plan] | None = None
    fallen: set[tuple[str, Exemplar]] = set()
    for _ in range(_ROUNDS):
        try:
            made, dropped = _made(bare, asked, material, fallen)
        except ValueError as error:
            if best is not None:
                break
            raise BadInput(
                f"Sets cannot be made: {error}, and {bare.probes.items} are wanted."
            ) from error
        apart = max(each.furthest for each in set_reports(made, material))
        if best is None or apart < best[0]:
            best = apart, made
        if not dropped:
            break
        # What cannot be told apart made way for a spare; without it all is matched anew.
        fallen |= dropped
    assert best is not None  # noqa: S101 - the first round made one or raised
    return best[1]


def _made(
    plan: Plan,
    asked: Sequence[Probed],
    material: Material,
    without: Collection[tuple[str, Exemplar]],
) -> tuple[Plan, set[tuple[str, Exemplar]]]:
    """The plan with sets, and what was chosen first and could not be shown."""
    probes = plan.probes
    chosen = matched(asked, material.lexicon, items=probes.items, seed=probes.seed, without=without)
    sets = []
    dropped: set[tuple[str, Exemplar]] = set()
    for each in asked:
        choice = chosen[each.construction]
        halves = items_of_choice(each, choice, material, options=OPTIONS, seed=probes.seed)
        # In the order dealt, so that each gets the same side when it is dealt again.
        shown = asked_in([*halves[0], *halves[1]], material.lexicon)
        sets.append(
            ProbeSet(
                item_set=each.item_set,
                construction=each.construction,
                exemplars=tuple(map(written, shown)),
            )
        )
        keys = {exemplar_key(one.act, one.pair) for one in shown}
        dropped |= {
            (each.construction, key)
            for one in choice.exemplars
            if (key := exemplar_key(one.act, one.pair)) not in keys
        }
    return replace(plan, probes=replace(probes, sets=tuple(sets))), dropped


def set_reports(plan: Plan, material: Material) -> tuple[SetReport, ...]:
    """How like practice, and each other, the sets of a plan are."""
    asked = asked_of(plan)
    items = [
        item
        for each in asked
        for half in items_of_set(each, material, options=OPTIONS, seed=plan.probes.seed)
        for item in half
    ]
    exemplars = {each.construction: read_exemplars(each, material.lexicon) for each in asked}
    return reports(asked, items, exemplars, material.lexicon)
