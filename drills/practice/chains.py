"""Sessions of one day that go on with each other."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from drills.core.records import (
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    latest_trials,
)

# After these nothing is left to do today: all done, tired, or unwell.
_OVER = (CloseReason.FINISHED, CloseReason.TIRED, CloseReason.UNWELL)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """first, last: its oldest and newest session.   given: ordinals of the trials given in it."""

    first: SessionOpened
    last: SessionOpened
    sessions: frozenset[str]
    given: frozenset[int]
    is_over: bool


def last_chain(entries: Sequence[Entry]) -> Chain | None:
    """The newest chain of the entries of one day; None where no session was opened."""
    opened = [entry for entry in entries if isinstance(entry, SessionOpened)]
    if not opened:
        return None
    by_id = {entry.session: entry for entry in opened}
    last = first = opened[-1]
    sessions = [last.session]
    while first.continues in by_id:
        first = by_id[first.continues]
        sessions.append(first.session)
    closed = {entry.session: entry.reason for entry in entries if isinstance(entry, SessionClosed)}
    return Chain(
        first=first,
        last=last,
        sessions=frozenset(sessions),
        given=frozenset(
            ordinal
            for trial in latest_trials(entries)
            if trial.session in sessions and (trial.attempts or trial.ended)
            for ordinal in _ordinals_in(trial.trial)
        ),
        is_over=closed.get(last.session) in _OVER,
    )


def of_practice(entries: Sequence[Entry], *, checks: bool = False) -> tuple[Entry, ...]:
    """The entries of sessions of practice; checks: of those that only check instead."""
    wanted = {
        entry.session
        for entry in entries
        if isinstance(entry, SessionOpened) and (entry.check is not None) is checks
    }
    return tuple(entry for entry in entries if entry.session in wanted)


def told_of_new_signs(entries: Sequence[Entry]) -> bool:
    """Someone said yes to new signs of a stroke, however the session ended."""
    return any(isinstance(entry, Observation) and entry.new_signs for entry in entries)


def finished(entries: Sequence[Entry]) -> int:
    """How many sessions were finished."""
    return sum(
        isinstance(entry, SessionClosed) and entry.reason is CloseReason.FINISHED
        for entry in entries
    )


def _ordinals_in(trial: str) -> tuple[int, ...]:
    """The ordinal that a trial's id ends in; none for an id that no session here has given."""
    ordinal = trial.rpartition("-")[2]
    return (int(ordinal),) if re.fullmatch("[0-9]{1,9}", ordinal) else ()
