"""The trials of one name, a line each."""

from __future__ import annotations

from textual.app import ComposeResult

from drills.practice.reviewing import Practised, name_line, trial_line
from drills.tui.room import Room
from drills.tui.screens.room import BACK, OPEN, Hints, RoomScreen
from drills.tui.screens.therapist_trial import TherapistTrialScreen
from drills.tui.widgets.rows import Rows


class TherapistAnswersScreen(RoomScreen[None]):
    """In the order in which they were given."""

    def __init__(self, room: Room, practised: Practised) -> None:
        super().__init__(room)
        self._practised = practised

    def heading(self) -> tuple[str, ...]:
        return (name_line(self._practised).strip(), self.room.days)

    def compose_body(self) -> ComposeResult:
        turns = self.room.home.plan.sitting.day_turns_at_hour
        yield Rows(
            [
                (str(at), trial_line(trial, day_turns_at_hour=turns))
                for at, trial in enumerate(self._practised.trials)
            ]
        )

    def hints(self) -> Hints:
        return (BACK, OPEN)

    def chosen(self, key: str) -> None:
        self.app.push_screen(
            TherapistTrialScreen(self.room, self._practised, int(key)), self._came_back
        )

    def _came_back(self, at: int | None) -> None:
        """The mark stands on the trial that was looked at last."""
        if at is not None:
            self.query_one(Rows).highlighted = at
