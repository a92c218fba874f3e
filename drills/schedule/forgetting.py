"""How fast this person forgets, fitted from the days on which a target came back.

The model is small so that few answers can say something: the chance of knowing a target again
falls by a fixed share over each gap of its rung, and two numbers say how this person's gaps differ
from the ladder's. With no answers the gaps are the ladder's; the more there are, the more the
person's own answers weigh. That forgetting follows one curve for all targets is a simplification.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import product
from math import exp, inf, log, log2
from typing import NamedTuple

from drills.core.plans import SpacingSettings

# How far one person's gaps may lie from the ladder's before anything is known: in two of three
# people within a factor of 1.65 (stretch) and a fifth of the growth from rung to rung.
_STRETCH_SPREAD = 0.5
_GROWTH_SPREAD = 0.2
_STRETCHES = tuple(step * 0.2 - 2.0 for step in range(21))
_GROWTHS = tuple(step * 0.1 + 0.5 for step in range(11))
_PRIORS = sorted(
    (
        (-((stretch / _STRETCH_SPREAD) ** 2 + ((growth - 1) / _GROWTH_SPREAD) ** 2) / 2, *at)
        for at in product(_STRETCHES, _GROWTHS)
        for stretch, growth in (at,)
    ),
    reverse=True,
)
"""The logarithm of how likely each stretch and growth is beforehand, the likeliest first."""
# What is so much less likely (logarithm) than something else changes no digit of a mean.
_FAR_BELOW = 60.0
# A known target is missed now and then by a slip of attention.
_SLIP = 0.03


class Recall(NamedTuple):
    """The first answer after a gap; a plain tuple, since years of practice hold many.

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
    counts = Counter(recalls)
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
    known = _known(recall.gap_days, gap_days, log(retention))
    return _with_guesses(known, recall.effective_k)


def _known(after_days: int, gap_days: float, log_retention: float) -> float:
    return (1 - _SLIP) * exp(log_retention * after_days / gap_days)


def _with_guesses(known: float, effective_k: int) -> float:
    guess = 0.0 if effective_k == 1 else 1 / effective_k
    return guess + (1 - guess) * known


def _near(gap_days: int) -> int:
    """The gap to within a tenth, so that years of answers come to few different ones."""
    return round(2 ** (round(log2(gap_days) * 4) / 4))


@dataclass(frozen=True, slots=True)
class _Answers:
    """After so many days on one rung; by number of options how many were right and wrong.

    highest: no chance of being right makes these answers and all after them likelier (logarithm).
    """

    rung: int
    after_days: int
    of_options: Sequence[tuple[int, int, int]]
    highest: float


def _grouped(counts: Mapping[Recall, int], ladder: Sequence[int]) -> Sequence[_Answers]:
    """In one order, whatever that of `counts`, so that sums of the same answers are the same."""
    found: dict[tuple[int, int], dict[int, list[int]]] = {}
    for recall, count in counts.items():
        at = min(recall.rung, len(ladder) - 1), _near(recall.gap_days)
        told = found.setdefault(at, {}).setdefault(recall.effective_k, [0, 0])
        told[not recall.right] += count
    grouped: list[_Answers] = []
    highest = 0.0
    for (rung, days), of_k in sorted(found.items(), reverse=True):
        of_options = [(k, right, wrong) for k, (right, wrong) in sorted(of_k.items())]
        for _, right, wrong in of_options:
            if right and wrong:
                of = right + wrong
                highest += right * log(right / of) + wrong * log(wrong / of)
        grouped.append(_Answers(rung, days, of_options, highest))
    return grouped[::-1]


def _posterior(
    counts: Mapping[Recall, int], settings: SpacingSettings
) -> dict[tuple[float, float], float]:
    answers = _grouped(counts, settings.ladder_days)
    log_retention = log(settings.retention)
    logs: dict[tuple[float, float], float] = {}
    highest = -inf
    # What is likely beforehand comes first, so that the rest is soon seen to be far below it.
    for prior, stretch, growth in _PRIORS:
        gaps = [exp(stretch) * days**growth for days in settings.ladder_days]
        least = highest - _FAR_BELOW - prior
        logs[stretch, growth] = prior + _log_likelihood(answers, gaps, log_retention, least)
        highest = max(highest, logs[stretch, growth])
    shares = {at: exp(value - highest) for at, value in logs.items()}
    whole = sum(shares.values())
    return {at: share / whole for at, share in shares.items()}


def _log_likelihood(
    answers: Sequence[_Answers], gaps: Sequence[float], log_retention: float, least: float
) -> float:
    """The sum is left early, as nothing, where it cannot reach `least`."""
    total = 0.0
    for each in answers:
        if total + each.highest < least:
            return -inf
        known = _known(each.after_days, gaps[each.rung], log_retention)
        for effective_k, right, wrong in each.of_options:
            chance = _with_guesses(known, effective_k)
            if right:
                total += right * log(chance)
            if wrong:
                total += wrong * log(1 - chance)
    return total
