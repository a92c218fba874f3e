"""A note of the helper's for the therapist."""

from __future__ import annotations

from typing import ClassVar

from textual import events
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Vertical
from textual.message import Message
from textual.widgets import TextArea

from drills.tui.cards import YES
from drills.tui.presses import Presses
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.key_bar import Hint, KeyBar
from drills.tui.widgets.words import Words

MOST_CHARACTERS = 300
_OPENED_BY = str(YES)
_KEEP = Hint(key="keep", shown="Enter", label="keep", calls=True)
_NO_NOTE = Hint(key="escape", shown="Esc", label="no note")


class NoteArea(TextArea):
    """Enter ends the note; the key that opened it, held a little long, is not its start."""

    class Kept(Message):
        pass

    def __init__(self, presses: Presses) -> None:
        super().__init__(soft_wrap=True, show_line_numbers=False)
        self._presses = presses
        self._has_begun = False

    async def _on_key(self, event: events.Key) -> None:
        is_text = event.is_printable
        if is_text and not self._has_begun:
            self._has_begun = event.character != _OPENED_BY or self._presses.is_meant(_OPENED_BY)
        if event.key == "enter" or (is_text and not self._has_begun):
            event.stop()
            event.prevent_default()
            if event.key == "enter":
                self.post_message(self.Kept())
            return
        await super()._on_key(event)


class NoteScreen(KeyedScreen[str]):
    """Returns the note, empty where there is to be none. Letters are text here, also E and G."""

    CSS_PATH = "note.tcss"
    AUTO_FOCUS = "NoteArea"
    BINDINGS: ClassVar[list[BindingType]] = [Binding("ctrl+s", "keep", priority=True, show=False)]

    def __init__(self, presses: Presses) -> None:
        super().__init__()
        self._presses = presses

    def compose(self) -> ComposeResult:
        with Vertical(classes="-page"):
            yield Words(("Helper: a note for the therapist.",), classes="-title")
            yield NoteArea(self._presses)
            yield Words(classes="-room")
        yield KeyBar((_KEEP, _NO_NOTE), everywhere=())

    def on_mount(self) -> None:
        self._tell_room()

    def on_text_area_changed(self, event: TextArea.Changed) -> None:
        area = event.text_area
        if len(area.text) > MOST_CHARACTERS:
            area.text = area.text[:MOST_CHARACTERS]
            area.move_cursor(area.document.end)
        self._tell_room()

    def _tell_room(self) -> None:
        left = MOST_CHARACTERS - len(self.query_one(NoteArea).text)
        self.query_one(".-room", Words).say((f"Room for {left} characters more.",))

    def on_note_area_kept(self) -> None:
        self.action_keep()

    def action_keep(self) -> None:
        self.dismiss(one_line(self.query_one(NoteArea).text))

    def hear(self, key: str) -> None:
        if key == "keep":
            self.action_keep()
        elif key == "escape":
            self.dismiss("")


def one_line(text: str) -> str:
    """`text` as one line, without signs that a terminal would obey."""
    return " ".join("".join(c if c.isprintable() else " " for c in text).split())
