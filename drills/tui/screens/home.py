"""The first screen: today's practice, the people in the pictures, this week, leave."""

from __future__ import annotations

from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Vertical
from textual.message import Message

from drills.core.ports import Records, Voice
from drills.core.problems import DrillsError
from drills.practice.home import Today
from drills.tui.cards import told
from drills.tui.desk import Desk
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.choices import Choices
from drills.tui.widgets.key_bar import Hint, KeyBar
from drills.tui.widgets.words import Words

MOST_NOTICES = 3
VOICE_SECONDS = 1.0
THERAPIST = Hint(key="t", shown="T", label="therapist")
# "off" is the plan's or the family's own wish.
HEARD = ("ready", "starting", "off")


class HomeScreen(KeyedScreen[None]):
    """Asks the app by messages; it opens nothing itself."""

    CSS_PATH = "home.tcss"

    @dataclass
    class PracticeWanted(Message):
        resume: bool

    class CheckWanted(Message):
        pass

    class PeopleWanted(Message):
        pass

    class WeekWanted(Message):
        pass

    class TherapistWanted(Message):
        pass

    class LeaveWanted(Message):
        pass

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._today = self._ask_today()
        self._is_just_told = True

    @property
    def _reason(self) -> str:
        return self._desk.home.records.reason

    def compose(self) -> ComposeResult:
        with Vertical(classes="-middle"), Vertical(classes="-page"):
            yield Words(self._about, apart=True, classes="-today")
            yield Choices(self._ways)
            yield Words(self._for_the_helper, classes="-helper")
        yield KeyBar((THERAPIST,))

    def _ask_today(self) -> Today | DrillsError:
        """What is to be said of today, or why nothing can be."""
        try:
            return self._desk.home.today()
        except DrillsError as error:
            return error

    @property
    def has_new_signs(self) -> bool:
        return isinstance(self._today, Today) and self._today.new_signs

    @property
    def _about(self) -> tuple[str, ...]:
        if isinstance(self._today, DrillsError):
            return ("Practice cannot start.", *told(self._today))
        number = self._desk.home.plan.safety.emergency_number
        return about_today(self._today, emergency_number=number)

    @property
    def _ways(self) -> tuple[tuple[str, str], ...]:
        if isinstance(self._today, DrillsError):
            return LEAVING
        return ways_on(self._today, can_practise=not self._reason)

    @property
    def _for_the_helper(self) -> tuple[str, ...]:
        home = self._desk.home
        contact = home.plan.safety.therapist_contact
        asks = (f"Helper: questions? Therapist: {contact}",) if contact else ()
        minutes = None if isinstance(self._today, DrillsError) else self._today.check_minutes
        check = () if minutes is None else (f"Helper: a check is due. About {minutes} minutes.",)
        return (*check, *for_the_helper(home.records, home.voice), *asks)

    def on_mount(self) -> None:
        # The voice starts in the background, and may find that it cannot.
        self.set_interval(VOICE_SECONDS, self._tell)

    def _tell(self) -> None:
        # There is none for a moment while the day is told anew.
        for words in self.query(".-helper").results(Words):
            if words.lines != self._for_the_helper:
                words.say(self._for_the_helper)

    async def on_screen_resume(self) -> None:
        # Shown for the first time it has only just asked, and asking reads the records.
        if self._is_just_told:
            self._is_just_told = False
            return
        today = self._ask_today()
        # By their words: two errors are never equal.
        if str(today) != str(self._today):
            self._today = today
            await self.recompose()

    def pressed(self, key: str) -> None:
        if not self._desk.presses.is_meant(key):
            return
        if key == THERAPIST.key:
            self.post_message(self.TherapistWanted())
        if key not in dict(self._ways):
            return
        if key == "1":
            resume = isinstance(self._today, Today) and bool(self._today.resumable)
            self.post_message(self.PracticeWanted(resume=resume))
        elif key == "2":
            self.post_message(self.PeopleWanted())
        elif key == "3":
            self.post_message(self.WeekWanted())
        elif key == "4":
            self.post_message(self.LeaveWanted())
        elif key == "c":
            self.post_message(self.CheckWanted())
        elif key == "n":
            self.post_message(self.PracticeWanted(resume=False))


CHECKING = ("c", "A check, with your helper")
LEAVING = (("3", "This week, for helper and therapist"), ("4", "Leave"))


def about_today(today: Today, *, emergency_number: str) -> tuple[str, ...]:
    """One or two lines on today's practice."""
    if today.new_signs:
        return ("New signs were told today.", f"Call {emergency_number} now.")
    if today.resumable:
        return ("Today's practice has begun.", f"{today.resumable} are still to do.")
    if today.sessions_done:
        return ("Today's practice is done.", "You can practise again.")
    return ("Today's practice", f"About {today.minutes} minutes.")


def ways_on(today: Today, *, can_practise: bool = True) -> tuple[tuple[str, str], ...]:
    """The choices of the first screen.

    None starts practice where nothing can be kept, or on a day of new signs of a stroke.
    """
    if today.new_signs:
        return LEAVING
    start = "Go on with today's practice" if today.resumable else "Start"
    ways = (
        *((("1", start),) if can_practise else ()),
        ("2", "Meet the people"),
        *LEAVING,
    )
    if can_practise and today.resumable:
        ways = (*ways, ("n", "Start a new practice"))
    return (*ways, CHECKING) if can_practise and today.check_minutes is not None else ways


def for_the_helper(records: Records, voice: Voice) -> tuple[str, ...]:
    """What the caregiver should know before practice: why it cannot be, what is not heard."""
    reason = records.reason
    first = (f"Helper: no practice now, because {reason}.",) if reason else ()
    notices = [notice for notice in records.notices if not (reason and reason in notice)]
    if voice.state not in HEARD:
        first = (*first, f"Helper: nothing is said aloud: {voice.state}. Read it out instead.")
    return (*first, *(f"Helper: {notice}" for notice in notices[:MOST_NOTICES]))
