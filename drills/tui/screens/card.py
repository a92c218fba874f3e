"""One question with numbered answers."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, ClassVar, Literal

from textual.app import App, ComposeResult
from textual.containers import Vertical

from drills.core.utterances import Utterance
from drills.tui.cards import GO_ON, PAUSED, REST, RESTED, RESTING, STOP, Card
from drills.tui.desk import Desk
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.speaker import Line
from drills.tui.widgets.choices import Choices
from drills.tui.widgets.key_bar import GUIDE, HEAR_AGAIN, PAUSE, SIGNS, Hint, KeyBar
from drills.tui.widgets.words import Trouble, Words

Escape = Literal["pause", "go on", "leave"]


class CardScreen(KeyedScreen[int | None]):
    """Returns the number of the answer, or None when the person wants to stop.

    rest_seconds: after them a rest card says that the rest is over; nothing counts down.
    escape: what Esc and P do: ask for a pause, answer 1, or leave the question unanswered.
    """

    CSS_PATH = "card.tcss"
    EVERYWHERE: ClassVar[tuple[Hint, ...]] = (SIGNS, GUIDE)

    def __init__(
        self,
        card: Card,
        desk: Desk,
        *,
        escape: Escape = "pause",
        trouble: str | None = None,
        rest_seconds: int | None = None,
    ) -> None:
        super().__init__()
        self.card = card
        self._desk = desk
        self._escape = escape
        self._trouble = trouble
        self._rest_seconds = rest_seconds

    def compose(self) -> ComposeResult:
        with Vertical(classes="-middle"), Vertical(classes="-card"):
            yield Words(self.card.lines, apart=len(self.card.lines) < 4, classes="-question")
            yield Choices(
                [(str(number), choice) for number, choice in enumerate(self.card.choices, 1)]
            )
        yield Trouble(self._trouble)
        again = () if self.card.quiet else (HEAR_AGAIN,)
        yield KeyBar((*again, *self.ways_out()), everywhere=self.EVERYWHERE)

    def ways_out(self) -> tuple[Hint, ...]:
        if self._escape == "pause":
            return (PAUSE,)
        label = "go on" if self._escape == "go on" else "no answer"
        return (Hint(key="escape", shown="Esc", label=label),)

    def on_mount(self) -> None:
        if self._rest_seconds is not None:
            self.set_timer(self._rest_seconds, self._end_rest)

    def _end_rest(self) -> None:
        self.query_one(".-question", Words).say(RESTED)
        if self.is_active:
            self._desk.speaker.say((Line(utterance=Utterance(phrases=RESTED)),))

    def on_screen_resume(self) -> None:
        self.call_after_refresh(self._say)

    def on_screen_suspend(self) -> None:
        self._desk.speaker.stop()

    def _say(self) -> None:
        if self.is_active and not self.card.quiet:
            self._desk.speaker.say((Line(utterance=self.card.spoken),))

    def pressed(self, key: str) -> None:
        if not self._desk.presses.is_meant(key):
            return
        if key == "space":
            self._say()
        elif key in ("escape", "p"):
            self._leave()
        elif key.isdecimal() and 1 <= int(key) <= len(self.card.choices):
            self.dismiss(int(key))

    def _leave(self) -> None:
        if self._escape == "pause":
            pause(self.app, self._desk, PAUSED, self._paused)
        else:
            self.dismiss(GO_ON if self._escape == "go on" else None)

    def _paused(self, choice: int | None) -> None:
        if choice == STOP:
            self.dismiss(None)


def pause(app: App[Any], desk: Desk, card: Card, then: Callable[[int | None], None]) -> None:
    """Ask `card` over whatever runs; rest where that is wished, else `then` with the answer."""

    def chosen(choice: int | None) -> None:
        if choice == REST:
            seconds = desk.home.plan.sitting.rest_seconds
            app.push_screen(CardScreen(RESTING, desk, escape="go on", rest_seconds=seconds))
        else:
            then(choice)

    app.push_screen(CardScreen(card, desk, escape="go on"), chosen)
