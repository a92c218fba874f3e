"""The words of the week to come, the same in text and on the page."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from drills.core.due import PlannedDay
from drills.core.kinds import Kind
from drills.digest import wording
from drills.digest.plain import day, day_and_year, inert, kept
from drills.digest.values import Calendar, Digest

TITLE = "The week to come"
DUE_TITLE = "Due next"
FOOT = "As it stands now: each practice moves these days."
OWN_PACE = "Minutes: by how long this person takes from trial to trial, rests included."
PLANS_PACE = "Minutes: as the plan has them, until 20 trials of a kind can be timed."
WAITING = "Due; in ( ) those that wait: their block is full, and what is most overdue comes first"
# More of one kind on one day are counted together; the JSON has them all.
MOST_NAMES = 5


def title(digest: Digest, usual: str = TITLE) -> str:
    """`usual`, or from when on for days long past: what is due is known for today alone."""
    return usual if digest.as_of is None else f"From today, {day_and_year(digest.as_of)}, on"


class CalendarRow(NamedTuple):
    """Days that are alike.   what: trials by kind.   waiting: due things without a place."""

    days: str
    minutes: str
    what: str
    waiting: str


def rows(calendar: Calendar) -> list[CalendarRow]:
    """The days in plain words; those with as many minutes and trials are told together."""
    together: dict[tuple[str, str], list[PlannedDay]] = {}
    for planned in calendar.days:
        together.setdefault((_minutes(planned), _what(planned)), []).append(planned)
    return [
        CalendarRow(
            days=", ".join(kept(day(each.day)) for each in alike),
            minutes=minutes,
            what=what,
            waiting=_range([len(each.put_off) for each in alike]),
        )
        for (minutes, what), alike in together.items()
    ]


def _range(counts: Sequence[int]) -> str:
    """`62 to 67`; empty for none."""
    low, high = min(counts), max(counts)
    return "" if not high else str(low) if low == high else f"{low} to {high}"


def pace(days: Sequence[PlannedDay]) -> str:
    return OWN_PACE if any(planned.own_pace for planned in days) else PLANS_PACE


@dataclass(frozen=True, slots=True, kw_only=True)
class DueName:
    """What is due of one name, all its groups together.

    open_since: the earliest day on which any of it was due; None where none was put off.
    new: none of it was met yet.   waiting: those without a place on the first day of practice.
    """

    label: str
    kind: Kind
    count: int
    open_since: date | None
    new: bool
    waiting: int

    def __str__(self) -> str:
        new = ", new" if self.new else ""
        waits = f" ({self.waiting} wait{new})" if self.waiting else f" ({new[2:]})" if new else ""
        return f"{inert(self.label)}{kept(f' {self.count}{waits}')}"


def due_names(digest: Digest) -> list[tuple[str, list[DueName]]]:
    """The days on which something falls due, with the names by kind, the longest open first."""
    days = digest.calendar.days if digest.calendar is not None else ()
    told = []
    for number, due_day in enumerate(digest.upcoming):
        waits = _waiting(days[:1]) if not number else Counter[tuple[Kind, str]]()
        names: dict[tuple[Kind, str], DueName] = {}
        for due in due_day.dues:
            key = (due.target.kind, due.target.name)
            so_far = names.get(key)
            names[key] = DueName(
                label=due.label,
                kind=due.target.kind,
                count=1 + (so_far.count if so_far else 0),
                open_since=_earlier(due.open_since, so_far.open_since if so_far else None),
                new=due.last is None and (so_far is None or so_far.new),
                waiting=waits[key],
            )
        kinds = list(Kind)
        in_order = sorted(
            names.values(),
            key=lambda name: (kinds.index(name.kind), name.open_since or date.max),
        )
        told.append((day(due_day.day), in_order))
    return told


def shown(names: Sequence[DueName]) -> str:
    """The names; of many, those longest open, and how many more."""
    told = [str(name) for name in names[:MOST_NAMES]]
    rest = names[MOST_NAMES:]
    if rest:
        told.append(f"{len(rest)} more names {sum(name.count for name in rest)}")
    return "; ".join(told)


def open_since(names: Iterable[DueName]) -> str:
    """`, open since Tue 10 Nov at the longest`; empty where nothing was put off."""
    days = [name.open_since for name in names if name.open_since is not None]
    return f", open since {kept(day(min(days)))}" if days else ""


def _waiting(days: Iterable[PlannedDay]) -> Counter[tuple[Kind, str]]:
    return Counter(
        (each.target.kind, each.target.name) for planned in days for each in planned.put_off
    )


def _earlier(one: date | None, other: date | None) -> date | None:
    return min((each for each in (one, other) if each is not None), default=None)


def _minutes(planned: PlannedDay) -> str:
    in_sessions = f" in {planned.sessions} sessions" if planned.sessions > 1 else ""
    return f"about {round(planned.minutes)} minutes{in_sessions}"


def _what(planned: PlannedDay) -> str:
    trials: Counter[Kind] = Counter()
    for target, count in planned.given:
        trials[target.kind] += count
    return ", ".join(f"{wording.KINDS[kind]} {count}" for kind, count in trials.items())
