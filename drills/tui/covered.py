"""An app that asks for a larger window while its own is too small, and opens pages over others."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from textual import events
from textual.screen import Screen

from drills.tui.caught import CaughtApp
from drills.tui.screens.cover import COLUMNS, LINES, CoverScreen
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.screens.signs import SignsScreen


class CoveredApp(CaughtApp):
    """Covers the screen while the window is too small; never the card of stroke signs."""

    def on_resize(self, event: events.Resize) -> None:
        self._fit(event.size.width, event.size.height)

    def _fit(self, columns: int, lines: int) -> None:
        is_small = columns < COLUMNS or lines < LINES
        is_covered = isinstance(self.screen, CoverScreen)
        if is_small and not is_covered and not isinstance(self.screen, SignsScreen):
            self.push_screen(CoverScreen())
        elif is_covered and not is_small:
            self.pop_screen()

    def _refit(self, _: None = None) -> None:
        self._fit(self.size.width, self.size.height)

    def _open(self, kind: type[KeyedScreen[None]], make: Callable[[], Screen[Any]]) -> None:
        """Open a page over whatever runs, or go back to it where it is open underneath."""
        if isinstance(self.screen, CoverScreen) and kind is not SignsScreen:
            return
        # The second of two presses may be heard by the screen that the first has covered.
        if isinstance(self.screen, kind):
            return
        if len(self.screen_stack) > 1 and isinstance(self.screen_stack[-2], kind):
            self.pop_screen()
        else:
            self.push_screen(make(), self._refit)
