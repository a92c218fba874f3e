"""What is still known after how many days."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from itertools import pairwise

from drills.core.records import Trial, practice_day
from drills.measures.accuracy import Share
from drills.measures.intervals import Interval, wilson

# Days between two tests; a longer gap counts with the longest of these that it reaches.
INTERVALS_DAYS = (1, 2, 4, 7, 14, 28, 56)


@dataclass(frozen=True, slots=True, kw_only=True)
class Recall:
    """One test of one thing.   key: what was tested.   right: without help."""

    key: str
    day: date
    right: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Retained:
    """share: right at the first test after at least `days`, and fewer than the next interval.

    days: 0 for further tests on the same day, which say nothing of keeping.
    interval: Wilson's; all of 0 to 1 where nothing was tested.
    """

    days: int
    share: Share
    interval: Interval


def retention(
    recalls: Iterable[Recall], *, intervals_days: tuple[int, ...] = INTERVALS_DAYS
) -> tuple[Retained, ...]:
    """The same day, then each interval, empty ones too.

    recalls: in any order of keys, each key in the order of time. The first of a key has nothing
    before it and counts nowhere; one on an earlier day, from a clock set back, neither.
    intervals_days: rising, the first of them 1 or more.   Definition ours, no source.
    Raises: ValueError for intervals that do not rise.
    """
    steps = (0, *intervals_days)
    if any(after <= before for before, after in pairwise(steps)):
        raise ValueError(f"{intervals_days} do not rise from 1 or more")
    right, asked = dict.fromkeys(steps, 0), dict.fromkeys(steps, 0)
    last: dict[str, date] = {}
    for recall in recalls:
        before = last.get(recall.key)
        if before is not None and recall.day < before:
            continue
        last[recall.key] = recall.day
        if before is None:
            continue
        gap = (recall.day - before).days
        step = max(step for step in steps if step <= gap)
        # A gap shorter than the first interval is no interval, and no same day either.
        if gap and not step:
            continue
        asked[step] += 1
        right[step] += recall.right
    return tuple(
        Retained(
            days=step,
            share=Share(right=right[step], of=asked[step]),
            interval=wilson(right[step], asked[step]),
        )
        for step in steps
    )


def recalls_of(
    trials: Iterable[Trial],
    *,
    day_turns_at_hour: int,
    key: Callable[[Trial], str] = lambda trial: str(trial.asked.target),
) -> list[Recall]:
    """One test a trial that counts and did not begin with help.

    key: what is held to be the same.
    """
    return [
        Recall(
            key=key(trial),
            day=practice_day(trial.started_at, turns_at_hour=day_turns_at_hour),
            right=trial.unaided_right,
        )
        for trial in trials
        if trial.could_be_alone
    ]
