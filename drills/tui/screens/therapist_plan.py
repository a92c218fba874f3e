"""The plan with all its settings and blocks, to be changed."""

from __future__ import annotations

from textual.app import ComposeResult

from drills.core.kinds import Kind
from drills.core.plans import BlockPlan
from drills.core.settings import MOST_BLOCKS, Section
from drills.digest.wording import KINDS
from drills.practice.editing import block_line, new_block, value_of, with_block
from drills.tui.cards import Card
from drills.tui.draft import Draft
from drills.tui.room import Room
from drills.tui.screens.card import CardScreen
from drills.tui.screens.pick import PickScreen
from drills.tui.screens.room import BACK, OPEN, Hints, RoomScreen
from drills.tui.screens.therapist_block import TherapistBlockScreen
from drills.tui.screens.therapist_changes import TherapistChangesScreen
from drills.tui.screens.therapist_section import TherapistSectionScreen
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Words

UNKEPT = Card(
    lines=("The plan has changes that are not in force.",),
    choices=("Go on changing", "See the changes", "Leave without them"),
    quiet=True,
)
SEE, LEAVE = 2, 3
ADD = "add"
_CHANGES = Hint(key="s", shown="S", label="see changes")


class TherapistPlanScreen(RoomScreen[bool]):
    """Returns whether a plan was put in force."""

    def __init__(self, room: Room, draft: Draft) -> None:
        super().__init__(room)
        self._draft = draft

    def heading(self) -> tuple[str, ...]:
        plan = self._draft.before
        return (f"Plan: {plan.name}. Version {plan.version} is in force.",)

    def compose_body(self) -> ComposeResult:
        yield Rows()
        yield Words(classes="-said")

    def hints(self) -> Hints:
        return (BACK, OPEN, _CHANGES)

    def on_screen_resume(self) -> None:
        self._show()

    def _show(self) -> None:
        draft = self._draft
        rows = [
            (
                f"block {at}",
                f"Block {at + 1}: {block_line(block, draft.labels)}{_is_new(block, draft)}",
            )
            for at, block in enumerate(draft.plan.blocks)
        ]
        if len(draft.plan.blocks) < MOST_BLOCKS:
            rows.append((ADD, "Add a block"))
        rows += [
            (f"section {section.name}", _section_line(section, draft)) for section in draft.sections
        ]
        self.query_one(Rows).set_rows(rows)
        self.query_one(".-said", Words).say((draft.standing,))

    def pressed(self, key: str) -> None:
        if key == "s":
            self._see()
        else:
            super().pressed(key)

    def chosen(self, key: str) -> None:
        what, _, which = key.partition(" ")
        if what == ADD:
            kinds = [(kind.value, KINDS[kind]) for kind in Kind]
            self.app.push_screen(
                PickScreen(self.room, title="A block of", choices=kinds), self._added
            )
        elif what == "block":
            self._open_block(int(which))
        else:
            section = next(each for each in self._draft.sections if each.name == which)
            self.app.push_screen(TherapistSectionScreen(self.room, self._draft, section))

    def _open_block(self, at: int) -> None:
        self.app.push_screen(TherapistBlockScreen(self.room, self._draft, at))

    def _added(self, kind: tuple[str, ...] | None) -> None:
        if kind:
            draft = self._draft
            at = len(draft.plan.blocks)
            draft.plan = with_block(draft.plan, at, new_block(Kind(kind[0])))
            self._open_block(at)

    def _see(self) -> None:
        self.app.push_screen(TherapistChangesScreen(self.room, self._draft), self._seen)

    def _seen(self, is_in_force: bool | None) -> None:
        if is_in_force:
            self.done(True)

    def leave(self) -> None:
        if not self._draft.changes:
            self.done(False)
            return
        self.app.push_screen(CardScreen(UNKEPT, self.room.desk, escape="leave"), self._asked)

    def _asked(self, choice: int | None) -> None:
        if choice == SEE:
            self._see()
        elif choice == LEAVE:
            self.done(False)


def _is_new(block: BlockPlan, draft: Draft) -> str:
    return "" if block in draft.before.blocks else "   (changed)"


def _section_line(section: Section, draft: Draft) -> str:
    changed = sum(
        value_of(draft.plan, section, each) != value_of(draft.before, section, each)
        for each in section.settings
    )
    return f"{section.says}{f'   ({changed} changed)' if changed else ''}"
