"""What one session holds: which targets, how often, in which order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from random import Random

from drills.core.due import Due
from drills.core.items import Kind, Target
from drills.core.plans import BlockPlan, Plan, SpacingSettings
from drills.core.problems import BadInput
from drills.schedule.sequence import MOST_OF_A_NAME_RUNNING, arrange, runs_are_short

# What was never met counts as one whole gap late, and keeps one place in four of a block while
# there is any: it can neither starve nor crowd out the rest.
URGENCY_OF_NEW = 1.0
TRIALS_PER_PLACE_FOR_NEW = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockDeal:
    """What one block asks, one target a trial, in order.   options: how many to choose from."""

    kind: Kind
    options: int
    targets: tuple[Target, ...]


def deal(
    plan: Plan,
    targets: Sequence[Sequence[Target]],
    standings: Mapping[Target, Due],
    *,
    today: date,
    rng: Random,
) -> tuple[BlockDeal, ...]:
    """Today's blocks, the most overdue targets first, sure ones at both ends of each block.

    targets: all targets of each block of the plan, in the plan's order.
    Raises: BadInput for a block that has no target.
    """
    dealt: list[BlockDeal] = []
    for number, (block, own) in enumerate(zip(plan.blocks, targets, strict=True), start=1):
        given = chosen(block, number, own, standings, plan.spacing, today=today, rng=rng)
        order = arrange(
            given.counts, first=given.first, last=given.last, names=_names(own), rng=rng
        )
        dealt.append(BlockDeal(kind=block.kind, options=block.options, targets=order))
    return tuple(dealt)


def fit(deals: Sequence[BlockDeal], minutes: int, plan: Plan) -> tuple[BlockDeal, ...]:
    """The deals cut to a session of `minutes`, when that is shorter than the plan's.

    Every block keeps at least one trial, unless fewer trials than blocks fit: then the later
    blocks are left out.   Raises: BadInput for less than a minute.
    """
    if minutes < 1:
        raise BadInput(f"A session cannot last {minutes} minutes. Ask for 1 minute or more.")
    planned = plan.dose.minutes_per_session
    if minutes >= planned:
        return tuple(deals)
    total = max(1, sum(len(block.targets) for block in deals) * minutes // planned)
    kept = list(deals)[:total]
    shares = [max(1, len(block.targets) * minutes // planned) for block in kept]
    # Rounding up to one trial a block can overshoot; the longest blocks give the trials back.
    while sum(shares) > total and max(shares) > 1:
        shares[shares.index(max(shares))] -= 1
    return tuple(
        replace(block, targets=_shorten(block.targets, share))
        for block, share in zip(kept, shares, strict=True)
    )


def overdue(due: Due, *, today: date) -> float:
    """Days overdue as a share of the gap: 0 on the day itself, negative before it."""
    if due.last is None:
        return URGENCY_OF_NEW
    return (today - due.day).days / max(1, (due.day - due.last).days)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """What a block gives, without its order.   counts: most urgent first.   first, last: ends."""

    counts: Mapping[Target, int]
    first: Target | None
    last: Target | None


def chosen(
    block: BlockPlan,
    number: int,
    targets: Sequence[Target],
    standings: Mapping[Target, Due],
    settings: SpacingSettings,
    *,
    today: date,
    rng: Random,
) -> Chosen:
    """Which targets the block gives today, and how often.   number: of the block, from 1.

    Raises: BadInput when there is no target.
    """
    if not targets:
        raise BadInput(
            f"Block {number} of the plan ({block.kind.value}) has nothing to practise. "
            f"Add names or groups to it."
        )
    stand = {target: _standing_of(target, standings, today) for target in targets}
    shuffled = list(stand)
    rng.shuffle(shuffled)
    urgency = {target: overdue(stand[target], today=today) for target in shuffled}
    ordered = sorted(shuffled, key=lambda target: -urgency[target])
    sure = sorted(
        (target for target in shuffled if stand[target].run > 0),
        key=lambda target: (-stand[target].rung, -stand[target].run),
    )
    first, last = _ends(sure, block.trials)
    new = [target for target in ordered if stand[target].last is None]
    kept_for_new = new[: block.trials // TRIALS_PER_PLACE_FOR_NEW]
    ordered = list(dict.fromkeys((*kept_for_new, *ordered)))
    counts = _counts(
        block.trials,
        ordered,
        urgency,
        new=frozenset(new),
        ends=(first, last),
        most_givings=settings.most_givings,
    )
    return Chosen(counts=counts, first=first, last=last)


def _standing_of(target: Target, standings: Mapping[Target, Due], today: date) -> Due:
    known = standings.get(target)
    return known or Due(target=target, day=today, rung=-1, run=0, last=None, reason="")


def _ends(sure: Sequence[Target], trials: int) -> tuple[Target | None, Target | None]:
    """The targets that open and close a block; in a block of one or two, due work goes first."""
    if not sure or trials < 2:
        return None, None
    if trials == 2:
        return None, sure[0]
    return sure[min(1, len(sure) - 1)], sure[0]


def _names(targets: Sequence[Target]) -> int:
    return len({target.name for target in targets})


def _counts(
    trials: int,
    ordered: Sequence[Target],
    urgency: Mapping[Target, float],
    *,
    new: frozenset[Target],
    ends: tuple[Target | None, Target | None],
    most_givings: int,
) -> dict[Target, int]:
    """How often each target is given: due ones evenly and first, the rest to fill up.

    New ones take no more than half of what is due, once something else is known.
    The order of the result is the order of urgency.
    """
    counts = dict.fromkeys(ordered, 0)
    of_name: Counter[str] = Counter()
    # One name may not run on, so it may not fill more than its share of the block.
    most_of_name = trials
    if _names(ordered) > 1 and trials > MOST_OF_A_NAME_RUNNING:
        most_of_name = MOST_OF_A_NAME_RUNNING * (trials - 1) // (MOST_OF_A_NAME_RUNNING + 1)

    def give(target: Target) -> None:
        counts[target] += 1
        of_name[target.name] += 1

    for target in ends:
        if target is not None:
            give(target)
    most_of_new = trials if len(new) == len(ordered) else max(1, trials // 2)
    due = [target for target in ordered if urgency[target] >= 0]
    # Given oftener in one sitting a target would be massed, not spaced.
    most_of_one = max(most_givings, -(-trials // len(ordered)))
    given = sum(counts.values())
    given_new = sum(counts[target] for target in new) if given else 0
    for pool, most, most_new in ((due, most_of_one, most_of_new), (ordered, trials, trials)):
        # One of each in turn. What is closed to a target once stays closed to it.
        level = 0
        while given < trials and level < most:
            open_still = False
            for target in pool:
                if given == trials:
                    break
                if counts[target] >= most or of_name[target.name] >= most_of_name:
                    continue
                if target in new and given_new >= most_new:
                    continue
                open_still = True
                if counts[target] > level:
                    continue
                give(target)
                given += 1
                given_new += target in new
            if not open_still:
                break
            level += 1
    return {target: count for target, count in counts.items() if count}


def _shorten(targets: tuple[Target, ...], share: int) -> tuple[Target, ...]:
    """The first and last of `targets`, cut in the middle where the ends meet well."""
    size = len(targets)
    if share >= size:
        return targets
    if share == 1:
        return targets[:1]
    names = _names(targets)
    for head in range(share - 1, 0, -1):
        kept = targets[:head] + targets[size - (share - head) :]
        before, after = kept[head - 1], kept[head]
        repeats = before == after or (before.group and before.group == after.group)
        if not repeats and runs_are_short(kept, names=names):
            return kept
    return targets[:share]
