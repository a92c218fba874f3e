"""What practice itself shows over time: what is kept, and whether scores rise by session.

Practice adapts to the person, so that neither is an outcome: see `outcomes`.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from drills.core.kinds import Kind
from drills.core.records import Trial
from drills.measures import accuracy, retention
from drills.measures import trend as trends
from drills.measures.missing import Missing
from drills.measures.retention import Retained
from drills.measures.trend import Trend

RETENTION_WEEKS = 26


@dataclass(frozen=True, slots=True, kw_only=True)
class Kept:
    """Right alone at the first giving of a target after so many days, the same day apart.

    since: the day from which givings are looked at.
    words: of sentences and words.   same_day: further givings on one day, which say nothing of
    keeping.
    """

    since: date
    words: tuple[Retained, ...]
    gestures: tuple[Retained, ...]
    words_same_day: Retained
    gestures_same_day: Retained


@dataclass(frozen=True, slots=True, kw_only=True)
class TrendLine:
    """The share right alone, session by session, of one name.

    since: the day from which sessions are looked at.   trend: its slope is in shares a session.
    """

    kind: Kind
    name: str
    label: str
    since: date
    sessions: int
    trials: int
    trend: Trend | Missing


def kept_of(trials: Sequence[Trial], *, since: date, turns_at_hour: int) -> Kept:
    """trials: of practice from `since` on, oldest first."""
    words, gestures = (
        retention.retention(
            retention.recalls_of(
                (trial for trial in trials if (trial.asked.kind is Kind.GESTURE) is gesture),
                day_turns_at_hour=turns_at_hour,
            )
        )
        for gesture in (False, True)
    )
    return Kept(
        since=since,
        words=words[1:],
        gestures=gestures[1:],
        words_same_day=words[0],
        gestures_same_day=gestures[0],
    )


def trends_of(
    trials: Sequence[Trial], labels: Mapping[str, str], *, since: date
) -> tuple[TrendLine, ...]:
    """trials: of practice from `since` on, oldest first."""
    found: dict[tuple[Kind, str], dict[str, list[Trial]]] = {}
    for trial in trials:
        if trial.could_be_alone:
            of_name = found.setdefault((trial.asked.kind, trial.asked.target.name), {})
            of_name.setdefault(trial.session, []).append(trial)
    return tuple(
        TrendLine(
            kind=kind,
            name=name,
            label=labels.get(name, name),
            since=since,
            sessions=len(of_name),
            trials=sum(map(len, of_name.values())),
            trend=trends.trend(range(len(of_name)), [_score(own) for own in of_name.values()]),
        )
        for (kind, name), of_name in found.items()
    )


def _score(trials: Sequence[Trial]) -> float:
    share = accuracy.count(trials).unaided
    return share.right / share.of
