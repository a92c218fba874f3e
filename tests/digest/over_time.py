"""Invented courses: checks and practice over weeks, with numbers known beforehand."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from drills.core.gestures import Tick
from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import ProbeSettings
from drills.core.records import Entry, Trial, latest_trials
from drills.core.therapist import SecondScore
from drills.digest import Digest, make
from drills.digest.checks import Checked
from tests.digest.invented import FIRST, LABELS, LAST, PLAN, closed, opened, week
from tests.measures.made import ACTIVE, MONDAY, WAVE, asked, trial

CHECKED = Target(kind=Kind.MATCH, name="full_passive", group="contact")
PROBED = replace(PLAN, probes=ProbeSettings(on=True))


def check(
    at: datetime, rights: Mapping[ItemSet, int], *, of: int = 20, first_item: int = 0
) -> list[Trial]:
    """One check: the first so many items of each set right."""
    return [
        trial(
            "right" if number < right else "wrong",
            of=replace(
                asked(CHECKED, item_set=item_set),
                top_level=0,
                item_id=f"{item_set.value} {number + first_item}",
            ),
            at=at + timedelta(seconds=10 * number),
            seconds=10,
            session=f"check {at:%m-%d}",
        )
        for item_set, right in rights.items()
        for number in range(of)
    ]


def practised(at: datetime, right: int, of: int = 6) -> list[Entry]:
    """One session of practice: active sentences, `right` of `of` alone."""
    session = f"p {at:%m-%d}"
    given = [
        trial(
            *(("right",) if number < right else ("wrong", "right")),
            target=ACTIVE,
            at=at + timedelta(seconds=30 * number),
            seconds=30,
            session=session,
        )
        for number in range(of)
    ]
    return [opened(session, at), *given, closed(session, at + timedelta(minutes=10))]


def made(
    baseline: Sequence[int],
    during: Sequence[int],
    after: Sequence[int] = (),
    *,
    control: int | None = None,
    whole_course: bool = False,
) -> Digest:
    """Checks a day apart, then a session of practice and a check each week, then checks alone.

    The counts are of 20 probe items right; the last practice week is the week of `invented`.
    """
    start = MONDAY - timedelta(weeks=max(len(during) - 1, 0))

    def rights(right: int) -> dict[ItemSet, int]:
        found = {ItemSet.PROBE: right}
        return found if control is None else {**found, ItemSet.CONTROL: control}

    days: list[tuple[datetime, int]] = [
        (start - timedelta(days=len(baseline) - number), right)
        for number, right in enumerate(baseline)
    ]
    days += [(start + timedelta(weeks=n, days=1), right) for n, right in enumerate(during)]
    stopped = MONDAY + timedelta(hours=1)
    days += [(stopped + timedelta(weeks=n + 1), right) for n, right in enumerate(after)]
    trials = [each for at, right in days for each in check(at, rights(right))]
    practice = [
        entry
        for number in range(len(during))
        for entry in practised(start + timedelta(weeks=number), min(6, number))
    ]
    last = LAST if not after else (stopped + timedelta(weeks=len(after))).date()
    first = FIRST if not whole_course else days[0][0].date()
    return make(
        practice,
        PROBED,
        first=first,
        last=last,
        upcoming=(),
        labels=LABELS,
        earlier=() if whole_course else practice,
        checked=Checked(trials=trials, days=[at.date() for at, _ in days]),
        history=[*latest_trials(practice), *trials],
        whole_course=whole_course,
    )


def with_checks(*, weeks: int, baseline: int = 3) -> Digest:
    return made(range(2, 2 + baseline), [5 + number for number in range(weeks)], control=9)


def course() -> Digest:
    return made([2, 4, 3], [5, 7, 8, 11], [12, 11], control=9, whole_course=True)


def scored_twice(count: int, *, higher: int = 0) -> Digest:
    """The invented week with `count` gestures that the therapist scored as well.

    higher: how many of them the caregiver scored one point higher.
    """
    tries = [
        trial(3, target=WAVE, session="t", ticks=(Tick.GRIP,) if number % 2 else ())
        for number in range(count)
    ]
    second = [
        SecondScore(
            at=MONDAY,
            by="Invented Therapist",
            session=each.session,
            trial=each.trial,
            score=2 if number < higher else 3,
            ticks=(Tick.GRIP,) if number % 2 else (),
        )
        for number, each in enumerate(tries)
    ]
    return make(
        [*week(), *tries],
        PLAN,
        first=FIRST,
        last=LAST,
        upcoming=(),
        labels=LABELS,
        second_scores=second,
    )
