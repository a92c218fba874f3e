"""One sitting, from the check-in to the finish card.

Whoever sits before it, a screen or a simulated patient, reads `step`, responds, and gets the next
step. Every response is on disk before its feedback is returned.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from drills.core.gestures import Tick
from drills.core.plans import Plan
from drills.core.ports import Clock, Records
from drills.core.records import CloseReason, SessionClosed, SessionOpened, Topic
from drills.practice.asking import Asking
from drills.practice.cueing import last_before_answer
from drills.practice.dealing import Block
from drills.practice.easier import EasierItems
from drills.practice.feedback import after_choice, after_score, ending
from drills.practice.keeping import Keeping, Wait
from drills.practice.order import Dealt
from drills.practice.past import Past
from drills.practice.rules import Decision, Rule
from drills.practice.running import Course
from drills.practice.steps import Ask, CheckIn, Feedback, Finish, Step


class Session:
    """A session that runs.

    done: ordinals already given in the session that this one continues.
    past: practice before this sitting.   easier: makes easier items by the rules.
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
        past: Past | None = None,
        easier: EasierItems | None = None,
        words_per_minute: Callable[[], int | None] = lambda: None,
    ) -> None:
        self._opened = opened
        self._blocks = tuple(blocks)
        self._plan = plan
        self._keeping = Keeping(records, clock, session=opened.session)
        self._wait = Wait(clock)
        self._clock = clock
        self._words_per_minute = words_per_minute
        self._course = Course(self._blocks, plan, done=done, past=past, easier=easier)
        self._asking: Asking | None = None
        self._current: Dealt | None = None
        self._tired_at_start: int | None = None
        self._is_open = False
        self._ended: list[Asking] = []
        self._decision: Decision | None = None
        self._step: Step = CheckIn(
            minutes=opened.minutes or plan.dose.minutes_per_session,
            resumed=opened.continues is not None,
            is_check=opened.check is not None,
        )

    @property
    def id(self) -> str:
        return self._opened.session

    @property
    def trouble(self) -> str | None:
        """Why the last entry is not on disk; None when it is."""
        return self._keeping.trouble

    @property
    def step(self) -> Step:
        return self._step

    @property
    def upcoming(self) -> Ask | None:
        """The trial after this one, so that its pictures and sound can be made ready."""
        dealt = self._course.next
        if dealt is None or not isinstance(self._step, Ask):
            return None
        return self._course.ask(dealt, self._begun(dealt))

    @property
    def gap_seconds(self) -> float:
        """From an answer to the next trial."""
        return self._course.gap_seconds

    @property
    def waiting_ms(self) -> float | None:
        """How long an answer has been waited for; None where that is not measured."""
        return self._wait.ms

    @property
    def told_to_helper(self) -> str | None:
        """What a rule of the plan has just changed, in plain words; None for nothing."""
        return None if self._decision is None else self._decision.helper

    def check_in(
        self, *, tiredness: int | None, pain: bool | None, new_signs: bool | None, note: str = ""
    ) -> Step:
        """Begin. New signs of a stroke end the session at once; pain leaves the gestures out."""
        self._keeping.keep(self._opened)
        self._is_open = True
        self.observe(Topic.CHECK_IN, tiredness=tiredness, pain=pain, new_signs=new_signs, note=note)
        self._tired_at_start = tiredness
        if new_signs:
            return self._finish(CloseReason.UNWELL)
        if pain:
            self._course.leave_gestures_out()
        return self._next(rest_between=False)

    def rested(self, *, tiredness: int | None, helped: bool | None, go_on: bool = True) -> Step:
        """After a rest. A rise of tiredness beyond the plan's limit ends the session kindly."""
        self._decision = None
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
        self._wait.begin()

    def interrupt(self) -> None:
        """Something else came between: the wait for the next answer is not measured."""
        self._wait.interrupt()

    def heard_again(self) -> None:
        self._asking = self._running().heard_again()
        self._wait.hold()

    @property
    def may_help_unasked(self) -> bool:
        """Whether one step more of help can come by itself, without showing the answer."""
        asking = self._asking
        return (
            asking is not None
            and not asking.over
            and asking.cue_level < last_before_answer(asking.item)
        )

    def help(self) -> Step:
        """One step more of help."""
        self._asking = self._running().helped()
        self._wait.hold()
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
            self._course.leave_gestures_out()
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
        self._keeping.keep(SessionClosed(session=self.id, at=self._clock.now(), reason=reason))
        self._is_open = False

    def _running(self) -> Asking:
        if self._asking is None or self._asking.over:
            raise RuntimeError("no trial is being asked")
        return self._asking

    def _latency_ms(self) -> int | None:
        return None if self._wait.ms is None else round(self._wait.ms)

    def _settle(self, asking: Asking) -> None:
        self._asking = asking
        trial = asking.as_trial(self._clock.now())
        self._keeping.keep(trial)
        self._wait.anew()
        if not asking.over:
            self._show_current()
            return
        self._ended.append(asking)
        self._decision = self._course.took(trial)
        if self._decision is not None:
            self.observe(Topic.RULE, tiredness=None, note=f"Rule: {self._decision.why}")

    def _next(self, *, rest_between: bool) -> Step:
        dealt = self._course.next
        if dealt is None:
            by_rule = self._course.is_ending
            reason = CloseReason.TIRED if by_rule else CloseReason.FINISHED
            return self._finish(reason, by_rule=by_rule)
        is_new_block = self._current is not None and dealt.block != self._current.block
        is_due = self._decision is not None and self._decision.rule is Rule.REST
        # Who is to stop after one more rests then, and not before it.
        if rest_between and (is_new_block or is_due) and not self._course.is_ending:
            self._asking = None
            self._step = self._course.rest_before(dealt, within=not is_new_block)
            return self._step
        self._asking = self._begun(dealt)
        self._current = self._course.take()
        self._wait.anew()
        return self._show_current()

    def _begun(self, dealt: Dealt) -> Asking:
        """The trial of the next place, with the help that it begins with."""
        return Asking(
            session=self.id,
            trial=f"{self.id}-{dealt.ordinal:03d}",
            block=dealt.block,
            item=self._course.item(dealt),
            started_at=self._clock.now(),
            words_per_minute=self._words_per_minute(),
        ).begun_with(self._course.help_at_start(dealt))

    def _show_current(self) -> Step:
        if self._current is None or self._asking is None:
            raise RuntimeError("no trial is being asked")
        self._step = self._course.ask(self._current, self._asking)
        return self._step

    def _finish(self, reason: CloseReason, *, by_rule: bool = False) -> Step:
        if isinstance(self._step, Finish):
            return self._step
        self._course.clear()
        trials = [asking.as_trial(asking.started_at) for asking in self._ended]
        is_check = self._opened.check is not None
        self._step = ending(trials, reason, by_rule=by_rule, is_check=is_check)
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
        self._keeping.observe(
            topic, tiredness=tiredness, pain=pain, new_signs=new_signs, helped=helped, note=note
        )
