"""How well caregiver and therapist agree on gestures that both scored."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from drills.core.gestures import Tick
from drills.core.records import Attempt, Trial
from drills.core.therapist import SecondScore
from drills.measures.accuracy import Share
from drills.measures.agreement import ScoreAgreement, compare_scores, cross, kappa
from drills.measures.missing import Missing


@dataclass(frozen=True, slots=True, kw_only=True)
class TickAgreement:
    """How often a tick was set by both, by one alone, and by neither."""

    tick: Tick
    both: int
    caregiver_alone: int
    therapist_alone: int
    neither: int
    kappa: float | Missing

    @property
    def exact(self) -> Share:
        right = self.both + self.neither
        return Share(right=right, of=right + self.caregiver_alone + self.therapist_alone)


@dataclass(frozen=True, slots=True, kw_only=True)
class Agreement:
    """First tries that both scored, up to the end of the range.

    scores: lenience above 0 is a caregiver who scores higher.   ticks: those that anybody set.
    higher, lower: pairs in which the caregiver's score is above or below the therapist's.
    without_first: second scores of tries that the records do not hold, or hold without a score.
    """

    scores: ScoreAgreement
    higher: int
    lower: int
    ticks: tuple[TickAgreement, ...]
    without_first: int

    @property
    def pairs(self) -> int:
        return self.scores.exact.of


def agreement_of(second: Sequence[SecondScore], trials: Iterable[Trial]) -> Agreement | None:
    """None where nothing was scored twice.   trials: as last written.

    Of two second scores of one try the newer counts.
    """
    if not second:
        return None
    newest = {(each.session, each.trial): each for each in sorted(second, key=lambda one: one.at)}
    first = {
        key: trial.first
        for trial in trials
        for key in ((trial.session, trial.trial),)
        if key in newest and trial.counts and trial.first is not None
    }
    pairs = [
        (first[key], each)
        for key, each in newest.items()
        if key in first and first[key].score is not None
    ]
    scores = [(one.score or 0, other.score) for one, other in pairs]
    return Agreement(
        scores=compare_scores(scores),
        higher=sum(one > other for one, other in scores),
        lower=sum(one < other for one, other in scores),
        ticks=tuple(
            _of_tick(tick, pairs)
            for tick in Tick
            if any(tick in one.ticks or tick in other.ticks for one, other in pairs)
        ),
        without_first=len(newest) - len(pairs),
    )


def _of_tick(tick: Tick, pairs: Sequence[tuple[Attempt, SecondScore]]) -> TickAgreement:
    table = cross([(tick in one.ticks, tick in other.ticks) for one, other in pairs], 2)
    (neither, therapist), (caregiver, both) = table
    return TickAgreement(
        tick=tick,
        both=both,
        caregiver_alone=caregiver,
        therapist_alone=therapist,
        neither=neither,
        kappa=kappa(table),
    )
