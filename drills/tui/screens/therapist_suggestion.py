"""One suggestion with its grounds, and the therapist's answer to it."""

from __future__ import annotations

from textual.app import ComposeResult

from drills.core.problems import DrillsError
from drills.core.suggestions import Suggestion
from drills.digest.plain import inert
from drills.practice.deciding import ignore, suggested_plan
from drills.tui.draft import Draft
from drills.tui.layout import lines_of
from drills.tui.room import Room
from drills.tui.screens.form import Filled, FormScreen, Line
from drills.tui.screens.room import BACK, CHOOSE, Hints, Page, RoomScreen
from drills.tui.screens.therapist_changes import TherapistChangesScreen, difference_lines
from drills.tui.screens.therapist_plan import TherapistPlanScreen
from drills.tui.widgets.rows import Rows

ACCEPT, CHANGE, IGNORE = "accept", "change", "ignore"
NO_CHANGE = "It names no change of the plan: what to change is for you to say."
_WIDTH = 76


class TherapistSuggestionScreen(RoomScreen[bool]):
    """Returns whether it was answered; left without an answer, it stays open."""

    CSS_PATH = "therapist_suggestion.tcss"

    def __init__(self, room: Room, suggestion: Suggestion) -> None:
        super().__init__(room)
        self._suggestion = suggestion

    def heading(self) -> tuple[str, ...]:
        return _fold(self._suggestion.says)

    def compose_body(self) -> ComposeResult:
        yield Page(self._grounds())
        yield Rows(self._answers)

    def hints(self) -> Hints:
        return (BACK, CHOOSE)

    def on_mount(self) -> None:
        self.query_one(Rows).focus()

    @property
    def _answers(self) -> list[tuple[str, str]]:
        has_changes = bool(self._suggestion.changes)
        accept = [(ACCEPT, "Accept: see what changes, then put it in force")]
        alter = "open the plan with this in it, and alter it"
        return [
            *(accept if has_changes else []),
            (CHANGE, f"Change: {alter if has_changes else 'open the plan, and say what'}"),
            (IGNORE, "Ignore: leave the plan as it is, and keep that with the reason"),
        ]

    def _grounds(self) -> tuple[str, ...]:
        suggestion = self._suggestion
        lines = [
            *_fold(f"Evidence: {suggestion.evidence}"),
            "",
            *_fold(f"Rule: {suggestion.rule}"),
            "",
        ]
        if not suggestion.changes:
            return (*lines, *_fold(NO_CHANGE))
        try:
            told = difference_lines(self._draft().changes)
        except DrillsError as error:
            told = _fold(f"It cannot be made in this plan. {error}")
        return (*lines, "What would change:", *told)

    def _draft(self) -> Draft:
        """Raises: DrillsError for a change that the plan in force cannot have."""
        home = self.room.home
        plan = suggested_plan(home.plan, self._suggestion, home.material)
        return Draft(home, plan, suggestion=self._suggestion)

    def chosen(self, key: str) -> None:
        if key == IGNORE:
            self._ask_why()
            return
        try:
            draft = self._draft()
        except DrillsError as error:
            self.trouble(str(error))
            return
        # What keeps the plan from being used is mended in the plan, also where it is older.
        is_ready = key == ACCEPT and not draft.faults
        screen = TherapistChangesScreen if is_ready else TherapistPlanScreen
        self.app.push_screen(screen(self.room, draft), self._answered)

    def _answered(self, is_in_force: bool | None) -> None:
        if is_in_force:
            self.done(True)

    def _ask_why(self) -> None:
        def kept(filled: Filled) -> str | None:
            by = filled.values["by"]
            try:
                ignore(self.room.home, self._suggestion, by=by, why=filled.values["why"])
            except DrillsError as error:
                return str(error)
            self.room.by = by
            self.room.forget()
            return None

        def left(filled: Filled | None) -> None:
            if filled is not None:
                self.done(True)

        self.app.push_screen(
            FormScreen(
                self.room,
                title="Ignore this suggestion",
                lines=(
                    Line(key="why", says="Why, in your words (may stay empty)"),
                    Line(key="by", says="Your name", value=self.room.by, needed=True),
                ),
                actions=(("keep", "Ignore it, and keep who and why"),),
                above=("The plan stays as it is. New evidence may bring it again.",),
                check=kept,
            ),
            left,
        )


def _fold(text: str) -> tuple[str, ...]:
    return lines_of(inert(text), width=_WIDTH)
