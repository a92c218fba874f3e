"""A list to choose from that may be longer than the screen: arrows and Enter, digits, or mouse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from textwrap import wrap

from textual.content import Content
from textual.message import Message
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from drills.core.visible import visible

NUMBERED = 9
INDENT = 5
# What is left of the narrowest window.
WIDTH = 72


class Rows(OptionList):
    """One entry a row; the first nine carry their digit. `[cup]` is six characters, no markup."""

    DEFAULT_CSS = """
    Rows {
        height: 1fr; border: none; padding: 0 1; background: $ground; color: $ink;
        scrollbar-size-vertical: 1;
    }
    Rows:focus { border: none; background-tint: $ground 0%; }
    Rows > .option-list--option { padding: 0; }
    Rows > .option-list--option-hover { background: $card; }
    Rows > .option-list--option-highlighted,
    Rows:focus > .option-list--option-highlighted {
        color: $marked; background: $card; text-style: bold;
    }
    """

    @dataclass
    class Chosen(Message):
        key: str

    def __init__(self, rows: Sequence[tuple[str, str]] = (), *, classes: str = "") -> None:
        """rows: key, which is each row's own, and words."""
        super().__init__(classes=classes)
        self.keys: tuple[str, ...] = ()
        self.set_rows(rows)

    def set_rows(self, rows: Sequence[tuple[str, str]]) -> None:
        """Show other rows; the place in the list stays as far as it can."""
        at = self.highlighted
        self.keys = tuple(key for key, _ in rows)
        self.set_options(
            Option(_prompt(number, words), id=key) for number, (key, words) in enumerate(rows, 1)
        )
        if rows:
            self.highlighted = min(at or 0, len(rows) - 1)

    @property
    def current(self) -> str | None:
        """The key of the row that is marked."""
        return None if self.highlighted is None else self.keys[self.highlighted]

    def choose(self, digit: str) -> None:
        """As if the row with this digit were pressed; nothing where there is none."""
        number = int(digit)
        if 1 <= number <= min(NUMBERED, len(self.keys)):
            self.highlighted = number - 1
            self.post_message(self.Chosen(self.keys[number - 1]))

    def on_option_list_option_selected(self, event: OptionList.OptionSelected) -> None:
        event.stop()
        if event.option_index < len(self.keys):
            self.post_message(self.Chosen(self.keys[event.option_index]))


def _prompt(number: int, words: str) -> Content:
    """Lines after the first begin under its words, also where they are broken here."""
    lines = [
        line
        for told in visible(words).split("\n")
        for line in wrap(told, WIDTH, subsequent_indent="  ", drop_whitespace=True) or [""]
    ]
    hung = f"\n{' ' * INDENT}".join(lines)
    if number > NUMBERED:
        return Content.assemble(" " * INDENT, hung)
    return Content.assemble((f" {number} ", "bold reverse"), "  ", hung)
