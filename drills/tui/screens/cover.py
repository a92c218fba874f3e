"""Covers whatever runs while the window is too small for it."""

from __future__ import annotations

from textual import events
from textual.app import ComposeResult

from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.words import Words

COLUMNS, LINES = 80, 24


class CoverScreen(KeyedScreen[None]):
    """Goes by itself; the app sees to it."""

    CSS_PATH = "cover.tcss"

    def compose(self) -> ComposeResult:
        yield Words()

    def on_resize(self, event: events.Resize) -> None:
        self.query_one(Words).say(
            (
                "A larger window, please.",
                f"It needs {COLUMNS} x {LINES}.",
                f"Now it is {event.size.width} x {event.size.height}.",
                "Nothing is lost.",
                "E opens the signs of a new stroke.",
            )
        )
