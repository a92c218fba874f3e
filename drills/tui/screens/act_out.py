"""A sentence to be acted out: who does it, who it is done to, then the event as it was built."""

from __future__ import annotations

import asyncio
from dataclasses import replace

from textual import work
from textual.app import ComposeResult
from textual.containers import Horizontal
from textual.geometry import Size
from textual.timer import Timer

from drills.core.cells import Cells
from drills.core.items import Cue, CueKind
from drills.core.plans import Layout
from drills.core.utterances import Utterance
from drills.exercises.events import figures_of
from drills.pictures import STEPS
from drills.practice.session import Session
from drills.practice.steps import Ask, Feedback
from drills.tui.building import Building
from drills.tui.desk import Desk
from drills.tui.figures import standing
from drills.tui.gallery import SCENE_FRAME_SECONDS, moving
from drills.tui.screens.trial import TrialScreen
from drills.tui.speaker import Line
from drills.tui.widgets.figures import Figures
from drills.tui.widgets.key_bar import GO_ON, PAUSE, Hint
from drills.tui.widgets.stage import Stage
from drills.tui.widgets.words import Words

HEADING = "Show what happens."
SHOWN = "You showed this."
UNDO = Hint(key="escape", shown="Esc", label="undo")
ROUND_SECONDS = STEPS * SCENE_FRAME_SECONDS
"""How long an event is watched at least before it is said whether it fits."""

# These say the sentence, or all of it in plain words.
_SAY_IT_ALL = (CueKind.REPLAY, CueKind.SLOW_REPLAY, CueKind.TEXT, CueKind.ANSWER)


class ActOutScreen(TrialScreen):
    """Figures at the left; beside them the places for two of them, then what these two do.

    The first number puts the doer in place, the second one chooses. The answer is on disk before
    the event is performed. When something comes over the performance, it counts as watched.
    Stacked or left, all of it keeps to the left two thirds.
    """

    CSS_PATH = "act_out.tcss"

    def __init__(self, session: Session, desk: Desk) -> None:
        super().__init__(session, desk)
        nouns = desk.home.material.lexicon.nouns
        self._built = Building(self.ask.item)
        self._names = tuple(nouns[key].singular for key in self._built.figures)
        self._drawn: int | None = None
        self._pending: Feedback | None = None
        self._unwatched: set[str] = set()
        self._timer: Timer | None = None

    # What it shows

    def heading(self) -> tuple[str, ...]:
        return (HEADING,)

    @property
    def _is_stacked(self) -> bool:
        return False

    @property
    def _shows_act(self) -> bool:
        return False

    def compose_options(self) -> ComposeResult:
        built, is_narrow = self._built, self._layout is not Layout.SIDE_BY_SIDE
        captions = 2 + is_narrow + built.is_of_giving
        with Horizontal(classes="-task"):
            yield Figures(self._names)
            yield Stage(is_doer_left=built.is_doer_left, captions=captions)

    def on_mount(self) -> None:
        self.set_class(self._layout is not Layout.SIDE_BY_SIDE, "-narrow")

    def extra_hints(self) -> tuple[Hint, ...]:
        return (UNDO,) if self._may_undo else ()

    def _hints(self) -> tuple[Hint, ...]:
        return (GO_ON, PAUSE) if self._pending is not None else super()._hints()

    def show_cue(self, cue: Cue | None) -> None:
        self.query_one(".-sentence", Words).say(self._sentence_lines(cue))
        if cue is not None:
            self._built.follow(cue.kind)
        if self._built.doer in self._gone:
            self._built.doer = None
        self._arrange()

    def show_over(self, feedback: Feedback) -> None:
        self.query_one(".-sentence", Words).say(self._sentence_lines(self.ask.cue))
        self._arrange()

    def _arrange(self) -> None:
        """Bring frames and words up to date with what was built; the pictures follow."""
        built = self._built
        self.query_one(Figures).set_out(
            gone=self._gone,
            playing=built.playing(alone=not self._is_open),
            called=built.right[1] if self._answer_shown else None,
        )
        stage = self.query_one(Stage)
        if built.event != self._drawn:
            # Never the words of one event over the picture of another.
            stage.clear()
            self._drawn = None
        if built.event is None:
            stage.ask(built.question, doer=None if built.doer is None else self._names[built.doer])
        else:
            asks = self._is_open and not self._answer_shown
            stage.tell(built.words, built.question if asks else None)
        self._show_hints()
        self._paint_again()

    @property
    def _gone(self) -> frozenset[int]:
        return self._built.gone(self.ask.removed)

    @property
    def _is_open(self) -> bool:
        """Whether a number is awaited."""
        return self._pending is None and not self.is_over

    @property
    def _answer_shown(self) -> bool:
        cue = self.ask.cue
        return self._is_open and cue is not None and cue.kind is CueKind.ANSWER

    @property
    def _may_undo(self) -> bool:
        return self._is_open and self._built.doer is not None

    # Answers

    def pressed(self, key: str) -> None:
        is_own = (
            self._pending is not None
            or (key == "escape" and self._may_undo)
            or (key == "space" and self.is_asked and not self.is_over)
        )
        if not is_own:
            super().pressed(key)
        elif self._desk.presses.is_meant(key):
            self._own_key(key)

    def _own_key(self, key: str) -> None:
        if self._pending is not None:
            if key in ("space", "escape", "p"):
                self._conclude()
            if key in ("escape", "p"):
                self._pause()
        elif key == "escape":
            self._put(None)
        else:
            self._session.heard_again()
            question = () if self._answer_shown else (self._built.question,)
            self._say((Line(utterance=Utterance(phrases=(*self._told, *question))),))

    @property
    def _told(self) -> tuple[str, ...]:
        """The sentence as it is said, without the question behind it."""
        return self.ask.item.spoken.phrases[:-1]

    def answer(self, key: str) -> None:
        place = int(key) - 1 if key.isdecimal() else -1
        if not 0 <= place < len(self._names) or place in self._gone:
            return
        built, answer = self._built, self.ask.item.answer
        if self._answer_shown:
            if place == built.right[1] and answer is not None:
                self._perform(answer)
        elif built.doer is None:
            self._put(place)
        elif place == built.doer:
            self._put(None)
        else:
            option = built.option_with(place)
            if option is not None and option not in self.ask.removed:
                self._perform(option)

    def on_stage_pressed(self, event: Stage.Pressed) -> None:
        event.stop()
        if self._may_undo:
            self.hear("escape")

    def _put(self, place: int | None) -> None:
        """Let the figure at `place` be the doer; None takes the doer back."""
        self._built.doer, self._built.event = place, None
        self._arrange()
        # Does not begin the wait anew: it is counted from the end of the prompt.
        self._desk.speaker.say((Line(utterance=Utterance(phrases=(self._built.question,))),))
        self._foresee()

    def _perform(self, index: int) -> None:
        """Keep the answer, then show what was built: right or wrong, it happens as chosen."""
        self._pending = self._session.choose(index)
        self._built.doer, self._built.event = None, index
        self.tell((SHOWN,))
        self._arrange()
        self._unwatched = {"picture", "words"}
        self._timer = self.set_timer(ROUND_SECONDS, lambda: self._watched("picture"))
        said = Utterance(phrases=(SHOWN, self._built.words))
        self._desk.speaker.say((Line(utterance=said),), then=lambda: self._watched("words"))

    def _watched(self, part: str) -> None:
        self._unwatched.discard(part)
        if not self._unwatched:
            self._conclude()

    def _conclude(self) -> None:
        """Say whether it fits, and the sentence once more."""
        feedback, self._pending = self._pending, None
        if feedback is None:
            return
        if self._timer is not None:
            self._timer.stop()
        again = Utterance(phrases=(feedback.text, *self._told))
        if feedback.over:
            self.responded(replace(feedback, spoken=None))
            self._desk.speaker.say((Line(utterance=again),))
        else:
            step = self._session.step
            cue = step.cue if isinstance(step, Ask) else None
            says_all = cue is not None and cue.kind in _SAY_IT_ALL
            self.responded(feedback if says_all else replace(feedback, spoken=again))

    def on_screen_suspend(self) -> None:
        if self in self.app.screen_stack:
            self._conclude()

    # Pictures

    async def paint(self) -> None:
        built, figures = self._built, self.query_one(Figures)
        if figures.room.area:
            figures.stand(await asyncio.to_thread(self._standing, built.figures, figures.room))
        if built.event is not None:
            await self._paint_event(built.event)
        elif built.doer is not None:
            await self._paint_doer(built.doer)

    def _standing(self, figures: tuple[str, ...], size: Size) -> tuple[Cells, ...]:
        return standing(
            figures, columns=size.width, lines=size.height, encoding=self._desk.encoding
        )

    async def _paint_doer(self, doer: int) -> None:
        """The doer, turned towards the place that is still free."""
        stage, figures = self.query_one(Stage), self._built.figures
        if stage.place.area:
            pair = (figures[doer], figures[doer - 1])
            if not self._built.is_doer_left:
                pair = pair[::-1]
            drawn = await asyncio.to_thread(self._standing, pair, stage.place)
            if doer == self._built.doer:
                stage.put(drawn[pair.index(figures[doer])])

    async def _paint_event(self, option: int) -> None:
        stage = self.query_one(Stage)
        frames = await asyncio.to_thread(self._moving, option, stage.ground)
        if frames and option == self._built.event:
            self._drawn = option
            shown = frames if self._desk.animated else frames[:1]
            stage.play(shown, seconds=SCENE_FRAME_SECONDS)

    def _moving(self, option: int, size: Size) -> tuple[Cells, ...]:
        scene = self._built.scene(option)
        if scene is None or not size.area:
            return ()
        encoding = self._desk.encoding
        return moving(scene, columns=size.width, lines=size.height, encoding=encoding)

    @work(exclusive=True, group="foresee")
    async def _foresee(self) -> None:
        """Draw every event that the next press can choose, so that it is there at once."""
        ground = self.query_one(Stage).ground
        for place in range(len(self._names)):
            option = self._built.option_with(place)
            if option is not None and option not in self.ask.removed:
                await asyncio.to_thread(self._moving, option, ground)

    async def draw_ahead(self, upcoming: Ask) -> None:
        size = self.query_one(Figures).room
        is_alike = upcoming.item.kind is self.ask.item.kind
        figures = figures_of(upcoming.item) if is_alike else ()
        # Only as many figures have frames of the same size.
        if len(figures) == len(self._names) and size.area:
            await asyncio.to_thread(self._standing, figures, size)
