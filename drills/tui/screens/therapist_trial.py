"""One trial as it was shown, with what was answered."""

from __future__ import annotations

from dataclasses import replace

from drills.core.records import Trial
from drills.digest.plain import day
from drills.practice.reviewing import (
    Practised,
    attempt_lines,
    chosen_told,
    day_of,
    option_told,
    scenes_of,
    success_told,
)
from drills.tui.cards import TICKS
from drills.tui.room import Room
from drills.tui.screens.shown import Shown, ShownScreen, packed

MOST_PICTURES = 4


class TherapistTrialScreen(ShownScreen):
    """The trials of one name."""

    def __init__(self, room: Room, practised: Practised, at: int) -> None:
        super().__init__(room, at=at)
        self._practised = practised

    @property
    def count(self) -> int:
        return len(self._practised.trials)

    def shown(self, at: int) -> Shown:
        trial = self._practised.trials[at]
        scenes = scenes_of(trial.asked)
        words = self.without_pictures(at)
        if not scenes:
            return words
        places = options_shown(trial)
        answer = trial.asked.answer
        return replace(
            words,
            options=(),
            captions=tuple(_captioned(trial, place) for place in places),
            chosen=tuple(chosen_told(trial, place) for place in places),
            scenes=tuple(scenes[place] for place in places),
            right=None if answer is None else places.index(answer),
        )

    def without_pictures(self, at: int) -> Shown:
        trial = self._practised.trials[at]
        turns = self.room.home.plan.sitting.day_turns_at_hour
        on = day(day_of(trial, day_turns_at_hour=turns))
        context = (trial.asked.context,) if trial.asked.context else ()
        return Shown(
            title=f"{on}, trial {at + 1} of {self.count}. {self._practised.label}",
            asked=(*context, trial.asked.sentence),
            told=packed(answer_lines(trial)),
            options=tuple(_in_words(trial, place) for place in options_shown(trial)),
        )


def _captioned(trial: Trial, option: int) -> str:
    return f"{option + 1}  {option_told(trial, option)}"


def _in_words(trial: Trial, option: int) -> str:
    chosen = chosen_told(trial, option)
    return f"{_captioned(trial, option)}{chosen and f', {chosen}'}"


def options_shown(trial: Trial) -> tuple[int, ...]:
    """All options; of very many, the right one and those that were chosen first."""
    asked = trial.asked
    count = len(asked.options)
    if count <= MOST_PICTURES:
        return tuple(range(count))
    told = dict.fromkeys([asked.answer, *(each.choice for each in trial.attempts)])
    places = [option for option in told if option is not None]
    return tuple(sorted(places[:MOST_PICTURES]))


def answer_lines(trial: Trial) -> tuple[str, ...]:
    """Each response with its help and time, when it was right, and what was ticked."""
    first = trial.first
    ticks = () if first is None else first.ticks
    ticked = (f"Ticked: {', '.join(TICKS[tick] for tick in ticks)}.",) if ticks else ()
    return (*attempt_lines(trial), success_told(trial), *ticked)
