"""The quiet bottom line: which keys do what, each a place to press with the mouse as well."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.content import Content
from textual.message import Message
from textual.widgets import Static


@dataclass(frozen=True, slots=True, kw_only=True)
class Hint:
    """key: as the screen hears it.   shown: on the line.   calls: it is the thing to do now."""

    key: str
    shown: str
    label: str
    calls: bool = False


HEAR_AGAIN = Hint(key="space", shown="Space", label="hear again")
GO_ON = Hint(key="space", shown="Space", label="go on", calls=True)
HELP = Hint(key="h", shown="H", label="help")
PAUSE = Hint(key="p", shown="P", label="pause")
SCORE = Hint(key="s", shown="S", label="score")
SIGNS = Hint(key="e", shown="E", label="stroke signs")
GUIDE = Hint(key="g", shown="G", label="guide")
CLOSE = Hint(key="escape", shown="Esc", label="close")


class KeyBar(Horizontal):
    """The hints of this screen at the left, those of every screen at the right."""

    DEFAULT_CSS = """
    KeyBar { height: 1; padding: 0 1; color: $quiet; background: $card; }
    KeyBar > KeyHint { width: auto; margin-right: 3; }
    KeyBar > KeyHint.-calls { color: $marked; text-style: bold; }
    KeyBar > .-space { width: 1fr; }
    KeyBar > KeyHint.-last { margin-right: 0; }
    """

    @dataclass
    class Pressed(Message):
        key: str

    def __init__(self, hints: Sequence[Hint], *, everywhere: Sequence[Hint] = (SIGNS, GUIDE)):
        super().__init__()
        self._hints = tuple(hints)
        self._everywhere = tuple(everywhere)

    def compose(self) -> ComposeResult:
        for hint in self._hints:
            yield KeyHint(hint)
        yield Static(classes="-space")
        for hint in self._everywhere:
            yield KeyHint(hint, classes="-last" if hint is self._everywhere[-1] else "")

    async def show(self, hints: Sequence[Hint]) -> None:
        if tuple(hints) != self._hints:
            self._hints = tuple(hints)
            await self.recompose()

    def on_key_hint_pressed(self, event: KeyHint.Pressed) -> None:
        event.stop()
        self.post_message(self.Pressed(event.key))


class KeyHint(Static):
    @dataclass
    class Pressed(Message):
        key: str

    def __init__(self, hint: Hint, *, classes: str = "") -> None:
        super().__init__(
            Content.assemble((hint.shown, "bold"), " ", hint.label),
            classes=f"{classes} -calls" if hint.calls else classes,
        )
        self._key = hint.key

    def on_click(self) -> None:
        self.post_message(self.Pressed(self._key))
