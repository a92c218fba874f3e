"""Items one by one, with their pictures and what there is to say of each."""

from __future__ import annotations

import asyncio
from dataclasses import dataclass
from itertools import zip_longest
from typing import ClassVar

from textual import work
from textual.app import ComposeResult
from textual.containers import Container
from textual.content import Content

from drills.core.meanings import Scene
from drills.core.visible import visible
from drills.pictures import can_draw
from drills.tui.gallery import pictures
from drills.tui.layout import lines_of
from drills.tui.room import Room
from drills.tui.screens.room import BACK, Hints, RoomScreen
from drills.tui.screens.trial import smallest
from drills.tui.widgets.key_bar import Hint
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.words import Words

NOT_DRAWN = "These pictures cannot be drawn by this version of the program."
WIDTH = 78
_BEFORE = Hint(key="left", shown="Left", label="one before")
_NEXT = Hint(key="right", shown="Right", label="next")


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """title: one line.   asked: what was asked.   told: what is said of it.

    options: in words, where they are no pictures.
    captions, chosen, scenes: of each picture what it is, when it was chosen, what it shows.
    right: place of the right one among the pictures; None where they are no options.
    """

    title: str
    asked: tuple[str, ...]
    told: tuple[str, ...]
    options: tuple[str, ...] = ()
    captions: tuple[str, ...] = ()
    chosen: tuple[str, ...] = ()
    scenes: tuple[Scene, ...] = ()
    right: int | None = None


class ShownScreen(RoomScreen[int]):
    """Left and Right turn to the items beside it; returns the place of the last one shown."""

    CSS_PATH = "shown.tcss"
    ALSO: ClassVar[frozenset[str]] = frozenset(("left", "right"))

    def __init__(self, room: Room, *, at: int = 0) -> None:
        super().__init__(room)
        self._at = at
        self._scenes: tuple[Scene, ...] = ()

    @property
    def count(self) -> int:
        raise NotImplementedError

    def shown(self, at: int) -> Shown:
        """Raises: ValueError or KeyError when its pictures are no meanings."""
        raise NotImplementedError

    def without_pictures(self, at: int) -> Shown:
        """The same in words."""
        raise NotImplementedError

    def compose_body(self) -> ComposeResult:
        yield Words(classes="-asked")
        yield Words(classes="-answers")
        yield Container(classes="-options")

    def hints(self) -> Hints:
        return (BACK, _BEFORE, _NEXT)

    def on_mount(self) -> None:
        self.show()

    def on_resize(self) -> None:
        self.call_after_refresh(self._paint)

    def pressed(self, key: str) -> None:
        if key in ("left", "right"):
            at = self._at + (1 if key == "right" else -1)
            if 0 <= at < self.count:
                self._at = at
                self.show()
        else:
            super().pressed(key)

    def leave(self) -> None:
        self.done(self._at)

    @work(exclusive=True, group="show")
    async def show(self) -> None:
        """The item whose turn it is."""
        try:
            shown = self.shown(self._at)
            is_drawn = all(can_draw(scene.meaning) for scene in shown.scenes)
        except (ValueError, KeyError):
            is_drawn = False
        if not is_drawn:
            shown = self.without_pictures(self._at)
        self.trouble(None if is_drawn else NOT_DRAWN)
        self.query_one(".-title", Words).say((shown.title,))
        self.query_one(".-asked", Words).say(_folded(shown.asked))
        self.query_one(".-answers", Words).say(_folded(shown.told))
        self._scenes = shown.scenes
        options = self.query_one(".-options", Container)
        await options.remove_children()
        options.set_class(bool(shown.scenes), "-pictures")
        options.set_class(len(shown.scenes) > 2, "-grid")
        if shown.options:
            await options.mount(Words(_folded(shown.options)))
        if shown.scenes:
            await options.mount_all(
                _Frame(caption, chosen=chosen, is_right=at == shown.right)
                for at, (caption, chosen) in enumerate(
                    zip_longest(shown.captions, shown.chosen, fillvalue="")
                )
            )
        self.call_after_refresh(self._paint)

    @work(exclusive=True, group="paint")
    async def _paint(self) -> None:
        widgets = list(self.query(Picture))
        size = smallest(widgets)
        if not size.area or len(widgets) != len(self._scenes):
            return
        drawn = await asyncio.to_thread(
            pictures,
            self._scenes,
            columns=size.width,
            lines=size.height,
            encoding=self.room.desk.encoding,
        )
        for widget, cells in zip(widgets, drawn, strict=True):
            widget.show(cells)


class _Frame(Container):
    """One picture in a frame with its caption above, and below it when it was chosen."""

    def __init__(self, caption: str, *, chosen: str, is_right: bool) -> None:
        super().__init__(classes="-right" if is_right else "")
        self.border_subtitle = Content(chosen)
        self.border_title = Content(visible(caption))

    def compose(self) -> ComposeResult:
        yield Picture()


def _folded(lines: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(
        folded
        for line in lines
        for part in visible(line).split("\n")
        for folded in lines_of(part, width=WIDTH)
    )


def packed(lines: tuple[str, ...]) -> tuple[str, ...]:
    """Short lines side by side, so that the pictures keep their room."""
    found: list[str] = []
    for line in lines:
        if found and len(found[-1]) + 3 + len(line) <= WIDTH:
            found[-1] += f"   {line}"
        else:
            found.append(line)
    return tuple(found)
