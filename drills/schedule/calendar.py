"""The week to come: what is due which day, how long it takes, what has no place and why.

Nothing is fixed by it: each session is dealt anew from what is known then.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from itertools import pairwise
from random import Random
from statistics import median

from drills.core.due import Due, PlannedDay, PutOff
from drills.core.kinds import Kind, Target
from drills.core.plans import Plan
from drills.core.records import Trial
from drills.core.sessions import AWAY_SECONDS
from drills.schedule.sitting import chosen

DAYS = 7
# Fewer say little of how long this person takes.
FEWEST_FOR_PACE = 20


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """seconds: of one trial, from its showing to the showing of the next.   own: measured."""

    seconds: float
    own: bool


def week_ahead(
    plan: Plan,
    targets: Sequence[Sequence[Target]],
    standings: Mapping[Target, Due],
    trials: Sequence[Trial],
    *,
    today: date,
) -> tuple[PlannedDay, ...]:
    """The practice days of the seven after `today`, spread evenly over them.

    targets: open targets of each block of the plan.   trials: so far, for the pace.
    Each target is taken to come back after the gap that it has now, so a right answer moves it
    further and a wrong one nearer.
    """
    stand = dict(standings)
    pace = {kind: pace_of(kind, trials, plan) for kind in Kind}
    days: list[PlannedDay] = []
    for number in range(DAYS):
        day = today + timedelta(days=number + 1)
        per_week = plan.dose.sessions_per_week
        sessions = (number + 1) * per_week // DAYS - number * per_week // DAYS
        if sessions:
            days.append(_day(plan, targets, stand, pace, day=day, sessions=sessions))
    return tuple(days)


def pace_of(kind: Kind, trials: Iterable[Trial], plan: Plan) -> Pace:
    """The median over this person's trials of `kind`; the plan's where there are too few."""
    spans = [
        (after.started_at - before.started_at).total_seconds()
        for before, after in pairwise(trials)
        if before.asked.kind is after.asked.kind is kind
        and (before.session, before.block) == (after.session, after.block)
    ]
    # A longer silence is no practice, and a clock that went back measures nothing.
    kept = [span for span in spans if 0 < span <= AWAY_SECONDS]
    if len(kept) >= FEWEST_FOR_PACE:
        return Pace(seconds=median(kept), own=True)
    asked = sum(block.trials for block in plan.blocks)
    practising = max(0.0, plan.dose.minutes_per_session * 60 - _rests(plan))
    return Pace(seconds=practising / asked, own=False)


def _rests(plan: Plan) -> float:
    return float(plan.sitting.rest_seconds * (len(plan.blocks) - 1))


def _day(
    plan: Plan,
    targets: Sequence[Sequence[Target]],
    stand: dict[Target, Due],
    pace: Mapping[Kind, Pace],
    *,
    day: date,
    sessions: int,
) -> PlannedDay:
    """One day; `stand` is moved on by what is given."""
    given: Counter[Target] = Counter()
    put_off: dict[Target, str] = {}
    seconds = sessions * _rests(plan)
    for session in range(sessions):
        rng = Random(f"{day} {session}")
        for number, (block, own) in enumerate(zip(plan.blocks, targets, strict=True), start=1):
            counts = chosen(block, number, own, stand, plan.spacing, today=day, rng=rng).counts
            given.update(counts)
            seconds += block.trials * pace[block.kind].seconds
            for target in own:
                known = stand.get(target)
                is_due = known is None or known.last is None or known.day <= day
                if target not in counts and is_due:
                    put_off[target] = _why(known, block.trials, day)
        for target in given:
            stand[target] = _moved(stand.get(target), target, day, plan)
    kinds = {block.kind for block in plan.blocks}
    in_order = dict.fromkeys(target for own in targets for target in own)
    return PlannedDay(
        day=day,
        sessions=sessions,
        minutes=seconds / 60,
        own_pace=any(pace[kind].own for kind in kinds),
        given=tuple((target, given[target]) for target in in_order if given[target]),
        put_off=tuple(
            PutOff(target=target, reason=reason)
            for target, reason in put_off.items()
            if not given[target]
        ),
    )


def _why(due: Due | None, trials: int, day: date) -> str:
    places = f"the {trials} places of its block go to what is more overdue"
    if due is None or due.last is None:
        return f"Not met yet, and {places}."
    late = (day - due.day).days
    when = "that day" if late == 0 else "for a day" if late == 1 else f"for {late} days"
    return f"Due {when}, and {places}."


def _moved(due: Due | None, target: Target, day: date, plan: Plan) -> Due:
    """Where a target stands when it is practised on `day` and keeps its gap."""
    if due is None or due.last is None:
        gap = plan.spacing.ladder_days[0]
        return Due(
            target=target, day=day + timedelta(days=gap), rung=-1, run=0, last=day, reason=""
        )
    gap = max(1, (due.day - due.last).days)
    return replace(due, day=day + timedelta(days=gap), last=day)
