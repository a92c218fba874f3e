"""Simulated patients whose truth is known, held against the intervals that the program gives."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from random import Random
from statistics import fmean
from unittest.mock import patch

from scipy.stats import binomtest

from drills.core.items import ItemSet, Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, ProbeSettings
from drills.core.profiles import Profile
from drills.core.question_words import GRID, cell_of
from drills.core.records import Trial
from drills.digest.values import FEWEST_FOR_PERCENT, Digest
from drills.measures import decline, sides
from drills.measures.intervals import Interval, newcombe_difference, wilson
from drills.measures.missing import Missing
from drills.rehearsal import MemoryRecords, Rehearsal
from tests.edges import QuietVoice
from tests.rehearsal.exact import watching

FIRST = date(2026, 1, 5)
WEEK = timedelta(days=7)
WEEKS = 2
PLAN = Plan(
    name="Recovery",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=12),
        BlockPlan(kind=Kind.QUESTION, names=("yes-no:full-passive",), trials=12),
        BlockPlan(kind=Kind.QUESTION, names=("grid",), trials=12),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=8),
        BlockPlan(kind=Kind.ACT_OUT, names=("object-cleft",), trials=8, options=3),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "stop"), trials=6),
    ),
    probes=ProbeSettings(on=True, treated=("full-passive",), related=("object-cleft",)),
)
_ROUNDING = 1e-9
_TINY = 1e-12
NAMES = ("active", "full-passive", "object-cleft", "C3", "gesture")


def random_profile(number: int, *, learning: bool) -> Profile:
    """The truth of patient `number`."""
    rng = Random(f"truth of {number}")

    def perhaps(share: float, low: float, high: float) -> float:
        value = rng.uniform(low, high)
        return value if rng.random() < share else 0.0

    return Profile(
        name=f"patient-{number}",
        label="made for a count",
        knows={name: rng.uniform(0.02, 0.98) for name in NAMES},
        words=rng.uniform(0.9, 1.0),
        first_noun=rng.random(),
        cue_help=rng.uniform(0.1, 0.5),
        missed=rng.uniform(0.0, 0.3),
        tiring=rng.uniform(0.0, 0.8),
        latency_ms=rng.randint(1500, 8000),
        guessing=perhaps(0.5, 0.0, 0.4),
        fading=perhaps(0.5, 0.0, 0.3),
        yes_bias=perhaps(0.3, 0.2, 0.9),
        neglected=rng.choice(tuple(Side)),
        neglect=perhaps(0.3, 0.1, 0.5),
        rare_words=rng.uniform(0.3, 1.0),
        place=rng.choice((1, 2)),
        place_liking=perhaps(0.2, 0.1, 0.4),
        perseveration=perhaps(0.2, 0.1, 0.4),
        learning=rng.uniform(0.002, 0.03) if learning else 0.0,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Held:
    """One interval against the truth.   of: trials it rests on, the fewer of two sides.

    expected: how likely such an interval covers the truth when the very trials were fixed before,
    worked out from the chances of all outcomes. What is measured can differ from its mean by luck,
    because practice goes by the answers, or by a mistake.
    """

    measure: str
    of: int
    truth: float
    low: float
    high: float
    expected: float

    @property
    def is_covered(self) -> bool:
        return _within(self.truth, Interval(low=self.low, high=self.high))


Known = list[tuple[Trial, float]]


def rehearse(profile: Profile, material: Material, *, seed: int) -> tuple[Digest, Known]:
    """The digest of the last week, and all trials with the chance of each to be right alone."""
    known: list[tuple[str, float]] = []
    records = MemoryRecords()
    # Nobody sees these pictures, and to draw them takes most of the time.
    with watching(known), patch("drills.exercises.showing._shares", _all_unlike):
        home = Rehearsal(
            plan=PLAN,
            material=material,
            records=records,
            voice=QuietVoice(),
            guide=(),
            program="0",
            profile=profile,
            first=FIRST,
            seed=seed,
        ).run(WEEKS)
        last = FIRST + WEEKS * WEEK
        digest = home.digest(last - WEEK, last - timedelta(days=1))
    responses = iter(known)
    trials: Known = []
    for trial in records.history():
        own = [next(responses) for _ in trial.attempts]
        assert {item for item, _ in own} == {trial.asked.item_id}
        trials.append((trial, own[0][1]))
    assert next(responses, None) is None
    return digest, trials


def _all_unlike(_target: object, foils: Sequence[object], _lines: int) -> tuple[float, ...]:
    return (1.0,) * len(foils)


def held(digest: Digest, known: Known) -> Iterator[Held]:
    """Every interval that is told of the week."""
    alone = [(t, share) for t, share in known if t.attempts and t.attempts[0].cue_level == 0]
    practice = [each for each in alone if each[0].asked.item_set is ItemSet.TREATED]
    now = [each for each in practice if _day(each[0]) >= digest.first]
    before = [each for each in practice if digest.first - WEEK <= _day(each[0]) < digest.first]
    for line in digest.lines:
        own = _shares(now, lambda t, n=line.name: t.asked.target.name == n)
        if line.item_set is ItemSet.TREATED and len(own) >= FEWEST_FOR_PERCENT:
            yield _held(f"practice {line.kind.value}", own, line.interval)
        if line.change is not None and line.change.interval is not None:
            earlier = _shares(before, lambda t, n=line.name: t.asked.target.name == n)
            if min(len(own), len(earlier)) >= FEWEST_FOR_PERCENT:
                yield _difference("change", own, earlier, line.change.interval)
    for grid in digest.grids:
        for cell in grid.cells:
            where = (cell.band, cell.grammar)
            own = _shares(now, lambda t, w=where: _is_cell(t, w))
            if len(own) >= FEWEST_FOR_PERCENT:
                yield _held("grid cell", own, cell.interval)
    for line in digest.checks.lines if digest.checks else ():
        for point in line.points:
            own = [
                share
                for t, share in alone
                if (t.asked.item_set, t.asked.target.name) == (line.item_set, line.name)
                and _day(t) == point.day
            ]
            yield _held("check", own, point.interval)
    yield from _of_the_week(now)


def _of_the_week(now: Known) -> Iterator[Held]:
    """Decline within sessions and difference of sides, over the trials given without help."""
    for kind in (Kind.MATCH, Kind.QUESTION):
        sessions: dict[str, Known] = {}
        for t, share in now:
            if t.asked.kind is kind:
                sessions.setdefault(t.session, []).append((t, share))
        fell = decline.decline(decline.answers_of([t for t, _ in own]) for own in sessions.values())
        if not isinstance(fell, Missing):
            first, last = [], []
            for own in sessions.values():
                shares = [share for _, share in own]
                first += shares[: len(shares) // 3]
                last += shares[len(shares) - len(shares) // 3 :]
            yield _difference("decline", first, last, fell.interval)
    found = sides.side_difference([t for t, _ in now]).accuracy
    if not isinstance(found, Missing):
        left, right = (_shares(now, lambda t, s=side: t.asked.side is s) for side in Side)
        yield _difference("sides", left, right, found.interval)


def _is_cell(trial: Trial, where: object) -> bool:
    return trial.asked.target.name == GRID and cell_of(trial.asked.level) == where


def _day(trial: Trial) -> date:
    return trial.started_at.date()


def _shares(known: Known, wanted: Callable[[Trial], bool]) -> list[float]:
    return [share for trial, share in known if wanted(trial)]


def _held(measure: str, own: Sequence[float], interval: Interval) -> Held:
    truth = fmean(own)
    return Held(
        measure=measure,
        of=len(own),
        truth=truth,
        low=interval.low,
        high=interval.high,
        expected=sum(
            share
            for right, share in enumerate(outcomes(own))
            if _within(truth, _wilson(right, len(own)))
        ),
    )


def _difference(
    measure: str, one: Sequence[float], other: Sequence[float], interval: Interval
) -> Held:
    truth = fmean(one) - fmean(other)
    return Held(
        measure=measure,
        of=min(len(one), len(other)),
        truth=truth,
        low=interval.low,
        high=interval.high,
        expected=sum(
            share * likely
            for right, share in enumerate(outcomes(one))
            for before, likely in enumerate(outcomes(other))
            if share * likely > _TINY
            and _within(truth, _newcombe(right, len(one), before, len(other)))
        ),
    )


def outcomes(shares: Sequence[float]) -> list[float]:
    """Chance of each number right, 0 to all."""
    spread = [1.0]
    for share in shares:
        spread = [
            miss * (1 - share) + hit * share
            for miss, hit in zip([*spread, 0.0], [0.0, *spread], strict=True)
        ]
    return spread


_wilson = lru_cache(maxsize=None)(wilson)
_newcombe = lru_cache(maxsize=100_000)(newcombe_difference)


def _within(truth: float, interval: Interval) -> bool:
    # What is worked out by two ways differs by rounding.
    return interval.low - _ROUNDING <= truth <= interval.high + _ROUNDING


def counted(every: Sequence[Held]) -> Mapping[str, tuple[int, int]]:
    """Measure -> intervals that cover the truth, and how many there are."""
    found: dict[str, tuple[int, int]] = {}
    for each in every:
        covered, of = found.get(each.measure, (0, 0))
        found[each.measure] = covered + each.is_covered, of + 1
    return dict(sorted(found.items()))


def told(every: Sequence[Held]) -> str:
    """A line a measure: coverage with its exact 95 % interval, misses on either side, sizes."""
    lines: list[str] = []
    for measure, (covered, of) in (*counted(every).items(), ("all", _sum(every))):
        own = [each for each in every if measure in (each.measure, "all")]
        sure = binomtest(covered, of).proportion_ci()
        below = sum(each.truth < each.low and not each.is_covered for each in own)
        above = sum(each.truth > each.high and not each.is_covered for each in own)
        lines.append(
            f"{measure:18} {100 * covered / of:5.1f} % of {of:5} "
            f"({100 * sure.low:.1f}-{100 * sure.high:.1f}), "
            f"expected {100 * fmean(each.expected for each in own):.1f}; "
            f"truth below {below}, above {above}; "
            f"n {fmean(each.of for each in own):.0f}; "
            f"wide {fmean(each.high - each.low for each in own):.2f}"
        )
    return "\n".join(lines)


def _sum(every: Sequence[Held]) -> tuple[int, int]:
    return sum(each.is_covered for each in every), len(every)
