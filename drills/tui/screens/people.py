"""The people and animals of the pictures with their names, a few a page."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator

from textual import work
from textual.app import ComposeResult
from textual.containers import Horizontal, Vertical

from drills.core.meanings import Act, Scene
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Noun, Sort
from drills.pictures import ANIMAL_KEYS, PEOPLE_KEYS, can_draw
from drills.tui.desk import Desk
from drills.tui.gallery import pictures
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.screens.trial import smallest
from drills.tui.speaker import Line
from drills.tui.widgets.choices import Choices
from drills.tui.widgets.key_bar import CLOSE, HEAR_AGAIN, KeyBar
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

PAIRS_A_PAGE = 2
FIGURES = frozenset((*PEOPLE_KEYS, *ANIMAL_KEYS))


class PeopleScreen(KeyedScreen[None]):
    """Two pictures a page, the names under the figures."""

    CSS_PATH = "people.tcss"

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        pairs = list(pairs_of(desk.home.material.lexicon))
        self._pages = [pairs[at : at + PAIRS_A_PAGE] for at in range(0, len(pairs), PAIRS_A_PAGE)]
        self._page = 0

    def compose(self) -> ComposeResult:
        yield Words(("The people in the pictures",), classes="-title")
        with Horizontal(classes="-pairs"):
            for _ in range(PAIRS_A_PAGE):
                with Vertical():
                    yield Picture()
                    with Horizontal(classes="-names"):
                        yield Words(classes="-name")
                        yield Words(classes="-name")
        yield Choices((("1", "Next page"), ("2", "Back")), classes="-close")
        yield KeyBar((HEAR_AGAIN, CLOSE))

    def on_screen_resume(self) -> None:
        self.call_after_refresh(self._turn, 0)

    def on_resize(self) -> None:
        self.call_after_refresh(self._paint)

    def on_screen_suspend(self) -> None:
        self._desk.speaker.stop()

    def pressed(self, key: str) -> None:
        if not self._desk.presses.is_meant(key):
            return
        if key == "1":
            self._turn(1)
        elif key in ("2", "escape", "p"):
            self.dismiss(None)
        elif key == "space":
            self._say()

    @property
    def _shown(self) -> list[tuple[Noun, Noun, Scene]]:
        return self._pages[self._page] if self._pages else []

    def _turn(self, pages: int) -> None:
        self._page = (self._page + pages) % max(1, len(self._pages))
        names = [noun.singular for left, right, _ in self._shown for noun in (left, right)]
        for at, widget in enumerate(self.query(".-name").results(Words)):
            widget.say((names[at],) if at < len(names) else ())
        self._paint()
        self._say()

    def _say(self) -> None:
        names = [noun.singular for left, right, _ in self._shown for noun in (left, right)]
        self._desk.speaker.say([Line(utterance=Utterance(phrases=tuple(f"{n}." for n in names)))])

    @work(exclusive=True, group="paint")
    async def _paint(self) -> None:
        widgets = list(self.query(Picture))
        size = smallest(widgets)
        if not size.area:
            return
        drawn = await asyncio.to_thread(
            pictures,
            tuple(scene for _, _, scene in self._shown),
            columns=size.width,
            lines=size.height,
            encoding=self._desk.encoding,
        )
        for at, widget in enumerate(widgets):
            if at < len(drawn):
                widget.show(drawn[at])
            else:
                widget.clear()


def pairs_of(lexicon: Lexicon) -> Iterator[tuple[Noun, Noun, Scene]]:
    """Everyone in the pictures, two by two, facing each other."""
    for sort in (Sort.PERSON, Sort.ANIMAL):
        # A noun that shares another's figure would show the same picture under a second name.
        cast = [
            noun
            for noun in lexicon.nouns.values()
            if noun.sort is sort and noun.drawn_as is None and noun.key in FIGURES
        ]
        for at in range(0, len(cast), 2):
            left = cast[at]
            # With an odd number, the last stands beside the first once more.
            right = cast[at + 1] if at + 1 < len(cast) else cast[0]
            # Any two can be drawn standing so, also a child beside an adult.
            apart = Act(verb="follow", doer=left.key, done_to=right.key, negated=True)
            if left is not right and can_draw(apart):
                yield left, right, Scene(meaning=apart)
