"""A trial with things to choose from: pictures, or words."""

from __future__ import annotations

import asyncio

from textual import work
from textual.app import ComposeResult
from textual.containers import Container, Horizontal, Vertical
from textual.geometry import Size

from drills.core.items import Cue, CueKind, Item, Kind
from drills.core.meanings import Scene
from drills.core.plans import Layout
from drills.practice.steps import Ask, Feedback
from drills.tui.cue_words import cue_lines, tree_lines
from drills.tui.gallery import SCENE_FRAME_SECONDS, moving, pictures
from drills.tui.layout import LINE_WIDTH, lines_of
from drills.tui.screens.asking import AskScreen
from drills.tui.widgets.options import OptionBox
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

_HEAD_AND_KEYS = 2
_FRAME = 1
# A picture with fewer lines cannot be read; pictures that would be lower stand in a grid.
LOWEST_PICTURE = 8
NO_VOICE = "Helper: no voice is heard, so the words show."


class TrialScreen(AskScreen):
    """Pictures beside, or under one another; words always under one another, at the left.

    Where pictures are stacked, sentence and messages stand beside them, at the right.
    """

    CSS_PATH = "trial.tcss"
    _has_told_of_silence = False

    def compose_body(self) -> ComposeResult:
        if not self._is_stacked:
            yield from super().compose_body()
            return
        with Horizontal(classes="-beside"):
            yield from self.compose_options()
            with Vertical(classes="-words-beside"):
                yield Words(self._sentence_lines(self.ask.cue), classes="-sentence")
                yield Words(fixed=True, classes="-message")

    def compose_task(self) -> ComposeResult:
        yield Words(self._sentence_lines(self.ask.cue), classes="-sentence")
        yield from self.compose_options()

    def compose_options(self) -> ComposeResult:
        item = self.ask.item
        boxes = [OptionBox(index, text=option.text) for index, option in enumerate(item.options)]
        if are_pictures(item):
            yield Container(*boxes, classes=f"-pictures -of-{len(boxes)}")
        else:
            with Horizontal(classes="-words-and-picture"):
                # Words stay at the left, also without a picture: the right may not be seen.
                alone = "" if item.picture is not None else " -alone"
                yield Vertical(*boxes, classes=f"-column{alone}")
                if item.picture is not None:
                    yield Picture()

    @property
    def _layout(self) -> Layout:
        return self._desk.home.plan.sitting.layout

    @property
    def _is_stacked(self) -> bool:
        return self._layout is Layout.STACKED and are_pictures(self.ask.item)

    def on_mount(self) -> None:
        self.set_class(self._desk.large, "-large")
        self.set_class(self._layout is Layout.LEFT, "-left")
        self._fit_stack()
        self.set_class(are_pictures(self.ask.item) and len(self.ask.item.options) > 2, "-grid")
        self.show_cue(self.ask.cue)

    def on_resize(self) -> None:
        self._fit_stack()
        super().on_resize()

    def _fit_stack(self) -> None:
        """One under the other where that leaves each picture lines enough."""
        count = len(self.ask.item.options)
        lines = (self.app.size.height - _HEAD_AND_KEYS) // count - _FRAME
        self.set_class(self._is_stacked and lines >= LOWEST_PICTURE, "-one-column")

    def _sentence_lines(self, cue: Cue | None) -> tuple[str, ...]:
        item = self.ask.item
        if not self._shows_text(cue):
            return ()
        lines = lines_of(item.sentence, item.spoken.phrases, width=LINE_WIDTH)
        context = tuple(
            line
            for text in item.context.split("\n")
            for line in lines_of(text, item.spoken.phrases, width=LINE_WIDTH)
        )
        # An answer stands under its question, all else before what it bears on.
        lines = (*lines, *context) if item.sentence.endswith("?") else (*context, *lines)
        if item.kind is not Kind.QUESTION:
            return lines
        return (*lines, "", item.prompt, *tree_lines(item, cue))

    def _shows_text(self, cue: Cue | None) -> bool:
        """The therapist may leave the sentence to the ear, until the help that shows it.

        What nobody can hear is shown, and so is what no help would ever show.
        """
        texts = [step.level for step in self.ask.item.cues if step.kind is CueKind.TEXT]
        if self.ask.hides_text and self.ask.item.is_probe and not self._is_unheard:
            return False
        if not self.ask.hides_text or not texts or self.is_over or self._is_unheard:
            return True
        return cue is not None and cue.level >= texts[0]

    @property
    def _is_unheard(self) -> bool:
        return self.ask.hides_text and not self._desk.speaker.is_heard

    def told(self) -> tuple[str, ...]:
        return (*super().told(), *((NO_VOICE,) if self._is_unheard and not self.is_over else ()))

    def tick(self) -> None:
        """Also a voice that falls silent within a trial brings the words."""
        super().tick()
        if self._is_unheard and not self._has_told_of_silence and self.is_asked:
            self._has_told_of_silence = True
            self.query_one(".-sentence", Words).say(self._sentence_lines(self.ask.cue))
            if not self.is_over:
                self.tell((*cue_lines(self.ask.cue), *self.told()))

    def show_cue(self, cue: Cue | None) -> None:
        self.query_one(".-sentence", Words).say(self._sentence_lines(cue))
        for index, box in enumerate(self.query(OptionBox)):
            box.take_away(is_gone=index in self.ask.removed)
        if self._shows_act:
            self._watch()

    @property
    def _shows_act(self) -> bool:
        """The answer is shown, so its picture may move: watch it happen."""
        cue = self.ask.cue
        is_shown = cue is not None and cue.kind is CueKind.ANSWER
        return is_shown and self._desk.animated and are_pictures(self.ask.item)

    @work(exclusive=True, group="watch")
    async def _watch(self) -> None:
        answer = self.ask.item.answer
        option = None if answer is None else self.ask.item.options[answer]
        widgets = self._picture_widgets()
        size = smallest(widgets)
        if answer is None or option is None or option.scene is None or not size.area:
            return
        shown = await asyncio.to_thread(
            moving,
            option.scene,
            columns=size.width,
            lines=size.height,
            encoding=self._desk.encoding,
        )
        if self.is_attached:
            widgets[answer].play(shown, seconds=SCENE_FRAME_SECONDS)

    def show_over(self, feedback: Feedback) -> None:
        self.query_one(".-sentence", Words).say(self._sentence_lines(self.ask.cue))
        for index, box in enumerate(self.query(OptionBox)):
            box.mark(is_right=index == feedback.answer)

    # Answers

    def answer(self, key: str) -> None:
        if key.isdecimal() and self._is_there(int(key) - 1):
            self.responded(self._session.choose(int(key) - 1))

    def on_option_box_chosen(self, event: OptionBox.Chosen) -> None:
        event.stop()
        self.hear(str(event.index + 1))

    def _is_there(self, index: int) -> bool:
        return 0 <= index < len(self.ask.item.options) and index not in self.ask.removed

    # Pictures

    async def paint(self) -> None:
        if self._desk.large:
            for box in self.query(OptionBox):
                box.enlarge()
        item = self.ask.item
        shown = self._picture_widgets()
        scenes = scenes_of(item)
        size = smallest(shown)
        if not scenes or not size.area:
            return
        drawn = await asyncio.to_thread(
            pictures,
            scenes,
            columns=size.width,
            lines=size.height,
            encoding=self._desk.encoding,
        )
        for widget, cells in zip(shown, drawn, strict=True):
            widget.show(cells)
        if self._shows_act:
            self._watch()

    async def draw_ahead(self, upcoming: Ask) -> None:
        scenes, size = scenes_of(upcoming.item), smallest(self._picture_widgets())
        # Only a trial of the same shape has pictures of the same size.
        if len(scenes) == len(scenes_of(self.ask.item)) and scenes and size.area:
            await asyncio.to_thread(
                pictures,
                scenes,
                columns=size.width,
                lines=size.height,
                encoding=self._desk.encoding,
            )

    def _picture_widgets(self) -> list[Picture]:
        return list(self.query(Picture))


def are_pictures(item: Item) -> bool:
    return all(option.scene is not None for option in item.options)


def scenes_of(item: Item) -> tuple[Scene, ...]:
    """The pictures of one screen, drawn at one scale."""
    if are_pictures(item):
        return tuple(option.scene for option in item.options if option.scene is not None)
    return () if item.picture is None else (item.picture,)


def smallest(widgets: list[Picture]) -> Size:
    """The room that every picture has, so that all are drawn alike."""
    return Size(
        min((widget.size.width for widget in widgets), default=0),
        min((widget.size.height for widget in widgets), default=0),
    )
