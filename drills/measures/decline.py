"""Whether answers get worse within sessions: the first third against the last."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import median

from drills.core.kinds import Kind
from drills.core.records import Trial
from drills.measures.accuracy import Share
from drills.measures.comparing import difference
from drills.measures.intervals import Interval
from drills.measures.latency import TOO_SOON_MS
from drills.measures.missing import FEWEST_FOR_PERCENT, Lack, Missing, too_few


@dataclass(frozen=True, slots=True, kw_only=True)
class Answer:
    """right: without help.   latency_ms: of a right answer that was timed, else None."""

    right: bool
    latency_ms: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Decline:
    """drop: the share right in the first thirds less that in the last, above 0 when it fell.

    interval: of the drop, Newcombe's hybrid score.
    latency_ratio: median of the last thirds over that of the first; above 1 is slower.
    """

    first: Share
    last: Share
    drop: float
    interval: Interval
    latency_ratio: float | Missing


def decline(
    sessions: Iterable[Sequence[Answer]], *, fewest: int = FEWEST_FOR_PERCENT
) -> Decline | Missing:
    """The thirds of every session, put together; what does not divide by three is in the middle.

    sessions: answers in the order in which they came.   Definition ours, no source.
    Missing: fewer than `fewest` answers in the thirds; the ratio: fewer than `fewest` latencies.
    """
    first: list[Answer] = []
    last: list[Answer] = []
    for answers in sessions:
        third = len(answers) // 3
        first += answers[:third]
        last += answers[len(answers) - third :]
    drop = difference(_share(first), _share(last), fewest=fewest)
    if isinstance(drop, Missing):
        return drop
    return Decline(
        first=drop.one,
        last=drop.other,
        drop=drop.points,
        interval=drop.interval,
        latency_ratio=_ratio(_latencies(last), _latencies(first), fewest),
    )


def answers_of(trials: Iterable[Trial]) -> list[Answer]:
    """The answers of one session; gestures have no latency, what came too soon has none either."""
    return [
        Answer(
            right=trial.unaided_right,
            latency_ms=first.latency_ms
            if trial.unaided_right
            and trial.asked.kind is not Kind.GESTURE
            and (first.latency_ms or 0) >= TOO_SOON_MS
            else None,
        )
        for trial in trials
        for first in (trial.first,)
        if trial.could_be_alone and first is not None
    ]


def _share(answers: Sequence[Answer]) -> Share:
    return Share(right=sum(answer.right for answer in answers), of=len(answers))


def _latencies(answers: Sequence[Answer]) -> list[float]:
    return [answer.latency_ms for answer in answers if answer.latency_ms is not None]


def _ratio(last: Sequence[float], first: Sequence[float], fewest: int) -> float | Missing:
    lacking = too_few(Lack.TRIALS, min(len(last), len(first)), max(fewest, 1))
    return lacking if lacking is not None else median(last) / median(first)
