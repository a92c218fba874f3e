"""The caregiver guide, a chapter at a time."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Markdown

from drills.core.material import Chapter
from drills.tui.presses import Presses
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.choices import Choices
from drills.tui.widgets.key_bar import CLOSE, SIGNS, Hint, KeyBar
from drills.tui.widgets.words import Words

_SCROLL = Hint(key="", shown="Up Down", label="read on")


class GuideScreen(KeyedScreen[None]):
    """Digits open chapters, the arrows scroll."""

    CSS_PATH = "guide.tcss"
    AUTO_FOCUS = "VerticalScroll"

    def __init__(self, chapters: Sequence[Chapter], presses: Presses) -> None:
        super().__init__()
        self._chapters = tuple(chapters)
        self._presses = presses

    def compose(self) -> ComposeResult:
        yield Words(("Guide for the helper",), classes="-title")
        yield Choices(
            [(str(number), chapter.title) for number, chapter in enumerate(self._chapters, 1)],
            classes="-close",
        )
        with VerticalScroll(classes="-page"):
            yield Markdown(self._chapters[0].text if self._chapters else "", open_links=False)
        yield KeyBar((CLOSE, _SCROLL), everywhere=(SIGNS,))

    def hear(self, key: str) -> None:
        if key in ("escape", "space", "g"):
            # A trembling or held key must not close what it has just opened.
            if self._presses.is_meant(key):
                self.dismiss(None)
        elif key.isdecimal() and 1 <= int(key) <= len(self._chapters):
            self._open(self._chapters[int(key) - 1])
        else:
            super().hear(key)

    def _open(self, chapter: Chapter) -> None:
        self.query_one(VerticalScroll).scroll_home(animate=False)
        self.query_one(Markdown).update(chapter.text)
