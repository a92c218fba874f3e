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
    Trial,
    latest_trials,
    practice_day,
)
from drills.core.sessions import SessionSpan, spans_of

# A longer wait for one response is no practice beyond this.
IDLE_SECONDS = 60.0


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


def sittings(entries: Sequence[Entry], *, day_turns_at_hour: int) -> tuple[Sitting, ...]:
    """Every session with at least one response, chains of `continues` joined, oldest first."""
    return joined(spans_of(entries), latest_trials(entries), day_turns_at_hour=day_turns_at_hour)


def joined(
    spans: Sequence[SessionSpan], trials: Sequence[Trial], *, day_turns_at_hour: int
) -> tuple[Sitting, ...]:
    """The same from sessions, oldest first, and their trials as last kept."""
    opened = {span.session: span for span in spans if span.opened_at is not None}
    chains: dict[str, list[SessionSpan]] = {}
    for span in spans:
        chains.setdefault(_root(span.session, opened), []).append(span)
    answered: dict[str, list[Trial]] = {}
    for trial in trials:
        if trial.attempts:
            answered.setdefault(trial.session, []).append(trial)
    found = []
    for root, chain in chains.items():
        of_chain = [trial for span in chain for trial in answered.get(span.session, [])]
        if not of_chain:
            continue
        began = (opened[root].opened_at if root in opened else None) or of_chain[0].started_at
        found.append(
            Sitting(
                sessions=tuple(span.session for span in chain),
                day=practice_day(began, turns_at_hour=day_turns_at_hour),
                trials=len(of_chain),
                minutes=sum(span.seconds for span in chain) / 60,
                active_minutes=sum(active_seconds(trial) for trial in of_chain) / 60,
                reason=chain[-1].reason,
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


def _root(session: str, opened: Mapping[str, SessionSpan]) -> str:
    """The first known session of the chain; a chain that bites its tail ends where it began."""
    seen = {session}
    while session in opened:
        before = opened[session].continues
        if before is None or before not in opened or before in seen:
            break
        session = before
        seen.add(session)
    return session
