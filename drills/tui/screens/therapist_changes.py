"""What a new plan changes, and the last question before it is in force."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.problems import DrillsError
from drills.core.therapist import Answer
from drills.core.visible import visible
from drills.practice.editing import Difference
from drills.practice.prescribing import prescribe
from drills.tui.draft import Draft
from drills.tui.layout import lines_of
from drills.tui.room import Room
from drills.tui.screens.form import Filled, FormScreen, Line
from drills.tui.screens.room import BACK, READ_ON, Hints, Page, RoomScreen
from drills.tui.widgets.key_bar import Hint

NOTHING = "Nothing is changed, so there is nothing to put in force."
BEGUN = "Practice begun today was dealt by the old plan and cannot be gone on with."
NEXT_START = "Reading aloud, colour and the guard against double presses follow at the next start."
_WIDTH = 76
_USE = Hint(key="k", shown="K", label="put in force", calls=True)


class TherapistChangesScreen(RoomScreen[bool]):
    """Setting, before, after. Returns whether the plan was put in force."""

    def __init__(self, room: Room, draft: Draft) -> None:
        super().__init__(room)
        self._draft = draft

    def heading(self) -> tuple[str, ...]:
        version = self._draft.before.version
        return (f"What changes from version {version} to version {version + 1}",)

    def hints(self) -> Hints:
        return (*((_USE,) if self._is_ready else ()), BACK, READ_ON)

    @property
    def _is_ready(self) -> bool:
        return bool(self._draft.changes) and not self._draft.faults

    def on_mount(self) -> None:
        self.query_one(Page).say(change_lines(self._draft))

    def pressed(self, key: str) -> None:
        if key != "k":
            super().pressed(key)
        elif self._is_ready:
            self._ask()
        else:
            self.trouble("It cannot be put in force as it stands.")

    def _ask(self) -> None:
        version = self._draft.before.version + 1
        self.app.push_screen(
            FormScreen(
                self.room,
                title=f"Put version {version} in force",
                lines=(
                    Line(key="why", says="Why, in your words (may stay empty)"),
                    Line(key="by", says="Your name", value=self.room.by, needed=True),
                ),
                actions=(("use", f"Put version {version} in force"),),
                above=(
                    "Who, when and why are kept with the records.",
                    *((BEGUN,) if self._has_begun else ()),
                    NEXT_START,
                ),
                check=self._used,
            ),
            self._done,
        )

    @property
    def _has_begun(self) -> bool:
        try:
            return bool(self.room.home.today().resumable)
        except DrillsError:
            return False

    def _used(self, filled: Filled) -> str | None:
        draft = self._draft
        suggestion = draft.suggestion
        try:
            prescribe(
                self.room.home,
                draft.plan,
                by=filled.values["by"],
                why=filled.values["why"],
                changes=[str(change) for change in draft.changes],
                suggestion=suggestion,
                answer=Answer.ACCEPTED if draft.is_as_suggested else Answer.CHANGED,
            )
        except DrillsError as error:
            return str(error)
        finally:
            self.room.forget()
        self.room.by = filled.values["by"]
        return None

    def _done(self, filled: Filled | None) -> None:
        if filled is not None:
            self.done(True)


def change_lines(draft: Draft) -> tuple[str, ...]:
    """A paragraph a change, then what keeps it from being used."""
    changes, faults = draft.changes, draft.faults
    if not changes:
        return (NOTHING,)
    lines = [*difference_lines(changes)]
    if not faults:
        return (*lines, "No fault is found in it.")
    lines.append("It cannot be put in force, because:")
    return (*lines, *(line for fault in faults for line in _fold("- ", fault)))


def difference_lines(changes: Sequence[Difference]) -> tuple[str, ...]:
    """Setting, before, after, and a blank line."""
    return tuple(
        line
        for change in changes
        for line in (
            visible(change.what),
            *_fold("before: ", change.before),
            *_fold("after:  ", change.after),
            "",
        )
    )


def _fold(first: str, text: str) -> tuple[str, ...]:
    lines = lines_of(visible(text), width=_WIDTH - 2 - len(first)) or ("",)
    return (f"  {first}{lines[0]}", *(f"  {' ' * len(first)}{line}" for line in lines[1:]))
