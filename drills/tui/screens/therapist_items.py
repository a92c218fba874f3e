"""What was practised in the days looked at."""

from __future__ import annotations

import asyncio

from textual import work
from textual.app import ComposeResult

from drills.core.problems import DrillsError
from drills.practice.reviewing import Practised, name_line, practised
from drills.tui.room import Room
from drills.tui.screens.room import BACK, EARLIER, LATER, OPEN, Hints, WeeksScreen
from drills.tui.screens.therapist_answers import TherapistAnswersScreen
from drills.tui.widgets.rows import Rows

NOTHING = "Nothing was practised in these days. Left: earlier days."


class TherapistItemsScreen(WeeksScreen):
    """The names of the week with how much was right alone."""

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self._names: tuple[Practised, ...] = ()

    def heading(self) -> tuple[str, ...]:
        return (f"Practised items: {self.room.days}", "Right alone, of trials that count")

    def compose_body(self) -> ComposeResult:
        yield Rows()

    def hints(self) -> Hints:
        return (BACK, OPEN, EARLIER, LATER)

    def on_mount(self) -> None:
        self._find()

    def turned(self) -> None:
        self._find()

    def chosen(self, key: str) -> None:
        self.app.push_screen(TherapistAnswersScreen(self.room, self._names[int(key)]))

    @work(exclusive=True)
    async def _find(self) -> None:
        self.retitle()
        try:
            trials = await asyncio.to_thread(self.room.trials)
            self._names = practised(trials, self.room.home.labels)
        except DrillsError as error:
            self._names = ()
            self.trouble(f"These days cannot be shown. {error}")
        else:
            self.trouble(None if self._names else NOTHING)
        self.query_one(Rows).set_rows(
            [(str(at), name_line(each)) for at, each in enumerate(self._names)]
        )
