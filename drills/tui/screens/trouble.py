"""What could not be shown or begun, on a plain card with a way back."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, ClassVar

from textual.screen import Screen

from drills.core.problems import DrillsError
from drills.tui.cards import trouble_card
from drills.tui.desk import Desk
from drills.tui.screens.card import CardScreen
from drills.tui.widgets.key_bar import CLOSE, SIGNS, Hint


class TroubleScreen(CardScreen):
    """A card for the helper; the guide, which may be what cannot be shown, opens not from here."""

    EVERYWHERE: ClassVar[tuple[Hint, ...]] = (SIGNS,)

    def __init__(self, first: str, error: DrillsError, desk: Desk) -> None:
        super().__init__(trouble_card(first, error), desk, escape="leave")

    def ways_out(self) -> tuple[Hint, ...]:
        return (CLOSE,)

    def hear(self, key: str) -> None:
        if key != "g":
            super().hear(key)


def made_or_told(make: Callable[[], Screen[Any]], otherwise: str, desk: Desk) -> Screen[Any]:
    """What `make` makes; where it cannot be made, a card that says `otherwise`, and why."""
    try:
        return make()
    except DrillsError as error:
        return TroubleScreen(otherwise, error, desk)
