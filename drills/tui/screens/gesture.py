"""A gesture: asked for on the screen, done by hand, scored by the caregiver."""

from __future__ import annotations

import asyncio

from textual.app import ComposeResult
from textual.containers import Horizontal

from drills.core.gestures import Gesture
from drills.core.items import Cue, CueKind
from drills.gestures import frame_seconds
from drills.practice.session import Session
from drills.practice.steps import Feedback
from drills.tui.desk import Desk
from drills.tui.gallery import gesture_frames
from drills.tui.layout import LINE_WIDTH, lines_of
from drills.tui.screens.asking import AskScreen
from drills.tui.screens.score import Score, ScoreScreen
from drills.tui.screens.trial import smallest
from drills.tui.widgets.key_bar import SCORE, Hint
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

_MOVING = (CueKind.MODEL, CueKind.TOGETHER)


class GestureScreen(AskScreen):
    """Digits do nothing here, so that a press by accident is no score."""

    CSS_PATH = "gesture.tcss"

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk)
        key = self.ask.item.gesture
        if key is None:
            raise TypeError("the session is not asking for a gesture")
        self._gesture: Gesture = desk.home.material.gestures[key]

    def compose_task(self) -> ComposeResult:
        yield Words(
            [
                line
                for part in self.ask.item.prompt.split("\n")
                for line in lines_of(part, width=LINE_WIDTH)
            ],
            classes="-sentence",
        )
        with Horizontal(classes="-figures"):
            yield Picture()
            if not self._desk.animated and not self._gesture.still:
                yield Picture()

    def extra_hints(self) -> tuple[Hint, ...]:
        return (SCORE,)

    def answer(self, key: str) -> None:
        if key == "s":
            self.app.push_screen(ScoreScreen(self._gesture, self._desk), self._scored)

    def _scored(self, score: Score | None) -> None:
        if score is not None:
            self.responded(self._session.score(score.score, score.ticks))

    def show_cue(self, cue: Cue | None) -> None:
        self.run_worker(self.paint(), group="paint", exclusive=True)

    def show_over(self, feedback: Feedback) -> None:
        for figure in self.query(Picture):
            figure.clear()

    async def paint(self) -> None:
        """Nothing, then a still, then the movement: as far as the help has come."""
        figures = list(self.query(Picture))
        size = smallest(figures)
        cue = self.ask.cue
        if self.is_over or not size.area or not self._is_pictured(cue):
            return
        drawn = await asyncio.to_thread(
            gesture_frames,
            self._gesture.drawing,
            columns=size.width,
            lines=size.height,
            encoding=self._desk.encoding,
        )
        moves = cue is not None and cue.kind in _MOVING and not self._gesture.still
        if moves and self._desk.animated:
            figures[0].play(drawn, seconds=frame_seconds(self._gesture.drawing))
        elif moves:
            # Without movement: where it starts and how far it goes, side by side.
            figures[0].show(drawn[0])
            figures[1].show(drawn[len(drawn) // 2])
        else:
            figures[0].show(drawn[0])

    def _is_pictured(self, cue: Cue | None) -> bool:
        level = 0 if cue is None else cue.level
        return any(
            step.level <= level and step.kind in (CueKind.PICTURE, *_MOVING)
            for step in self.ask.item.cues
        )
