"""The words of the calendar, the same in text and on the page."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from drills.core.due import PlannedDay
from drills.core.kinds import Kind
from drills.digest import wording
from drills.digest.plain import day, inert
from drills.digest.values import Calendar

TITLE = "The week to come"
FOOT = "As it stands now: each practice moves these days."
OWN_PACE = "Minutes: by how long this person takes from trial to trial, rests included."
PLANS_PACE = "Minutes: as the plan has them, until 20 trials of a kind can be timed."


class CalendarRow(NamedTuple):
    """One day.   what: trials by kind.   put_off: names with the reason, one sentence each."""

    day: str
    minutes: str
    what: str
    put_off: tuple[str, ...]


def rows(calendar: Calendar) -> list[CalendarRow]:
    """The days in plain words; targets of one name and reason are told together."""
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
    together: dict[tuple[str, str], list[str]] = {}
    for each in planned.put_off:
        label = labels.get(each.target.name, each.target.name)
        groups = together.setdefault((label, each.reason), [])
        if each.target.group:
            groups.append(each.target.group)
    return tuple(
        inert(f"{label} ({', '.join(groups)}): {reason}" if groups else f"{label}: {reason}")
        for (label, reason), groups in together.items()
    )
