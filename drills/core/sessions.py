"""One session as a whole: when it was opened, how long it took, how it ended."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from itertools import pairwise

from drills.core.records import CloseReason, Entry, SessionClosed, SessionOpened, Trial

# A longer silence is no part of the session: somebody went away, or the computer slept.
AWAY_SECONDS = 600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionSpan:
    """What the length of practice is reckoned from, beside the trials.

    opened_at: None when the opening is lost.   seconds: as of `session_seconds`.
    reason: None when it was broken off.   continues, check, simulated: as of `SessionOpened`.
    """

    session: str
    opened_at: datetime | None
    seconds: float
    reason: CloseReason | None
    continues: str | None = None
    check: str | None = None
    simulated: bool = False

    @classmethod
    def of(cls, session: str, entries: Sequence[Entry]) -> SessionSpan:
        """entries: all of the session, as written."""
        reason = None
        for entry in entries:
            if isinstance(entry, SessionClosed):
                reason = entry.reason
        span = cls(session=session, opened_at=None, seconds=session_seconds(entries), reason=reason)
        for entry in entries:
            if isinstance(entry, SessionOpened):
                span = replace(
                    span,
                    opened_at=entry.at,
                    continues=entry.continues,
                    check=entry.check,
                    simulated=entry.simulated,
                )
        return span


def spans_of(entries: Sequence[Entry]) -> tuple[SessionSpan, ...]:
    """Every session of `entries`, in the order in which they began."""
    kept: dict[str, list[Entry]] = {}
    for entry in entries:
        kept.setdefault(entry.session, []).append(entry)
    return tuple(SessionSpan.of(session, of_session) for session, of_session in kept.items())


def session_seconds(entries: Sequence[Entry]) -> float:
    """From the opening of one session to its closing, else to its last entry.

    entries: of one session, as written.   A silence of more than ten minutes is cut to ten.
    """
    if not entries:
        return 0.0
    began = entries[0].started_at if isinstance(entries[0], Trial) else entries[0].at
    # A clock that went backwards adds nothing.
    return sum(
        min(max((after - before).total_seconds(), 0.0), AWAY_SECONDS)
        for before, after in pairwise([began, *(entry.at for entry in entries)])
    )
