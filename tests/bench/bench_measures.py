"""The measures of a weekly digest beside pandas, scipy and statsmodels over the same trials.

Run it: python -m pytest tests/bench/bench_measures.py -s

A million invented trials of 1,000 weeks. Both sides give the same numbers for each of 12
constructions, which is checked, and are timed in the same run: for the last week, and for all weeks
at once. Here a week's trials are at hand, as the files of a month give them; pandas takes them out
of the frame of all. Neither side reads a file: `bench_ledger.py` does.
"""

from __future__ import annotations

import gc
import time
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import timedelta
from random import Random
from typing import Any

import numpy as np
import pytest
from scipy.stats import binom, binomtest, median_abs_deviation
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from drills.core.items import Foil, Kind, Target
from drills.core.kinds import Side
from drills.core.records import Asked, Attempt, Trial
from drills.measures import (
    accuracy,
    chance,
    comparing,
    cues,
    decline,
    errors,
    intervals,
    latency,
    missing,
    retention,
    sides,
)
from tests.measures.made import MONDAY, asked

pd = pytest.importorskip("pandas", reason="the peer of this benchmark is pandas: install it")

TRIALS, A_WEEK, SESSIONS_A_WEEK = 1_000_000, 1_000, 5
NAMES = tuple(f"construction-{number:02}" for number in range(12))
GROUPS = tuple("abcdefghij")
FOILS = ("reversal", "verb", "noun")
TOP_LEVEL = 7
COLUMNS = (
    *("week", "session", "day", "name", "group", "side"),
    *("choice", "options", "latency_ms", "level"),
)

Numbers = dict[str, list[float]]


def invented() -> tuple[list[Trial], Any]:
    """The trials, oldest first, and the same as a frame."""
    rng = Random(1)
    kinds: dict[tuple[str, str, Side], Asked] = {}
    for number, name in enumerate(NAMES):
        for group in GROUPS:
            for side in Side:
                options = 2 + number % 3
                of = asked(Target(kind=Kind.MATCH, name=name, group=group), options=options)
                kinds[name, group, side] = replace(of, side=side)
    trials, rows = [], []
    for number in range(TRIALS):
        week, within = divmod(number, A_WEEK)
        session = within * SESSIONS_A_WEEK // A_WEEK
        at = MONDAY + timedelta(weeks=week, days=session, seconds=15 * (within % 200))
        key = (rng.choice(NAMES), rng.choice(GROUPS), rng.choice((Side.LEFT, Side.RIGHT)))
        of = kinds[key]
        options = len(of.options)
        choice = 0 if rng.random() < 0.7 else rng.randrange(options)
        latency_ms = round(rng.lognormvariate(8, 0.5))
        level = 0 if choice == 0 else rng.randint(1, TOP_LEVEL)
        attempts = [
            Attempt(right=choice == 0, cue_level=0, at=at, choice=choice, latency_ms=latency_ms)
        ]
        if choice:
            attempts.append(Attempt(right=True, cue_level=level, at=at, choice=0))
        trials.append(
            Trial(
                session=f"s{week}-{session}",
                trial=str(number),
                started_at=at,
                at=at,
                block=0,
                asked=of,
                attempts=tuple(attempts),
                ended=True,
            )
        )
        rows.append(
            (
                week,
                session,
                7 * week + session,
                *key[:2],
                key[2].value,
                choice,
                options,
                latency_ms,
                level,
            )
        )
    frame = pd.DataFrame(rows, columns=list(COLUMNS))
    frame["right"] = frame["choice"] == 0
    return trials, frame


def here(now: Sequence[Trial], before: Sequence[Trial]) -> Numbers:
    found: Numbers = {}
    earlier = by_name(before)
    for name, trials in sorted(by_name(now).items()):
        share = accuracy.count(trials).unaided
        wilson = intervals.wilson(share.right, share.of)
        change = comparing.difference(share, accuracy.count(earlier[name]).unaided)
        assert not isinstance(change, missing.Missing)
        chances = [1 / trial.asked.effective_k for trial in trials]
        timed = latency.summarise(trials)
        used = cues.summarise(trials)
        foils = errors.breakdown(trials).by_foil
        assert timed.median_ms is not None
        assert used.dependence is not None
        found[name] = [
            *(share.right, share.of, wilson.low, wilson.high),
            *(change.points, change.interval.low, change.interval.high),
            *(chance.upper_tail(share.right, chances), chance.lower_tail(share.right, chances)),
            *(timed.median_ms, timed.slow, timed.too_soon, used.dependence),
            *(foils[Foil(foil)] for foil in FOILS),
        ]
    sessions: dict[str, list[Trial]] = {}
    for trial in now:
        sessions.setdefault(trial.session, []).append(trial)
    fallen = decline.decline([decline.answers_of(trials) for trials in sessions.values()])
    assert not isinstance(fallen, missing.Missing)
    assert isinstance(fallen.latency_ratio, float)
    found["decline"] = [
        *(fallen.drop, fallen.interval.low, fallen.interval.high, fallen.latency_ratio)
    ]
    sided = sides.side_difference(now).accuracy
    assert not isinstance(sided, missing.Missing)
    found["sides"] = [sided.points, sided.interval.low, sided.interval.high]
    for options, choices in sides.choices_of(now).items():
        bias = sides.place_bias(choices, options)
        assert not isinstance(bias, missing.Missing)
        found[f"places {options}"] = [*bias.chosen, *bias.p]
    kept = retention.retention(retention.recalls_of(now, day_turns_at_hour=4))
    found["kept right"] = [one.share.right for one in kept]
    found["kept of"] = [one.share.of for one in kept]
    return found


def by_name(trials: Sequence[Trial]) -> dict[str, list[Trial]]:
    found: dict[str, list[Trial]] = {}
    for trial in trials:
        found.setdefault(trial.asked.target.name, []).append(trial)
    return found


def peer(now: Any, before: Any) -> Numbers:
    found: Numbers = {}
    earlier = before.groupby("name")["right"].agg(["sum", "count"])
    for name, rows in now.groupby("name"):
        right, of = int(rows["right"].sum()), len(rows)
        was_right, was_of = (int(each) for each in earlier.loc[name])
        guess = 1 / int(rows["options"].iloc[0])
        took = rows.loc[rows["right"], "latency_ms"]
        kept = took[took >= latency.TOO_SOON_MS]
        limit = kept.median() + 3 * 1.4826 * median_abs_deviation(kept)
        counts = rows["choice"].value_counts()
        level = rows["level"]
        found[str(name)] = [
            *(right, of, *proportion_confint(right, of, method="wilson")),
            right / of - was_right / was_of,
            *confint_proportions_2indep(
                right, of, was_right, was_of, method="newcomb", compare="diff"
            ),
            *(binom.sf(right - 1, of, guess), binom.cdf(right, of, guess)),
            *(kept.median(), (kept > limit).sum(), len(took) - len(kept)),
            (level / TOP_LEVEL).mean(),
            *(int(counts.get(number, 0)) for number in range(1, len(FOILS) + 1)),
        ]
    place = now.groupby(["week", "session"]).cumcount()
    of_session = now.groupby(["week", "session"])["right"].transform("size")
    first, last = now[place < of_session // 3], now[place >= of_session - of_session // 3]
    found["decline"] = [
        *apart(first, last),
        median_latency(last) / median_latency(first),
    ]
    found["sides"] = apart(now[now["side"] == "left"], now[now["side"] == "right"])
    for options, rows in now.groupby("options"):
        chosen = [int((rows["choice"] == number).sum()) for number in range(options)]
        found[f"places {options}"] = [
            *chosen,
            *(binomtest(count, len(rows), 1 / options).pvalue for count in chosen),
        ]
    gap = now.groupby(["name", "group"])["day"].diff()
    edges = [0, *retention.INTERVALS_DAYS, np.inf]
    step = pd.cut(gap, edges, right=False, labels=False)
    kept = now["right"].groupby(step).agg(["sum", "count"]).reindex(range(8), fill_value=0)
    found["kept right"], found["kept of"] = kept["sum"].tolist(), kept["count"].tolist()
    return found


def apart(one: Any, other: Any) -> list[float]:
    counts = (one["right"].sum(), len(one), other["right"].sum(), len(other))
    interval = confint_proportions_2indep(*counts, method="newcomb", compare="diff")
    return [one["right"].mean() - other["right"].mean(), *interval]


def median_latency(rows: Any) -> float:
    return rows.loc[
        rows["right"] & (rows["latency_ms"] >= latency.TOO_SOON_MS), "latency_ms"
    ].median()


def seconds(make: Callable[[], Numbers], rounds: int) -> tuple[float, Numbers]:
    """The best of several rounds, in processor time: what other programs do is not counted."""
    best, found = float("inf"), {}
    for _ in range(rounds):
        gc.collect()
        began = time.process_time()
        found = make()
        best = min(best, time.process_time() - began)
    return best, found


def test_a_week_and_all_weeks_beside_pandas() -> None:
    trials, frame = invented()
    weeks = TRIALS // A_WEEK
    week = trials[-A_WEEK:], trials[-2 * A_WEEK : -A_WEEK]
    halves = trials[TRIALS // 2 :], trials[: TRIALS // 2]

    def pandas_week() -> Numbers:
        return peer(frame[frame["week"] == weeks - 1], frame[frame["week"] == weeks - 2])

    def pandas_halves() -> Numbers:
        return peer(frame[frame["week"] >= weeks // 2], frame[frame["week"] < weeks // 2])

    print()
    for what, ours, theirs, rounds in (
        (f"{A_WEEK:,} of {TRIALS:,} trials", lambda: here(*week), pandas_week, 5),
        (f"all {TRIALS:,}, half against half", lambda: here(*halves), pandas_halves, 1),
    ):
        took, found = seconds(ours, rounds)
        took_pandas, found_pandas = seconds(theirs, rounds)
        assert list(found) == list(found_pandas)
        for name, numbers in found.items():
            assert numbers == pytest.approx(found_pandas[name], rel=1e-6, abs=1e-9), name
        print(
            f"{what:38} here {took:7.3f} s   pandas and scipy {took_pandas:7.3f} s   "
            f"ratio {took_pandas / took:6.2f}"
        )
