"""What is built so far of an event that is to be acted out."""

from __future__ import annotations

from collections.abc import Collection

from drills.core.items import CueKind, Item
from drills.core.kinds import Side
from drills.core.meanings import Scene, Transfer
from drills.exercises.events import events_of, figures_of, option_of, places_of, questions


class Building:
    """The doer in place, then an event to be seen; figures go by their places, from 0.

    doer: who is in the doer's place.   event: the option that is shown.
    """

    def __init__(self, item: Item) -> None:
        self._item = item
        self._questions = questions(item)
        self._casts = tuple(places_of(item, index) for index in range(len(item.options)))
        self.figures = figures_of(item)
        self.doer: int | None = None
        self.event: int | None = None

    @property
    def is_of_giving(self) -> bool:
        return isinstance(events_of(self._item)[0], Transfer)

    @property
    def is_doer_left(self) -> bool:
        scene = self._item.options[0].scene
        return scene is None or scene.side is Side.LEFT

    @property
    def question(self) -> str:
        """What is asked now: for the doer, or for the other."""
        return self._questions[0 if self.doer is None else 1]

    @property
    def words(self) -> str:
        """What is shown, in words; empty while nothing is."""
        return "" if self.event is None else self._item.options[self.event].text or ""

    def scene(self, option: int) -> Scene | None:
        return self._item.options[option].scene

    @property
    def right(self) -> tuple[int, int]:
        """Doer and other of the right event."""
        if self._item.answer is None:
            raise TypeError(f"item {self._item.id} has no right event")
        return self._casts[self._item.answer]

    def gone(self, removed: Collection[int]) -> frozenset[int]:
        """Figures that play in no event that is left.   removed: options that help took away."""
        left = [cast for option, cast in enumerate(self._casts) if option not in removed]
        return frozenset(range(len(self.figures))) - {place for cast in left for place in cast}

    def playing(self, *, alone: bool) -> frozenset[int]:
        """Figures that are on the stage.   alone: what is shown has left their frames empty."""
        if self.event is not None:
            return frozenset(self._casts[self.event]) if alone else frozenset()
        return frozenset() if self.doer is None else frozenset((self.doer,))

    def option_with(self, other: int) -> int | None:
        """The option of the doer in place and `other`; None where there is no such event."""
        if self.doer is None or other == self.doer:
            return None
        return option_of(self._item, self.doer, other)

    def follow(self, kind: CueKind) -> None:
        """Help that names the doer puts the doer in place; the answer is shown as it happens."""
        if kind is CueKind.NAME_DOER:
            self.doer, self.event = self.right[0], None
        elif kind is CueKind.ANSWER:
            self.doer, self.event = None, self._item.answer
