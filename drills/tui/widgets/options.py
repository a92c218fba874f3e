"""Things to choose from, each in a frame that carries its number."""

from __future__ import annotations

from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Container
from textual.content import Content
from textual.message import Message

from drills.tui.widgets.large_words import LargeWords
from drills.tui.widgets.picture import Picture

MARK = "This one"


class OptionBox(Container):
    """One option; `picture` is set for a picture, else `text` is shown large.

    Marked by a heavy frame and a word, never by colour alone; an option taken away leaves a blank.
    """

    DEFAULT_CSS = """
    OptionBox {
        border: round $line; border-title-color: $ink; border-title-style: bold;
        border-title-align: left; width: 1fr; height: 1fr; align: center middle;
    }
    OptionBox.-marked { border: heavy $marked; border-title-color: $marked; }
    OptionBox.-gone { visibility: hidden; }
    OptionBox > .-words { width: 1fr; height: auto; text-align: center; text-style: bold; }
    """

    @dataclass
    class Chosen(Message):
        """index: 0-based."""

        index: int

    def __init__(self, index: int, *, text: str | None) -> None:
        super().__init__()
        self._index = index
        self._text = text
        self._is_enlarged = False
        self.picture = Picture() if text is None else None
        self.words = None if text is None else LargeWords((text,), classes="-words")

    def compose(self) -> ComposeResult:
        if self.picture is not None:
            yield self.picture
        if self.words is not None:
            yield self.words

    def on_mount(self) -> None:
        self.mark(is_right=False)

    def mark(self, *, is_right: bool) -> None:
        self.set_class(is_right, "-marked")
        parts = [str(self._index + 1), *([MARK] if is_right else ())]
        if self._is_enlarged and self._text is not None:
            # Also as plain text, for those who copy or read the screen by machine.
            parts.insert(1, self._text)
        self.border_title = Content("  ".join(parts))

    def enlarge(self) -> None:
        """Show words in large letters if they fit."""
        if self.words is not None and self._text is not None:
            self._is_enlarged = self.words.enlarge(self._text, room=self.content_size)
            self.mark(is_right=self.has_class("-marked"))

    def take_away(self, *, is_gone: bool) -> None:
        self.set_class(is_gone, "-gone")

    def on_click(self) -> None:
        self.post_message(self.Chosen(self._index))
