"""Figures to choose from."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from textual.app import ComposeResult
from textual.containers import Container
from textual.content import Content
from textual.geometry import Size

from drills.core.cells import Cells
from drills.tui.widgets.options import OptionBox


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


class Figures(Container):
    """Two to four figures: two side by side, more in a grid."""

    DEFAULT_CSS = """
    Figures { layout: grid; width: 1fr; height: 1fr; grid-size: 2 1; }
    Figures.-grid { grid-size: 2 2; }
    """

    def __init__(self, names: Sequence[str]) -> None:
        super().__init__(classes="-grid" if len(names) > 2 else "")
        self._boxes = tuple(FigureBox(index, name=name) for index, name in enumerate(names))

    def compose(self) -> ComposeResult:
        yield from self._boxes

    def set_out(
        self, *, gone: Collection[int], playing: Collection[int], called: int | None
    ) -> None:
        """Which are taken away, which have left their frames, which one is to be pressed."""
        for place, box in enumerate(self._boxes):
            box.take_away(is_gone=place in gone)
            box.empty(is_empty=place in playing)
            box.call(is_called=place == called)

    @property
    def room(self) -> Size:
        """What every figure has in its frame; a frame that is hidden has none."""
        sizes = [
            box.picture.size
            for box in self._boxes
            if box.picture is not None and not box.has_class("-gone")
        ]
        return Size(min(size.width for size in sizes), min(size.height for size in sizes))

    def stand(self, drawn: Sequence[Cells]) -> None:
        for box, cells in zip(self._boxes, drawn, strict=True):
            box.stand(cells)
