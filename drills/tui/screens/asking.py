"""What every exercise on screen shares: say it, wait, help, pause, and go on in good time."""

from __future__ import annotations

from functools import partial

from textual import work
from textual.app import ComposeResult
from textual.containers import Horizontal

from drills.core.items import Cue, Kind
from drills.practice.session import Session
from drills.practice.steps import Ask, Feedback
from drills.tui.cards import HEARD_TWICE, LEAVE_OUT, NO_HELP, PAUSED, PAUSED_IN_TRIAL, STOP
from drills.tui.cue_words import HELP_OFFERED, cue_lines, cue_said, is_help_due, opening
from drills.tui.desk import Desk
from drills.tui.layout import short_lines
from drills.tui.screens.card import pause
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.speaker import Line
from drills.tui.widgets.key_bar import GO_ON, HEAR_AGAIN, HELP, PAUSE, Hint, KeyBar
from drills.tui.widgets.words import Trouble, Words

TICK_SECONDS = 0.05
# After a response the screen is painted in this order: words, marks and keys, what comes next.
WORDS_FIRST_SECONDS = 0.03
FEEDBACK_FIRST_SECONDS = 0.1


class AskScreen(KeyedScreen[None]):
    """One trial of `session`, from its prompt to the wish to go on.

    Returns when the session has moved on; its next step is then to be read from `Session.step`.
    """

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__()
        if not isinstance(session.step, Ask):
            raise TypeError("the session is not asking anything")
        self.ask = session.step
        self._session = session
        self._desk = desk
        self._is_painted = False
        self._is_asked = False
        self._is_first_time = True
        self._is_help_offered = False
        self._has_heard_again = False
        self._verdict: tuple[str, ...] = ()
        self._over_since_ms: float | None = None
        self._wants_next = False

    @property
    def is_over(self) -> bool:
        return self._over_since_ms is not None

    @property
    def is_asked(self) -> bool:
        """Whether all that is to be answered stands on the screen; no key answers before."""
        return self._is_asked

    # What it shows

    def compose(self) -> ComposeResult:
        ask = self.ask
        with Horizontal(classes="-head"):
            yield Words(self.heading(), classes="-prompt")
            yield Words(
                (f"Part {ask.block + 1} of {ask.blocks}   {ask.number} of {ask.total}",),
                classes="-place",
            )
        yield from self.compose_body()
        yield Trouble(self._session.trouble)
        yield KeyBar(self._hints())

    def heading(self) -> tuple[str, ...]:
        """What to do, above the task; none where the task says it."""
        return (
            () if self.ask.item.kind in (Kind.QUESTION, Kind.GESTURE) else (self.ask.item.prompt,)
        )

    def compose_body(self) -> ComposeResult:
        """The task, and below it the place for messages (`-message`)."""
        yield from self.compose_task()
        yield Words(fixed=True, classes="-message")

    def told(self) -> tuple[str, ...]:
        """What the helper should know now, in lines."""
        if self.ask.item.is_probe and self.ask.number == 1 and not self.is_over:
            return NO_HELP
        helper = self._session.told_to_helper
        return () if helper is None else (f"Helper: {helper}",)

    def compose_task(self) -> ComposeResult:
        """The sentence and what is done with it."""
        yield from ()

    def show_cue(self, cue: Cue | None) -> None:
        """Bring the help that is showing up to date, words aside."""

    def show_over(self, feedback: Feedback) -> None:
        """The trial has ended."""

    async def paint(self) -> None:
        """Draw the pictures for the room there is; return when they are on the widgets."""

    async def draw_ahead(self, upcoming: Ask) -> None:
        """Draw the pictures of the next trial, so that they are there at once."""

    def extra_hints(self) -> tuple[Hint, ...]:
        return ()

    def _hints(self) -> tuple[Hint, ...]:
        if self._wants_next or not self.is_asked:
            return (PAUSE,)
        if self.is_over:
            return (GO_ON, PAUSE)
        if self.ask.item.is_probe:
            return (PAUSE,) if self._has_heard_again else (HEAR_AGAIN, PAUSE)
        return (HEAR_AGAIN, HELP, PAUSE, *self.extra_hints())

    # Coming, going, and size

    def on_mount(self) -> None:
        self.set_interval(TICK_SECONDS, self.tick)

    def on_screen_resume(self) -> None:
        self.call_after_refresh(self._repaint)

    def on_screen_suspend(self) -> None:
        self._desk.speaker.stop()
        # Only what comes over the trial: once it has gone, the session may be asking the next.
        if not self.is_over and self in self.app.screen_stack:
            self._session.interrupt()

    def on_resize(self) -> None:
        if self._is_painted:
            self.call_after_refresh(self._paint_again)

    @work(exclusive=True, group="paint")
    async def _repaint(self) -> None:
        await self.paint()
        self._is_painted = True
        self.call_after_refresh(self._begin)

    @work(exclusive=True, group="paint again")
    async def _paint_again(self) -> None:
        await self.paint()

    def _begin(self) -> None:
        """Say the prompt, also after a pause or another page: it may have been cut short."""
        if self.is_active and not self.is_over:
            self._is_asked = True
            self._show_hints()
            if self._is_first_time:
                self._is_first_time = False
                self.tell((*cue_lines(self.ask.cue), *self.told()))
                self._say(opening(self.ask))
            else:
                self._say((Line(utterance=self.ask.item.spoken),))
            self._make_ready()

    @work(exclusive=True, group="ahead")
    async def _make_ready(self) -> None:
        upcoming = self._session.upcoming
        if upcoming is not None:
            for line in opening(upcoming):
                self._desk.speaker.prepare(line)
            await self.draw_ahead(upcoming)

    # Keys

    def pressed(self, key: str) -> None:
        is_meant = self._desk.presses.is_meant(key)
        if not is_meant:
            return
        if key in ("escape", "p"):
            self._pause()
        elif self.is_over:
            if key == "space":
                self._want_next()
        elif not self.is_asked:
            # Pressed at the screen before, or at a picture that is not there yet.
            return
        elif key == "space":
            self._hear_again()
        elif key == "h" and self.ask.item.is_probe:
            self.tell(NO_HELP)
        elif key == "h":
            self._help()
        else:
            self.answer(key)

    def answer(self, key: str) -> None:
        """Any other key, while the trial runs."""

    def _say(self, lines: tuple[Line, ...]) -> None:
        # The wait for an answer is counted from the end of what was last said.
        self._desk.speaker.say(lines, then=self._session.shown)

    def _hear_again(self) -> None:
        """In a check once only, so that all answers rest on the same."""
        if self.ask.item.is_probe:
            if self._has_heard_again:
                self.tell(HEARD_TWICE)
                return
            self._has_heard_again = True
            self._show_hints()
        self._session.heard_again()
        self._say((Line(utterance=self.ask.item.spoken),))

    def _help(self) -> None:
        self._session.help()
        self._read_step()
        self.tell(cue_lines(self.ask.cue))
        self._say(cue_said(self.ask))

    def responded(self, feedback: Feedback) -> None:
        """Show and say what came of a response."""
        said = () if feedback.spoken is None else (Line(utterance=feedback.spoken),)
        if feedback.over:
            self._over_since_ms = self._desk.home.clock.monotonic_ms()
            text = feedback.text if feedback.spoken is None else feedback.spoken.text
            self._verdict = short_lines(text)
            self.tell((*self._verdict, "Space: go on.", *self.told()))
            # The words come first: a picture that is drawn again takes several times as long.
            self.set_timer(WORDS_FIRST_SECONDS, partial(self.show_over, feedback))
            self._desk.speaker.say(said)
            # What came of this trial may have changed the next one.
            self.set_timer(FEEDBACK_FIRST_SECONDS, self._make_ready)
        else:
            self._read_step()
            self.tell((feedback.text, *cue_lines(self.ask.cue)))
            self._say((*said, *cue_said(self.ask)))
        self.query_one(Trouble).tell(self._session.trouble)
        self.set_timer(WORDS_FIRST_SECONDS, self._show_hints)

    def _show_hints(self) -> None:
        self.call_later(self.query_one(KeyBar).show, self._hints())

    def tell(self, lines: tuple[str, ...]) -> None:
        """Put `lines` in the place for messages; the last ones share a line where it is low."""
        message = self.query_one(".-message", Words)
        room = max(1, message.size.height)
        message.say((*lines[: room - 1], "   ".join(lines[room - 1 :])) if lines else ())

    def _read_step(self) -> None:
        if isinstance(self._session.step, Ask):
            self.ask = self._session.step
        self.show_cue(self.ask.cue)

    # Going on

    def _want_next(self) -> None:
        """Remember the wish at once, and say so while the gap lasts."""
        self._wants_next = True
        self._go_on_in_time()
        if self._wants_next:
            soon = "One moment." if self._session.upcoming is None else "Next one soon."
            self.tell((*self._verdict, soon))
            self._show_hints()

    def tick(self) -> None:
        """Many times a second."""
        self._go_on_in_time()
        self._help_in_time()

    def _help_in_time(self) -> None:
        """After the plan's wait: offer help, or give one step of it where the plan says so."""
        cues = self._desk.home.plan.cues
        is_due = is_help_due(self.ask, self._session.waiting_ms, cues.wait_seconds)
        if not is_due or self.is_over or not self.is_active:
            return
        if cues.wait_gives_help:
            if self._session.may_help_unasked:
                self._help()
        elif self.ask.cue is None and not self._is_help_offered:
            self._is_help_offered = True
            self.tell(HELP_OFFERED)

    def _go_on_in_time(self) -> None:
        """To the next step once it is wished for and the gap after the response has passed."""
        if not self._wants_next or self._over_since_ms is None or not self.is_active:
            return
        gap_ms = self._session.gap_seconds * 1000
        if self._desk.home.clock.monotonic_ms() - self._over_since_ms >= gap_ms:
            self._wants_next = False
            self._session.advance()
            self.dismiss(None)

    def _pause(self) -> None:
        card = PAUSED if self.is_over else PAUSED_IN_TRIAL
        pause(self.app, self._desk, card, self._paused)

    def _paused(self, choice: int | None) -> None:
        if choice == STOP:
            self._session.stop()
            self.dismiss(None)
        elif choice == LEAVE_OUT:
            self._session.skip()
            self.dismiss(None)
