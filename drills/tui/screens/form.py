"""A few lines to fill in, and what to do with them."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from textual import events
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.message import Message
from textual.widgets import Input

from drills.tui.cards import Card
from drills.tui.room import Room
from drills.tui.screens.card import CardScreen
from drills.tui.screens.note import one_line
from drills.tui.screens.room import BACK, Hints, RoomScreen
from drills.tui.widgets.key_bar import Hint, KeyBar
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Trouble, Words

THROW_AWAY = Card(
    lines=("What you have written here is not kept yet.",),
    choices=("Go on writing", "Leave without keeping it"),
    quiet=True,
)
LEAVE = 2
MOST_CHARACTERS = 600
_NEXT = Hint(key="", shown="Enter", label="next line")
_TAKE = Hint(key="", shown="Enter", label="take it")
_TAB = Hint(key="", shown="Tab", label="to the lines and the choices")


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line to write on.

    says: what it is for.   needed: it may not stay empty.   most: letters that it holds.
    """

    key: str
    says: str
    value: str = ""
    needed: bool = False
    most: int = MOST_CHARACTERS


@dataclass(frozen=True, slots=True, kw_only=True)
class Filled:
    """action: of the form's.   values: what was written, by key, each on one line."""

    action: str
    values: Mapping[str, str]


Check = Callable[[Filled], str | None]


class WrittenLine(Input):
    """Lines that are pasted become one; what does not fit is not taken, and that is told."""

    class Full(Message):
        def __init__(self, most: int) -> None:
            super().__init__()
            self.most = most

    def on_paste(self, event: events.Paste) -> None:
        event.stop()
        event.prevent_default()
        self.replace(one_line(event.text), *self.selection)

    def restricted(self) -> None:
        self.post_message(self.Full(self.max_length or 0))


class FormScreen(RoomScreen[Filled | None]):
    """Returns what was filled in, None where it was left. Letters are text, also E and G.

    above: what to know before writing.   actions: keys and words, the first one keeps.
    check: what is wrong with it, one sentence; None when it may be kept.
    """

    CSS_PATH = "form.tcss"
    AUTO_FOCUS = "Input"

    def __init__(
        self,
        room: Room,
        *,
        title: str,
        lines: Sequence[Line],
        actions: Sequence[tuple[str, str]],
        above: Sequence[str] = (),
        check: Check = lambda _: None,
    ) -> None:
        super().__init__(room)
        self._title = title
        self._lines = tuple(lines)
        self._actions = tuple(actions)
        self._above = tuple(above)
        self._check = check

    def heading(self) -> tuple[str, ...]:
        return (self._title,)

    def compose(self) -> ComposeResult:
        yield Words(self.heading(), classes="-title")
        with VerticalScroll(classes="-form", can_focus=False):
            if self._above:
                yield Words(self._above, classes="-above")
            for line in self._lines:
                yield Words((line.says,), classes="-label")
                yield WrittenLine(
                    line.value,
                    id=f"line-{line.key}",
                    classes="-written",
                    max_length=line.most,
                    select_on_focus=self._is_short,
                    compact=True,
                )
            yield Rows(self._actions)
        yield Trouble()
        yield KeyBar(self.hints(), everywhere=())

    def hints(self) -> Hints:
        return (BACK, _TAKE) if self._is_short else (BACK, _NEXT, _TAB)

    @property
    def _is_short(self) -> bool:
        """One line and one thing to do with it: what is typed takes the place of what was there."""
        return len(self._lines) == len(self._actions) == 1

    @property
    def _written(self) -> dict[str, str]:
        return {
            line.key: one_line(self.query_one(f"#line-{line.key}", Input).value)
            for line in self._lines
        }

    @property
    def _is_changed(self) -> bool:
        before = {line.key: one_line(line.value) for line in self._lines}
        return self._written != before

    def on_written_line_full(self, event: WrittenLine.Full) -> None:
        event.stop()
        self.trouble(f"Not taken: this line holds {event.most} letters.")

    def on_input_changed(self) -> None:
        self.trouble(None)

    def on_input_submitted(self, event: Input.Submitted) -> None:
        event.stop()
        if self._is_short:
            self.chosen(self._actions[0][0])
        else:
            self.focus_next()

    def hear(self, key: str) -> None:
        # The guide and the card of stroke signs open from every other page.
        if self.is_current and key == "escape":
            self.pressed(key)
        elif key.isdecimal() and not self._is_writing:
            super().hear(key)

    def leave(self) -> None:
        if not self._is_changed:
            self.done(None)
            return
        self.app.push_screen(CardScreen(THROW_AWAY, self.room.desk, escape="leave"), self._left)

    def _left(self, choice: int | None) -> None:
        if choice == LEAVE:
            self.done(None)

    def chosen(self, key: str) -> None:
        written = self._written
        for line in self._lines:
            if line.needed and not written[line.key]:
                self.trouble(f"Please fill in: {line.says}")
                self.query_one(f"#line-{line.key}", Input).focus()
                return
        filled = Filled(action=key, values=written)
        wrong = self._check(filled)
        if wrong is not None:
            self.trouble(wrong)
            return
        self.done(filled)
