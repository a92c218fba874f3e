"""The truth of a simulated patient: how likely each answer is, worked out and not drawn.

The patient decides by chance; here every outcome of every chance is gone through, each with its
probability, so that nothing of the patient is written a second time.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Sequence
from contextlib import AbstractContextManager
from random import Random
from typing import Any, TypeVar
from unittest.mock import patch

from drills.core.gestures import Tick
from drills.core.items import Item
from drills.rehearsal.patient import Patient

Outcome = TypeVar("Outcome", bound=Hashable)
_RIGHT_SCORE = 2


class _Draw(float):
    """A number from 0 to 1 that is not known yet: to compare it is to choose a way."""

    ways: Ways

    def __lt__(self, share: float) -> bool:
        return self.ways.turn([share, 1 - share]) == 0

    def __gt__(self, share: float) -> bool:
        return self.ways.turn([1 - share, share]) == 0

    __le__, __ge__ = __lt__, __gt__
    __hash__ = float.__hash__


class Ways(Random):
    """Chance that goes every way, one after the other."""

    def __init__(self) -> None:
        super().__init__(0)
        self._taken: list[int] = []
        self._open: list[tuple[list[int], float]] = [([], 1.0)]
        self._place = 0
        self.share = 1.0

    def every(self, decide: Callable[[], Outcome]) -> dict[Outcome, float]:
        """Each outcome of `decide`, which takes its chance from here, with its probability."""
        found: dict[Outcome, float] = {}
        self._open = [([], 1.0)]
        while self._open:
            self._taken, self.share = self._open.pop()
            self._place = 0
            outcome = decide()
            found[outcome] = found.get(outcome, 0.0) + self.share
        return found

    def turn(self, shares: Sequence[float]) -> int:
        """The way that is gone here; the others are kept for later."""
        if self._place < len(self._taken):
            self._place += 1
            return self._taken[self._place - 1]
        likely = [way for way, share in enumerate(shares) if share > 0]
        for way in likely[1:]:
            self._open.append(([*self._taken, way], self.share * shares[way]))
        self.share *= shares[likely[0]]
        self._taken = [*self._taken, likely[0]]
        self._place += 1
        return likely[0]

    def random(self) -> float:
        draw = _Draw()
        draw.ways = self
        return draw

    def choice(self, seq: Any) -> Any:
        return seq[self.turn([1 / len(seq)] * len(seq))]


def chances_of(patient: Patient, item: Item, cue_level: int = 0) -> dict[int, float]:
    """How likely each option is taken."""
    ways = Ways()
    apart = patient.apart(ways)
    return ways.every(lambda: apart.choose(item, cue_level=cue_level, removed=frozenset()))


def scores_of(
    patient: Patient, item: Item, cue_level: int = 0
) -> dict[tuple[int, tuple[Tick, ...]], float]:
    """How likely the caregiver gives each score."""
    ways = Ways()
    apart = patient.apart(ways)
    return ways.every(lambda: apart.score(item, cue_level=cue_level))


class Watched(Patient):
    """A patient of whom it is kept how likely each response was to be right.

    known: item and the probability that a response without help is right, a row a response.
    """

    known: list[tuple[str, float]]

    def choose(self, item: Item, *, cue_level: int, removed: frozenset[int]) -> int:
        if not isinstance(self._rng, Ways):
            right = 0.0 if cue_level or item.answer is None else chances_of(self, item)[item.answer]
            self.known.append((item.id, right))
        return super().choose(item, cue_level=cue_level, removed=removed)

    def score(self, item: Item, *, cue_level: int) -> tuple[int, tuple[Tick, ...]]:
        if not isinstance(self._rng, Ways):
            right = sum(
                share
                for (score, _), share in scores_of(self, item, cue_level).items()
                if score >= _RIGHT_SCORE
            )
            self.known.append((item.id, right))
        return super().score(item, cue_level=cue_level)


def watching(known: list[tuple[str, float]]) -> AbstractContextManager[Any]:
    """Rehearsals that begin in this context write into `known`."""

    class Kept(Watched):
        pass

    Kept.known = known
    return patch("drills.rehearsal.weeks.Patient", Kept)
