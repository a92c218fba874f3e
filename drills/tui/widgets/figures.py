"""Figures to choose from, and places to put them."""

from __future__ import annotations

from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Container
from textual.content import Content
from textual.message import Message

from drills.core.cells import Cells
from drills.tui.widgets.options import OptionBox
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words


class FigureBox(OptionBox):
    """A figure in a frame with its number above and its name below; blank while it plays."""

    DEFAULT_CSS = """
    FigureBox {
        border-subtitle-color: $ink; border-subtitle-style: bold; border-subtitle-align: center;
    }
    FigureBox.-empty { border: dashed $line; border-subtitle-color: $quiet; }
    """

    def __init__(self, index: int, *, name: str) -> None:
        super().__init__(index, text=None)
        self._cells: Cells | None = None
        self.border_subtitle = Content(name)

    def stand(self, cells: Cells) -> None:
        """The figure as it looks in this frame."""
        self._cells = cells
        self._show()

    def empty(self, *, is_empty: bool) -> None:
        """Whether the figure has gone to play its part."""
        self.set_class(is_empty, "-empty")
        self._show()

    def call(self, *, is_called: bool) -> None:
        """Whether it is the one to press now."""
        self.set_class(is_called, "-marked")

    def _show(self) -> None:
        if self.picture is None:
            return
        if self.has_class("-empty") or self._cells is None:
            self.picture.clear()
        else:
            self.picture.show(self._cells)


class PlaceBox(Container):
    """A place for whoever plays a part: a question mark, then the figure with its name."""

    DEFAULT_CSS = """
    PlaceBox {
        border: dashed $line; border-subtitle-color: $ink; border-subtitle-style: bold;
        border-subtitle-align: center; width: 1fr; height: 1fr; align: center middle;
    }
    PlaceBox.-next { border: heavy $marked; }
    PlaceBox.-taken { border: round $line; }
    PlaceBox > Words { text-align: center; text-style: bold; color: $quiet; }
    PlaceBox.-next > Words { color: $marked; }
    PlaceBox > Picture { display: none; }
    PlaceBox.-taken > Words { display: none; }
    PlaceBox.-taken > Picture { display: block; }
    """

    @dataclass
    class Pressed(Message):
        """A place with somebody in it was pressed."""

    def compose(self) -> ComposeResult:
        yield Words(("?",))
        yield Picture()

    @property
    def picture(self) -> Picture:
        return self.query_one(Picture)

    def take(self, name: str | None, *, is_next: bool) -> None:
        """Who is in it, None for nobody.   is_next: whoever comes next comes here."""
        self.border_subtitle = Content(name or "")
        self.set_class(name is not None, "-taken")
        self.set_class(is_next, "-next")

    def on_click(self) -> None:
        if self.has_class("-taken"):
            self.post_message(self.Pressed())
