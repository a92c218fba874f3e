"""How well two or more raters agree, on classes or on scores that have an order.

A table has a row for each class of the first rater and a column for each of the second. Where
nearly all scores are the same, kappa collapses however often the raters agree: give the share of
exact agreement beside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import fmean

from drills.measures.accuracy import Share
from drills.measures.missing import FEWEST_PAIRS, NO_SPREAD, Lack, Missing, too_few

Counts = Sequence[Sequence[int]]
Weights = Sequence[Sequence[float]]


class Weighting(StrEnum):
    """How much a disagreement counts: by its steps, or by their square."""

    LINEAR = "linear"
    QUADRATIC = "quadratic"


class KappaBand(StrEnum):
    POOR = "poor"
    SLIGHT = "slight"
    FAIR = "fair"
    MODERATE = "moderate"
    SUBSTANTIAL = "substantial"
    ALMOST_PERFECT = "almost perfect"


@dataclass(frozen=True, slots=True, kw_only=True)
class ScoreAgreement:
    """exact: the same score.   lenience: mean of the first rater's score less the second's.

    kappa: unweighted.   linear, quadratic: weighted.   lenience: None without a pair.
    """

    exact: Share
    lenience: float | None
    kappa: float | Missing
    linear: float | Missing
    quadratic: float | Missing


def cross(pairs: Sequence[tuple[int, int]], classes: int) -> tuple[tuple[int, ...], ...]:
    """The table of `pairs` of classes, each 0 to `classes` - 1.

    Raises: ValueError for a class outside.
    """
    counts = [[0] * classes for _ in range(classes)]
    for one, other in pairs:
        if not (0 <= one < classes and 0 <= other < classes):
            raise ValueError(f"{one} and {other} are not both within 0 to {classes - 1}")
        counts[one][other] += 1
    return tuple(tuple(row) for row in counts)


def exact_agreement(table: Counts) -> Share:
    """How often both raters said the same."""
    return Share(right=sum(row[place] for place, row in enumerate(table)), of=sum(map(sum, table)))


def kappa(table: Counts, *, fewest: int = FEWEST_PAIRS) -> float | Missing:
    """Agreement beyond chance of two raters: 1 is full, 0 is chance.

    Source: Cohen 1960, Educational and Psychological Measurement 20:37.
    Missing: fewer than `fewest` pairs, or one class only.   Raises: ValueError unless square.
    """
    classes = range(len(table))
    return weighted_kappa(table, [[float(i != j) for j in classes] for i in classes], fewest=fewest)


def weighted_kappa(
    table: Counts,
    weights: Weighting | Weights = Weighting.LINEAR,
    *,
    fewest: int = FEWEST_PAIRS,
) -> float | Missing:
    """Kappa in which some disagreements count more than others.

    weights: of disagreement, 0 on the diagonal. From weights of agreement: 1 less each of them.
    Source: Cohen 1968, Psychological Bulletin 70:213 (from memory).
    Missing: fewer than `fewest` pairs, or no disagreement was to be expected by chance.
    Raises: ValueError unless table and weights are square and of one size.
    """
    classes = len(table)
    disagreement = _weights(weights, classes)
    if any(len(row) != classes for row in (*table, *disagreement)) or len(disagreement) != classes:
        raise ValueError("a table of agreement and its weights are square and of one size")
    of = sum(map(sum, table))
    lacking = too_few(Lack.PAIRS, of, max(fewest, 1))
    if lacking is not None:
        return lacking
    rows = [sum(row) for row in table]
    columns: list[int] = [sum(column) for column in zip(*table, strict=True)]
    cells = [(i, j) for i in range(classes) for j in range(classes)]
    seen = sum(disagreement[i][j] * table[i][j] for i, j in cells)
    expected = sum(disagreement[i][j] * rows[i] * columns[j] for i, j in cells) / of
    return 1 - seen / expected if expected else NO_SPREAD


def fleiss_kappa(table: Counts, *, fewest: int = FEWEST_PAIRS) -> float | Missing:
    """Agreement beyond chance of any number of raters.

    table: a row for each thing rated, in it how many raters chose each class.
    Source: Fleiss 1971, Psychological Bulletin 76:378.
    Missing: fewer than `fewest` things rated, or one class only.
    Raises: ValueError unless each thing has the same number of raters, at least two.
    """
    lacking = too_few(Lack.RATED, len(table), max(fewest, 1))
    if lacking is not None:
        return lacking
    raters = sum(table[0])
    if raters < 2 or any(sum(row) != raters for row in table):
        raise ValueError("each thing needs the same number of raters, at least two")
    of = len(table) * raters
    # Whole numbers, so that full agreement on one class is told from nearly full.
    totals: list[int] = [sum(column) for column in zip(*table, strict=True)]
    squares = sum(total * total for total in totals)
    if squares == of * of:
        return NO_SPREAD
    seen = sum(n * (n - 1) for row in table for n in row) / (of * (raters - 1))
    expected = squares / (of * of)
    return (seen - expected) / (1 - expected)


def kappa_band(value: float) -> KappaBand:
    """Words for a kappa, of the value rounded to two places.

    Source: Landis and Koch 1977, Biometrics 33:159.
    """
    if value < 0:
        return KappaBand.POOR
    bands = (
        (0.205, KappaBand.SLIGHT),
        (0.405, KappaBand.FAIR),
        (0.605, KappaBand.MODERATE),
        (0.805, KappaBand.SUBSTANTIAL),
    )
    return next((band for below, band in bands if value < below), KappaBand.ALMOST_PERFECT)


def compare_scores(
    pairs: Sequence[tuple[int, int]], *, scores: int = 4, fewest: int = FEWEST_PAIRS
) -> ScoreAgreement:
    """Two raters' scores of the same tries.

    pairs: (caregiver, therapist), so that a lenience above 0 is a caregiver who scores higher.
    scores: how many there are; 4 for 0 to 3.   Raises: ValueError for a score outside.
    """
    table = cross(pairs, scores)
    return ScoreAgreement(
        exact=exact_agreement(table),
        lenience=fmean(one - other for one, other in pairs) if pairs else None,
        kappa=kappa(table, fewest=fewest),
        linear=weighted_kappa(table, Weighting.LINEAR, fewest=fewest),
        quadratic=weighted_kappa(table, Weighting.QUADRATIC, fewest=fewest),
    )


def _weights(weights: Weighting | Weights, classes: int) -> Weights:
    if not isinstance(weights, Weighting):
        return weights
    steps = [[float(abs(i - j)) for j in range(classes)] for i in range(classes)]
    if weights is Weighting.LINEAR:
        return steps
    return [[step * step for step in row] for row in steps]
