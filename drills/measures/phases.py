"""Baseline against treatment in one person: overlap of the phases, and distance of their means.

Higher is better throughout; turn the sign of scores for which less is better. Points of one person
hang together in time, so that standard errors here are too small, and no p is given.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import sqrt
from statistics import fmean, stdev

from drills.measures.accuracy import Share
from drills.measures.missing import (
    FEWEST_BASELINE,
    FEWEST_IN_PHASE,
    NO_SPREAD,
    Lack,
    Missing,
    too_few,
)
from drills.measures.trend import kendall_s


class NapBand(StrEnum):
    WEAK = "weak"
    MEDIUM = "medium"
    STRONG = "strong"


class TauUForm(StrEnum):
    """PUBLISHED divides by the pairs between the phases alone, and can pass 1.

    WITHIN_RANGE divides by those and the pairs within the baseline, and stays within -1 to 1.
    """

    PUBLISHED = "pairs between phases"
    WITHIN_RANGE = "pairs between phases and within baseline"


@dataclass(frozen=True, slots=True, kw_only=True)
class Nap:
    """value: 0 to 1, 0.5 is no effect.   standard_error: 0 at both ends, where it says nothing."""

    value: float
    standard_error: float
    band: NapBand
    baseline: int
    treatment: int


@dataclass(frozen=True, slots=True, kw_only=True)
class TauU:
    """A value is of no use without the form that made it."""

    value: float
    form: TauUForm
    baseline: int
    treatment: int


@dataclass(frozen=True, slots=True, kw_only=True)
class StandardisedGain:
    """value: in standard deviations of the baseline. No benchmark is known for these tasks."""

    value: float
    baseline: int
    after: int


def nap(
    baseline: Sequence[float], treatment: Sequence[float], *, fewest: int = FEWEST_IN_PHASE
) -> Nap | Missing:
    """Non-overlap of all pairs: the share of pairs in which treatment is higher, ties as halves.

    Source: Parker and Vannest 2009, Behavior Therapy 40:357; standard error: Hanley and McNeil
    1982, Radiology 143:29, out of the points themselves and not their approximation from the area
    alone, with ties as halves, as common software for single cases has it.
    Missing: fewer than `fewest` points in a phase.
    """
    lacking = _few(baseline, treatment, fewest)
    if lacking is not None:
        return lacking
    value = (_between(baseline, treatment) / (len(baseline) * len(treatment)) + 1) / 2
    return Nap(
        value=value,
        standard_error=_standard_error(baseline, treatment, value),
        band=nap_band(value),
        baseline=len(baseline),
        treatment=len(treatment),
    )


def nap_band(value: float) -> NapBand:
    """To .65 weak, to .92 medium, from .93 strong, of the value rounded to two places.

    Source: Parker and Vannest 2009 (from memory).
    """
    if value < 0.655:
        return NapBand.WEAK
    return NapBand.MEDIUM if value < 0.925 else NapBand.STRONG


def tau(
    baseline: Sequence[float], treatment: Sequence[float], *, fewest: int = FEWEST_IN_PHASE
) -> float | Missing:
    """Pairs in which treatment is higher less those in which it is lower, as a share: -1 to 1.

    Source: Parker, Vannest and Davis 2011, Behavior Modification 35:303.   Missing: as `nap`.
    """
    lacking = _few(baseline, treatment, fewest)
    if lacking is not None:
        return lacking
    return _between(baseline, treatment) / (len(baseline) * len(treatment))


def tau_u(
    baseline: Sequence[float],
    treatment: Sequence[float],
    *,
    form: TauUForm = TauUForm.PUBLISHED,
    fewest: int = FEWEST_BASELINE,
) -> TauU | Missing:
    """`tau`, less what the baseline rose by itself.

    Source: Parker, Vannest, Davis and Sauber 2011, Behavior Therapy 42:284.
    Missing: fewer than `fewest` points in a phase.
    """
    lacking = too_few(Lack.BASELINE, len(baseline), max(fewest, 1)) or _few(
        baseline, treatment, fewest
    )
    if lacking is not None:
        return lacking
    before, pairs = len(baseline), len(baseline) * len(treatment)
    if form is TauUForm.WITHIN_RANGE:
        pairs += before * (before - 1) // 2
    s = _between(baseline, treatment) - kendall_s(range(before), baseline)
    return TauU(value=s / pairs, form=form, baseline=before, treatment=len(treatment))


def above_all_baseline(baseline: Sequence[float], treatment: Sequence[float]) -> Share | Missing:
    """How many points of treatment lie above every point of baseline.

    Source: Parker, Vannest and Davis 2011, Behavior Modification 35:303, there "PND".
    Missing: no baseline.
    """
    lacking = too_few(Lack.BASELINE, len(baseline), 1)
    if lacking is not None:
        return lacking
    best = max(baseline)
    return Share(right=sum(value > best for value in treatment), of=len(treatment))


def standardised_gain(
    baseline: Sequence[float], after: Sequence[float], *, fewest: int = FEWEST_BASELINE
) -> StandardisedGain | Missing:
    """d: the mean after less the mean of the baseline, in standard deviations of the baseline.

    Source: as Busk and Serlin 1992 define it (from memory).   Missing: fewer than `fewest`
    baseline points, no point after, or a baseline without spread: see then `raw_gain` and `nap`.
    """
    lacking = too_few(Lack.BASELINE, len(baseline), max(fewest, 2)) or too_few(
        Lack.POINTS, len(after), 1
    )
    if lacking is not None:
        return lacking
    # Equal values can have a mean a hair beside them, and so a deviation that is none.
    if min(baseline) == max(baseline):
        return NO_SPREAD
    return StandardisedGain(
        value=(fmean(after) - fmean(baseline)) / stdev(baseline),
        baseline=len(baseline),
        after=len(after),
    )


def raw_gain(baseline: Sequence[float], after: Sequence[float]) -> float | Missing:
    """The mean after less the mean of the baseline.   Missing: no point on a side."""
    lacking = too_few(Lack.POINTS, min(len(baseline), len(after)), 1)
    return lacking if lacking is not None else fmean(after) - fmean(baseline)


def _few(baseline: Sequence[float], treatment: Sequence[float], fewest: int) -> Missing | None:
    return too_few(Lack.POINTS, min(len(baseline), len(treatment)), max(fewest, 1))


def _between(baseline: Sequence[float], treatment: Sequence[float]) -> int:
    """Pairs in which treatment is higher less those in which it is lower."""
    return sum((after > before) - (after < before) for before in baseline for after in treatment)


def _standard_error(baseline: Sequence[float], treatment: Sequence[float], value: float) -> float:
    """Of the share of pairs `value`, after Hanley and McNeil."""
    one, other = len(baseline), len(treatment)
    # How a point of one phase fares, on average, against all of the other.
    passed_by = [(_between([before], treatment) / other + 1) / 2 for before in baseline]
    passing = [(_between(baseline, [after]) / one + 1) / 2 for after in treatment]
    spread = (
        value * (1 - value)
        + (other - 1) * (fmean(share * share for share in passed_by) - value * value)
        + (one - 1) * (fmean(share * share for share in passing) - value * value)
    )
    # Rounding may leave a hair below nothing at the ends.
    return sqrt(max(spread, 0.0) / (one * other))
