"""Every answer of the range, one by one."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from drills.core.kinds import Foil, ItemSet, Kind, Target
from drills.core.records import Trial, practice_day
from drills.measures import errors


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerLine:
    """One trial.

    first_choice: index of the option, None for a gesture.
    latency_ms: None for a gesture too: it would be the caregiver's.
    """

    trial: str
    session: str
    day: date
    item: str
    item_set: ItemSet
    target: Target
    sentence: str
    first_choice: int | None
    foil: Foil | None
    right: bool
    level_at_success: int | None
    score: int | None
    latency_ms: int | None
    ended: bool
    skipped: bool


def answer_of(trial: Trial, turns: int) -> AnswerLine:
    first = trial.first
    timed = trial.asked.kind is not Kind.GESTURE
    return AnswerLine(
        trial=trial.trial,
        session=trial.session,
        day=practice_day(trial.started_at, turns_at_hour=turns),
        item=trial.asked.item_id,
        item_set=trial.asked.item_set,
        target=trial.asked.target,
        sentence=trial.asked.sentence,
        first_choice=None if first is None else first.choice,
        foil=errors.foil_of(trial),
        right=trial.unaided_right,
        level_at_success=trial.level_at_success,
        score=None if first is None else first.score,
        latency_ms=first.latency_ms if first is not None and timed else None,
        ended=trial.ended,
        skipped=trial.skipped,
    )
