"""One sitting, from the check-in to the finish card.

Whoever sits before it, a screen or a simulated patient, reads `step`, responds, and gets the next
step. Every response is on disk before its feedback is returned.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from drills.core.gestures import Tick
from drills.core.items import Kind
from drills.core.plans import Plan
from drills.core.ports import Clock, Records
from drills.core.problems import Failure
from drills.core.records import (
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
)
from drills.practice.asking import Asking
from drills.practice.dealing import Block
from drills.practice.feedback import after_choice, after_score, ending
from drills.practice.order import Dealt, places
from drills.practice.steps import Ask, CheckIn, Feedback, Finish, Rest, Step


class Session:
    """A session that runs.

    done: ordinals already given in the session that this one continues.
    opened: written at the check-in, so that a session only looked at leaves no record.
    words_per_minute: tells the voice's speed when a trial begins, None while it is silent.
    """

    def __init__(
        self,
        *,
        opened: SessionOpened,
        blocks: Sequence[Block],
        plan: Plan,
        records: Records,
        clock: Clock,
        done: frozenset[int] = frozenset(),
        words_per_minute: Callable[[], int | None] = lambda: None,
    ) -> None:
        self._opened = opened
        self._blocks = tuple(blocks)
        self._plan = plan
        self._records = records
        self._clock = clock
        self._words_per_minute = words_per_minute
        self._queue = [dealt for dealt in places(self._blocks) if dealt.ordinal not in done]
        self._asking: Asking | None = None
        self._current: Dealt | None = None
        self._tired_at_start: int | None = None
        self._is_open = False
        self._shown_ms: float | None = None
        self._is_interrupted = False
        self._ended: list[Asking] = []
        self.trouble: str | None = None
        self._step: Step = CheckIn(
            minutes=opened.minutes or plan.dose.minutes_per_session,
            resumed=opened.continues is not None,
        )

    @property
    def id(self) -> str:
        return self._opened.session

    @property
    def step(self) -> Step:
        return self._step

    @property
    def upcoming(self) -> Ask | None:
        """The trial after this one, so that its pictures and sound can be made ready."""
        if not self._queue or not isinstance(self._step, Ask):
            return None
        return self._ask_of(self._queue[0], None)

    def check_in(
        self, *, tiredness: int | None, pain: bool | None, new_signs: bool | None, note: str = ""
    ) -> Step:
        """Begin. New signs of a stroke end the session at once; pain leaves the gestures out."""
        self._keep(self._opened)
        self._is_open = True
        self.observe(Topic.CHECK_IN, tiredness=tiredness, pain=pain, new_signs=new_signs, note=note)
        self._tired_at_start = tiredness
        if new_signs:
            return self._finish(CloseReason.UNWELL)
        if pain:
            self._leave_gestures_out()
        return self._next(rest_between=False)

    def rested(self, *, tiredness: int | None, helped: bool | None, go_on: bool = True) -> Step:
        """After a rest. A rise of tiredness beyond the plan's limit ends the session kindly."""
        self.observe(Topic.REST, tiredness=tiredness, helped=helped)
        if not go_on:
            return self._finish(CloseReason.STOPPED)
        if (
            tiredness is not None
            and self._tired_at_start is not None
            and tiredness - self._tired_at_start >= self._plan.sitting.tired_rise
        ):
            return self._finish(CloseReason.TIRED)
        return self._next(rest_between=False)

    def finish(
        self,
        *,
        tiredness: int | None = None,
        helped: bool | None = None,
        pain: bool | None = None,
        note: str = "",
    ) -> None:
        """Close for good, with what is said at the end and was not observed before."""
        if not self._is_open:
            return
        if note or (tiredness, helped, pain) != (None, None, None):
            self.observe(Topic.FINISH, tiredness=tiredness, pain=pain, helped=helped, note=note)
        self._close()

    def stop(self, reason: CloseReason = CloseReason.STOPPED) -> Step:
        """End early; all that was answered is kept."""
        return self._finish(reason)

    def abandon(self) -> None:
        """The window closes: close the records without another question."""
        if self._is_open:
            self._close()

    def shown(self) -> None:
        """What is to be answered is on screen and has been said: the wait begins."""
        if not self._is_interrupted:
            self._shown_ms = self._clock.monotonic_ms()

    def interrupt(self) -> None:
        """Something else came between: the wait for the next answer is not measured."""
        self._shown_ms = None
        self._is_interrupted = True

    def heard_again(self) -> None:
        self._asking = self._running().heard_again()
        self._shown_ms = None

    def help(self) -> Step:
        """One step more of help."""
        self._asking = self._running().helped()
        self._shown_ms = None
        return self._show_current()

    def choose(self, choice: int) -> Feedback:
        """Mark and record option `choice`.

        Raises: ValueError when the option is not there to choose.
        """
        before = self._running()
        asking = before.chosen(choice, at=self._clock.now(), latency_ms=self._latency_ms())
        self._settle(asking)
        return after_choice(before, asking)

    def score(self, score: int, ticks: Sequence[Tick] = ()) -> Feedback:
        """Record the caregiver's score of a gesture, 0 to 3, with what was ticked."""
        asking = self._running().scored(score, tuple(ticks), at=self._clock.now())
        self._settle(asking)
        if Tick.BODY in ticks:
            self._leave_gestures_out()
        return after_score(asking)

    def skip(self) -> Step:
        """Leave this trial out and go on."""
        self._settle(self._running().passed_over())
        return self._next(rest_between=True)

    def advance(self) -> Step:
        """The next step, once a trial is over."""
        is_running = self._asking is not None and not self._asking.over
        return self._step if is_running else self._next(rest_between=True)

    def _close(self) -> None:
        reason = self._step.reason if isinstance(self._step, Finish) else CloseReason.STOPPED
        self._keep(SessionClosed(session=self.id, at=self._clock.now(), reason=reason))
        self._is_open = False

    def _running(self) -> Asking:
        if self._asking is None or self._asking.over:
            raise RuntimeError("no trial is being asked")
        return self._asking

    def _leave_gestures_out(self) -> None:
        self._queue = [dealt for dealt in self._queue if dealt.kind is not Kind.GESTURE]

    def _wait_anew(self) -> None:
        """The next answer has a wait of its own."""
        self._shown_ms = None
        self._is_interrupted = False

    def _latency_ms(self) -> int | None:
        shown_ms = self._shown_ms
        return None if shown_ms is None else round(self._clock.monotonic_ms() - shown_ms)

    def _settle(self, asking: Asking) -> None:
        self._asking = asking
        self._keep(asking.as_trial(self._clock.now()))
        self._wait_anew()
        if asking.over:
            self._ended.append(asking)
        else:
            self._show_current()

    def _next(self, *, rest_between: bool) -> Step:
        if not self._queue:
            return self._finish(CloseReason.FINISHED)
        dealt = self._queue[0]
        new_block = self._current is not None and dealt.block != self._current.block
        if rest_between and new_block:
            self._asking = None
            self._step = Rest(
                done_blocks=dealt.block,
                blocks=len(self._blocks),
                next_kind=self._blocks[dealt.block].kind,
                seconds=self._plan.sitting.rest_seconds,
            )
            return self._step
        self._queue.pop(0)
        self._current = dealt
        self._wait_anew()
        self._asking = Asking(
            session=self.id,
            trial=f"{self.id}-{dealt.ordinal:03d}",
            block=dealt.block,
            item=self._blocks[dealt.block].items[dealt.number - 1],
            started_at=self._clock.now(),
            words_per_minute=self._words_per_minute(),
        )
        return self._show_current()

    def _show_current(self) -> Step:
        if self._current is None:
            raise RuntimeError("no trial is being asked")
        self._step = self._ask_of(self._current, self._asking)
        return self._step

    def _ask_of(self, dealt: Dealt, asking: Asking | None) -> Ask:
        return Ask(
            item=self._blocks[dealt.block].items[dealt.number - 1],
            block=dealt.block,
            blocks=len(self._blocks),
            number=dealt.number,
            total=dealt.total,
            cue=None if asking is None else asking.cue,
            removed=frozenset() if asking is None else asking.removed,
        )

    def _finish(self, reason: CloseReason) -> Step:
        if isinstance(self._step, Finish):
            return self._step
        self._queue = []
        self._step = ending([asking.as_trial(asking.started_at) for asking in self._ended], reason)
        return self._step

    def observe(
        self,
        topic: Topic,
        *,
        tiredness: int | None,
        pain: bool | None = None,
        new_signs: bool | None = None,
        helped: bool | None = None,
        note: str = "",
    ) -> None:
        """Keep what the patient or the caregiver says, at once."""
        self._keep(
            Observation(
                session=self.id,
                at=self._clock.now(),
                topic=topic,
                tiredness=tiredness,
                pain=pain,
                new_signs=new_signs,
                helped=helped,
                note=note,
            )
        )

    def _keep(self, entry: Entry) -> None:
        """Write an entry; trouble is told and practice goes on, since the store holds the entry."""
        try:
            if isinstance(entry, SessionOpened):
                self._records.open_session(entry)
            else:
                self._records.append(entry)
            self.trouble = None
        except Failure as failure:
            self.trouble = str(failure)
