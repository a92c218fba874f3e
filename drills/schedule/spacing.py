"""When a target is due again, from how it went before.

Spacing over days follows a ladder of growing gaps: as the plan writes them, or fitted to this
person (`forgetting`). The evidence for growing gaps comes from words, not sentences; for sentences
it is an extrapolation, so every number is a setting of the plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from itertools import groupby
from typing import Protocol

from drills.core.due import Due
from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Trial
from drills.schedule.forgetting import Forgetting, Recall, fit


class Gaps(Protocol):
    """A policy of spacing: how many days pass before a target comes back."""

    def days(self, rung: int) -> int:
        """Days to the next practice of a target on `rung`; -1 is before any success."""

    @property
    def told(self) -> str:
        """What is added to the reason of a due day; empty for the plan's own ladder."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LadderGaps:
    """The gaps that stand in the plan, which anyone can check by hand."""

    settings: SpacingSettings

    def days(self, rung: int) -> int:
        ladder = self.settings.ladder_days
        return ladder[min(max(rung, 0), len(ladder) - 1)]

    @property
    def told(self) -> str:
        return ""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedGaps:
    """This person's own gaps, or the ladder's while the answers are few."""

    forgetting: Forgetting

    def days(self, rung: int) -> int:
        gaps = self.forgetting.gaps_days
        return gaps[min(max(rung, 0), len(gaps) - 1)]

    @property
    def told(self) -> str:
        if not self.forgetting.recalls:
            return " Gap by the ladder: too few answers yet to fit one."
        return f" Gap fitted to {self.forgetting.recalls} answers after a pause."


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


@dataclass(frozen=True, slots=True, kw_only=True)
class _Record:
    """A target's trials folded.   last: the newest day.   recalls: first answers after gaps."""

    fold: _Fold
    newest: Trial
    last: date
    recalls: tuple[Recall, ...]


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
    """Where `target` stands today.   trials: as for `standings`."""
    (due,) = standings(
        (target,), trials, settings=settings, day_turns_at_hour=day_turns_at_hour, today=today
    )
    return due


def standings(
    targets: Iterable[Target],
    trials: Sequence[Trial],
    *,
    settings: SpacingSettings,
    day_turns_at_hour: int,
    today: date,
) -> tuple[Due, ...]:
    """Where each target stands, in the order of `targets`.

    trials: of any targets, in the order in which they were given; probes do not count, nor do
    trials without a first response.
    A trial dated after today, left by a clock that was wrong, counts as today's.
    """
    by_target: dict[Target, list[Trial]] = {}
    for trial in trials:
        if trial.asked.item_set is ItemSet.TREATED and trial.counts:
            by_target.setdefault(trial.asked.target, []).append(trial)
    turn = timedelta(hours=day_turns_at_hour)
    records = {
        target: _record(of_target, settings, turn=turn, today=today)
        for target, of_target in by_target.items()
    }
    gaps = _gaps(records.values(), settings)
    return tuple(
        _due(target, records.get(target), gaps, today=today) for target in dict.fromkeys(targets)
    )


def _gaps(records: Iterable[_Record], settings: SpacingSettings) -> Gaps:
    if settings.policy is SpacingPolicy.LADDER:
        return LadderGaps(settings=settings)
    recalls = (recall for record in records for recall in record.recalls)
    return FittedGaps(forgetting=fit(recalls, settings))


def _record(
    trials: Sequence[Trial], settings: SpacingSettings, *, turn: timedelta, today: date
) -> _Record:
    fold = _Fold()
    recalls: list[Recall] = []
    last: date | None = None

    def day_of(trial: Trial) -> date:
        at: datetime = trial.started_at - turn
        return min(at.date(), today)

    for day, of_day in groupby(trials, key=day_of):
        given = list(of_day)
        if last is not None and fold.rung >= 0 and day > last:
            recalls.append(
                Recall(
                    rung=fold.rung,
                    gap_days=(day - last).days,
                    right=given[0].unaided_right,
                    effective_k=given[0].asked.effective_k,
                )
            )
        fold = _fold_day(fold, given, settings)
        last = day if last is None else max(last, day)
    if last is None:
        raise ValueError("no trials to fold")
    return _Record(fold=fold, newest=trials[-1], last=last, recalls=tuple(recalls))


def _due(target: Target, record: _Record | None, gaps: Gaps, *, today: date) -> Due:
    if record is None:
        return Due(target=target, day=today, rung=-1, run=0, last=None, reason="New: not met yet.")
    day = record.last + timedelta(days=gaps.days(record.fold.rung))
    return Due(
        target=target,
        day=day,
        rung=record.fold.rung,
        run=record.fold.run,
        last=record.last,
        reason=_reason(record, day=day, today=today) + gaps.told,
    )


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


def _reason(record: _Record, *, day: date, today: date) -> str:
    run, first = record.fold.run, record.newest.first
    ago = (today - record.last).days
    when = "today" if ago == 0 else "yesterday" if ago == 1 else f"{ago} days ago"
    if run >= 2:
        ordinal = _ORDINALS[run] if run < len(_ORDINALS) else f"number {run}"
        how = f"last right alone {when}, {ordinal} in a row."
    elif run == 1:
        how = f"last right alone {when}."
    elif first is not None and first.right:
        how = f"last right with help {when}."
    else:
        how = f"last missed {when}, so it comes sooner."
    return f"{'Due' if day <= today else 'Not yet due'}: {how}"
