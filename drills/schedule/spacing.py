"""When a target is due again, from how it went before.

Spacing over days follows a ladder of growing gaps. The evidence for growing gaps comes from words,
not sentences; for sentences it is an extrapolation, so every number is a setting of the plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby

from drills.core.due import Due
from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import SpacingSettings
from drills.core.records import Trial, practice_day


@dataclass(frozen=True, slots=True, kw_only=True)
class _Fold:
    """What the trials so far come to.

    run: unaided successes in a row.   since_climb: those of the run not yet used for a rung.
    needed: successes that the hardest-to-trust trial of the run asks for.
    """

    rung: int = -1
    run: int = 0
    since_climb: int = 0
    needed: int = 1


def run_needed(trial: Trial, settings: SpacingSettings) -> int:
    """Unaided successes in a row that beat guessing on such a trial; 1 when a person scores it.

    An item that its words alone decide says nothing of grammar, so it asks for the longest run.
    """
    if trial.asked.kind is Kind.GESTURE:
        return 1
    if trial.asked.effective_k >= 4:
        return settings.run_four_options
    if trial.asked.effective_k == 3:
        return settings.run_three_options
    return settings.run_two_options


def standing(
    target: Target,
    trials: Sequence[Trial],
    *,
    settings: SpacingSettings,
    day_turns_at_hour: int,
    today: date,
) -> Due:
    """Where `target` stands today.

    trials: of any targets, in the order in which they were given; probes do not count, nor do
    trials without a first response.
    A trial dated after today, left by a clock that was wrong, counts as today's.
    """
    days = [
        (min(practice_day(trial.started_at, turns_at_hour=day_turns_at_hour), today), trial)
        for trial in trials
        if trial.asked.target == target and trial.asked.item_set is ItemSet.TREATED and trial.counts
    ]
    if not days:
        return Due(target=target, day=today, rung=-1, run=0, last=None, reason="New: not met yet.")

    fold = _Fold()
    for _, of_day in groupby(days, key=lambda pair: pair[0]):
        fold = _fold_day(fold, [trial for _, trial in of_day], settings)

    last = max(day for day, _ in days)
    day = last + timedelta(days=gap_days(fold.rung, settings))
    return Due(
        target=target,
        day=day,
        rung=fold.rung,
        run=fold.run,
        last=last,
        reason=_reason(fold, days[-1][1], day=day, last=last, today=today),
    )


def standings(
    targets: Iterable[Target],
    trials: Sequence[Trial],
    *,
    settings: SpacingSettings,
    day_turns_at_hour: int,
    today: date,
) -> tuple[Due, ...]:
    """Where each target stands, in the order of `targets`."""
    by_target: dict[Target, list[Trial]] = {}
    for trial in trials:
        by_target.setdefault(trial.asked.target, []).append(trial)
    return tuple(
        standing(
            target,
            by_target.get(target, []),
            settings=settings,
            day_turns_at_hour=day_turns_at_hour,
            today=today,
        )
        for target in dict.fromkeys(targets)
    )


def gap_days(rung: int, settings: SpacingSettings) -> int:
    """Days from the last practice to the next; before the first rung, the shortest gap."""
    ladder = settings.ladder_days
    return ladder[min(max(rung, 0), len(ladder) - 1)]


def _fold_day(fold: _Fold, trials: Sequence[Trial], settings: SpacingSettings) -> _Fold:
    """One practice day: at most one rung up and one fall, so that massed trials are one lesson."""
    rung, run, since_climb, needed = fold.rung, fold.run, fold.since_climb, fold.needed
    climbed = fell = False
    for trial in trials:
        first = trial.first
        if first is None:
            continue
        if trial.unaided_right:
            run += 1
            since_climb += 1
            of_trial = run_needed(trial, settings)
            needed = of_trial if since_climb == 1 else max(needed, of_trial)
            if since_climb >= needed and not climbed:
                rung = min(rung + 1, len(settings.ladder_days) - 1)
                climbed, since_climb = True, 0
            continue
        run = since_climb = 0
        # Right after asking for help is no failure, but it ends the run.
        if not first.right and not fell:
            rung = max(rung - settings.steps_back, min(rung, 0))
            fell = True
    return _Fold(rung=rung, run=run, since_climb=since_climb, needed=needed)


_ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")


def _reason(fold: _Fold, newest: Trial, *, day: date, last: date, today: date) -> str:
    ago = (today - last).days
    when = "today" if ago == 0 else "yesterday" if ago == 1 else f"{ago} days ago"
    if fold.run >= 2:
        ordinal = _ORDINALS[fold.run] if fold.run < len(_ORDINALS) else f"number {fold.run}"
        how = f"last right alone {when}, {ordinal} in a row."
    elif fold.run == 1:
        how = f"last right alone {when}."
    elif newest.first is not None and newest.first.right:
        how = f"last right with help {when}."
    else:
        how = f"last missed {when}, so it comes sooner."
    return f"{'Due' if day <= today else 'Not yet due'}: {how}"
