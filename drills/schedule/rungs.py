"""How far every target has climbed: trials folded one by one, so that years of them take no time.

What has been folded can be put by as plain values and gone on with later: the standing is then the
same, to the last bit, as if all trials had been folded again.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date, timedelta
from typing import Any

from drills.core.kinds import ItemSet, Kind, Target
from drills.core.plans import SpacingPolicy, SpacingSettings
from drills.core.records import Trial
from drills.schedule.forgetting import Recall

# Older answers tell less of how this person forgets now.
RECALLS_WITHIN_DAYS = 365

Key = tuple[Kind, str, str]
"""A target as a plain tuple: the many look-ups of years of trials are faster by it."""


class Climb:
    """One target's trials folded. Days are numbered as by `date.toordinal`.

    run: unaided successes in a row.   since_climb: those of the run not yet used for a rung.
    needed: successes that the hardest-to-trust trial of the run asks for.
    day: of the trial folded last; on one day there is at most one rung up and one fall, so that
    massed trials are one lesson.   last: the newest day.
    right: the newest first response was, with help or without.
    """

    __slots__ = (
        *("rung", "run", "since_climb", "needed"),
        *("day", "climbed", "fell", "last", "right"),
    )

    def __init__(self, day: int) -> None:
        self.rung = -1
        self.run = 0
        self.since_climb = 0
        self.needed = 1
        self.day = day
        self.climbed = False
        self.fell = False
        self.last = day
        self.right = False


class Rungs:
    """Every practised target's climb, and the answers to which gaps can be fitted.

    A trial dated after `today`, left by a clock that was wrong, counts as today's.
    """

    def __init__(self, settings: SpacingSettings, *, day_turns_at_hour: int, today: date) -> None:
        self.climbs: dict[Key, Climb] = {}
        self._settings = settings
        self._turns_at_hour = day_turns_at_hour
        self._today = today.toordinal()
        self._recalls: list[tuple[int, Recall]] = []
        self._has_later_days = False

    @property
    def recalls(self) -> Iterable[Recall]:
        """First answers of a day, after practice in the last year, where gaps are fitted."""
        return (recall for _, recall in self._recalls)

    # One loop: a call or two more for each of years of trials would take as long as all the rest.
    def take(self, trials: Iterable[Trial]) -> None:  # noqa: PLR0912, PLR0915
        """Fold more trials, in the order in which they were given.

        Probes do not count, nor do trials without a first response.
        """
        settings, turns_at_hour, today = self._settings, self._turns_at_hour, self._today
        turn = timedelta(hours=turns_at_hour)
        top, steps_back = len(settings.ladder_days) - 1, settings.steps_back
        runs, longer = _runs(settings), settings.run_four_options
        # Without fitted gaps, no day is new enough.
        is_fitted = settings.policy is SpacingPolicy.FITTED
        oldest = today - RECALLS_WITHIN_DAYS if is_fitted else today + 1
        treated, gesture = ItemSet.TREATED, Kind.GESTURE
        # By identity first: trials that were read together share their targets.
        known: dict[int, tuple[Target, Climb]] = {}
        for trial in trials:
            asked = trial.asked
            attempts = trial.attempts
            if asked.item_set is not treated or not attempts:
                continue
            first = attempts[0]
            # Only a tick can keep a first response from counting.
            if first.ticks and not trial.counts:
                continue
            at = trial.started_at
            day = at.toordinal() if at.hour >= turns_at_hour else (at - turn).toordinal()
            if day > today:
                day = today
                self._has_later_days = True
            target = asked.target
            found = known.get(id(target))
            if found is None:
                climb = self._climb_of(target, day)
                known[id(target)] = target, climb
            else:
                climb = found[1]
            right = first.right
            alone = right and first.cue_level == 0
            if day != climb.day:
                last = climb.last
                if day > last:
                    if last >= oldest and climb.rung >= 0:
                        recall = Recall(climb.rung, day - last, alone, asked.effective_k)
                        self._recalls.append((last, recall))
                    climb.last = day
                climb.day = day
                climb.climbed = climb.fell = False
            climb.right = right
            if alone:
                climb.run += 1
                climb.since_climb += 1
                options = asked.effective_k
                needed = runs[options] if options < len(runs) else longer
                if asked.kind is gesture:
                    needed = 1
                if climb.since_climb == 1 or needed > climb.needed:
                    climb.needed = needed
                if not climb.climbed and climb.since_climb >= climb.needed:
                    if climb.rung < top:
                        climb.rung += 1
                    climb.climbed, climb.since_climb = True, 0
                continue
            climb.run = climb.since_climb = 0
            # Right after asking for help is no failure, but it ends the run.
            if not right and not climb.fell:
                climb.rung = max(climb.rung - steps_back, min(climb.rung, 0))
                climb.fell = True

    def _climb_of(self, target: Target, day: int) -> Climb:
        key = (target.kind, target.name, target.group)
        climb = self.climbs.get(key)
        if climb is None:
            self.climbs[key] = climb = Climb(day)
        return climb

    def put_by(self) -> Mapping[str, Any] | None:
        """All that was folded as plain values; None where that would not hold on a later day."""
        if self._has_later_days:
            return None
        return {
            "today": self._today,
            "climbs": [
                [kind.value, name, group, *(getattr(climb, field) for field in Climb.__slots__)]
                for (kind, name, group), climb in self.climbs.items()
            ],
            "recalls": [[last, *recall] for last, recall in self._recalls],
        }

    def go_on_from(self, kept: Mapping[str, Any]) -> None:
        """Take what `put_by` gave, by the same settings, in the place of all trials before.

        Raises: ValueError where it was put by on a later day: old answers may be left out there;
        KeyError, TypeError or ValueError where it is no such thing.
        """
        if kept["today"] > self._today:
            raise ValueError("this was put by on a later day")
        kinds = {kind.value: kind for kind in Kind}
        climbs: dict[Key, Climb] = {}
        for kind, name, group, *values in kept["climbs"]:
            climbs[kinds[kind], name, group] = climb = Climb(0)
            climb.rung, climb.run, climb.since_climb, climb.needed = values[:4]
            climb.day, climb.climbed, climb.fell, climb.last, climb.right = values[4:]
        oldest = self._today - RECALLS_WITHIN_DAYS
        self._recalls = [
            (last, Recall(*recall)) for last, *recall in kept["recalls"] if last >= oldest
        ]
        self.climbs = climbs


def run_needed(trial: Trial, settings: SpacingSettings) -> int:
    """Unaided successes in a row that beat guessing on such a trial; 1 when a person scores it.

    An item that its words alone decide says nothing of grammar, so it asks for the longest run.
    """
    asked = trial.asked
    if asked.kind is Kind.GESTURE:
        return 1
    runs = _runs(settings)
    return runs[asked.effective_k] if asked.effective_k < len(runs) else settings.run_four_options


def _runs(settings: SpacingSettings) -> tuple[int, ...]:
    """By the number of options that fit, up to three."""
    two = settings.run_two_options
    return two, two, two, settings.run_three_options
