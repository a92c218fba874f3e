"""The way into the therapist's part: what there is."""

from __future__ import annotations

from typing import ClassVar

from textual.app import ComposeResult

from drills.tui.cards import Card
from drills.tui.desk import Desk
from drills.tui.room import Room
from drills.tui.screens.room import BACK, OPEN, Hints, RoomScreen
from drills.tui.screens.therapist_calendar import TherapistCalendarScreen
from drills.tui.screens.therapist_items import TherapistItemsScreen
from drills.tui.screens.therapist_notes import TherapistNotesScreen
from drills.tui.screens.therapist_week import TherapistWeekScreen
from drills.tui.widgets.rows import Rows

# The first answer leads back, so that a key pressed again and again does not lead in.
ASKED = Card(
    lines=("This part is for the therapist.", "Here the plan of practice can be changed."),
    choices=("Go back", "I am the therapist"),
    quiet=True,
)
IS_THERAPIST = 2

PARTS: dict[str, tuple[str, type[RoomScreen[None]]]] = {
    "week": ("This week: the digest", TherapistWeekScreen),
    "items": ("Practised items, with the answers given", TherapistItemsScreen),
    "calendar": ("Calendar: the week to come", TherapistCalendarScreen),
    "notes": ("Notes", TherapistNotesScreen),
}


class TherapistScreen(RoomScreen[None]):
    """A list of the parts; each comes back to it."""

    CSS_PATH = "therapist.tcss"
    PARTS: ClassVar = PARTS

    def heading(self) -> tuple[str, ...]:
        plan = self.room.home.plan
        return ("For the therapist", f"In force: {plan.name}, version {plan.version}.")

    def compose_body(self) -> ComposeResult:
        yield Rows([(key, words) for key, (words, _) in self.PARTS.items()])

    def hints(self) -> Hints:
        return (BACK, OPEN)

    def chosen(self, key: str) -> None:
        self.app.push_screen(self.PARTS[key][1](self.room))


def room_screen(desk: Desk) -> TherapistScreen:
    return TherapistScreen(Room(desk))
