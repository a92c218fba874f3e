"""The program on screen: which screens there are, and what works everywhere."""

from __future__ import annotations

import gc
from collections.abc import Callable, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING, ClassVar, Literal

from textual.binding import Binding, BindingType
from textual.filter import LineFilter, Monochrome
from textual.screen import Screen

from drills.core.cells import Encoding
from drills.practice.home import Home
from drills.tui.consulting import ConsultingApp
from drills.tui.desk import Desk
from drills.tui.endings import heed_endings
from drills.tui.presses import Presses
from drills.tui.screens.home import HomeScreen
from drills.tui.screens.signs import SignsScreen
from drills.tui.speaker import Speaker
from drills.tui.theme import CALM

if TYPE_CHECKING:
    from drills.practice.session import Session
    from drills.schedule.checks import CheckList

Start = Literal["home", "practice", "check"]
VOICE_SECONDS = 0.05
WEEK = timedelta(days=6)


class PracticeApp(ConsultingApp):
    """Opens screens and closes records; decides nothing."""

    ENABLE_COMMAND_PALETTE = False
    # The first screen's sheet comes with the program's own, which saves parsing all sheets twice.
    CSS_PATH = "screens/home.tcss"
    BINDINGS: ClassVar[list[BindingType]] = [
        Binding("ctrl+c,ctrl+q", "leave", priority=True, show=False)
    ]

    def __init__(
        self,
        home: Home,
        *,
        start: Start = "home",
        minutes: int | None = None,
        check: CheckList | None = None,
        encoding: Encoding,
    ) -> None:
        super().__init__()
        self.register_theme(CALM)
        self.theme = CALM.name
        sitting = home.plan.sitting
        if not sitting.animation:
            self.animation_level = "none"
        self._home = home
        self._start = start
        self._minutes = minutes
        self._check_list = check
        self.session: Session | None = None
        self._desk = Desk(
            home=home,
            speaker=Speaker(home.voice, home.plan.speech),
            presses=Presses(home.clock, second_press_ms=sitting.second_press_ms),
            encoding=encoding,
            animated=self.animation_level != "none",
        )

    def get_line_filters(self) -> Sequence[LineFilter]:
        filters = super().get_line_filters()
        return filters if self._home.plan.sitting.colour else (*filters, Monochrome())

    def on_mount(self) -> None:
        heed_endings(self.action_leave)
        self.set_interval(VOICE_SECONDS, self._desk.speaker.tick)
        first = HomeScreen(self._desk)
        self.push_screen(first)
        if self._start == "practice" and not first.has_new_signs:
            self._practise()
        elif self._start == "check" and not first.has_new_signs:
            self._check()
        self._refit()
        # Off since the start of the program, see `__main__`.
        self.call_after_refresh(gc.enable)

    # What screens ask for

    def on_keyed_screen_guide_wanted(self) -> None:
        from drills.tui.pages import GuideScreen, made_or_told  # noqa: PLC0415 - see pages

        def make() -> Screen[None]:
            return GuideScreen(self._home.guide, self._desk.presses)

        self._desk.presses.heed("g")
        self._open(
            GuideScreen, lambda: made_or_told(make, "The guide cannot be shown.", self._desk)
        )

    def on_keyed_screen_signs_wanted(self) -> None:
        number = self._home.plan.safety.emergency_number
        self._desk.presses.heed("e")
        self._open(SignsScreen, lambda: SignsScreen(number, self._desk.presses))

    def on_home_screen_practice_wanted(self, event: HomeScreen.PracticeWanted) -> None:
        self._practise(resume=event.resume)

    def on_home_screen_check_wanted(self) -> None:
        self._check()

    def on_home_screen_people_wanted(self) -> None:
        from drills.tui.pages import PeopleScreen, made_or_told  # noqa: PLC0415 - see pages

        desk = self._desk
        self.push_screen(made_or_told(lambda: PeopleScreen(desk), "Nobody can be shown.", desk))

    def on_home_screen_week_wanted(self) -> None:
        from drills.tui.pages import WeekScreen, render  # noqa: PLC0415 - see pages

        last = self._home.day()
        self.push_screen(WeekScreen(lambda: render(self._home.digest(last - WEEK, last), "text")))

    def on_home_screen_leave_wanted(self) -> None:
        self.action_leave()

    def action_leave(self) -> None:
        """Close the records first, whatever becomes of the window."""
        self.abandon()
        self._desk.speaker.stop()
        self.exit(0)

    def abandon(self) -> None:
        if self.session is not None:
            self.session.abandon()

    def _practise(self, *, resume: bool | None = None) -> None:
        """Begin a session.   resume: None for going on with one that was begun today."""

        def begin() -> Session:
            goes_on = bool(self._home.today().resumable) if resume is None else resume
            return self._home.start(resume=goes_on, minutes=self._minutes)

        self._sit(begin, "Practice cannot start.")

    def _check(self) -> None:
        """Begin a check, or go on with the one of today."""

        def begin() -> Session:
            # A list that was asked for by its letter is begun once.
            session = self._home.checking.start(chosen=self._check_list)
            self._check_list = None
            return session

        self._sit(begin, "The check cannot start.")

    def _sit(self, begin: Callable[[], Session], trouble: str) -> None:
        from drills.tui.pages import SittingScreen, made_or_told  # noqa: PLC0415 - see pages

        def sit() -> SittingScreen:
            self.session = begin()
            return SittingScreen(self.session, self._desk)

        self.push_screen(made_or_told(sit, trouble, self._desk))
