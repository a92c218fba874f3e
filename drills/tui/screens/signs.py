"""The card of the signs of a new stroke, one key away from everywhere."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import Vertical

from drills.tui.presses import Presses
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.key_bar import CLOSE, GUIDE, KeyBar
from drills.tui.widgets.words import Words

SIGNS = (
    "Face: one side droops.",
    "Arm or leg: weak or numb.",
    "Speech: suddenly worse than before.",
    "Sudden trouble with seeing or balance.",
    "The worst headache ever.",
)


class SignsScreen(KeyedScreen[None]):
    """emergency_number: the plan's own."""

    CSS_PATH = "signs.tcss"

    def __init__(self, emergency_number: str, presses: Presses) -> None:
        super().__init__()
        self._number = emergency_number
        self._presses = presses

    def compose(self) -> ComposeResult:
        with Vertical(classes="-card"):
            yield Words(("Signs of a new stroke",), classes="-title")
            yield Words((f"One sign is enough. Call {self._number} now.",), classes="-call")
            yield Words([f"- {sign}" for sign in SIGNS])
            yield Words(
                ("Do not wait. Do not drive yourself.", "Note the time when all was last well.")
            )
        yield KeyBar((CLOSE,), everywhere=(GUIDE,))

    def hear(self, key: str) -> None:
        if key in ("escape", "space", "e"):
            # A trembling or held key must not close what it has just opened.
            if self._presses.is_meant(key):
                self.dismiss(None)
        else:
            super().hear(key)
