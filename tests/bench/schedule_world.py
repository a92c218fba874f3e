"""A simulated learner whose memory is not the scheduler's, and ways to choose what to practise.

The memory is the model of Pavlik & Anderson 2005 (Cognitive Science 29:559-586): each practice
leaves a trace that fades as a power of time, the faster the more was still known when it was laid.
Its five numbers stand below as they are remembered from that paper (from memory). Beside it, a
share of each trace reaches the other verb groups of the same construction; that share is invented.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta
from math import exp
from random import Random
from typing import Protocol

import numpy as np

from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import BlockPlan, Dose, Plan, SpacingPolicy, SpacingSettings
from drills.core.records import Asked, Attempt, Trial
from drills.schedule import deal, standings

DECAY_LEAST, DECAY_SLOPE = 0.177, 0.217
THRESHOLD, NOISE = -0.704, 0.255
BETWEEN_SESSIONS = 0.025
"""Time between sessions counts for so much of its length."""
TRANSFER = 0.15
OPTIONS = 2
MONDAY = datetime(2026, 1, 5, 10, tzinfo=UTC)
SECONDS_PER_TRIAL = 30


@dataclass(frozen=True, slots=True, kw_only=True)
class World:
    """What is prescribed: constructions by verb groups, and so many trials a session.

    The defaults have the proportions of the starter plan.   missed: share of days without practice.
    speed: logarithm of how fast is learned, 0 as published.
    """

    constructions: int = 11
    groups: int = 5
    trials_per_session: int = 36
    sessions_per_week: int = 5
    weeks: int = 12
    missed: float = 0.15
    speed: float = 0.0

    @property
    def targets(self) -> tuple[Target, ...]:
        return tuple(
            Target(kind=Kind.MATCH, name=f"construction-{row:02d}", group=f"group-{column}")
            for row in range(self.constructions)
            for column in range(self.groups)
        )


class Learner:
    """One simulated person. Chance comes from `rng` alone."""

    def __init__(self, world: World, rng: Random) -> None:
        self._rng = rng
        self._world = world
        # Each construction is understood to some degree from the start: some well, some not.
        self._knows = [min(0.98, rng.betavariate(0.8, 1.2)) for _ in range(world.constructions)]
        self._speed = exp(rng.gauss(world.speed, 0.35))
        self._at: list[list[float]] = [[] for _ in range(world.constructions)]
        self._decay: list[list[float]] = [[] for _ in range(world.constructions)]
        self._group: list[list[int]] = [[] for _ in range(world.constructions)]

    def place(self, target: Target) -> tuple[int, int]:
        return int(target.name[-2:]), int(target.group[-1])

    def start_of(self, target: Target) -> float:
        """The share that is understood before any practice."""
        return self._knows[self.place(target)[0]]

    def known(self, target: Target, seconds: float) -> float:
        """The chance that the target is understood, guessing apart."""
        row, column = self.place(target)
        start = self._knows[row]
        if not self._at[row]:
            return start
        recalled = 1 / (1 + exp((THRESHOLD - self._activation(row, column, seconds)) / NOISE))
        return start + (1 - start) * recalled

    def _activation(self, row: int, column: int, seconds: float) -> float:
        ago = np.maximum(seconds - np.asarray(self._at[row]), 1.0)
        weights = np.where(np.asarray(self._group[row]) == column, 1.0, TRANSFER)
        traces = weights * ago ** -np.asarray(self._decay[row])
        return float(np.log(self._speed * traces.sum()))

    def answer(self, target: Target, seconds: float) -> bool:
        known = self.known(target, seconds)
        return self._rng.random() < known + (1 - known) / OPTIONS

    def practise(self, target: Target, seconds: float) -> None:
        row, column = self.place(target)
        activation = self._activation(row, column, seconds) if self._at[row] else -np.inf
        decay = DECAY_LEAST + DECAY_SLOPE * (exp(activation) if activation > -50 else 0.0)
        self._at[row].append(seconds)
        self._decay[row].append(decay)
        self._group[row].append(column)

    def mean_success(self, seconds: float) -> float:
        """Unaided success on unseen exemplars of all that is prescribed, guessing included."""
        known = self.mean_understood(seconds)
        return known + (1 - known) / OPTIONS

    def mean_understood(self, seconds: float) -> float:
        """The same with guessing taken away."""
        targets = self._world.targets
        return sum(self.known(target, seconds) for target in targets) / len(targets)


class Chooser(Protocol):
    """A way to choose what a session holds."""

    def session(self, day: date, trials: int) -> Sequence[Target]: ...

    def answered(self, target: Target, right: bool, at: datetime) -> None: ...


class SameList:
    """The same list every day: each construction, verb groups as far as the list reaches."""

    def __init__(self, world: World, rng: Random) -> None:
        by_turns = sorted(world.targets, key=lambda target: (target.group, target.name))
        self._list = by_turns
        self._rng = rng

    def session(self, day: date, trials: int) -> Sequence[Target]:
        chosen = [self._list[number % len(self._list)] for number in range(trials)]
        self._rng.shuffle(chosen)
        return chosen

    def answered(self, target: Target, right: bool, at: datetime) -> None:
        """The list does not change."""


class NoPractice:
    """Nothing is practised."""

    def session(self, day: date, trials: int) -> Sequence[Target]:
        return ()

    def answered(self, target: Target, right: bool, at: datetime) -> None:
        """Nothing is answered."""


class Ours:
    """The program's own schedule, as a session deals it."""

    def __init__(self, world: World, rng: Random, policy: SpacingPolicy) -> None:
        self._targets = world.targets
        self._rng = rng
        self._trials: list[Trial] = []
        names = tuple(dict.fromkeys(target.name for target in world.targets))
        self._plan = Plan(
            name="bench",
            version=1,
            locale="en-US",
            blocks=(BlockPlan(kind=Kind.MATCH, names=names, trials=world.trials_per_session),),
            dose=Dose(sessions_per_week=world.sessions_per_week),
            spacing=SpacingSettings(policy=policy),
        )

    def session(self, day: date, trials: int) -> Sequence[Target]:
        stand = standings(
            self._targets,
            self._trials,
            settings=self._plan.spacing,
            day_turns_at_hour=4,
            today=day,
        )
        (block,) = deal(
            self._plan,
            [self._targets],
            {due.target: due for due in stand},
            today=day,
            rng=self._rng,
        )
        return block.targets

    def answered(self, target: Target, right: bool, at: datetime) -> None:
        self._trials.append(trial_of(target, right, at, len(self._trials)))


class Knowing:
    """Sees what no program can, each construction's start, and shares out practice by it.

    No schedule: it shows how much could be gained by choosing better.   learner: the truth.
    power: givings go with the lack at the start, raised to this; 0 is all alike.
    """

    def __init__(self, world: World, rng: Random, learner: Learner, power: float) -> None:
        self._rng = rng
        weights = {
            target: max(1 - learner.start_of(target), 0.001) ** power for target in world.targets
        }
        self._weights = weights
        self._given = {target: rng.random() / weights[target] for target in weights}

    def session(self, day: date, trials: int) -> Sequence[Target]:
        chosen: list[Target] = []
        for _ in range(trials):
            target = min(self._given, key=lambda each: self._given[each])
            self._given[target] += 1 / self._weights[target]
            chosen.append(target)
        self._rng.shuffle(chosen)
        return chosen

    def answered(self, target: Target, right: bool, at: datetime) -> None:
        """It knows already."""


def trial_of(
    target: Target, right: bool, at: datetime, number: int, *, session: str = "bench"
) -> Trial:
    """The record of one answer to two pictures; a miss comes right with help of level 2."""
    answers = [Attempt(right=right, cue_level=0, at=at, choice=0)]
    if not right:
        answers.append(Attempt(right=True, cue_level=2, at=at, choice=0))
    return Trial(
        session=session,
        trial=f"bench-{number}",
        started_at=at,
        at=at + timedelta(seconds=SECONDS_PER_TRIAL),
        block=0,
        asked=Asked(
            item_id=str(number),
            kind=target.kind,
            target=target,
            construction=target.name,
            level="",
            sentence="",
            words=(),
            options=(),
            answer=0,
            effective_k=OPTIONS,
            top_level=7,
            side=None,
            item_set=ItemSet.TREATED,
            content_hash="",
        ),
        attempts=tuple(answers),
        ended=True,
    )


def practise(world: World, learner: Learner, chooser: Chooser, rng: Random) -> list[int]:
    """Weeks of practice; gives how many trials each session held."""
    held: list[int] = []
    for week in range(world.weeks):
        for weekday in range(world.sessions_per_week):
            if rng.random() < world.missed:
                continue
            at = MONDAY + timedelta(weeks=week, days=weekday)
            chosen = chooser.session(at.date(), world.trials_per_session)
            held.append(len(chosen))
            for target in chosen:
                at += timedelta(seconds=SECONDS_PER_TRIAL)
                seconds = felt_seconds(at)
                right = learner.answer(target, seconds)
                learner.practise(target, seconds)
                chooser.answered(target, right, at)
    return held


def felt_seconds(at: datetime) -> float:
    """Time as the memory counts it: in full within a session, a share of it between sessions."""
    return (at - MONDAY).total_seconds() * BETWEEN_SESSIONS
