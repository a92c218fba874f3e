"""What falls due, and the practice days to come."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from drills.core.due import Due, PlannedDay
from drills.digest.values import Calendar, DueDay, DueLine
from drills.digest.weeks import days_between


def calendar_of(planned: Sequence[PlannedDay], labels: Mapping[str, str]) -> Calendar | None:
    """None where no day is planned."""
    targets = [
        target
        for day in planned
        for target in (*(given for given, _ in day.given), *(each.target for each in day.put_off))
    ]
    named = {target.name: labels.get(target.name, target.name) for target in targets}
    return Calendar(days=tuple(planned), labels=named) if planned else None


def due_days_of(
    dues: Sequence[Due], labels: Mapping[str, str], *, after: date, last: date
) -> tuple[DueDay, ...]:
    """What falls due from the day after `after` to a week after the later of `after` and `last`.

    What is open by then stands on the first of these days. Days with nothing are left out: each
    practice moves what is due, so an empty day says nothing of that day.
    """
    days: dict[date, list[DueLine]] = {
        day: []
        for day in days_between(after + timedelta(days=1), max(after, last) + timedelta(days=7))
    }
    for due in dues:
        shown = max(due.day, after + timedelta(days=1))
        if shown in days:
            days[shown].append(
                DueLine(
                    target=due.target,
                    label=labels.get(due.target.name, due.target.name),
                    day=shown,
                    last=due.last,
                    rung=due.rung,
                    run=due.run,
                    # What was never met cannot have been put off.
                    open_since=due.day if due.day <= after and due.last is not None else None,
                )
            )
    return tuple(DueDay(day=day, dues=tuple(of_day)) for day, of_day in days.items() if of_day)
