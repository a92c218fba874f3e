"""Records that live as long as the program."""

from __future__ import annotations

from datetime import datetime

from drills.core.folds import Fold
from drills.core.records import Entry, SessionOpened, Trial, latest_trials
from drills.core.sessions import SessionSpan, spans_of
from drills.core.therapist import TherapistEntry


class MemoryRecords:
    """The records protocol without a disk."""

    def __init__(self) -> None:
        self._sessions: dict[str, list[Entry]] = {}
        self._opened_at: dict[str, datetime] = {}

    @property
    def reason(self) -> str:
        return ""

    @property
    def notices(self) -> tuple[str, ...]:
        return ()

    def open_session(self, opened: SessionOpened) -> None:
        self._sessions[opened.session] = [opened]
        self._opened_at[opened.session] = opened.at

    def append(self, entry: Entry) -> None:
        self._sessions[entry.session].append(entry)

    def entries(
        self, *, since: datetime | None = None, until: datetime | None = None
    ) -> tuple[Entry, ...]:
        return tuple(
            entry
            for session, at in sorted(self._opened_at.items(), key=lambda pair: (pair[1], pair[0]))
            if (since is None or at >= since) and (until is None or at < until)
            for entry in self._sessions[session]
        )

    def history(self, *, since: datetime | None = None) -> tuple[Trial, ...]:
        return latest_trials(self.entries(since=since))

    def spans(self, *, since: datetime, until: datetime) -> tuple[SessionSpan, ...]:
        return spans_of(self.entries(since=since, until=until))

    def fold(self, into: Fold, *, since: datetime, until: datetime) -> tuple[Trial, ...]:
        """Nothing is taken: a rehearsal is too short for that to be of use."""
        del into, until
        return self.history(since=since)

    def close(self) -> None:
        """Nothing to close."""


class MemoryTherapistLog:
    """The protocol of the therapist's log without a disk."""

    def __init__(self) -> None:
        self._entries: list[TherapistEntry] = []

    @property
    def reason(self) -> str:
        return ""

    @property
    def notices(self) -> tuple[str, ...]:
        return ()

    def append(self, entry: TherapistEntry) -> None:
        self._entries.append(entry)

    def entries(self) -> tuple[TherapistEntry, ...]:
        return tuple(self._entries)
