"""A sentence to be acted out: who does it, who it is done to, then the event as it was built."""

from __future__ import annotations

import asyncio
from dataclasses import replace

from textual import work
from textual.app import ComposeResult
from textual.containers import Container, Horizontal, Vertical
from textual.geometry import Size
from textual.timer import Timer

from drills.core.cells import Cells
from drills.core.items import Cue, CueKind
from drills.core.kinds import Side
from drills.core.meanings import Transfer
from drills.core.plans import Layout
from drills.core.utterances import Utterance
from drills.exercises.events import events_of, figures_of, option_of, places_of, questions
from drills.pictures import STEPS
from drills.practice.session import Session
from drills.practice.steps import Ask, Feedback
from drills.tui.desk import Desk
from drills.tui.figures import standing
from drills.tui.gallery import SCENE_FRAME_SECONDS, moving
from drills.tui.layout import lines_of
from drills.tui.screens.trial import TrialScreen, smallest
from drills.tui.speaker import Line
from drills.tui.widgets.figures import FigureBox, PlaceBox
from drills.tui.widgets.key_bar import GO_ON, PAUSE, Hint
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

HEADING = "Show what happens."
SHOWN = "You showed this."
UNDO = Hint(key="escape", shown="Esc", label="undo")
ROUND_SECONDS = STEPS * SCENE_FRAME_SECONDS
"""How long an event is watched at least before it is said whether it fits."""

# What the stage is wide in the smallest window.
_CAPTION_WIDTH = 38
_FRAME = 2
_ARROW = 3
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
        item, nouns = self.ask.item, desk.home.material.lexicon.nouns
        self._figures = figures_of(item)
        self._names = tuple(nouns[key].singular for key in self._figures)
        self._questions = questions(item)
        self._doer: int | None = None
        self._event: int | None = None
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

    @property
    def _is_doer_left(self) -> bool:
        scene = self.ask.item.options[0].scene
        return scene is None or scene.side is Side.LEFT

    def compose_options(self) -> ComposeResult:
        is_left = self._is_doer_left
        is_giving = isinstance(events_of(self.ask.item)[0], Transfer)
        doer, other = PlaceBox(classes="-doer"), PlaceBox(classes="-other")
        arrow = Words(("→" if is_left else "←",), classes="-arrow")
        with Horizontal(classes="-task"):
            yield Container(
                *(FigureBox(index, name=name) for index, name in enumerate(self._names)),
                classes=f"-figures -of-{len(self._figures)}",
            )
            with Vertical(classes="-stage"):
                yield Words(classes=f"-caption{' -of-giving' if is_giving else ''}")
                with Container(classes="-ground"):
                    with Horizontal(classes="-places"):
                        yield from (doer, arrow, other) if is_left else (other, arrow, doer)
                    yield Picture()

    def on_mount(self) -> None:
        self.set_class(self._layout is not Layout.SIDE_BY_SIDE, "-narrow")

    def extra_hints(self) -> tuple[Hint, ...]:
        return (UNDO,) if self._may_undo else ()

    def _hints(self) -> tuple[Hint, ...]:
        return (GO_ON, PAUSE) if self._pending is not None else super()._hints()

    def show_cue(self, cue: Cue | None) -> None:
        """Help that names the doer puts the doer in place; the answer is shown as it happens."""
        self.query_one(".-sentence", Words).say(self._sentence_lines(cue))
        answer = self.ask.item.answer
        if cue is not None and answer is not None:
            if cue.kind is CueKind.NAME_DOER:
                self._doer, self._event = places_of(self.ask.item, answer)[0], None
            elif cue.kind is CueKind.ANSWER:
                self._doer, self._event = None, answer
        if self._doer in self._gone:
            self._doer = None
        self._arrange()

    def show_over(self, feedback: Feedback) -> None:
        self.query_one(".-sentence", Words).say(self._sentence_lines(self.ask.cue))
        self._arrange()

    def _arrange(self) -> None:
        """Bring frames and words up to date with what was built; the pictures follow."""
        gone, playing = self._gone, self._playing
        for place, box in enumerate(self.query(FigureBox)):
            box.take_away(is_gone=place in gone)
            box.empty(is_empty=place in playing)
            box.call(is_called=self._answer_shown and place == self._to_confirm)
        self.set_class(self._event is not None, "-shows-event")
        named = None if self._doer is None else self._names[self._doer]
        self.query_one(".-doer", PlaceBox).take(named, is_next=named is None)
        self.query_one(".-other", PlaceBox).take(None, is_next=named is not None)
        self.query_one(".-caption", Words).say(self._caption)
        if self._event != self._drawn:
            # Never the words of one event over the picture of another.
            self.query_one(".-ground > Picture", Picture).clear()
        self._show_hints()
        self._paint_again()

    @property
    def _caption(self) -> tuple[str, ...]:
        """What is shown, in words; what is asked, where a number is to be pressed."""
        if self._event is None:
            return (self._asked_now,)
        text = self.ask.item.options[self._event].text or ""
        words = lines_of(text, width=self.query_one(".-caption").size.width or _CAPTION_WIDTH)
        asks = self._pending is None and not self.is_over and not self._answer_shown
        return (*words, self._asked_now) if asks else words

    @property
    def _asked_now(self) -> str:
        return self._questions[0 if self._doer is None else 1]

    @property
    def _gone(self) -> frozenset[int]:
        """Figures that play in no event that is left."""
        ask = self.ask
        left = [index for index in range(len(ask.item.options)) if index not in ask.removed]
        there = {place for index in left for place in places_of(ask.item, index)}
        return frozenset(range(len(self._figures))) - there

    @property
    def _playing(self) -> frozenset[int]:
        """Figures that stand in a place or in the event, and so not in their frame."""
        if self._event is not None and (self._pending is not None or self.is_over):
            return frozenset(places_of(self.ask.item, self._event))
        return frozenset() if self._doer is None else frozenset((self._doer,))

    @property
    def _answer_shown(self) -> bool:
        cue = self.ask.cue
        is_shown = cue is not None and cue.kind is CueKind.ANSWER
        return is_shown and self._pending is None and not self.is_over

    @property
    def _to_confirm(self) -> int | None:
        answer = self.ask.item.answer
        return None if answer is None else places_of(self.ask.item, answer)[1]

    @property
    def _may_undo(self) -> bool:
        return self._doer is not None and self._pending is None and not self.is_over

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
            self._undo()
        else:
            self._session.heard_again()
            question = () if self._event is not None else (self._asked_now,)
            self._say((Line(utterance=Utterance(phrases=(*self._told, *question))),))

    @property
    def _told(self) -> tuple[str, ...]:
        """The sentence as it is said, without the question behind it."""
        return self.ask.item.spoken.phrases[:-1]

    def answer(self, key: str) -> None:
        place = int(key) - 1 if key.isdecimal() else -1
        if not 0 <= place < len(self._figures) or place in self._gone:
            return
        answer = self.ask.item.answer
        if self._answer_shown:
            if place == self._to_confirm and answer is not None:
                self._perform(answer)
        elif self._doer is None:
            self._put(place)
        elif place == self._doer:
            self._undo()
        else:
            index = option_of(self.ask.item, self._doer, place)
            if index not in self.ask.removed:
                self._perform(index)

    def on_place_box_pressed(self, event: PlaceBox.Pressed) -> None:
        event.stop()
        if self._may_undo:
            self.hear("escape")

    def _put(self, place: int) -> None:
        self._doer, self._event = place, None
        self._arrange()
        # Does not begin the wait anew: it is counted from the end of the prompt.
        self._desk.speaker.say((Line(utterance=Utterance(phrases=(self._asked_now,))),))
        self._foresee()

    def _undo(self) -> None:
        self._doer = None
        self._arrange()
        self._desk.speaker.say((Line(utterance=Utterance(phrases=(self._asked_now,))),))

    def _perform(self, index: int) -> None:
        """Keep the answer, then show what was built: right or wrong, it happens as chosen."""
        self._pending = self._session.choose(index)
        self._doer, self._event = None, index
        self.tell((SHOWN,))
        self._arrange()
        self._unwatched = {"picture", "words"}
        self._timer = self.set_timer(ROUND_SECONDS, lambda: self._watched("picture"))
        words = (SHOWN, self.ask.item.options[index].text or "")
        self._desk.speaker.say(
            (Line(utterance=Utterance(phrases=words)),), then=lambda: self._watched("words")
        )

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
        size = self._frame_size
        if size.area:
            drawn = await asyncio.to_thread(self._standing, self._figures, size)
            for box, cells in zip(self.query(FigureBox), drawn, strict=True):
                box.stand(cells)
        ground = self.query_one(".-ground").size
        if self._event is not None:
            await self._paint_event(self._event, ground)
        elif self._doer is not None:
            await self._paint_doer(self._doer, ground)

    @property
    def _frame_size(self) -> Size:
        """The room that every figure has in its frame; a frame that is hidden has none."""
        boxes = [box for box in self.query(FigureBox) if not box.has_class("-gone")]
        return smallest([box.picture for box in boxes if box.picture is not None])

    def _standing(self, figures: tuple[str, ...], size: Size) -> tuple[Cells, ...]:
        return standing(
            figures, columns=size.width, lines=size.height, encoding=self._desk.encoding
        )

    async def _paint_doer(self, doer: int, ground: Size) -> None:
        """The doer, turned towards the place that is still free."""
        size = Size((ground.width - _ARROW) // 2 - _FRAME, ground.height - _FRAME)
        if not size.area:
            return
        pair = (self._figures[doer], self._figures[doer - 1])
        if not self._is_doer_left:
            pair = pair[::-1]
        drawn = await asyncio.to_thread(self._standing, pair, size)
        place = self.query_one(".-doer", PlaceBox)
        place.picture.show(drawn[pair.index(self._figures[doer])])

    async def _paint_event(self, index: int, ground: Size) -> None:
        if ground.area:
            frames = await asyncio.to_thread(self._moving, index, ground)
            picture = self.query_one(".-ground > Picture", Picture)
            if index != self._event:
                return
            self._drawn = index
            picture.play(frames if self._desk.animated else frames[:1], seconds=SCENE_FRAME_SECONDS)

    def _moving(self, index: int, size: Size) -> tuple[Cells, ...]:
        scene = self.ask.item.options[index].scene
        if scene is None or not size.area:
            return ()
        encoding = self._desk.encoding
        return moving(scene, columns=size.width, lines=size.height, encoding=encoding)

    @work(exclusive=True, group="foresee")
    async def _foresee(self) -> None:
        """Draw every event that the next press can choose, so that it is there at once."""
        ground = self.query_one(".-ground").size
        for place in range(len(self._figures)):
            if self._doer is not None and place not in (self._doer, *self._gone):
                index = option_of(self.ask.item, self._doer, place)
                await asyncio.to_thread(self._moving, index, ground)

    async def draw_ahead(self, upcoming: Ask) -> None:
        size = self._frame_size
        if upcoming.item.kind is self.ask.item.kind and size.area:
            figures = figures_of(upcoming.item)
            # Only as many figures have frames of the same size.
            if len(figures) == len(self._figures):
                await asyncio.to_thread(self._standing, figures, size)
