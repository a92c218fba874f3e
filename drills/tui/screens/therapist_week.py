"""The digest week by week."""

from __future__ import annotations

import asyncio

from textual import work

from drills.core.problems import DrillsError
from drills.tui.screens.room import BACK, EARLIER, LATER, Hints, WeeksScreen


class TherapistWeekScreen(WeeksScreen):
    """Seven days, the last of them today at first."""

    def heading(self) -> tuple[str, ...]:
        newest = " (today)" if self.room.is_newest else ""
        return (f"Digest: {self.room.days}{newest}",)

    def hints(self) -> Hints:
        return (BACK, EARLIER, LATER)

    def on_mount(self) -> None:
        self._count()

    def turned(self) -> None:
        self._count()

    @work(exclusive=True)
    async def _count(self) -> None:
        self.say(("One moment.",))
        try:
            text = await asyncio.to_thread(self.room.digest_text)
        except DrillsError as error:
            text = f"These days cannot be shown.\n{error}"
        self.say(text.split("\n"))
