"""One block of the plan."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from enum import StrEnum
from typing import Any

from textual.app import ComposeResult

from drills.core.kinds import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, CueDirection, Order, ShowText
from drills.core.problems import BadInput
from drills.core.settings import Setting
from drills.digest.wording import KINDS
from drills.exercises import EXERCISES, names_of
from drills.practice.editing import of_kind, raised, read_value, told, with_block, without_block
from drills.tui.cards import Card
from drills.tui.draft import Draft
from drills.tui.room import Room
from drills.tui.screens.card import CardScreen
from drills.tui.screens.form import Filled, FormScreen, Line
from drills.tui.screens.pick import PickScreen
from drills.tui.screens.room import BACK, Hints, RoomScreen
from drills.tui.screens.therapist_preview import preview
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Words

TRIALS = Setting(key="trials", says="trials in a session", low=1, high=60)
OPTIONS = ("2", "3", "4")
TAKE_OUT = Card(
    lines=("Take this block out of the plan?",), choices=("No", "Take it out"), quiet=True
)
YES = 2
_CHANGE = Hint(key="", shown="Enter", label="change")
_SEE = Hint(key="v", shown="V", label="items")
_UP = Hint(key="u", shown="U", label="up")
_OUT = Hint(key="x", shown="X", label="out")
_CHOICES: Mapping[str, type[StrEnum]] = {"cues": CueDirection, "text": ShowText, "order": Order}
_SAYS = {
    "kind": "what is done",
    "names": "what is practised",
    "trials": "in a session (1 to 60)",
    "options": "things to choose from (2 to 4)",
    "groups": "verb groups or contrasts; none means all",
    "cues": "where help begins",
    "text": "whether the sentence is read as well as heard",
    "order": "all names at once, or one after the other",
}


class TherapistBlockScreen(RoomScreen[None]):
    """Names and groups are picked from what the content has."""

    def __init__(self, room: Room, draft: Draft, at: int) -> None:
        super().__init__(room)
        self._draft = draft
        self._at = at

    @property
    def _block(self) -> BlockPlan:
        return self._draft.plan.blocks[self._at]

    def heading(self) -> tuple[str, ...]:
        return (f"Block {self._at + 1} of {len(self._draft.plan.blocks)}",)

    def compose_body(self) -> ComposeResult:
        yield Rows()
        yield Words(classes="-said")

    def hints(self) -> Hints:
        return (BACK, _CHANGE, _SEE, _UP, _OUT)

    def on_screen_resume(self) -> None:
        self._show()

    def _show(self) -> None:
        self.retitle()
        self.query_one(Rows).set_rows([(key, self._line(key)) for key in _SAYS])
        self.query_one(".-said", Words).say((self._draft.standing,))

    def _line(self, key: str) -> str:
        value = getattr(self._block, key)
        if key == "kind":
            said = KINDS[value]
        elif key == "names":
            said = told(value, self._draft.labels) if value else "nothing yet"
        else:
            said = told(value, self._draft.labels)
        return f"{key}: {said}\n{_SAYS[key]}"

    def _set(self, block: BlockPlan) -> None:
        self._draft.plan = with_block(self._draft.plan, self._at, block)
        self._show()

    def pressed(self, key: str) -> None:
        if key == "v":
            self._see()
        elif key == "u":
            self._draft.plan = raised(self._draft.plan, self._at)
            self._at = max(0, self._at - 1)
            self._show()
        elif key == "x":
            self.app.push_screen(CardScreen(TAKE_OUT, self.room.desk, escape="leave"), self._out)
        else:
            super().pressed(key)

    def _out(self, choice: int | None) -> None:
        if choice == YES:
            self._draft.plan = without_block(self._draft.plan, self._at)
            self.done(None)

    def _see(self) -> None:
        try:
            screen = preview(self.room, self._draft.plan, self._block)
        except BadInput as error:
            self.trouble(f"No items can be made of this block yet. {error}")
        else:
            self.trouble(None)
            self.app.push_screen(screen)

    def chosen(self, key: str) -> None:
        block = self._block
        if key == "trials":
            self._ask_trials()
        elif key == "names":
            self._tick("names", names_of(block.kind, self.room.home.material))
        elif key == "groups":
            exercise = EXERCISES[block.kind]
            known = [
                name
                for name in block.names
                if name in names_of(block.kind, self.room.home.material)
            ]
            self._tick("groups", exercise.groups(self.room.home.material, known))
        elif key == "kind":
            self._pick("kind", [(kind.value, KINDS[kind]) for kind in Kind], block.kind.value)
        elif key == "options":
            self._pick("options", [(each, each) for each in OPTIONS], str(block.options))
        else:
            values = [each.value for each in _CHOICES[key]]
            self._pick(key, [(each, each) for each in values], getattr(block, key).value)

    def _tick(self, key: str, known: Sequence[str]) -> None:
        block = self._block
        ticked: tuple[str, ...] = getattr(block, key)
        labels = self._draft.labels
        if not known and not ticked:
            self.trouble("There is nothing to choose from for these names.")
            return
        self.trouble(None)

        def picked(found: tuple[str, ...] | None) -> None:
            if found is not None:
                # Those that stay keep their order, which is the order in which they are given.
                stay = tuple(name for name in ticked if name in found)
                new = tuple(name for name in found if name not in ticked)
                changed: dict[str, Any] = {key: (*stay, *new)}
                self._set(replace(self._block, **changed))

        self.app.push_screen(
            PickScreen(
                self.room,
                title=f"Block {self._at + 1}, {KINDS[block.kind]}: {_SAYS[key]}",
                choices=[
                    (name, labels.get(name, name)) for name in dict.fromkeys((*known, *ticked))
                ],
                ticked=ticked,
                many=True,
            ),
            picked,
        )

    def _pick(self, key: str, choices: Sequence[tuple[str, str]], now: str) -> None:
        def picked(found: tuple[str, ...] | None) -> None:
            if found:
                self._set(_with(self._block, key, found[0], self.room.home.material))

        self.app.push_screen(
            PickScreen(self.room, title=_SAYS[key], choices=choices, ticked=(now,)), picked
        )

    def _ask_trials(self) -> None:
        def wrong(filled: Filled) -> str | None:
            try:
                trials = read_value(TRIALS, self._block.trials, filled.values["trials"])
            except BadInput as error:
                return str(error)
            self._set(replace(self._block, trials=trials))
            return None

        line = Line(key="trials", says=_SAYS["trials"], value=str(self._block.trials))
        self.app.push_screen(
            FormScreen(
                self.room,
                title="Trials",
                lines=(line,),
                actions=(("take", "Take this"),),
                check=wrong,
            )
        )


def _with(block: BlockPlan, key: str, value: str, material: Material) -> BlockPlan:
    if key == "kind":
        kind = Kind(value)
        return of_kind(block, kind, names_of(kind, material))
    if key == "options":
        return replace(block, options=int(value))
    changed: dict[str, Any] = {key: _CHOICES[key](value)}
    return replace(block, **changed)
