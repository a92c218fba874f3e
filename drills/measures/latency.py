"""How fast right answers came, with what stands out marked and not thrown away.

Source of the rule: Leys et al. 2013, Journal of Experimental Social Psychology 49:764, with three
deviations. Right answers without help only: a wrong or helped one measures something else. No
gestures: what is timed there is how long the caregiver took to score.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import median

from drills.core.kinds import Kind
from drills.core.records import Trial

# A press so soon after the prompt is no answer to it.
TOO_SOON_MS = 300
DEVIATIONS = 3.0
# Makes the median absolute deviation of a normal distribution its standard deviation.
NORMAL_SCALE = 1.4826


@dataclass(frozen=True, slots=True, kw_only=True)
class Latency:
    """of: answers measured.   too_soon: left out.   slow: marked, still in the median.

    median_ms: None without an answer.
    """

    of: int
    median_ms: float | None
    slow: int
    too_soon: int


def scaled_deviation(values: Sequence[float]) -> float:
    """The median distance from the median, scaled to a normal standard deviation."""
    middle = median(values)
    return NORMAL_SCALE * median(abs(value - middle) for value in values)


def bounds(values: Sequence[float], *, deviations: float = DEVIATIONS) -> tuple[float, float]:
    """Below and above which a value stands out."""
    middle, reach = median(values), deviations * scaled_deviation(values)
    return middle - reach, middle + reach


def summarise(trials: Iterable[Trial]) -> Latency:
    """The latency of unaided right answers to sentences and words."""
    measured = [
        trial.first.latency_ms
        for trial in trials
        if trial.asked.kind is not Kind.GESTURE
        and trial.unaided_right
        and trial.first is not None
        and trial.first.latency_ms is not None
    ]
    kept = [value for value in measured if value >= TOO_SOON_MS]
    too_soon = len(measured) - len(kept)
    if not kept:
        return Latency(of=0, median_ms=None, slow=0, too_soon=too_soon)
    _, above = bounds(kept)
    return Latency(
        of=len(kept),
        median_ms=median(kept),
        slow=sum(value > above for value in kept),
        too_soon=too_soon,
    )
