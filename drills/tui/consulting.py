"""An app that opens the therapist's part, and takes up the plan that comes out of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from drills.tui.covered import CoveredApp

if TYPE_CHECKING:
    from drills.tui.desk import Desk


class ConsultingApp(CoveredApp):
    """Asks who is there, plainly, before anything can be changed."""

    _desk: Desk

    def on_home_screen_therapist_wanted(self) -> None:
        from drills.tui.pages import ASKED, IS_THERAPIST, CardScreen, room_screen  # noqa: PLC0415

        def asked(choice: int | None) -> None:
            if choice == IS_THERAPIST:
                self.push_screen(room_screen(self._desk))

        self.push_screen(CardScreen(ASKED, self._desk, escape="leave"), asked)
