"""The practice days of the week to come."""

from __future__ import annotations

import asyncio

from textual import work

from drills.core.problems import DrillsError
from drills.digest import Digest, calendar_wording
from drills.tui.layout import lines_of
from drills.tui.room import Room
from drills.tui.screens.room import BACK, READ_ON, Hints, RoomScreen

NOTHING = "Nothing is planned: the plan names nothing that is left to practise."
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
            digest = await asyncio.to_thread(_newest, self.room)
        except DrillsError as error:
            self.say(("The calendar cannot be shown.", str(error)))
        else:
            self.say(calendar_lines(digest))


def _newest(room: Room) -> Digest:
    """The calendar is of the days after today, whichever week is looked at."""
    today = room.home.day()
    return room.home.digest(today, today)


def calendar_lines(digest: Digest) -> tuple[str, ...]:
    """A paragraph a day."""
    calendar = digest.calendar
    if calendar is None:
        return (NOTHING,)
    lines = [
        "Each practice moves these days. The patient sees the minutes on the first screen.",
        calendar_wording.pace(calendar.days),
    ]
    for row in calendar_wording.rows(calendar):
        lines += ["", f"{row.day}: {row.minutes}", f"  Given: {row.what}"]
        if row.put_off:
            lines.append("  Put off:")
        for told in row.put_off:
            first, *more = lines_of(told, width=_WIDTH - 6)
            lines += [f"    - {first}", *(f"      {line}" for line in more)]
    return tuple(lines)
