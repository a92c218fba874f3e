"""What the records speak for changing, one by one; nothing changes by itself."""

from __future__ import annotations

import asyncio

from textual import work
from textual.app import ComposeResult

from drills.core.problems import DrillsError
from drills.core.suggestions import Suggestion
from drills.digest import suggestion_wording
from drills.digest.plain import inert
from drills.tui.room import Room
from drills.tui.screens.room import BACK, OPEN, Hints, RoomScreen
from drills.tui.screens.therapist_suggestion import TherapistSuggestionScreen
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Words

NOTHING = "Nothing is suggested now."
MOST_DECISIONS = 5


class TherapistSuggestionsScreen(RoomScreen[None]):
    """Of the last seven days, whichever week is looked at elsewhere."""

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self._suggestions: tuple[Suggestion, ...] = ()

    def heading(self) -> tuple[str, ...]:
        return ("Suggestions. Only you change the plan; nothing changes by itself.",)

    def compose_body(self) -> ComposeResult:
        yield Rows()
        yield Words(("One moment.",), classes="-said")

    def hints(self) -> Hints:
        return (BACK, OPEN)

    def on_mount(self) -> None:
        self._find()

    @work(exclusive=True)
    async def _find(self) -> None:
        said = self.query_one(".-said", Words)
        try:
            digest = await asyncio.to_thread(self.room.newest_digest)
        except DrillsError as error:
            said.say(())
            self.trouble(f"The suggestions cannot be shown. {error}")
            return
        self._suggestions = digest.suggestions
        self.query_one(Rows).set_rows([(each.id, inert(each.says)) for each in digest.suggestions])
        decided = [suggestion_wording.decision(each) for each in digest.decisions]
        told = ["Decided in these days:", *decided[-MOST_DECISIONS:]] if decided else []
        said.say((*(() if digest.suggestions else (NOTHING,)), *told))

    def chosen(self, key: str) -> None:
        suggestion = next(each for each in self._suggestions if each.id == key)
        self.app.push_screen(TherapistSuggestionScreen(self.room, suggestion), self._came_back)

    def _came_back(self, is_answered: bool | None) -> None:
        if is_answered:
            self.query_one(".-said", Words).say(("One moment.",))
            self._find()
