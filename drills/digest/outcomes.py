"""The outcome: what checks show before, during and after practice, apart from all practice."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from enum import StrEnum

from drills.core.kinds import ItemSet
from drills.core.plans import ProbeSettings
from drills.core.records import Trial
from drills.measures import pairs, phases
from drills.measures.accuracy import Share, count
from drills.measures.missing import FEWEST_BASELINE, Lack, Missing, too_few
from drills.measures.pairs import GainOverControl, PairedGain
from drills.measures.phases import Nap, StandardisedGain, TauU

# The newest checks of a phase in which something is still to be learnt (common practice, no
# source).
NEWEST = 3

Key = tuple[ItemSet, str]
Days = Mapping[Key, Mapping[date, Sequence[Trial]]]


class Phase(StrEnum):
    """BASELINE: before any practice.   MAINTENANCE: once practice has stopped for weeks."""

    BASELINE = "baseline"
    PRACTICE = "practice"
    MAINTENANCE = "maintenance"


@dataclass(frozen=True, slots=True, kw_only=True)
class PhaseSpan:
    """first, last: of the phase, cut at the end of the range.   checks: days of them within."""

    phase: Phase
    first: date
    last: date
    checks: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Effect:
    """One phase against the baseline; a point is the share right in one check.

    baseline, points: how many there are.   after: the newest of `points`, which alone are in `gain`
    and `standardised`; in maintenance all of them.
    gain: mean of those less the mean of the baseline, -1 to 1.   tau: 2 nap - 1.
    standardised: in standard deviations of the baseline; no benchmark is known for comprehension,
    so that it has no label.
    """

    phase: Phase
    baseline: int
    points: int
    after: int
    gain: float | Missing
    nap: Nap | Missing
    tau: float | Missing
    tau_u: TauU | Missing
    standardised: StandardisedGain | Missing


@dataclass(frozen=True, slots=True, kw_only=True)
class OutcomeLine:
    """One construction in what it stands for.

    effects: practice, and maintenance once there is any.
    first_whole, last_whole: days of the first check, and of the newest answers to the same items.
    same_items: the items asked both times; Missing before practice, too.
    over_control: beyond what unrelated sentences gained; None for these, and where none is checked.
    """

    item_set: ItemSet
    name: str
    label: str
    effects: tuple[Effect, ...]
    first_whole: date | None
    last_whole: date | None
    same_items: PairedGain | Missing
    over_control: GainOverControl | Missing | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcomes:
    """phases: those begun, in their order.   lines: as those of the checks."""

    phases: tuple[PhaseSpan, ...]
    lines: tuple[OutcomeLine, ...]

    @property
    def phase(self) -> Phase:
        """The one that the end of the range lies in."""
        return self.phases[-1].phase if self.phases else Phase.BASELINE


def phase_of(day: date, practised: Sequence[date], settings: ProbeSettings) -> Phase:
    """The phase of a check.   practised: all days of practice up to the end of the range, rising.

    A pause after which practice went on is a part of it.
    """
    before = bisect_left(practised, day)
    if not before:
        return Phase.BASELINE
    if before == len(practised) and day >= practised[-1] + _pause(settings):
        return Phase.MAINTENANCE
    return Phase.PRACTICE


def outcomes_of(
    found: Days,
    practised: Sequence[date],
    settings: ProbeSettings,
    labels: Mapping[str, str],
    *,
    last: date,
) -> Outcomes:
    """found: the trials of checks by day, days rising, none after `last`."""
    phase = {
        day: phase_of(day, practised, settings)
        for day in sorted({day for days in found.values() for day in days})
    }
    control = _same_items(
        _together([days for (item_set, _), days in found.items() if item_set is ItemSet.CONTROL]),
        phase,
    )[2]
    has_control = any(item_set is ItemSet.CONTROL for item_set, _ in found)
    return Outcomes(
        phases=_spans(phase, practised, settings, last),
        lines=tuple(
            _line(
                key, days, phase, labels, control if has_control and not _is_control(key) else None
            )
            for key, days in found.items()
        ),
    )


def _is_control(key: Key) -> bool:
    return key[0] is ItemSet.CONTROL


def _pause(settings: ProbeSettings) -> timedelta:
    weeks = min(settings.maintenance_weeks, default=1)
    return timedelta(weeks=weeks)


def _spans(
    phase: Mapping[date, Phase],
    practised: Sequence[date],
    settings: ProbeSettings,
    last: date,
) -> tuple[PhaseSpan, ...]:
    checks = {each: [day for day, of_day in phase.items() if of_day is each] for each in Phase}
    spans = []
    if checks[Phase.BASELINE]:
        end = practised[0] - timedelta(days=1) if practised else last
        # A check on the first day of practice comes before it.
        end = max(end, checks[Phase.BASELINE][-1])
        spans.append((Phase.BASELINE, checks[Phase.BASELINE][0], end))
    if practised:
        stopped = last >= practised[-1] + _pause(settings)
        spans.append((Phase.PRACTICE, practised[0], practised[-1] if stopped else last))
        if stopped:
            spans.append((Phase.MAINTENANCE, practised[-1] + timedelta(days=1), last))
    return tuple(
        PhaseSpan(phase=each, first=first, last=end, checks=len(checks[each]))
        for each, first, end in spans
    )


def _line(
    key: Key,
    days: Mapping[date, Sequence[Trial]],
    phase: Mapping[date, Phase],
    labels: Mapping[str, str],
    control: PairedGain | Missing | None,
) -> OutcomeLine:
    points = {each: [_share(days[day]) for day in days if phase[day] is each] for each in Phase}
    first, newest, same = _same_items(days, phase)
    return OutcomeLine(
        item_set=key[0],
        name=key[1],
        label=labels.get(key[1], key[1]),
        effects=tuple(
            effect(each, points[Phase.BASELINE], points[each])
            for each in (Phase.PRACTICE, Phase.MAINTENANCE)
            if each is Phase.PRACTICE or points[each]
        ),
        first_whole=first,
        last_whole=newest,
        same_items=same,
        over_control=None if control is None else pairs.gain_over_control(same, control),
    )


def effect(phase: Phase, baseline: Sequence[float], points: Sequence[float]) -> Effect:
    """`points` of one phase against the baseline, both oldest first."""
    after = points if phase is Phase.MAINTENANCE else points[-NEWEST:]
    # Whatever else is short, a short baseline is what cannot be mended any more.
    short = too_few(Lack.BASELINE, len(baseline), FEWEST_BASELINE)
    return Effect(
        phase=phase,
        baseline=len(baseline),
        points=len(points),
        after=len(after),
        gain=phases.raw_gain(baseline, after),
        nap=short or phases.nap(baseline, points),
        tau=short or phases.tau(baseline, points),
        tau_u=short or phases.tau_u(baseline, points),
        standardised=short or phases.standardised_gain(baseline, after),
    )


Same = tuple[date | None, date | None, PairedGain | Missing]


def _same_items(days: Mapping[date, Sequence[Trial]], phase: Mapping[date, Phase]) -> Same:
    """The first check against the newest answers to its items once practice has begun.

    Short checks ask one half and the other by turns, so that two of them are a whole one.
    """
    rising = sorted(days)
    if not rising:
        return None, None, Missing(lack=Lack.ITEMS, have=0, need=1)
    before = pairs.answers_by_item(days[rising[0]])
    after: dict[str, bool] = {}
    newest: date | None = None
    for day in reversed([day for day in rising[1:] if phase[day] is not Phase.BASELINE][-2:]):
        answers = pairs.answers_by_item(days[day])
        if len(before.keys() & after.keys()) < len(before):
            after = {**answers, **after}
            newest = newest or day
    return rising[0], newest, pairs.paired_gain(before, after)


def _together(
    lines: Sequence[Mapping[date, Sequence[Trial]]],
) -> dict[date, list[Trial]]:
    found: dict[date, list[Trial]] = {}
    for days in lines:
        for day, trials in days.items():
            found.setdefault(day, []).extend(trials)
    return found


def _share(trials: Sequence[Trial]) -> float:
    share: Share = count(trials).unaided
    return share.right / share.of
