"""How much was practised, and how much of what was asked for.

Two kinds of minutes. A session's minutes go from its opening to its closing, rests and all: a plan
speaks of such minutes, so they alone are held against it. Active minutes are those of answering:
from the showing of each trial to its end, without rests, check-ins and gaps between trials.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import accumulate, pairwise

from drills.core.records import (
    CloseReason,
    Entry,
    SessionClosed,
    SessionOpened,
    Trial,
    latest_trials,
    practice_day,
)

# A longer wait for one response is no practice beyond this.
IDLE_SECONDS = 60.0
# Nor is a longer silence a part of the session: somebody went away, or the computer slept.
AWAY_SECONDS = 600.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Sitting:
    """One session as the person knows it: what was broken off and gone on with is one.

    sessions: their ids, first to last.   trials: with a first response, hindered ones included.
    minutes: from opening to closing.   active_minutes: of answering.
    reason: how it ended; None when it was broken off.   day: a practice day.
    """

    sessions: tuple[str, ...]
    day: date
    trials: int
    minutes: float
    active_minutes: float
    reason: CloseReason | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """What was done.   minutes_by_day: of sessions, by practice day, days with practice only."""

    minutes_by_day: Mapping[date, float]
    active_minutes: float
    sessions: int
    trials: int

    @property
    def minutes(self) -> float:
        return sum(self.minutes_by_day.values())

    @property
    def days(self) -> int:
        return len(self.minutes_by_day)


def active_seconds(trial: Trial) -> float:
    """From shown to ended, with every wait of more than a minute cut to a minute."""
    moments = [trial.started_at, *(attempt.at for attempt in trial.attempts), trial.at]
    # A clock that went backwards within a trial adds nothing.
    return sum(
        min(max((after - before).total_seconds(), 0.0), IDLE_SECONDS)
        for before, after in pairwise(moments)
    )


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


def sittings(entries: Sequence[Entry], *, day_turns_at_hour: int) -> tuple[Sitting, ...]:
    """Every session with at least one response, chains of `continues` joined, oldest first."""
    opened = {entry.session: entry for entry in entries if isinstance(entry, SessionOpened)}
    closed = {entry.session: entry.reason for entry in entries if isinstance(entry, SessionClosed)}
    kept: dict[str, list[Entry]] = {}
    for entry in entries:
        kept.setdefault(entry.session, []).append(entry)
    chains: dict[str, list[str]] = {}
    for session in kept:
        chains.setdefault(_root(session, opened), []).append(session)
    trials: dict[str, list[Trial]] = {}
    for trial in latest_trials(entries):
        if trial.attempts:
            trials.setdefault(trial.session, []).append(trial)
    found = []
    for root, chain in chains.items():
        of_chain = [trial for session in chain for trial in trials.get(session, [])]
        if not of_chain:
            continue
        began = opened[root].at if root in opened else of_chain[0].started_at
        found.append(
            Sitting(
                sessions=tuple(chain),
                day=practice_day(began, turns_at_hour=day_turns_at_hour),
                trials=len(of_chain),
                minutes=sum(session_seconds(kept[session]) for session in chain) / 60,
                active_minutes=sum(active_seconds(trial) for trial in of_chain) / 60,
                reason=closed.get(chain[-1]),
            )
        )
    return tuple(found)


def amount(sat: Sequence[Sitting]) -> Amount:
    """Minutes, days, sessions and trials together."""
    minutes: dict[date, float] = {}
    for sitting in sat:
        minutes[sitting.day] = minutes.get(sitting.day, 0.0) + sitting.minutes
    return Amount(
        minutes_by_day=dict(sorted(minutes.items())),
        active_minutes=sum(sitting.active_minutes for sitting in sat),
        sessions=len(sat),
        trials=sum(sitting.trials for sitting in sat),
    )


def adherence(done: float, prescribed: float) -> float | None:
    """The share done of what was prescribed, at most 1; None when nothing was."""
    return None if prescribed <= 0 else min(1.0, done / prescribed)


def hours_per_week(minutes: float, days: int) -> float | None:
    """Hours in seven days at the rate of `minutes` in `days`; None without days."""
    return minutes / 60 / days * 7 if days > 0 else None


def cumulative_hours(minutes_by_day: Mapping[date, float]) -> Mapping[date, float]:
    """Hours from the first day to each day, that day included; days in order."""
    days = sorted(minutes_by_day)
    sums = accumulate(minutes_by_day[day] for day in days)
    return {day: minutes / 60 for day, minutes in zip(days, sums, strict=True)}


def _root(session: str, opened: Mapping[str, SessionOpened]) -> str:
    """The first known session of the chain; a chain that bites its tail ends where it began."""
    seen = {session}
    while session in opened:
        before = opened[session].continues
        if before is None or before not in opened or before in seen:
            break
        session = before
        seen.add(session)
    return session
