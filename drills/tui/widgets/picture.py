"""A drawn picture, or a movement, as terminal lines."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import groupby

from rich.color import Color
from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip
from textual.timer import Timer
from textual.widget import Widget

from drills.core.cells import Cell, Cells
from drills.pictures.shapes import Colour


class Picture(Widget):
    """Shows one `Cells`, or several in turn; blank until it is given any."""

    DEFAULT_CSS = """
    Picture { width: 1fr; height: 1fr; }
    """

    def __init__(self) -> None:
        super().__init__()
        self._frames: tuple[tuple[Strip, ...], ...] = ()
        self._at = 0
        self._timer: Timer | None = None

    @property
    def is_blank(self) -> bool:
        return not self._frames

    @property
    def still(self) -> tuple[Strip, ...]:
        """The lines that are showing now."""
        return self._frames[self._at] if self._frames else ()

    @property
    def is_moving(self) -> bool:
        return self._timer is not None

    def show(self, cells: Cells) -> None:
        """One still picture."""
        self._stop()
        self._frames, self._at = (strips_of(cells),), 0
        self.refresh()

    def play(self, frames: Sequence[Cells], *, seconds: float) -> None:
        """Frames in turn, round and round.   seconds: how long each is shown."""
        self._stop()
        self._frames, self._at = tuple(strips_of(cells) for cells in frames), 0
        if len(self._frames) > 1:
            self._timer = self.set_interval(seconds, self._advance)
        self.refresh()

    def clear(self) -> None:
        self._stop()
        self._frames = ()
        self.refresh()

    def render_line(self, y: int) -> Strip:
        width = self.size.width
        strips = self.still
        row = y - (self.size.height - len(strips)) // 2
        if not 0 <= row < len(strips):
            return Strip.blank(width, self.rich_style)
        strip = strips[row]
        left = max(0, (width - strip.cell_length) // 2)
        blank = Segment(" " * left, self.rich_style)
        return Strip([blank, *strip]).adjust_cell_length(width, self.rich_style)

    def _advance(self) -> None:
        self._at = (self._at + 1) % len(self._frames)
        self.refresh()

    def _stop(self) -> None:
        if self._timer is not None:
            self._timer.stop()
            self._timer = None


@lru_cache(maxsize=64)
def strips_of(cells: Cells) -> tuple[Strip, ...]:
    """One strip a row; neighbours of the same colours are one segment."""
    return tuple(_strip(row) for row in cells.rows)


def _strip(row: Sequence[Cell]) -> Strip:
    segments = []
    for (ink, paper), run in groupby(row, key=lambda cell: (cell.ink, cell.paper)):
        text = "".join(cell.character for cell in run)
        segments.append(Segment(text, _style(ink, paper)))
    return Strip(segments, len(row))


@lru_cache(maxsize=4096)
def _colour(colour: Colour) -> Color:
    return Color.from_rgb(*colour)


def _style(ink: Colour, paper: Colour) -> Style:
    return Style.from_color(_colour(ink), _colour(paper))
