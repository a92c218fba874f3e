"""Practice so far: years of it may be at hand, of which the digest looks at the last months."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import chain

from drills.core.kinds import ItemSet
from drills.core.records import Trial, practice_day


@dataclass(frozen=True, slots=True, kw_only=True)
class Past:
    """Practice up to the end of a range, without checks.

    history: trials, checks too, oldest first, without their words and pictures.
    known_days: days of practice, some of them further back than `history`.
    read: trials of practice with all of that; they stand for those of their sessions in `history`.
    """

    history: Sequence[Trial]
    known_days: Sequence[date]
    read: Sequence[Trial]
    last: date
    turns_at_hour: int

    def days(self) -> tuple[date, ...]:
        """The days of practice, rising."""
        found = set(self.known_days)
        session = ""
        for trial in chain(self.history, self.read):
            if (
                trial.session != session
                and trial.attempts
                and trial.asked.item_set is ItemSet.TREATED
            ):
                session = trial.session
                found.add(self._day(trial))
        return tuple(sorted(day for day in found if day <= self.last))

    def since(self, first: date) -> tuple[Trial, ...]:
        """The trials from `first` to the end of the range, oldest first."""
        # A clock that was set back leaves a little out of order.
        start = bisect_left(self.history, first - timedelta(days=2), key=self._day)
        sessions = {trial.session for trial in self.read}
        found = [
            trial
            for trial in self.history[start:]
            if trial.asked.item_set is ItemSet.TREATED and trial.session not in sessions
        ]
        kept = [trial for trial in (*found, *self.read) if first <= self._day(trial) <= self.last]
        return tuple(sorted(kept, key=lambda trial: trial.started_at))

    def _day(self, trial: Trial) -> date:
        return practice_day(trial.started_at, turns_at_hour=self.turns_at_hour)
