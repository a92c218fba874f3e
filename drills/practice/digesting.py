"""The digest of one practice folder: what of it is read, once for all measures."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import TYPE_CHECKING

from drills.core.kinds import ItemSet
from drills.core.records import Entry
from drills.core.therapist import SecondScore
from drills.digest import Digest, make
from drills.digest.spans import WEEKS
from drills.practice.dealing import plan_standings, plan_targets, week_to_come
from drills.practice.deciding import with_suggestions
from drills.schedule.progression import progress_of

if TYPE_CHECKING:
    from drills.practice.home import Home

_DAY = timedelta(days=1)


def digest_of(home: Home, first: date, last: date) -> Digest:
    """The digest of the practice days `first` to `last`, both included."""
    span = max(last - first + timedelta(days=1), timedelta(weeks=WEEKS))
    return _made(home, first, last, earlier=home.entries_of(first - span, first - _DAY))


def course_of(home: Home) -> Digest:
    """The digest of the whole course, from the first record to today."""
    today = home.day()
    begun = [home.day(trial.started_at) for trial in home.history()[:1]]
    return _made(home, min([*begun, today]), today, whole_course=True)


def _made(
    home: Home,
    first: date,
    last: date,
    *,
    earlier: Sequence[Entry] = (),
    whole_course: bool = False,
) -> Digest:
    history, today = home.history(), home.day()
    of_practice = tuple(t for t in history if t.asked.item_set is ItemSet.TREATED)
    targets = plan_targets(home.plan, home.material)
    names = [(target.kind, target.name) for of_block in targets for target in of_block]
    made = make(
        home.entries_of(first, last),
        home.plan,
        first=first,
        last=last,
        upcoming=plan_standings(home.plan, home.material, history, today=today),
        labels=home.labels,
        earlier=earlier,
        today=today,
        notices=home.records.notices,
        checked=home.checking_of(history).checked,
        planned=week_to_come(home.plan, home.material, of_practice, today),
        history=history,
        progress=progress_of(names, history, home.plan.progression),
        second_scores=[
            each for each in home.therapist_log.entries() if isinstance(each, SecondScore)
        ],
        whole_course=whole_course,
    )
    return with_suggestions(home, made, of_practice)
