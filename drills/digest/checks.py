"""What checks came to: the outcome, apart from practice."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from drills.core.items import ItemSet
from drills.core.plans import ProbeSettings
from drills.core.records import Entry, SessionOpened, Trial, practice_day
from drills.digest.outcomes import Outcomes, Phase, outcomes_of, phase_of
from drills.measures import chance, dose
from drills.measures.accuracy import Share, count
from drills.measures.chance import Verdict
from drills.measures.intervals import Interval, wilson

ROLES = (ItemSet.PROBE, ItemSet.RELATED, ItemSet.CONTROL)


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckPoint:
    """One construction on one day.   interval: 95 %, of the share right.   verdict: on guessing."""

    day: date
    phase: Phase
    right: Share
    interval: Interval
    verdict: Verdict | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseShare:
    """All checks of one phase put together, each answer counted as if it stood alone.

    checks: how many there were.   interval: 95 %, of the share right.   verdict: on guessing.
    """

    phase: Phase
    checks: int
    right: Share
    interval: Interval
    verdict: Verdict | None


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckLine:
    """One construction in what it stands for, from the first check on.   phases: as begun."""

    item_set: ItemSet
    name: str
    label: str
    points: tuple[CheckPoint, ...]
    phases: tuple[PhaseShare, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Checks:
    """Checks up to the end of the range.

    minutes, sittings: of checks within the range, which are no practice.
    baseline_done: checks done, up to `baseline`, which the plan asks for before practice.
    next_day: from which the next one is due, as it stands today; None where none is.
    """

    lines: tuple[CheckLine, ...]
    outcomes: Outcomes
    minutes: float
    sittings: int
    baseline_done: int
    baseline: int
    next_day: date | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Checked:
    """What is known of checks.   trials: from the first on.   days: of those that were done.

    next_day: from which the next one is due; None where none is.
    """

    trials: Sequence[Trial] = ()
    days: Sequence[date] = ()
    next_day: date | None = None


def practice_apart(entries: Sequence[Entry]) -> tuple[tuple[Entry, ...], tuple[Entry, ...]]:
    """The entries of practice, and those of sessions that only check."""
    checking = {
        entry.session
        for entry in entries
        if isinstance(entry, SessionOpened) and entry.check is not None
    }
    return (
        tuple(entry for entry in entries if entry.session not in checking),
        tuple(entry for entry in entries if entry.session in checking),
    )


def checks_of(
    checked: Checked,
    entries: Sequence[Entry],
    settings: ProbeSettings,
    labels: Mapping[str, str],
    *,
    practised: Sequence[date],
    last: date,
    turns_at_hour: int,
) -> Checks | None:
    """All checks up to `last`; None where there was none and the plan wants none.

    entries: of the sessions of the range that only check.   practised: all days of practice up to
    `last`, rising.
    """
    found = _by_day(checked.trials, last=last, turns_at_hour=turns_at_hour)
    if not found and not settings.on:
        return None
    outcomes = outcomes_of(found, practised, settings, labels, last=last)
    done = dose.amount(dose.sittings(entries, day_turns_at_hour=turns_at_hour))
    return Checks(
        lines=tuple(
            CheckLine(
                item_set=item_set,
                name=name,
                label=labels.get(name, name),
                points=tuple(
                    _point(day, trials, phase_of(day, practised, settings))
                    for day, trials in days.items()
                ),
                phases=_together(days, practised, settings),
            )
            for (item_set, name), days in found.items()
        ),
        outcomes=outcomes,
        minutes=done.minutes,
        sittings=done.sessions,
        baseline_done=min(settings.baseline, sum(day <= last for day in checked.days)),
        baseline=settings.baseline,
        next_day=checked.next_day,
    )


def _by_day(
    trials: Sequence[Trial], *, last: date, turns_at_hour: int
) -> dict[tuple[ItemSet, str], dict[date, list[Trial]]]:
    """The trials of each construction in what it stands for, days rising."""
    found: dict[tuple[ItemSet, str], dict[date, list[Trial]]] = {}
    for trial in trials:
        day = practice_day(trial.started_at, turns_at_hour=turns_at_hour)
        if trial.asked.item_set in ROLES and trial.counts and day <= last:
            key = (trial.asked.item_set, trial.asked.target.name)
            found.setdefault(key, {}).setdefault(day, []).append(trial)
    return {
        key: {day: found[key][day] for day in sorted(found[key])}
        for key in sorted(found, key=lambda each: ROLES.index(each[0]))
    }


def _point(day: date, trials: Sequence[Trial], phase: Phase) -> CheckPoint:
    right, interval, verdict = _judged(trials)
    return CheckPoint(day=day, phase=phase, right=right, interval=interval, verdict=verdict)


def _together(
    days: Mapping[date, Sequence[Trial]], practised: Sequence[date], settings: ProbeSettings
) -> tuple[PhaseShare, ...]:
    found: dict[Phase, list[Sequence[Trial]]] = {}
    for day, trials in days.items():
        found.setdefault(phase_of(day, practised, settings), []).append(trials)
    shares = []
    for phase, checks in found.items():
        right, interval, verdict = _judged([trial for trials in checks for trial in trials])
        shares.append(
            PhaseShare(
                phase=phase, checks=len(checks), right=right, interval=interval, verdict=verdict
            )
        )
    return tuple(shares)


def _judged(trials: Sequence[Trial]) -> tuple[Share, Interval, Verdict | None]:
    right = count(trials).unaided
    chances = [1 / max(1, trial.asked.effective_k) for trial in trials]
    return right, wilson(right.right, right.of), chance.verdict(right.right, chances)
