"""Gestures that caregiver and therapist both score, and how far they agree."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass
from datetime import timedelta

from textual import work
from textual.app import ComposeResult

from drills.core.gestures import Tick
from drills.core.problems import DrillsError
from drills.core.records import Trial, latest_trials
from drills.core.therapist import SecondScore
from drills.digest.plain import day
from drills.digest.raters import agreement_of
from drills.practice.double_scoring import PickedTry, agreement_told, picked
from drills.practice.reviewing import day_of
from drills.tui.cards import PAIN_WORDS, SCORES, TICKS
from drills.tui.room import Room
from drills.tui.screens.form import Filled, FormScreen, Line
from drills.tui.screens.room import BACK, Hints, RoomScreen
from drills.tui.screens.score import Score, ScoreScreen
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.rows import Rows
from drills.tui.widgets.words import Words

WEEKS = 4
SEEN = "Score only tries that you saw yourself, in the clinic or by sitting in."
UNSEEN = "The caregiver's score is shown after yours."
NOTHING = f"No gesture of the last {WEEKS} weeks is picked to be scored twice."
NOT_KEPT = f"{PAIN_WORDS}: nothing is kept."
_SCORE = Hint(key="", shown="Enter", label="score, or see both")


@dataclass(frozen=True, slots=True, kw_only=True)
class _Found:
    tries: tuple[PickedTry, ...]
    told: tuple[str, ...]


class TherapistAgreementScreen(RoomScreen[None]):
    """The tries that a fixed hash picks, newest first."""

    def __init__(self, room: Room) -> None:
        super().__init__(room)
        self._tries: tuple[PickedTry, ...] = ()

    def heading(self) -> tuple[str, ...]:
        return (f"Agreement of scores. {SEEN}", UNSEEN)

    def compose_body(self) -> ComposeResult:
        yield Words(("One moment.",), classes="-said")
        yield Rows()

    def hints(self) -> Hints:
        return (BACK, _SCORE)

    def on_mount(self) -> None:
        self._find()

    @work(exclusive=True)
    async def _find(self) -> None:
        try:
            found = await asyncio.to_thread(_look, self.room)
        except DrillsError as error:
            self.query_one(".-said", Words).say(())
            self.trouble(f"The scores cannot be read. {error}")
            return
        self._tries = found.tries
        self.query_one(".-said", Words).say((*found.told, ""))
        if not found.tries:
            self.trouble(NOTHING)
        turns = self.room.home.plan.sitting.day_turns_at_hour
        labels = self.room.home.labels
        self.query_one(Rows).set_rows(
            [
                (str(at), _line(each, labels.get(_name(each.trial), _name(each.trial)), turns))
                for at, each in enumerate(found.tries)
            ]
        )

    def chosen(self, key: str) -> None:
        each = self._tries[int(key)]
        if each.own is not None:
            self.trouble(both_told(each.trial, each.own))
        elif reason := self.room.home.therapist_log.reason:
            self.trouble(f"No score can be kept now: {reason}.")
        elif self.room.by:
            self._score(each.trial)
        else:
            self._ask_name(each.trial)

    def _ask_name(self, trial: Trial) -> None:
        def named(filled: Filled | None) -> None:
            if filled is not None:
                self.room.by = filled.values["by"]
                self._score(trial)

        self.app.push_screen(
            FormScreen(
                self.room,
                title="Who scores?",
                lines=(Line(key="by", says="Your name", needed=True),),
                actions=(("go", "Go on to the score"),),
                above=("Your name is kept with each of your scores.",),
            ),
            named,
        )

    def _score(self, trial: Trial) -> None:
        gesture = self.room.home.material.gestures.get(_name(trial))
        if gesture is None:
            self.trouble("This gesture is not in the content of this program any more.")
            return

        def scored(score: Score | None) -> None:
            if score is None:
                self.trouble(None)
            elif Tick.BODY in score.ticks:
                self.trouble(NOT_KEPT)
            else:
                self._keep(trial, score)

        self.app.push_screen(
            ScoreScreen(gesture, self.room.desk, asks="Your own score of a try that you saw."),
            scored,
        )

    def _keep(self, trial: Trial, score: Score) -> None:
        own = SecondScore(
            at=self.room.home.clock.now(),
            by=self.room.by,
            session=trial.session,
            trial=trial.trial,
            score=score.score,
            ticks=score.ticks,
        )
        try:
            self.room.home.therapist_log.append(own)
        except DrillsError as error:
            self.trouble(f"Your score is not kept. {error}")
            return
        self.room.forget()
        self.trouble(both_told(trial, own))
        self._find()


def _look(room: Room) -> _Found:
    """Raises: DrillsError."""
    home = room.home
    second = [each for each in home.therapist_log.entries() if isinstance(each, SecondScore)]
    today = home.day()
    recent = latest_trials(home.entries_of(today - timedelta(weeks=WEEKS), today))
    tries = picked(recent, second, one_in=home.plan.flags.double_score_one_in)
    agreement = agreement_of(second, home.records.history())
    return _Found(tries=tries, told=agreement_told(agreement))


def _name(trial: Trial) -> str:
    return trial.asked.target.name


def _line(each: PickedTry, label: str, turns_at_hour: int) -> str:
    on = day(day_of(each.trial, day_turns_at_hour=turns_at_hour))
    at = f"{each.trial.started_at:%H:%M}"
    own = "not scored by you" if each.own is None else f"yours {each.own.score}"
    return f"{on:<10}  {at}  {label:<24}  {own}"


def both_told(trial: Trial, own: SecondScore) -> str:
    """Both scores with their ticks; only for a try that the therapist has scored."""
    first = trial.first
    given = None if first is None else first.score
    ticks = () if first is None else first.ticks
    theirs = "none" if given is None else f"{given}, {SCORES[given].lower()}{_ticked(ticks)}"
    yours = f"{own.score}, {SCORES[own.score].lower()}{_ticked(own.ticks)}"
    return f"Yours: {yours}. Caregiver's: {theirs}."


def _ticked(ticks: tuple[Tick, ...]) -> str:
    return f" ({', '.join(TICKS[tick].lower() for tick in ticks)})" if ticks else ""
