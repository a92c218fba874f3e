"""How fast this person forgets, fitted from the days on which a target came back.

The model is small so that few answers can say something: the chance of knowing a target again
falls by a fixed share over each gap of its rung, and two numbers say how this person's gaps differ
from the ladder's. With no answers the gaps are the ladder's; the more there are, the more the
person's own answers weigh. That forgetting follows one curve for all targets is a simplification.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import product
from math import exp, log, log2

from drills.core.plans import SpacingSettings

# How far one person's gaps may lie from the ladder's before anything is known: in two of three
# people within a factor of 1.65 (stretch) and a fifth of the growth from rung to rung.
_STRETCH_SPREAD = 0.5
_GROWTH_SPREAD = 0.2
_STRETCHES = tuple(step * 0.2 - 2.0 for step in range(21))
_GROWTHS = tuple(step * 0.1 + 0.5 for step in range(11))
# A known target is missed now and then by a slip of attention.
_SLIP = 0.03


@dataclass(frozen=True, slots=True, kw_only=True)
class Recall:
    """The first answer after a gap.

    rung: before the answer, 0 or more.   gap_days: since the target was last practised, 1 or more.
    effective_k: 1 where nobody can guess.
    """

    rung: int
    gap_days: int
    right: bool
    effective_k: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Forgetting:
    """Gaps after which a target is still known with the wanted chance, one a rung of the ladder.

    recalls: how many answers they rest on; 0 when these were too few and the gaps are the ladder's.
    """

    gaps_days: tuple[int, ...]
    recalls: int


def fit(recalls: Iterable[Recall], settings: SpacingSettings) -> Forgetting:
    """The gaps of this person: the mean of the logarithm over what is likely, given the answers.

    Bayes' rule over a grid of two numbers, with normal priors around the ladder. No gap is longer
    than the ladder's by more than the plan's `fitted_most_times`, nor shorter by as much.
    """
    counts = Counter(replace(recall, gap_days=_near(recall.gap_days)) for recall in recalls)
    total = sum(counts.values())
    if total < settings.fitted_least_recalls:
        return Forgetting(gaps_days=settings.ladder_days, recalls=0)
    weights = _posterior(counts, settings)
    most = log(settings.fitted_most_times)
    gaps: list[int] = []
    for days in settings.ladder_days:
        mean = sum(
            weight * (stretch + growth * log(days)) for (stretch, growth), weight in weights.items()
        )
        bounded = min(max(mean, log(days) - most), log(days) + most)
        gaps.append(max(round(exp(bounded)), gaps[-1] if gaps else 1, 1))
    return Forgetting(gaps_days=tuple(gaps), recalls=total)


def chance_right(recall: Recall, gap_days: float, retention: float) -> float:
    """How likely the answer is right: known still, or guessed.

    gap_days: after which `retention` of what was known is left.
    """
    known: float = (1 - _SLIP) * retention ** (recall.gap_days / gap_days)
    guess = 0.0 if recall.effective_k == 1 else 1 / recall.effective_k
    return guess + (1 - guess) * known


def _near(gap_days: int) -> int:
    """The gap to within a tenth, so that years of answers come to few different ones."""
    return round(2 ** (round(log2(gap_days) * 4) / 4))


def _posterior(
    counts: Counter[Recall], settings: SpacingSettings
) -> dict[tuple[float, float], float]:
    logs = {
        (stretch, growth): _log_prior(stretch, growth)
        + _log_likelihood(counts, settings.ladder_days, stretch, growth, settings.retention)
        for stretch, growth in product(_STRETCHES, _GROWTHS)
    }
    highest = max(logs.values())
    shares = {at: exp(value - highest) for at, value in logs.items()}
    whole = sum(shares.values())
    return {at: share / whole for at, share in shares.items()}


def _log_prior(stretch: float, growth: float) -> float:
    return -((stretch / _STRETCH_SPREAD) ** 2 + ((growth - 1) / _GROWTH_SPREAD) ** 2) / 2


def _log_likelihood(
    counts: Counter[Recall],
    ladder: Sequence[int],
    stretch: float,
    growth: float,
    retention: float,
) -> float:
    gaps = [exp(stretch) * days**growth for days in ladder]
    total = 0.0
    for recall, count in counts.items():
        chance = chance_right(recall, gaps[min(recall.rung, len(gaps) - 1)], retention)
        total += count * log(chance if recall.right else 1 - chance)
    return total
