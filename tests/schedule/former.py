"""The schedule's rules once more, a trial and a target at a time, without regard for time.

It is how `drills.schedule` was written before it had to fold years of trials quickly; what is quick
now is held against it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import date, timedelta
from itertools import product
from math import exp, log, log2

from drills.core.due import Due
from drills.core.items import ItemSet, Target
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Trial, practice_day
from drills.schedule.rungs import run_needed

SLIP = 0.03
STRETCHES = tuple(step * 0.2 - 2.0 for step in range(21))
GROWTHS = tuple(step * 0.1 + 0.5 for step in range(11))
ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")

Recall = tuple[int, int, bool, int]
"""Rung, days since practised last, right, options that fit."""


class Climb:
    def __init__(self) -> None:
        self.rung, self.run, self.since_climb, self.needed = -1, 0, 0, 1
        self.day: date | None = None
        self.last = date.min
        self.climbed = self.fell = False
        self.newest: Trial | None = None

    def take(self, trial: Trial, settings: SpacingSettings) -> None:
        first = trial.attempts[0]
        self.newest = trial
        if not (first.right and first.cue_level == 0):
            self.run = self.since_climb = 0
            if not first.right and not self.fell:
                self.rung = max(self.rung - settings.steps_back, min(self.rung, 0))
                self.fell = True
            return
        self.run += 1
        self.since_climb += 1
        needed = run_needed(trial, settings)
        self.needed = needed if self.since_climb == 1 else max(needed, self.needed)
        if not self.climbed and self.since_climb >= self.needed:
            self.rung = min(self.rung + 1, len(settings.ladder_days) - 1)
            self.climbed, self.since_climb = True, 0


def standings(
    targets: Sequence[Target],
    trials: Sequence[Trial],
    *,
    settings: SpacingSettings,
    day_turns_at_hour: int,
    today: date,
) -> tuple[Due, ...]:
    climbs: dict[Target, Climb] = {}
    recalls: list[Recall] = []
    for trial in trials:
        if trial.asked.item_set is not ItemSet.TREATED or not trial.counts:
            continue
        day = min(today, practice_day(trial.started_at, turns_at_hour=day_turns_at_hour))
        climb = climbs.setdefault(trial.asked.target, Climb())
        if climb.day != day:
            gap = (day - climb.last).days
            is_recent = climb.day and climb.last >= today - timedelta(days=365)
            if is_recent and gap > 0 and climb.rung >= 0:
                recalls.append((climb.rung, gap, trial.unaided_right, trial.asked.effective_k))
            climb.day, climb.last = day, max(day, climb.last)
            climb.climbed = climb.fell = False
        climb.take(trial, settings)
    gaps, told = tuple(settings.ladder_days), ""
    if settings.policy is SpacingPolicy.FITTED:
        told = " Gap by the ladder: too few answers yet to fit one."
        if len(recalls) >= settings.fitted_least_recalls:
            gaps, told = (
                fit(recalls, settings),
                f" Gap fitted to {len(recalls)} answers after a pause.",
            )
    return tuple(
        due(target, climbs.get(target), gaps, told, today) for target in dict.fromkeys(targets)
    )


def due(target: Target, climb: Climb | None, gaps: Sequence[int], told: str, today: date) -> Due:
    if climb is None or climb.newest is None:
        return Due(target=target, day=today, rung=-1, run=0, last=None, reason="New: not met yet.")
    day = climb.last + timedelta(days=gaps[max(climb.rung, 0)])
    ago = (today - climb.last).days
    when = "today" if ago == 0 else "yesterday" if ago == 1 else f"{ago} days ago"
    if climb.run >= 2:
        many = climb.run >= len(ORDINALS)
        ordinal = f"number {climb.run}" if many else ORDINALS[climb.run]
        how = f"last right alone {when}, {ordinal} in a row."
    elif climb.run == 1:
        how = f"last right alone {when}."
    elif climb.newest.attempts[0].right:
        how = f"last right with help {when}."
    else:
        how = f"last missed {when}, so it comes sooner."
    whether = "Due" if day <= today else "Not yet due"
    return Due(
        target=target,
        day=day,
        rung=climb.rung,
        run=climb.run,
        last=climb.last,
        reason=f"{whether}: {how}{told}",
    )


def fit(recalls: Sequence[Recall], settings: SpacingSettings) -> tuple[int, ...]:
    """The gaps that the answers speak for, every point of the grid summed to its end."""
    ladder = settings.ladder_days
    counts = Counter(
        (rung, round(2 ** (round(log2(gap) * 4) / 4)), right, k) for rung, gap, right, k in recalls
    )
    logs = {}
    for stretch, growth in product(STRETCHES, GROWTHS):
        total = -((stretch / 0.5) ** 2 + ((growth - 1) / 0.2) ** 2) / 2
        for (rung, gap, right, k), count in counts.items():
            known = (1 - SLIP) * settings.retention ** (
                gap / (exp(stretch) * ladder[rung] ** growth)
            )
            guess = 0.0 if k == 1 else 1 / k
            chance = guess + (1 - guess) * known
            total += count * log(chance if right else 1 - chance)
        logs[stretch, growth] = total
    highest = max(logs.values())
    whole = sum(exp(value - highest) for value in logs.values())
    most = log(settings.fitted_most_times)
    gaps: list[int] = []
    for days in ladder:
        mean = sum(
            exp(value - highest) / whole * (stretch + growth * log(days))
            for (stretch, growth), value in logs.items()
        )
        bounded = min(max(mean, log(days) - most), log(days) + most)
        gaps.append(max(round(exp(bounded)), gaps[-1] if gaps else 1, 1))
    return tuple(gaps)
