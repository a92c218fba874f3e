"""The practice days of the week to come."""

from __future__ import annotations

import asyncio
from collections import Counter
from collections.abc import Mapping, Sequence

from textual import work

from drills.core.due import PlannedDay, PutOff
from drills.core.kinds import Kind
from drills.core.problems import DrillsError
from drills.digest import Digest, calendar_wording
from drills.digest.plain import day
from drills.digest.wording import KINDS, group_name
from drills.tui.layout import lines_of
from drills.tui.screens.room import BACK, READ_ON, Hints, RoomScreen

NOTHING = "Nothing is planned: the plan names nothing that is left to practise."
FULL = "The places of its block go to what is more overdue."
_WIDTH = 76


class TherapistCalendarScreen(RoomScreen[None]):
    """Each day's minutes, what is given, and what is put off with the reason."""

    def heading(self) -> tuple[str, ...]:
        return ("Calendar: the week to come, as it stands now",)

    def hints(self) -> Hints:
        return (BACK, READ_ON)

    def on_mount(self) -> None:
        self._count()

    @work(exclusive=True)
    async def _count(self) -> None:
        self.say(("One moment.",))
        try:
            digest = await asyncio.to_thread(self.room.newest_digest)
        except DrillsError as error:
            self.say(("The calendar cannot be shown.", str(error)))
        else:
            self.say(calendar_lines(digest, self.room.home.plan.dose.minutes_per_session))


def calendar_lines(digest: Digest, minutes: int) -> tuple[str, ...]:
    """A paragraph a day.   minutes: of a session, as the plan has them."""
    calendar = digest.calendar
    if calendar is None:
        return (NOTHING,)
    lines = [
        f"Each practice moves these days. The first screen says: about {minutes} minutes.",
        calendar_wording.pace(calendar.days),
    ]
    for planned in calendar.days:
        sessions = f" in {planned.sessions} sessions" if planned.sessions > 1 else ""
        lines += [
            "",
            f"{day(planned.day)}: about {round(planned.minutes)} minutes{sessions}",
            f"  Given: {_given(planned)}",
        ]
        if planned.put_off:
            lines.append("  Put off:")
        for told in _put_off(planned, calendar.labels):
            first, *more = lines_of(told, width=_WIDTH - 6)
            lines += [f"    - {first}", *(f"      {line}" for line in more)]
    return tuple(lines)


def _given(planned: PlannedDay) -> str:
    trials: Counter[Kind] = Counter()
    for target, count in planned.given:
        trials[target.kind] += count
    return ", ".join(f"{KINDS[kind]} {count}" for kind, count in trials.items())


def _put_off(planned: PlannedDay, labels: Mapping[str, str]) -> tuple[str, ...]:
    """One sentence a name; where its groups have reasons of their own, what they have in common."""
    together: dict[str, list[PutOff]] = {}
    for each in planned.put_off:
        name = labels.get(each.target.name, each.target.name)
        together.setdefault(name, []).append(each)
    return tuple(f"{name}{_grouped(waiting)}" for name, waiting in together.items())


def _grouped(waiting: Sequence[PutOff]) -> str:
    groups = [group_name(each.target.group) for each in waiting if each.target.group]
    told = f" ({', '.join(groups)})" if groups else ""
    reasons = {each.reason for each in waiting}
    return f"{told}: {reasons.pop() if len(reasons) == 1 else FULL}"
