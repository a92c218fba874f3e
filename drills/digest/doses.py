"""How much was practised against what the plan asks for."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from drills.core.plans import Plan
from drills.core.records import Entry, Observation, Topic
from drills.digest.values import Dose, SittingLine
from drills.digest.weeks import days_between
from drills.measures import dose
from drills.measures.dose import Sitting


def dose_of(sittings: Sequence[Sitting], plan: Plan, first: date, until: date) -> Dose:
    """The dose of the days `first` to `until`, both included."""
    done = dose.amount(sittings)
    asked = days_between(first, until)
    # A clock that was wrong can have left practice on a day that is still to come.
    days = days_between(first, max((until, *done.minutes_by_day)))
    sessions_planned = plan.dose.sessions_per_week * len(asked) / 7
    minutes_planned = sessions_planned * plan.dose.minutes_per_session
    return Dose(
        minutes=done.minutes,
        active_minutes=done.active_minutes,
        minutes_planned=minutes_planned,
        minutes_share=dose.adherence(done.minutes, minutes_planned),
        sessions=done.sessions,
        sessions_planned=sessions_planned,
        sessions_share=dose.adherence(done.sessions, sessions_planned),
        trials=done.trials,
        days=done.days,
        by_day={day: done.minutes_by_day.get(day, 0.0) for day in days},
    )


def sitting_line(sitting: Sitting, entries: Sequence[Entry]) -> SittingLine:
    """One session with how tired it made.   entries: those of the session among them."""
    said = [
        (entry.topic, entry.tiredness)
        for entry in entries
        if isinstance(entry, Observation)
        and entry.session in sitting.sessions
        and entry.tiredness is not None
    ]
    before = [tiredness for topic, tiredness in said if topic is Topic.CHECK_IN]
    after = [tiredness for topic, tiredness in said if topic is not Topic.CHECK_IN]
    return SittingLine(
        day=sitting.day,
        minutes=sitting.minutes,
        active_minutes=sitting.active_minutes,
        trials=sitting.trials,
        tired_before=before[0] if before else None,
        tired_after=after[-1] if after else None,
        reason=sitting.reason,
    )
