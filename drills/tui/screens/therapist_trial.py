"""One trial as it was shown, with what was answered."""

from __future__ import annotations

import asyncio
from typing import ClassVar

from textual import work
from textual.app import ComposeResult
from textual.containers import Container
from textual.content import Content

from drills.core.meanings import Scene
from drills.core.records import Trial
from drills.digest.plain import day
from drills.pictures import can_draw
from drills.practice.reviewing import (
    Practised,
    attempt_lines,
    day_of,
    option_told,
    scenes_of,
    success_told,
)
from drills.tui.cards import TICKS
from drills.tui.gallery import pictures
from drills.tui.layout import lines_of
from drills.tui.room import Room
from drills.tui.screens.room import BACK, Hints, RoomScreen
from drills.tui.screens.trial import smallest
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

MOST_PICTURES = 4
NOT_DRAWN = "These pictures cannot be drawn by this version of the program."
_WIDTH = 78
_BEFORE = Hint(key="left", shown="Left", label="trial before")
_AFTER = Hint(key="right", shown="Right", label="next trial")


class TherapistTrialScreen(RoomScreen[int]):
    """Left and Right turn to the trials beside it; returns the place of the last one shown."""

    CSS_PATH = "therapist_trial.tcss"
    ALSO: ClassVar[frozenset[str]] = frozenset(("left", "right"))

    def __init__(self, room: Room, practised: Practised, at: int) -> None:
        super().__init__(room)
        self._practised = practised
        self._at = at

    @property
    def _trial(self) -> Trial:
        return self._practised.trials[self._at]

    def heading(self) -> tuple[str, ...]:
        turns = self.room.home.plan.sitting.day_turns_at_hour
        on = day(day_of(self._trial, day_turns_at_hour=turns))
        count = len(self._practised.trials)
        return (f"{on}, trial {self._at + 1} of {count}. {self._practised.label}",)

    def compose_body(self) -> ComposeResult:
        yield Words(classes="-asked")
        yield Words(classes="-answers")
        yield Container(classes="-options")

    def hints(self) -> Hints:
        return (BACK, _BEFORE, _AFTER)

    def on_mount(self) -> None:
        self._show()

    def on_resize(self) -> None:
        self.call_after_refresh(self._paint)

    def pressed(self, key: str) -> None:
        if key in ("left", "right"):
            at = self._at + (1 if key == "right" else -1)
            if 0 <= at < len(self._practised.trials):
                self._at = at
                self._show()
        else:
            super().pressed(key)

    def leave(self) -> None:
        self.dismiss(self._at)

    @work(exclusive=True, group="show")
    async def _show(self) -> None:
        self.query_one(".-title", Words).say(self.heading())
        asked = self._trial.asked
        context = [line for text in asked.context.split("\n") for line in _fold(text)]
        self.query_one(".-asked", Words).say((*context, *_fold(asked.sentence)))
        self.query_one(".-answers", Words).say(answer_lines(self._trial))
        options = self.query_one(".-options", Container)
        self._shown = shown_options(self._trial)
        try:
            scenes = scenes_of(asked)
            self._scenes = tuple(scenes[option] for option in self._shown) if scenes else ()
            is_drawn = all(can_draw(scene.meaning) for scene in self._scenes)
        except (ValueError, KeyError):
            self._scenes, is_drawn = (), False
        self.trouble(None if is_drawn else NOT_DRAWN)
        if not is_drawn:
            self._scenes = ()
        await options.remove_children()
        options.set_class(bool(self._scenes), "-pictures")
        options.set_class(len(self._scenes) > 2, "-grid")
        if self._scenes:
            await options.mount_all(_Shown(self._trial, option) for option in self._shown)
        else:
            told = [f"{at + 1}  {option_told(self._trial, at)}" for at in self._shown]
            await options.mount(Words(told))
        self.call_after_refresh(self._paint)

    _scenes: tuple[Scene, ...] = ()
    _shown: tuple[int, ...] = ()

    @work(exclusive=True, group="paint")
    async def _paint(self) -> None:
        widgets = list(self.query(Picture))
        size = smallest(widgets)
        scenes = self._scenes
        if not size.area or len(widgets) != len(scenes):
            return
        drawn = await asyncio.to_thread(
            pictures,
            scenes,
            columns=size.width,
            lines=size.height,
            encoding=self.room.desk.encoding,
        )
        for widget, cells in zip(widgets, drawn, strict=True):
            widget.show(cells)


class _Shown(Container):
    """One picture in a frame that says what became of it."""

    def __init__(self, trial: Trial, option: int) -> None:
        is_right = trial.asked.answer == option
        super().__init__(classes="-right" if is_right else "")
        self.border_title = Content(f"{option + 1}  {option_told(trial, option)}")

    def compose(self) -> ComposeResult:
        yield Picture()


def shown_options(trial: Trial) -> tuple[int, ...]:
    """All options; of very many, the right one and those that were chosen."""
    count = len(trial.asked.options)
    if count <= MOST_PICTURES:
        return tuple(range(count))
    told = {each.choice for each in trial.attempts} | {trial.asked.answer}
    return tuple(option for option in range(count) if option in told)[:MOST_PICTURES]


def answer_lines(trial: Trial) -> tuple[str, ...]:
    """Each response with its help and time, and when it was right."""
    lines = [*attempt_lines(trial), success_told(trial)]
    first = trial.first
    if first is not None and first.ticks:
        lines.append(f"Ticked: {', '.join(TICKS[tick] for tick in first.ticks)}.")
    return tuple(line for told in _packed(lines) for line in _fold(told))


def _packed(lines: list[str]) -> list[str]:
    """Short lines side by side, so that the pictures keep their room."""
    packed: list[str] = []
    for line in lines:
        if packed and len(packed[-1]) + 3 + len(line) <= _WIDTH:
            packed[-1] += f"   {line}"
        else:
            packed.append(line)
    return packed


def _fold(text: str) -> tuple[str, ...]:
    return lines_of(text, width=_WIDTH)
