"""What the therapist's screens share: a title, a list or a page, one line of trouble, the keys."""

from __future__ import annotations

from collections.abc import Sequence
from typing import ClassVar, TypeVar

from textual import events
from textual.app import ComposeResult
from textual.containers import VerticalScroll

from drills.tui.room import Room
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.key_bar import Hint, KeyBar
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Trouble, Words

ResultT = TypeVar("ResultT")

BACK = Hint(key="escape", shown="Esc", label="back")
OPEN = Hint(key="", shown="Enter", label="open")
CHOOSE = Hint(key="", shown="Enter", label="choose")
EARLIER = Hint(key="left", shown="Left", label="earlier")
LATER = Hint(key="right", shown="Right", label="later")
READ_ON = Hint(key="", shown="Up Down", label="read on")
# Hints of one page, from which a row is left out where it does not apply.
Hints = tuple[Hint, ...]


class RoomScreen(KeyedScreen[ResultT]):
    """Single keys, also the arrows named in ALSO; a press counts once, on the screen it is for.

    There is no guard against a second press as in practice: nothing is written here without a
    question of its own.
    """

    DEFAULT_CSS = """
    RoomScreen > .-title { padding: 0 1; text-style: bold; margin-bottom: 1; }
    RoomScreen > .-said { padding: 0 1; color: $quiet; }
    RoomScreen > .-page { height: 1fr; padding: 0 0 0 1; scrollbar-size-vertical: 1; }
    RoomScreen > Trouble { margin-top: 1; max-height: 4; }
    """
    AUTO_FOCUS = "*"
    ALSO: ClassVar[frozenset[str]] = frozenset()

    def __init__(self, room: Room) -> None:
        super().__init__()
        self.room = room
        self._is_done = False

    def compose(self) -> ComposeResult:
        yield Words(self.heading(), classes="-title")
        yield from self.compose_body()
        yield Trouble()
        yield KeyBar(self.hints())

    def heading(self) -> tuple[str, ...]:
        """The lines at the top."""
        return ()

    def compose_body(self) -> ComposeResult:
        """What stands between title and keys."""
        yield Page()

    def hints(self) -> Hints:
        return (BACK,)

    def chosen(self, key: str) -> None:
        """A row was chosen."""

    def say(self, lines: Sequence[str]) -> None:
        """Title and page anew."""
        self.retitle()
        self.query_one(Page).say(lines)

    def retitle(self) -> None:
        self.query_one(".-title", Words).say(self.heading())

    def trouble(self, words: str | None) -> None:
        self.query_one(Trouble).tell(words)

    def on_key(self, event: events.Key) -> None:
        if event.key in self.ALSO and not self._is_writing:
            event.stop()
            event.prevent_default()
            self.hear(event.key)
        else:
            super().on_key(event)

    @property
    def _is_writing(self) -> bool:
        """Letters and arrows are text where something is written."""
        return self.focused is not None and self.focused.has_class("-written")

    def hear(self, key: str) -> None:
        # The second of two quick presses may come to a screen that is on its way out.
        if not self.is_current or self._is_done:
            return
        if key.isdecimal():
            for rows in self.query(Rows):
                rows.choose(key)
                return
        super().hear(key)

    def pressed(self, key: str) -> None:
        if key == "escape":
            self.leave()

    def leave(self) -> None:
        self.done(None)

    def done(self, result: ResultT | None) -> None:
        """Leave this screen, once, whatever else has been pressed by then."""
        if not self._is_done:
            self._is_done = True
            self.dismiss(result)

    def on_rows_chosen(self, event: Rows.Chosen) -> None:
        event.stop()
        if self.is_current and not self._is_done:
            self.chosen(event.key)


class WeeksScreen(RoomScreen[None]):
    """What is said of the week that is looked at; the arrows turn to an earlier or a later one."""

    ALSO: ClassVar[frozenset[str]] = frozenset((EARLIER.key, LATER.key))

    def turned(self) -> None:
        """Another week is looked at."""
        raise NotImplementedError

    def pressed(self, key: str) -> None:
        if key not in self.ALSO:
            super().pressed(key)
        elif self.room.turn(-1 if key == EARLIER.key else 1):
            self.turned()


class Page(VerticalScroll):
    """Lines to read, more than the screen may hold."""

    def __init__(self, lines: Sequence[str] = ()) -> None:
        super().__init__(classes="-page")
        self._words = Words(lines)

    def compose(self) -> ComposeResult:
        yield self._words

    def say(self, lines: Sequence[str]) -> None:
        self._words.say(lines)
        self.scroll_home(animate=False)
