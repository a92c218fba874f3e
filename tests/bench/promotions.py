"""When simulated people are told ready, against what is true of them at that time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from random import Random

from scipy.stats import beta, binom

from drills.core.items import Kind
from drills.core.plans import ProgressionSettings, SpacingPolicy
from drills.core.records import Trial
from drills.schedule.progression import Advice, progress_of
from tests.bench.schedule_world import (
    MONDAY,
    SECONDS_PER_TRIAL,
    Learner,
    Ours,
    World,
    felt_seconds,
    trial_of,
)

SESSIONS_LOOKED_BACK = 20
SESSIONS_BEFORE_ANY_RULE = 5
"""So many of a name hold 20 trials in these worlds."""
MOST_SESSIONS_WAITED = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """One session with a construction.   chance: of being right alone, as it began; the truth."""

    chance: float
    trials: tuple[Trial, ...]


Course = tuple[Visit, ...]
"""One construction of one person, first session to last."""


def courses(world: World, person: int) -> tuple[Course, ...]:
    """Weeks of practice by the ladder, one course a construction."""
    learner = Learner(world, Random(f"person {person}"))
    chooser = Ours(world, Random(f"chooser {person}"), SpacingPolicy.LADDER)
    rng = Random(f"days {person}")
    found: dict[str, list[Visit]] = {}
    number = 0
    for week in range(world.weeks):
        for weekday in range(world.sessions_per_week):
            if rng.random() < world.missed:
                continue
            at = MONDAY + timedelta(weeks=week, days=weekday)
            truth: dict[str, list[float]] = {}
            for target in world.targets:
                known = learner.known(target, felt_seconds(at))
                truth.setdefault(target.name, []).append(known + (1 - known) / 2)
            given: dict[str, list[Trial]] = {}
            for target in chooser.session(at.date(), world.trials_per_session):
                at += timedelta(seconds=SECONDS_PER_TRIAL)
                right = learner.answer(target, felt_seconds(at))
                learner.practise(target, felt_seconds(at))
                chooser.answered(target, right, at)
                number += 1
                made = trial_of(target, right, at, number, session=f"{week}-{weekday}")
                given.setdefault(target.name, []).append(made)
            for name, trials in given.items():
                chance = sum(truth[name]) / len(truth[name])
                found.setdefault(name, []).append(Visit(chance=chance, trials=tuple(trials)))
    return tuple(map(tuple, found.values()))


def told_ready(course: Course, settings: ProgressionSettings) -> int | None:
    """The number of the session after which the rule is first met; None for never."""
    for number in range(len(course)):
        newest = course[max(0, number + 1 - SESSIONS_LOOKED_BACK) : number + 1]
        trials = [trial for visit in newest for trial in visit.trials]
        name = trials[0].asked.target.name
        (progress,) = progress_of([(Kind.MATCH, name)], trials, settings)
        if progress.advice is Advice.READY:
            return number
    return None


def told_by_share(course: Course, settings: ProgressionSettings) -> int | None:
    """The same by the newest sessions alone, without what came before: a rule to compare with.

    So many right alone of the newest sessions that hold enough trials, and so sure of it by a
    uniform prior (scipy.stats.beta), and above guessing.
    """
    wanted = settings.right_percent / 100
    for number in range(len(course)):
        for count in range(settings.least_sessions, number + 2):
            trials = [
                trial for visit in course[number + 1 - count : number + 1] for trial in visit.trials
            ]
            if len(trials) >= settings.least_trials:
                break
        else:
            continue
        right, of = sum(trial.unaided_right for trial in trials), len(trials)
        if (
            100 * right >= settings.right_percent * of
            and 100 * beta.sf(wanted, right + 1, of - right + 1) >= settings.sure_percent
            and binom.sf(right - 1, of, 0.5) < settings.guess_percent / 100
        ):
            return number
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class Errors:
    """promoted: courses told ready.   too_soon: of these, with the true chance below `least`.

    ready: courses in which the true chance reached `ready_from`.   late: of these, told more than
    three sessions after that, or never; sessions count from where the rule can first be met.
    """

    promoted: int
    too_soon: int
    ready: int
    late: int


def errors_of(
    found: Sequence[tuple[Course, int | None]], *, least: float, ready_from: float
) -> Errors:
    """What went wrong in courses with the session after which each was told ready."""
    promoted = too_soon = ready = late = 0
    for course, told in found:
        if told is not None and told + 1 < len(course):
            promoted += 1
            too_soon += course[told + 1].chance < least
        reached = [number for number, visit in enumerate(course) if visit.chance >= ready_from]
        if reached and reached[0] + MOST_SESSIONS_WAITED < len(course):
            since = max(reached[0], SESSIONS_BEFORE_ANY_RULE)
            ready += 1
            late += told is None or told - since + 1 > MOST_SESSIONS_WAITED
    return Errors(promoted=promoted, too_soon=too_soon, ready=ready, late=late)
