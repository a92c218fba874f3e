"""The words of the calendar, the same in text and on the page."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from drills.core.due import PlannedDay, PutOff
from drills.core.kinds import Kind
from drills.digest import wording
from drills.digest.plain import day, inert
from drills.digest.values import Calendar

TITLE = "The week to come"
FOOT = "As it stands now: each practice moves these days."
OWN_PACE = "Minutes: by how long this person takes from trial to trial, rests included."
PLANS_PACE = "Minutes: as the plan has them, until 20 trials of a kind can be timed."


class CalendarRow(NamedTuple):
    """One day.   what: trials by kind.   put_off: one sentence a name."""

    day: str
    minutes: str
    what: str
    put_off: tuple[str, ...]


def rows(calendar: Calendar) -> list[CalendarRow]:
    """The days in plain words; targets of one name are told together."""
    return [
        CalendarRow(
            day=day(planned.day),
            minutes=_minutes(planned),
            what=_what(planned),
            put_off=_put_off(planned, calendar.labels),
        )
        for planned in calendar.days
    ]


def pace(days: Sequence[PlannedDay]) -> str:
    return OWN_PACE if any(planned.own_pace for planned in days) else PLANS_PACE


def _minutes(planned: PlannedDay) -> str:
    in_sessions = f" in {planned.sessions} sessions" if planned.sessions > 1 else ""
    return f"about {round(planned.minutes)} minutes{in_sessions}"


def _what(planned: PlannedDay) -> str:
    trials: Counter[Kind] = Counter()
    for target, count in planned.given:
        trials[target.kind] += count
    return ", ".join(f"{wording.KINDS[kind]} {count}" for kind, count in trials.items())


def _put_off(planned: PlannedDay, labels: Mapping[str, str]) -> tuple[str, ...]:
    together: dict[str, list[PutOff]] = {}
    for each in planned.put_off:
        label = labels.get(each.target.name, each.target.name)
        together.setdefault(label, []).append(each)
    return tuple(inert(_of_name(label, targets)) for label, targets in together.items())


def _of_name(label: str, targets: Sequence[PutOff]) -> str:
    """One sentence a name: each reason apart would fill pages, and stands in the JSON."""
    reasons = {each.reason for each in targets}
    if len(reasons) > 1:
        return f"{label}: {len(targets)} have no place; others are more overdue for their gap."
    groups = [each.target.group for each in targets if each.target.group]
    (reason,) = reasons
    return f"{label} ({', '.join(groups)}): {reason}" if groups else f"{label}: {reason}"
