"""What went wrong: first responses by kind of foil, gestures by what was ticked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from drills.core.gestures import Tick
from drills.core.items import Foil, Kind
from drills.core.records import Trial


@dataclass(frozen=True, slots=True, kw_only=True)
class GestureScores:
    """scores: how many first tries got 0, 1, 2 and 3.   ticks: in the order of `Tick`.

    help_levels: of the cues before those tries, together.
    hindered: tries that pain, weakness or reach spoilt; they are in no other number.
    """

    scores: tuple[int, int, int, int]
    ticks: Mapping[Tick, int]
    help_levels: int
    hindered: int

    @property
    def of(self) -> int:
        return sum(self.scores)

    @property
    def mean(self) -> float | None:
        """Mean score, 0 to 3; None without a try."""
        if not self.of:
            return None
        return sum(score * count for score, count in enumerate(self.scores)) / self.of

    @property
    def mean_help(self) -> float | None:
        """Mean level of the help before the first try, 0 for none; None without a try."""
        return self.help_levels / self.of if self.of else None


def foil_of(trial: Trial) -> Foil | None:
    """Why the first response was wrong; None for a right one, a gesture, or no response."""
    first = trial.first
    if first is None or first.choice is None:
        return None
    return trial.asked.foil(first.choice)


def by_foil(trials: Iterable[Trial]) -> Mapping[Foil, int]:
    """How often each kind of foil was the first response, in the order of `Foil`."""
    counts = dict.fromkeys(Foil, 0)
    for trial in trials:
        foil = foil_of(trial)
        if foil is not None:
            counts[foil] += 1
    return counts


def gesture_scores(trials: Iterable[Trial]) -> GestureScores:
    """The scores and ticks of first tries at gestures; other kinds of trial are passed over."""
    scores = [0, 0, 0, 0]
    ticks = dict.fromkeys(Tick, 0)
    hindered = help_levels = 0
    for trial in trials:
        first = trial.first
        if trial.asked.kind is not Kind.GESTURE or first is None:
            continue
        if not trial.counts:
            hindered += 1
            continue
        if first.score is None:
            continue
        scores[first.score] += 1
        help_levels += first.cue_level
        for tick in first.ticks:
            ticks[tick] += 1
    return GestureScores(
        scores=(scores[0], scores[1], scores[2], scores[3]),
        ticks=ticks,
        help_levels=help_levels,
        hindered=hindered,
    )
