"""What every screen shares: one way in for keys and mouse, and two keys that work everywhere."""

from __future__ import annotations

from typing import TypeVar

from textual import events
from textual.message import Message
from textual.screen import Screen

from drills.tui.widgets.choices import Choices
from drills.tui.widgets.key_bar import KeyBar

ResultT = TypeVar("ResultT")


class KeyedScreen(Screen[ResultT]):
    """A screen that hears single keys; small and capital letters are one key.

    Subclasses say in `pressed` what a key does. The guide and the card of stroke signs are asked
    of the app by messages.
    """

    AUTO_FOCUS = ""

    class GuideWanted(Message):
        pass

    class SignsWanted(Message):
        pass

    def pressed(self, key: str) -> None:
        """`key` was pressed, or its place on the screen."""

    def hear(self, key: str) -> None:
        if key == "g":
            self.post_message(self.GuideWanted())
        elif key == "e":
            self.post_message(self.SignsWanted())
        else:
            self.pressed(key)

    def on_key(self, event: events.Key) -> None:
        key = plain_key(event)
        if key is None:
            return
        event.stop()
        event.prevent_default()
        self.hear(key)

    def on_key_bar_pressed(self, event: KeyBar.Pressed) -> None:
        event.stop()
        self.hear(event.key)

    def on_choices_chosen(self, event: Choices.Chosen) -> None:
        event.stop()
        self.hear(event.key)


def plain_key(event: events.Key) -> str | None:
    """A letter or digit in small, "space" or "escape"; None for all that is not ours."""
    if event.key in ("space", "escape"):
        return event.key
    character = event.character
    if character is not None and len(character) == 1 and character.isalnum():
        return character.lower()
    if len(event.key) == 1 and event.key.isalnum():
        return event.key.lower()
    return None
