"""The same items asked twice: what was gained, and whether untreated items gained as much."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from math import sqrt

from drills.core.records import Trial
from drills.measures.accuracy import Share
from drills.measures.chance import two_sided
from drills.measures.missing import FEWEST_FOR_PERCENT, Lack, Missing, too_few


@dataclass(frozen=True, slots=True, kw_only=True)
class PairedGain:
    """Items asked before and after.

    gained: wrong before, right after.   lost: right before, wrong after.
    points: the gain as a share of the items, -1 to 1.   p: exact McNemar, two-sided.
    """

    before: Share
    after: Share
    gained: int
    lost: int
    points: float
    p: float


@dataclass(frozen=True, slots=True, kw_only=True)
class GainOverControl:
    """points: what treated items gained beyond the untreated ones, -2 to 2.

    Each side has its own McNemar test; the difference of the two has none here.
    """

    treated: PairedGain
    control: PairedGain
    points: float


def mcnemar(gained: int, lost: int) -> float:
    """The two-sided exact p of `gained` against `lost`; 1 when nothing changed.

    Source: McNemar 1947, Psychometrika 12:153, in its exact binomial form (from memory).
    Raises: ValueError for a count below 0.
    """
    _check(gained, lost)
    return two_sided(gained, gained + lost, 0.5)


def mcnemar_z(gained: int, lost: int) -> float | Missing:
    """The large-sample statistic without correction; its square is chi-squared with 1 degree.

    Source: as `mcnemar`.   Missing: nothing changed.
    """
    _check(gained, lost)
    changed = gained + lost
    lacking = too_few(Lack.TRIALS, changed, 1)
    return lacking if lacking is not None else (gained - lost) / sqrt(changed)


def paired_gain(
    before: Mapping[str, bool], after: Mapping[str, bool], *, fewest: int = FEWEST_FOR_PERCENT
) -> PairedGain | Missing:
    """The gain of the items that were asked both times; the others are left out.

    before, after: item -> right without help.   Missing: fewer than `fewest` such items.
    """
    both = [item for item in before if item in after]
    lacking = too_few(Lack.ITEMS, len(both), max(fewest, 1))
    if lacking is not None:
        return lacking
    gained = sum(after[item] and not before[item] for item in both)
    lost = sum(before[item] and not after[item] for item in both)
    return PairedGain(
        before=Share(right=sum(before[item] for item in both), of=len(both)),
        after=Share(right=sum(after[item] for item in both), of=len(both)),
        gained=gained,
        lost=lost,
        points=(gained - lost) / len(both),
        p=mcnemar(gained, lost),
    )


def answers_by_item(
    trials: Iterable[Trial], *, key: Callable[[Trial], str] = lambda trial: trial.asked.item_id
) -> dict[str, bool]:
    """Each item's first answer that counts: right without help or not.

    trials: of one probe, oldest first.   key: what is held to be the same item.
    """
    found: dict[str, bool] = {}
    for trial in trials:
        if trial.counts:
            found.setdefault(key(trial), trial.unaided_right)
    return found


def gain_over_control(
    treated: PairedGain | Missing, control: PairedGain | Missing
) -> GainOverControl | Missing:
    """The gain of treated items less that of untreated ones; Missing where either gain is."""
    if isinstance(treated, Missing):
        return treated
    if isinstance(control, Missing):
        return control
    return GainOverControl(treated=treated, control=control, points=treated.points - control.points)


def _check(gained: int, lost: int) -> None:
    if gained < 0 or lost < 0:
        raise ValueError(f"{gained} gained and {lost} lost cannot be")
