"""Weeks of practice by a simulated patient, through the same code as a person's."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, date, datetime, time, timedelta
from random import Random

from drills.core.items import Kind
from drills.core.material import Chapter, Material
from drills.core.plans import Plan
from drills.core.ports import Records, TherapistLog, Voice
from drills.core.profiles import Profile
from drills.practice.home import Home
from drills.practice.session import Session
from drills.practice.steps import Ask, CheckIn, Feedback, Finish, Rest
from drills.rehearsal.patient import Patient

MOST_TIRED = 5
_PROMPT_SECONDS = 3
_FEEDBACK_SECONDS = 4
_SET_BACK = timedelta(hours=1)
_TRIALS_BEFORE_SET_BACK = 3


class _Clock:
    """A clock that moves only when told."""

    def __init__(self, at: datetime) -> None:
        self._start = at
        self._now = at
        self._set_back = timedelta()

    def now(self) -> datetime:
        return self._now

    def monotonic_ms(self) -> float:
        return (self._now + self._set_back - self._start).total_seconds() * 1000

    def move_to(self, at: datetime) -> None:
        self._now = at

    def wait(self, *, seconds: float) -> None:
        self._now += timedelta(seconds=seconds)

    def set_back(self) -> None:
        """What is measured goes on; the time of day is an hour earlier."""
        self._now -= _SET_BACK
        self._set_back += _SET_BACK


class Rehearsal:
    """A simulated patient at home.   first: first day.   seed: the same weeks every time.

    records: practice that is in them goes on.   therapist_log: what the therapist keeps, if any.
    """

    def __init__(
        self,
        *,
        plan: Plan,
        material: Material,
        records: Records,
        voice: Voice,
        guide: Sequence[Chapter],
        program: str,
        profile: Profile,
        first: date,
        seed: int,
        therapist_log: TherapistLog | None = None,
    ) -> None:
        self._rng = Random(seed)
        self._first = first
        self._plan = plan
        self._profile = profile
        self._clock = _Clock(_morning(first))
        self._patient = Patient(profile, material.lexicon, self._rng, first=first)
        # Chance of its own, so that practice is the same with checks and without.
        self._checked = self._patient.apart(Random(f"{seed} checked"))
        self._home = Home(
            plan=plan,
            material=lambda: material,
            records=records,
            clock=self._clock,
            voice=voice,
            guide=lambda: guide,
            program=program,
            new_seed=lambda: self._rng.getrandbits(31),
            simulated=True,
            therapist_log=therapist_log,
        )

    def run(self, weeks: int) -> Home:
        """Practise for `weeks` and give the home; its clock stands at the end of the last day.

        Where the plan wants checks, those of the baseline come in the days before the first, and
        the others before practice on the day on which they are due. Records of earlier practice
        hold the baseline already.
        """
        probes = self._plan.probes
        if probes.on and not self._home.history():
            for before in range(probes.baseline, 0, -1):
                self._clock.move_to(_morning(self._first - timedelta(days=before)))
                self._check()
        for week in range(weeks):
            for weekday in range(self._plan.dose.sessions_per_week):
                day = self._first + timedelta(weeks=week, days=weekday % 7)
                if self._rng.random() < self._profile.missed:
                    continue
                # A second session of the same day comes in the afternoon.
                self._clock.move_to(_morning(day) + timedelta(hours=5 * (weekday // 7)))
                if probes.on and not weekday // 7 and self._is_check_due():
                    self._check()
                    self._clock.wait(seconds=3600)
                self._sit(self._home.start(resume=False))
        self._clock.move_to(_morning(self._first + timedelta(weeks=weeks, days=-1)))
        self._clock.wait(seconds=12 * 3600)
        return self._home

    def _is_check_due(self) -> bool:
        return self._home.checking.minutes_today() is not None

    def _check(self) -> None:
        """A whole sitting without help; nothing is learnt from it."""
        session = self._home.checking.start()
        self._checked.sits(on=self._clock.now().date(), tiredness=1)
        session.check_in(tiredness=1, pain=False, new_signs=False)
        while not isinstance(session.step, Finish):
            if isinstance(session.step, Ask):
                self._clock.wait(seconds=_PROMPT_SECONDS)
                session.shown()
                self._clock.wait(seconds=self._checked.latency_ms() / 1000)
                session.choose(
                    self._checked.choose(session.step.item, cue_level=0, removed=frozenset())
                )
                self._clock.wait(seconds=_FEEDBACK_SECONDS)
                session.advance()
            else:
                self._clock.wait(seconds=self._plan.sitting.rest_seconds)
                session.rested(tiredness=1, helped=False)
        session.finish(tiredness=1, helped=False)

    def _sit(self, session: Session) -> None:
        tiredness = self._rng.choice((1, 1, 2))
        tired = float(tiredness)
        today = self._clock.now().date()
        self._patient.sits(on=today, tiredness=tired)
        pain, new_signs = self._happens(self._profile.pain), self._happens(self._profile.new_signs)
        until_set_back = _TRIALS_BEFORE_SET_BACK if self._happens(self._profile.clock_back) else -1
        while True:
            step = session.step
            match step:
                case CheckIn():
                    session.check_in(tiredness=tiredness, pain=pain, new_signs=new_signs)
                case Ask():
                    if until_set_back == 0:
                        self._clock.set_back()
                    until_set_back -= 1
                    if self._answer(session, step).over:
                        session.advance()
                case Rest():
                    self._clock.wait(seconds=step.seconds)
                    tired += self._profile.tiring * self._rng.uniform(0, 2)
                    self._patient.sits(on=today, tiredness=min(MOST_TIRED, tired))
                    tiredness = min(MOST_TIRED, round(tired))
                    session.rested(tiredness=tiredness, helped=False)
                case Finish():
                    session.finish(tiredness=tiredness, helped=False)
                    return

    def _happens(self, share: float) -> bool:
        # What never happens takes no chance, so that weeks without the trouble stay as they were.
        return share > 0 and self._rng.random() < share

    def _answer(self, session: Session, step: Ask) -> Feedback:
        item = step.item
        cue_level = 0 if step.cue is None else step.cue.level
        self._clock.wait(seconds=_PROMPT_SECONDS)
        session.shown()
        self._clock.wait(seconds=self._patient.latency_ms() / 1000)
        if item.kind is Kind.GESTURE:
            feedback = session.score(*self._patient.score(item, cue_level=cue_level))
        else:
            choice = self._patient.choose(item, cue_level=cue_level, removed=step.removed)
            if step.cue is None:
                self._patient.said(item, choice)
            feedback = session.choose(choice)
        if feedback.over:
            self._patient.learn(item)
        self._clock.wait(seconds=_FEEDBACK_SECONDS)
        return feedback


def _morning(day: date) -> datetime:
    return datetime.combine(day, time(10), tzinfo=UTC)
