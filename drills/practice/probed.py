"""What a plan's checks ask: which constructions, what each stands for, and for how long."""

from __future__ import annotations

from drills.core.kinds import ItemSet, Kind
from drills.core.plans import PROBED, Plan, Probed
from drills.schedule.checks import CheckList

SECONDS_PER_ITEM = 15
"""To tell how long a check takes: hearing, choosing, and going on. Common practice, no source."""

_WITH_NAMES = (Kind.MATCH, Kind.ACT_OUT)


def asked_of(plan: Plan) -> tuple[Probed, ...]:
    """The constructions that a check asks: treated, also once treated, then related, control."""
    probes = plan.probes
    exemplars = {(each.item_set, each.construction): each.exemplars for each in probes.sets}
    return tuple(
        Probed(
            construction=name,
            item_set=item_set,
            exemplars=exemplars.get((item_set, name), ()),
        )
        for names, item_set in (
            (treated_in(plan), ItemSet.PROBE),
            (probes.finished, ItemSet.PROBE),
            (probes.related, ItemSet.RELATED),
            (probes.control, ItemSet.CONTROL),
        )
        for name in names
    )


def treated_in(plan: Plan) -> tuple[str, ...]:
    """The constructions that are practised and checked."""
    if plan.probes.treated or plan.probes.finished:
        return plan.probes.treated
    named = {name for block in plan.blocks if block.kind in _WITH_NAMES for name in block.names}
    return tuple(name for name in PROBED if name in named)


def whole_check(plan: Plan) -> int:
    """How many items a whole check has."""
    return len(asked_of(plan)) * plan.probes.items


def length_of(plan: Plan, chosen: CheckList) -> int:
    return whole_check(plan) // (1 if chosen.half is None else 2)


def minutes_of(plan: Plan, chosen: CheckList) -> int:
    """About how long a check takes, in whole minutes."""
    seconds = SECONDS_PER_ITEM + plan.sitting.response_gap_seconds
    return max(1, round(length_of(plan, chosen) * seconds / 60))
