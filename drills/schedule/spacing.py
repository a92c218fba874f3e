"""When a target is due again, from how it went before.

Spacing over days follows a ladder of growing gaps: as the plan writes them, or fitted to this
person (`forgetting`). The evidence for growing gaps comes from words, not sentences; for sentences
it is an extrapolation, so every number is a setting of the plan.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Protocol

from drills.core.due import Due
from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Attempt, Trial
from drills.schedule.forgetting import Forgetting, Recall, fit

# Older answers tell less of how this person forgets now.
RECALLS_WITHIN_DAYS = 365


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


class _Record:
    """A target's trials folded, one by one as they come: years of them have to take no time.

    run: unaided successes in a row.   since_climb: those of the run not yet used for a rung.
    needed: successes that the hardest-to-trust trial of the run asks for.
    day: of the trial folded last; on one day there is at most one rung up and one fall, so that
    massed trials are one lesson.   last: the newest day.
    """

    __slots__ = (
        *("rung", "run", "since_climb", "needed"),
        *("day", "climbed", "fell", "last", "newest"),
    )

    def __init__(self, trial: Trial, day: date) -> None:
        self.rung = -1
        self.run = 0
        self.since_climb = 0
        self.needed = 1
        self.day = day
        self.climbed = False
        self.fell = False
        self.last = day
        self.newest = trial

    def recall(self, day: date, first: Attempt, trial: Trial) -> Recall:
        """The first answer of `day`, after the days since the newest one."""
        return Recall(
            rung=self.rung,
            gap_days=(day - self.last).days,
            right=first.right and first.cue_level == 0,
            effective_k=trial.asked.effective_k,
        )

    def begin(self, day: date) -> None:
        """The first trial of another day comes next."""
        self.day = day
        if day > self.last:  # noqa: PLR1730 - a call for each of years of trials
            self.last = day
        self.climbed = self.fell = False

    def take(self, trial: Trial, first: Attempt, settings: SpacingSettings) -> None:
        self.newest = trial
        if first.right and first.cue_level == 0:
            self.run += 1
            self.since_climb += 1
            of_trial = run_needed(trial, settings)
            if self.since_climb == 1 or of_trial > self.needed:
                self.needed = of_trial
            if not self.climbed and self.since_climb >= self.needed:
                self.rung = min(self.rung + 1, len(settings.ladder_days) - 1)
                self.climbed, self.since_climb = True, 0
            return
        self.run = self.since_climb = 0
        # Right after asking for help is no failure, but it ends the run.
        if not first.right and not self.fell:
            self.rung = max(self.rung - settings.steps_back, min(self.rung, 0))
            self.fell = True


def run_needed(trial: Trial, settings: SpacingSettings) -> int:
    """Unaided successes in a row that beat guessing on such a trial; 1 when a person scores it.

    An item that its words alone decide says nothing of grammar, so it asks for the longest run.
    """
    asked = trial.asked
    if asked.kind is Kind.GESTURE:
        return 1
    if asked.effective_k <= 2:
        return settings.run_two_options
    if asked.effective_k == 3:
        return settings.run_three_options
    return settings.run_four_options


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
    records, recalls = _folded(trials, settings, turns_at_hour=day_turns_at_hour, today=today)
    gaps = _gaps(recalls, settings)
    return tuple(
        _due(target, records.get((target.kind, target.name, target.group)), gaps, today=today)
        for target in dict.fromkeys(targets)
    )


def _gaps(recalls: Iterable[Recall], settings: SpacingSettings) -> Gaps:
    if settings.policy is SpacingPolicy.LADDER:
        return LadderGaps(settings=settings)
    return FittedGaps(forgetting=fit(recalls, settings))


_Key = tuple[Kind, str, str]
"""A target as a plain tuple: the many look-ups of years of trials are faster by it."""


def _folded(
    trials: Iterable[Trial], settings: SpacingSettings, *, turns_at_hour: int, today: date
) -> tuple[Mapping[_Key, _Record], Sequence[Recall]]:
    """Every practised target's record, and the answers to which gaps can be fitted."""
    records: dict[_Key, _Record] = {}
    recalls: list[Recall] = []
    gaps_are_fitted = settings.policy is SpacingPolicy.FITTED
    oldest = today - timedelta(days=RECALLS_WITHIN_DAYS)
    turn = timedelta(hours=turns_at_hour)
    for trial in trials:
        asked = trial.asked
        attempts = trial.attempts
        if asked.item_set is not ItemSet.TREATED or not attempts:
            continue
        first = attempts[0]
        # Only a tick can keep a first response from counting.
        if first.ticks and not trial.counts:
            continue
        at = trial.started_at
        day = at.date() if at.hour >= turns_at_hour else (at - turn).date()
        if day > today:  # noqa: PLR1730 - a call for each of years of trials
            day = today
        target = asked.target
        key = (target.kind, target.name, target.group)
        record = records.get(key)
        if record is None:
            records[key] = record = _Record(trial, day)
        elif day != record.day:
            if gaps_are_fitted and day > record.last >= oldest and record.rung >= 0:
                recalls.append(record.recall(day, first, trial))
            record.begin(day)
        record.take(trial, first, settings)
    return records, recalls


def _due(target: Target, record: _Record | None, gaps: Gaps, *, today: date) -> Due:
    if record is None:
        return Due(target=target, day=today, rung=-1, run=0, last=None, reason="New: not met yet.")
    day = record.last + timedelta(days=gaps.days(record.rung))
    return Due(
        target=target,
        day=day,
        rung=record.rung,
        run=record.run,
        last=record.last,
        reason=_reason(record, day=day, today=today) + gaps.told,
    )


_ORDINALS = ("", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth")


def _reason(record: _Record, *, day: date, today: date) -> str:
    run, first = record.run, record.newest.first
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
