"""The settings of one table of the plan."""

from __future__ import annotations

from enum import StrEnum
from typing import Any

from textual.app import ComposeResult

from drills.core.plans import PROBED
from drills.core.problems import BadInput
from drills.core.settings import Section, Setting
from drills.practice.editing import limits, read_value, told, value_of, with_value
from drills.tui.draft import Draft
from drills.tui.room import Room
from drills.tui.screens.form import MOST_CHARACTERS, Filled, FormScreen, Line
from drills.tui.screens.note import one_line
from drills.tui.screens.pick import PickScreen
from drills.tui.screens.room import BACK, Hints, RoomScreen
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Words

_CHANGE = Hint(key="", shown="Enter", label="change")


class TherapistSectionScreen(RoomScreen[None]):
    """Yes and no change at once; a number or a text is asked for, and judged when it is given."""

    def __init__(self, room: Room, draft: Draft, section: Section) -> None:
        super().__init__(room)
        self._draft = draft
        self._section = section

    def heading(self) -> tuple[str, ...]:
        return (self._section.says,)

    def compose_body(self) -> ComposeResult:
        yield Rows()
        yield Words(classes="-said")

    def hints(self) -> Hints:
        return (BACK, _CHANGE)

    def on_screen_resume(self) -> None:
        self._show()

    def _show(self) -> None:
        self.query_one(Rows).set_rows(
            [(each.key, self._line(each)) for each in self._section.settings]
        )
        self.query_one(".-said", Words).say((self._draft.standing,))

    def _line(self, setting: Setting) -> str:
        value = self._value(setting)
        span = limits(setting, value)
        was = value_of(self._draft.before, self._section, setting)
        labels = self._draft.labels
        before = "" if value == was else f"   (was {told(was, labels)})"
        return (
            f"{setting.key}: {told(value, labels)}{before}\n{setting.says}{span and f' ({span})'}"
        )

    def _value(self, setting: Setting) -> Any:
        return value_of(self._draft.plan, self._section, setting)

    def _set(self, setting: Setting, value: Any) -> None:
        self._draft.plan = with_value(self._draft.plan, self._section, setting, value)
        self._show()

    def chosen(self, key: str) -> None:
        setting = next(each for each in self._section.settings if each.key == key)
        value = self._value(setting)
        if isinstance(value, bool):
            self._set(setting, not value)
        elif isinstance(value, StrEnum):
            self._pick(setting, value)
        elif isinstance(value, tuple) and not setting.high:
            self._tick(setting, value)
        else:
            self._ask(setting, value)

    def _pick(self, setting: Setting, value: StrEnum) -> None:
        kind = type(value)

        def picked(found: tuple[str, ...] | None) -> None:
            if found:
                self._set(setting, kind(found[0]))

        self.app.push_screen(
            PickScreen(
                self.room,
                title=setting.says,
                choices=[(each.value, each.value) for each in kind],
                ticked=(value.value,),
            ),
            picked,
        )

    def _tick(self, setting: Setting, value: tuple[str, ...]) -> None:
        labels = self._draft.labels
        # Relatives that are left out now are no longer among the content's.
        is_kin = setting.key == "without_kin"
        kin = (*self.room.home.material.lexicon.kin, *self._draft.before.without_kin)
        known = kin if is_kin else PROBED

        def picked(found: tuple[str, ...] | None) -> None:
            if found is not None:
                self._set(setting, found)

        self.app.push_screen(
            PickScreen(
                self.room,
                title=setting.says,
                choices=[
                    (name, labels.get(name, name)) for name in dict.fromkeys((*known, *value))
                ],
                ticked=value,
                many=True,
            ),
            picked,
        )

    def _ask(self, setting: Setting, value: object) -> None:
        shown = "" if value == "" else told(value)

        def wrong(filled: Filled) -> str | None:
            if filled.values["value"] == one_line(shown):
                return None  # also a text of several lines, which one line cannot hold
            try:
                self._set(setting, read_value(setting, value, filled.values["value"]))
            except BadInput as error:
                return str(error)
            return None

        span = limits(setting, value)
        self.app.push_screen(
            FormScreen(
                self.room,
                title=setting.key,
                lines=(
                    Line(
                        key="value",
                        says=f"{setting.says}{span and f' ({span})'}",
                        value=shown,
                        most=max(MOST_CHARACTERS, int(setting.high)),
                    ),
                ),
                actions=(("take", "Take this"),),
                check=wrong,
            )
        )
