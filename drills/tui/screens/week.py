"""The last seven days as the digest puts them, for caregiver and therapist."""

from __future__ import annotations

import asyncio
from collections.abc import Callable

from textual import work
from textual.app import ComposeResult
from textual.containers import VerticalScroll

from drills.core.problems import DrillsError
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.key_bar import CLOSE, Hint, KeyBar
from drills.tui.widgets.words import Words

_SCROLL = Hint(key="", shown="Up Down", label="read on")


class WeekScreen(KeyedScreen[None]):
    """make_text: counts the week; slow on a long history, so it runs beside the screen."""

    CSS_PATH = "week.tcss"
    AUTO_FOCUS = "VerticalScroll"

    def __init__(self, make_text: Callable[[], str]) -> None:
        super().__init__()
        self._make_text = make_text

    def compose(self) -> ComposeResult:
        with VerticalScroll(classes="-page"):
            yield Words(("One moment.",), classes="-text")
        yield KeyBar((CLOSE, _SCROLL))

    def on_mount(self) -> None:
        self._count()

    @work
    async def _count(self) -> None:
        try:
            text = await asyncio.to_thread(self._make_text)
        except DrillsError as error:
            text = f"This week cannot be shown.\n{error}"
        self.query_one(".-text", Words).say(text.split("\n"))

    def pressed(self, key: str) -> None:
        if key in ("escape", "space", "p"):
            self.dismiss(None)
