"""One of a list, or as many as are wanted."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from textual.app import ComposeResult

from drills.tui.room import Room
from drills.tui.screens.room import BACK, CHOOSE, Hints, RoomScreen
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.rows import Rows

_TICK = Hint(key="", shown="Enter", label="tick")
_DONE = Hint(key="escape", shown="Esc", label="done")


class PickScreen(RoomScreen[tuple[str, ...] | None]):
    """Returns what is ticked, in the order of the list; one choice is returned at once.

    choices: key and words.   many: as many as are wanted; Esc then keeps what is ticked.
    """

    def __init__(
        self,
        room: Room,
        *,
        title: str,
        choices: Sequence[tuple[str, str]],
        ticked: Collection[str] = (),
        many: bool = False,
    ) -> None:
        super().__init__(room)
        self._title = title
        self._choices = tuple(choices)
        self._ticked = set(ticked)
        self._many = many

    def heading(self) -> tuple[str, ...]:
        return (self._title,)

    def compose_body(self) -> ComposeResult:
        yield Rows(self._rows)

    def on_mount(self) -> None:
        for at, (key, _) in enumerate(self._choices):
            if key in self._ticked:
                self.query_one(Rows).highlighted = at
                return

    @property
    def _rows(self) -> list[tuple[str, str]]:
        return [
            (key, f"[{'x' if key in self._ticked else ' '}] {words}")
            for key, words in self._choices
        ]

    def hints(self) -> Hints:
        return (_DONE, _TICK) if self._many else (BACK, CHOOSE)

    def chosen(self, key: str) -> None:
        if self._many:
            self._ticked ^= {key}
            self.query_one(Rows).set_rows(self._rows)
        else:
            self.done((key,))

    def leave(self) -> None:
        if self._many:
            self.done(tuple(key for key, _ in self._choices if key in self._ticked))
        else:
            self.done(None)
