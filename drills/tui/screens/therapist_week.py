"""The digest week by week."""

from __future__ import annotations

import asyncio
from typing import ClassVar

from textual import work

from drills.core.problems import DrillsError
from drills.tui.screens.room import BACK, EARLIER, LATER, Hints, RoomScreen


class TherapistWeekScreen(RoomScreen[None]):
    """Seven days, the last of them today at first."""

    ALSO: ClassVar[frozenset[str]] = frozenset(("left", "right"))

    def heading(self) -> tuple[str, ...]:
        newest = " (today)" if self.room.is_newest else ""
        return (f"Digest: {self.room.days}{newest}",)

    def hints(self) -> Hints:
        return (BACK, EARLIER, LATER)

    def on_mount(self) -> None:
        self._count()

    def pressed(self, key: str) -> None:
        if key in ("left", "right"):
            if self.room.turn(-1 if key == "left" else 1):
                self._count()
        else:
            super().pressed(key)

    @work(exclusive=True)
    async def _count(self) -> None:
        self.say(("One moment.",))
        try:
            text = await asyncio.to_thread(self.room.digest_text)
        except DrillsError as error:
            text = f"These days cannot be shown.\n{error}"
        self.say(text.split("\n"))
