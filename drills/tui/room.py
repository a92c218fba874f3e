"""What the therapist's screens share: the days that are looked at, and who looks."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta

from drills.core.records import Entry, Trial, latest_trials
from drills.digest import Digest, render
from drills.digest.plain import day_and_year
from drills.tui.desk import Desk

DAYS = 7


class Room:
    """by: who is here, as they call themselves; empty until it is said."""

    def __init__(self, desk: Desk) -> None:
        self.desk = desk
        self.home = desk.home
        self._today = desk.home.day()
        self.last = self._today
        self.by = desk.home.plan.therapist
        self._digest: Digest | None = None

    @property
    def first(self) -> date:
        return self.last - timedelta(days=DAYS - 1)

    @property
    def is_newest(self) -> bool:
        return self.last >= self._today

    def turn(self, weeks: int) -> bool:
        """Look at as many weeks later, or earlier below 0, never past today; whether it moved."""
        last = min(self.last + timedelta(days=DAYS * weeks), self._today)
        has_moved = last != self.last
        self.last = last
        return has_moved

    @property
    def days(self) -> str:
        return f"{day_and_year(self.first)} to {day_and_year(self.last)}"

    def entries(self) -> Sequence[Entry]:
        return self.home.entries_of(self.first, self.last)

    def trials(self) -> tuple[Trial, ...]:
        return latest_trials(self.entries())

    def digest(self) -> Digest:
        """Of the days that are looked at; slow on a long history."""
        return self._digest_to(self.last)

    def newest_digest(self) -> Digest:
        """Of the days up to today, with what is suggested and planned, whichever are looked at."""
        return self._digest_to(self._today)

    def _digest_to(self, last: date) -> Digest:
        found = self._digest
        if found is None or found.last != last:
            first = last - timedelta(days=DAYS - 1)
            found = self._digest = self.home.digest(first, last)
        return found

    def digest_text(self) -> str:
        return render(self.digest(), "text")

    def forget(self) -> None:
        """Count anew: the plan or the records have changed."""
        self._digest = None
