"""The way into the therapist's part: what there is."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from textual.app import ComposeResult
from textual.screen import Screen

from drills.tui.cards import Card
from drills.tui.desk import Desk
from drills.tui.draft import Draft
from drills.tui.room import Room
from drills.tui.screens.room import BACK, OPEN, Hints, RoomScreen
from drills.tui.screens.therapist_agreement import TherapistAgreementScreen
from drills.tui.screens.therapist_calendar import TherapistCalendarScreen
from drills.tui.screens.therapist_items import TherapistItemsScreen
from drills.tui.screens.therapist_notes import TherapistNotesScreen
from drills.tui.screens.therapist_plan import TherapistPlanScreen
from drills.tui.screens.therapist_suggestions import TherapistSuggestionsScreen
from drills.tui.screens.therapist_week import TherapistWeekScreen
from drills.tui.screens.trouble import made_or_told
from drills.tui.widgets.rows import Rows

# The first answer leads back, so that a key pressed again and again does not lead in.
ASKED = Card(
    lines=("This part is for the therapist.", "Here the plan of practice can be changed."),
    choices=("Go back", "I am the therapist"),
    quiet=True,
)
IS_THERAPIST = 2

Make = Callable[[Room], Screen[Any]]


def plan_screen(room: Room) -> Screen[Any]:
    """Raises: Failure where no plan can be put in force."""
    return TherapistPlanScreen(room, Draft(room.home))


PARTS: Mapping[str, tuple[str, Make]] = {
    "week": ("This week: the digest", TherapistWeekScreen),
    "items": ("Practised items, with the answers given", TherapistItemsScreen),
    "suggestions": ("Suggestions: accept, change or ignore", TherapistSuggestionsScreen),
    "plan": ("Plan: see it, change it", plan_screen),
    "calendar": ("Calendar: the week to come", TherapistCalendarScreen),
    "agreement": ("Agreement of scores", TherapistAgreementScreen),
    "notes": ("Notes", TherapistNotesScreen),
}


class TherapistScreen(RoomScreen[None]):
    """A list of the parts; each comes back to it."""

    CSS_PATH = "therapist.tcss"

    def heading(self) -> tuple[str, ...]:
        plan = self.room.home.plan
        return ("For the therapist", f"In force: {plan.name}, version {plan.version}.")

    def compose_body(self) -> ComposeResult:
        yield Rows([(key, words) for key, (words, _) in PARTS.items()])

    def hints(self) -> Hints:
        return (BACK, OPEN)

    def chosen(self, key: str) -> None:
        desk = self.room.desk
        self.app.push_screen(
            made_or_told(lambda: PARTS[key][1](self.room), "This cannot be shown.", desk),
            lambda _: self.retitle(),
        )


def room_screen(desk: Desk) -> TherapistScreen:
    return TherapistScreen(Room(desk))
