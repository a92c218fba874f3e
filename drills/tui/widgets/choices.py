"""Numbered lines to choose from."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.content import Content
from textual.message import Message
from textual.widgets import Static


class Choices(Vertical):
    """One line a choice: its key, then its words; spaced out where there is room."""

    DEFAULT_CSS = """
    Choices { height: auto; width: 1fr; }
    Choices > Choice { margin-bottom: 1; }
    Choices.-close > Choice { margin-bottom: 0; }
    """

    @dataclass
    class Chosen(Message):
        key: str

    def __init__(self, choices: Sequence[tuple[str, str]], *, classes: str = "") -> None:
        super().__init__(classes=classes)
        self._choices = tuple(choices)

    def compose(self) -> ComposeResult:
        for key, label in self._choices:
            yield Choice(key, label)

    def on_choice_pressed(self, event: Choice.Pressed) -> None:
        event.stop()
        self.post_message(self.Chosen(event.key))


class Choice(Static):
    DEFAULT_CSS = """
    Choice { width: 1fr; height: auto; color: $ink; }
    Choice.-ticked { color: $marked; text-style: bold; }
    """

    @dataclass
    class Pressed(Message):
        key: str

    def __init__(self, key: str, label: str) -> None:
        super().__init__(Content.assemble((f" {key.upper()} ", "bold reverse"), "  ", label))
        self.key = key
        self.label = label

    def tick(self, *, is_on: bool) -> None:
        """Ticked is a sign and not only a colour."""
        self.set_class(is_on, "-ticked")
        sign = "x" if is_on else " "
        self.update(
            Content.assemble((f" {self.key.upper()} ", "bold reverse"), f" [{sign}] ", self.label)
        )

    def on_click(self) -> None:
        self.post_message(self.Pressed(self.key))
