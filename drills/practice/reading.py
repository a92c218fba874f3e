"""What the records of one practice folder say, as far back as is asked."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime, timedelta
from typing import TYPE_CHECKING

from drills.core.kinds import ItemSet
from drills.core.records import Entry, SessionOpened, Trial, practice_day

if TYPE_CHECKING:
    from drills.core.plans import Plan
    from drills.core.ports import Clock, Records
    from drills.core.sessions import SessionSpan
    from drills.practice.past import Past

# Sessions that are no older may still be gone on with, or be left out.
_DAYS_THAT_MAY_GROW = 7


class Reading:
    """Reads for one plan, which says when a day turns and how far back its schedule looks.

    program: its version.
    """

    def __init__(self, *, plan: Plan, records: Records, clock: Clock, program: str) -> None:
        self.plan = plan
        self.records = records
        self.clock = clock
        self._program = program

    def day(self, at: datetime | None = None) -> date:
        """The practice day of a moment, now when None."""
        return practice_day(
            at or self.clock.now(), turns_at_hour=self.plan.sitting.day_turns_at_hour
        )

    def entries_of(self, first: date, last: date) -> tuple[Entry, ...]:
        """Entries of the sessions whose practice day lies in `first` to `last`."""
        since, until = self._around(first, last)
        entries = self.records.entries(since=since, until=until)
        wanted = {
            entry.session
            for entry in entries
            if isinstance(entry, SessionOpened) and first <= self.day(entry.at) <= last
        }
        return tuple(entry for entry in entries if entry.session in wanted)

    def sessions_of(self, first: date, last: date) -> tuple[SessionSpan, ...]:
        """The same without reading files: when sessions were, how long and how they ended."""
        since, until = self._around(first, last)
        return tuple(
            span
            for span in self.records.spans(since=since, until=until)
            if span.opened_at is not None and first <= self.day(span.opened_at) <= last
        )

    def _around(self, first: date, last: date) -> tuple[datetime, datetime]:
        zone = self.clock.now().tzinfo
        # A day of slack on both sides: a session keeps the offset of where it was opened.
        since = datetime(first.year, first.month, first.day, tzinfo=zone) - timedelta(days=1)
        until = datetime(last.year, last.month, last.day, tzinfo=zone) + timedelta(days=3)
        return since, until

    def past(self, *, without: frozenset[str] = frozenset(), today: date | None = None) -> Past:
        """What the trials of `history` come to.   without: sessions of today to leave out."""
        # The first screen needs none of this and must come soon.
        from drills.practice.past import Past  # noqa: PLC0415

        past = Past(self.plan, program=self._program, today=today or self.day())
        until = self.clock.now() - timedelta(days=_DAYS_THAT_MAY_GROW)
        rest = self.records.fold(past, since=self.history_begins, until=until)
        past.take(without_sessions(rest, without))
        return past

    def history(self, *, since: date | None = None) -> tuple[Trial, ...]:
        """The trials that can still move a due day, oldest first: years of them.

        since: the day, UTC, from which sessions are wanted; None for all.
        """
        begins = self.history_begins
        if since is not None:
            begins = max(begins, datetime(since.year, since.month, since.day, tzinfo=UTC))
        return tuple(self.records.history(since=begins))

    @property
    def history_begins(self) -> datetime:
        """Sessions opened before it are not in `history`."""
        from drills.schedule import history_begins  # noqa: PLC0415

        return history_begins(self.plan.spacing, self.day())

    def history_of_practice(self) -> tuple[Trial, ...]:
        """The same without checks, which decide nothing of practice."""
        return tuple(t for t in self.history() if t.asked.item_set is ItemSet.TREATED)


def without_sessions(trials: Sequence[Trial], sessions: frozenset[str]) -> tuple[Trial, ...]:
    return tuple(trial for trial in trials if trial.session not in sessions)
