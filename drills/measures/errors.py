"""What went wrong: first responses by kind of foil, gestures by what was ticked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from drills.core.gestures import Tick
from drills.core.items import Foil, Kind
from drills.core.records import Trial
from drills.measures.accuracy import Share

# How the matrix names the right one of the options that are pictures.
RIGHT = "right"


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


@dataclass(frozen=True, slots=True, kw_only=True)
class Breakdown:
    """What the trials without a right first response came to.

    by_foil: in the order of `Foil`.   no_answer: ended without a response.
    """

    by_foil: Mapping[Foil, int]
    no_answer: int

    @property
    def of(self) -> int:
        return sum(self.by_foil.values()) + self.no_answer

    def share(self, foil: Foil | None) -> Share:
        """Of all errors, those of one kind; None for no answer."""
        return Share(right=self.no_answer if foil is None else self.by_foil[foil], of=self.of)


@dataclass(frozen=True, slots=True, kw_only=True)
class Matrix:
    """How often each option was chosen where each was wanted.

    counts: a row for each of `wanted`, in it a count for each of `chosen`.
    """

    wanted: tuple[str, ...]
    chosen: tuple[str, ...]
    counts: tuple[tuple[int, ...], ...]


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


def breakdown(trials: Iterable[Trial]) -> Breakdown:
    """Errors by kind of foil, and trials given up without an answer; gestures are passed over.

    Definition ours, no source.
    """
    kept = [trial for trial in trials if trial.asked.kind is not Kind.GESTURE]
    return Breakdown(
        by_foil=by_foil(kept),
        no_answer=sum(trial.ended and trial.first is None for trial in kept),
    )


def chosen_for_wanted(trial: Trial) -> tuple[str, str] | None:
    """What was wanted and what the first response was; None for a gesture or no response.

    Words where the options are words; else the target's name, and the kind of foil or `RIGHT`.
    """
    first, answer = trial.first, trial.asked.answer
    if first is None or first.choice is None or answer is None:
        return None
    wanted = trial.asked.options[answer].get("text")
    chosen = trial.asked.options[first.choice].get("text")
    if wanted is not None and chosen is not None:
        return str(wanted), str(chosen)
    foil = trial.asked.foil(first.choice)
    return trial.asked.target.name, RIGHT if foil is None else foil.value


def matrix(pairs: Sequence[tuple[str, str]]) -> Matrix:
    """Wanted against chosen, each in the order of the alphabet.   pairs: (wanted, chosen)."""
    wanted = sorted({one for one, _ in pairs})
    chosen = sorted({other for _, other in pairs})
    row = {name: place for place, name in enumerate(wanted)}
    column = {name: place for place, name in enumerate(chosen)}
    counts = [[0] * len(chosen) for _ in wanted]
    for one, other in pairs:
        counts[row[one]][column[other]] += 1
    return Matrix(
        wanted=tuple(wanted), chosen=tuple(chosen), counts=tuple(tuple(line) for line in counts)
    )


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
