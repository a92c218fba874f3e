"""One session on screen, from the check-in to the last question."""

from __future__ import annotations

from textual import work
from textual.app import ComposeResult

from drills.core.items import Kind
from drills.core.records import CloseReason, Topic
from drills.practice.session import Session
from drills.practice.steps import Ask, CheckIn, Finish, Rest
from drills.tui.cards import (
    GESTURE_PAIN,
    GO_ON,
    HELPED,
    NEW_SIGNS,
    NEW_SIGNS_SURE,
    NOTE,
    PAIN,
    SIGNS_NEW,
    SIGNS_SURE,
    TIRED,
    YES,
    Card,
    finish_card,
    pain_card,
    ready_card,
    rest_card,
)
from drills.tui.desk import Desk
from drills.tui.screens.act_out import ActOutScreen
from drills.tui.screens.asking import AskScreen
from drills.tui.screens.card import CardScreen, Escape
from drills.tui.screens.gesture import GestureScreen
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.screens.note import NoteScreen
from drills.tui.screens.signs import SignsScreen
from drills.tui.screens.trial import TrialScreen


class SittingScreen(KeyedScreen[None]):
    """The empty table under the cards: asks one after the other and hands the answers on."""

    CSS_PATH = "sitting.tcss"

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__()
        self._session = session
        self._desk = desk
        self._had_gestures = False

    def compose(self) -> ComposeResult:
        yield from ()

    def on_mount(self) -> None:
        self._sit()

    @work
    async def _sit(self) -> None:
        step = self._session.step
        if not isinstance(step, CheckIn) or await self._check_in(step):
            step = self._session.step
            while not isinstance(step, Finish):
                if isinstance(step, Rest):
                    await self._rest(step)
                elif isinstance(step, Ask):
                    await self.app.push_screen_wait(self._screen_for(step))
                step = self._session.step
            await self._finish(step)
        self.dismiss(None)

    def _screen_for(self, ask: Ask) -> AskScreen:
        if ask.item.kind is Kind.GESTURE:
            self._had_gestures = True
            return GestureScreen(self._session, self._desk)
        if ask.item.kind is Kind.ACT_OUT:
            return ActOutScreen(self._session, self._desk)
        return TrialScreen(self._session, self._desk)

    async def _answer(
        self, card: Card, escape: Escape = "pause", *, rest_seconds: int | None = None
    ) -> int | None:
        helper = self._session.told_to_helper
        told = None if helper is None else f"Helper: {helper}"
        return await self.app.push_screen_wait(
            CardScreen(
                card,
                self._desk,
                escape=escape,
                trouble=self._session.trouble or told,
                rest_seconds=rest_seconds,
            )
        )

    async def _check_in(self, step: CheckIn) -> bool:
        """Whether practice begins. Stopping here leaves no record, since nothing was done."""
        number = self._desk.home.plan.safety.emergency_number
        ready = await self._answer(ready_card(step))
        new_signs = None if ready is None else await self._new_signs()
        if new_signs:
            # On disk before the card, since the family may close the program to call.
            self._session.check_in(tiredness=None, pain=None, new_signs=True)
            await self.app.push_screen_wait(SignsScreen(number, self._desk.presses))
            return True
        pain = None if new_signs is None else await self._answer(PAIN)
        if pain == YES and await self._answer(pain_card(emergency_number=number)) != GO_ON:
            self._session.check_in(tiredness=None, pain=True, new_signs=False)
            self._session.stop()
            return True
        tiredness = None if pain is None else await self._answer(TIRED)
        if tiredness is None:
            return False
        self._session.check_in(tiredness=tiredness, pain=_said(pain), new_signs=False)
        return True

    async def _new_signs(self) -> bool | None:
        """Ask until it is sure; None when the person wants to stop."""
        while answer := await self._answer(NEW_SIGNS):
            if answer != SIGNS_NEW:
                return False
            sure = await self._answer(NEW_SIGNS_SURE)
            if sure is None:
                break
            if sure == SIGNS_SURE:
                return True
        return None

    async def _rest(self, step: Rest) -> None:
        helped = await self._answer(HELPED)
        go_on = (
            helped is not None
            and await self._answer(rest_card(step), rest_seconds=step.seconds) == GO_ON
        )
        tiredness = await self._answer(TIRED) if go_on else None
        self._session.rested(tiredness=tiredness, helped=_said(helped), go_on=tiredness is not None)

    async def _finish(self, step: Finish) -> None:
        number = self._desk.home.plan.safety.emergency_number
        await self._answer(finish_card(step, emergency_number=number), "leave")
        note = ""
        if step.reason is not CloseReason.UNWELL and step.done:
            tiredness = await self._answer(TIRED, "leave")
            helped = _said(await self._answer(HELPED, "leave"))
            pain = _said(await self._answer(GESTURE_PAIN, "leave")) if self._had_gestures else None
            # Kept before the note is written, in case the window closes meanwhile.
            self._session.observe(Topic.FINISH, tiredness=tiredness, helped=helped, pain=pain)
        if step.reason is not CloseReason.UNWELL and await self._answer(NOTE, "leave") == YES:
            note = await self.app.push_screen_wait(NoteScreen(self._desk.presses))
        self._session.finish(note=note)


def _said(choice: int | None) -> bool | None:
    return None if choice is None else choice == YES
