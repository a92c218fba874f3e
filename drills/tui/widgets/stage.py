"""Where an event is built, and then performed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Container, Horizontal, Vertical
from textual.content import Content
from textual.geometry import Size
from textual.message import Message

from drills.core.cells import Cells
from drills.tui.layout import lines_of
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

_FRAME = 2
_ARROW = 3
# A name in the lower line of a frame has a corner, a line and a blank on both sides.
_BESIDE_NAME = 6
_NARROWEST = 24


class Stage(Vertical):
    """A place for the doer and one for the other, with an arrow between; then a moving picture.

    is_doer_left: the doer's place is at the left, as in the picture.
    captions: lines above that words and question may take.
    """

    DEFAULT_CSS = """
    Stage { width: 1fr; height: 1fr; padding: 0 0 0 1; }
    Stage > .-caption { text-style: bold; color: $marked; }
    Stage > Container { height: 1fr; }
    Stage .-places { height: 1fr; }
    Stage .-arrow {
        width: 3; height: 1fr; content-align: center middle; text-align: center; color: $quiet;
    }
    Stage > Container > Picture { display: none; }
    Stage.-performs > Container > Picture { display: block; }
    Stage.-performs .-places { display: none; }
    """

    @dataclass
    class Pressed(Message):
        """A place with somebody in it was pressed."""

    def __init__(self, *, is_doer_left: bool, captions: int) -> None:
        super().__init__()
        self._is_doer_left = is_doer_left
        self._caption = Words(classes="-caption")
        self._caption.styles.height = captions
        self._doer, self._other = _Place(), _Place()
        self._event = Picture()

    def compose(self) -> ComposeResult:
        arrow = Words(("→" if self._is_doer_left else "←",), classes="-arrow")
        places = (self._doer, arrow, self._other)
        yield self._caption
        with Container():
            yield Horizontal(*(places if self._is_doer_left else places[::-1]), classes="-places")
            yield self._event

    @property
    def ground(self) -> Size:
        """The room for the event."""
        return self.query_one(Container).size

    @property
    def place(self) -> Size:
        """The room for a figure in its place."""
        ground = self.ground
        return Size(max(0, (ground.width - _ARROW) // 2 - _FRAME), max(0, ground.height - _FRAME))

    def ask(self, question: str, *, doer: str | None) -> None:
        """Show the places.   doer: name of who is in the doer's place, None for nobody."""
        self.set_class(False, "-performs")
        self._caption.say((question,))
        room = self.place.width + _FRAME - _BESIDE_NAME
        self._doer.take(doer, is_next=doer is None, room=room)
        self._other.take(None, is_next=doer is not None, room=room)

    def tell(self, words: str, question: str | None) -> None:
        """Show an event, with its words and what is asked now."""
        self.set_class(True, "-performs")
        lines = lines_of(words, width=self._caption.size.width or _NARROWEST)
        self._caption.say((*lines, *(() if question is None else (question,))))

    def clear(self) -> None:
        """No event, until `play` is given one."""
        self._event.clear()

    def put(self, cells: Cells) -> None:
        """The figure in the doer's place."""
        self._doer.picture.show(cells)

    def play(self, frames: Sequence[Cells], *, seconds: float) -> None:
        self._event.play(frames, seconds=seconds)


class _Place(Container):
    """A question mark, then the figure with its name."""

    DEFAULT_CSS = """
    _Place {
        border: dashed $line; border-subtitle-color: $ink; border-subtitle-style: bold;
        border-subtitle-align: center; width: 1fr; height: 1fr; align: center middle;
    }
    _Place.-next { border: heavy $marked; }
    _Place.-taken { border: round $line; }
    _Place > Words { text-align: center; text-style: bold; color: $quiet; }
    _Place.-next > Words { color: $marked; }
    _Place > Picture { display: none; }
    _Place.-taken > Words { display: none; }
    _Place.-taken > Picture { display: block; }
    """

    def __init__(self) -> None:
        super().__init__()
        self.picture = Picture()

    def compose(self) -> ComposeResult:
        yield Words(("?",))
        yield self.picture

    def take(self, name: str | None, *, is_next: bool, room: int) -> None:
        """Who is in it, None for nobody.   is_next: whoever comes next comes here.

        room: letters of a name that is not cut off; a longer one stands under the figure's own
        frame only.
        """
        self.border_subtitle = Content(name if name and len(name) <= room else "")
        if name is None:
            self.picture.clear()
        self.set_class(name is not None, "-taken")
        self.set_class(is_next, "-next")

    def on_click(self) -> None:
        if self.has_class("-taken"):
            self.post_message(Stage.Pressed())
