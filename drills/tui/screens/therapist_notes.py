"""What was noted on each day, by whom, and the therapist's own notes about it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta

from textual.app import ComposeResult

from drills.core.problems import DrillsError
from drills.core.records import Observation, Topic, practice_day
from drills.core.therapist import TherapistNote
from drills.core.visible import visible
from drills.digest.plain import day, day_and_year
from drills.tui.layout import lines_of
from drills.tui.room import DAYS, Room
from drills.tui.screens.form import Filled, FormScreen, Line
from drills.tui.screens.room import (
    BACK,
    EARLIER,
    LATER,
    OPEN,
    READ_ON,
    Hints,
    Page,
    RoomScreen,
    WeeksScreen,
)
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.rows import Rows

NO_NOTE = "no note"
_WRITE = Hint(key="n", shown="N", label="write a note", calls=True)
_WIDTH = 76


Said = tuple[str, str]
"""Who noted it, and what."""

# Of one day, what a person wrote comes before what a rule of the session did.
_SAYS = {False: "Caregiver", True: "Program"}


def notes_of(room: Room, first: date, last: date) -> Mapping[date, Sequence[Said]]:
    """What was noted about each day that has a note, the caregiver first.   Raises: DrillsError."""
    turns = room.home.plan.sitting.day_turns_at_hour
    noted = [
        (practice_day(entry.at, turns_at_hour=turns), entry.topic is Topic.RULE, entry.note)
        for entry in room.home.entries_of(first, last)
        if isinstance(entry, Observation) and entry.note.strip()
    ]
    found: dict[date, list[Said]] = {}
    for on, is_rule, text in sorted(noted, key=lambda each: each[1]):
        found.setdefault(on, []).append((_SAYS[is_rule], text))
    for note in room.home.therapist_log.entries():
        if isinstance(note, TherapistNote):
            by = f"{note.by}, written on {day(note.at.date())}"
            found.setdefault(note.about, []).append((by, note.text))
    return found


class TherapistNotesScreen(WeeksScreen):
    """The days of the week, newest first."""

    def heading(self) -> tuple[str, ...]:
        return (f"Notes: {self.room.days}", "Choose a day to read all and to write.")

    def compose_body(self) -> ComposeResult:
        yield Rows()

    def hints(self) -> Hints:
        return (BACK, OPEN, EARLIER, LATER)

    def on_screen_resume(self) -> None:
        self._find()

    def turned(self) -> None:
        self._find()

    def _find(self) -> None:
        self.retitle()
        try:
            notes = notes_of(self.room, self.room.first, self.room.last)
            rows = [
                (on.isoformat(), f"{day(on):<10}  {_told(notes.get(on, ()))}")
                for on in (self.room.last - timedelta(days=back) for back in range(DAYS))
            ]
        except DrillsError as error:
            self.trouble(f"The notes cannot be read. {error}")
        else:
            self.trouble(_not_whole(self.room))
            self.query_one(Rows).set_rows(rows)

    def chosen(self, key: str) -> None:
        self.app.push_screen(TherapistDayScreen(self.room, date.fromisoformat(key)))


def _told(notes: Sequence[Said]) -> str:
    if not notes:
        return NO_NOTE
    first = visible(notes[0][1])
    more = f"  (and {len(notes) - 1} more)" if len(notes) > 1 else ""
    return f"{first if len(first) <= 44 else first[:43] + '…'}{more}"


def _not_whole(room: Room) -> str | None:
    notices = room.home.therapist_log.notices
    return notices[0] if notices else None


class TherapistDayScreen(RoomScreen[None]):
    """All notes about one day."""

    def __init__(self, room: Room, on: date) -> None:
        super().__init__(room)
        self._on = on

    def heading(self) -> tuple[str, ...]:
        return (f"Notes: {day_and_year(self._on)}",)

    def hints(self) -> Hints:
        return (_WRITE, BACK, READ_ON)

    def on_mount(self) -> None:
        self._read()

    def _read(self) -> None:
        lines: list[str] = []
        try:
            for who, text in notes_of(self.room, self._on, self._on).get(self._on, ()):
                lines += [f"{visible(who)}:", *(f"  {line}" for line in _fold(text)), ""]
        except DrillsError as error:
            self.trouble(f"The notes cannot be read. {error}")
        self.query_one(Page).say(lines or ("No note about this day.",))

    def pressed(self, key: str) -> None:
        if key == "n":
            self._write()
        else:
            super().pressed(key)

    def _write(self) -> None:
        reason = self.room.home.therapist_log.reason
        if reason:
            self.trouble(f"No note can be kept now: {reason}.")
            return
        self.app.push_screen(
            FormScreen(
                self.room,
                title=f"A note about {day_and_year(self._on)}",
                lines=(
                    Line(key="text", says="Note", needed=True),
                    Line(key="by", says="Your name", value=self.room.by, needed=True),
                ),
                actions=(("keep", "Keep this note"),),
                above=("It is kept beside the records, and never changed afterwards.",),
                check=self._kept,
            ),
            lambda _: self._read(),
        )

    def _kept(self, filled: Filled) -> str | None:
        note = TherapistNote(
            at=self.room.home.clock.now(),
            by=filled.values["by"],
            about=self._on,
            text=filled.values["text"],
        )
        try:
            self.room.home.therapist_log.append(note)
        except DrillsError as error:
            return f"The note is not kept yet. {error}"
        self.room.by = note.by
        return None


def _fold(text: str) -> tuple[str, ...]:
    return lines_of(visible(text), width=_WIDTH)
