"""The digest of one practice folder: what of it is read, once for all measures."""

from __future__ import annotations

from datetime import date, timedelta
from typing import TYPE_CHECKING

from drills.core.kinds import ItemSet
from drills.digest import Digest, make
from drills.practice.dealing import plan_standings, week_to_come

if TYPE_CHECKING:
    from drills.practice.home import Home


def digest_of(home: Home, first: date, last: date) -> Digest:
    """The digest of the practice days `first` to `last`, both included."""
    span = last - first + timedelta(days=1)
    earlier = home.entries_of(first - span, first - timedelta(days=1))
    history, today = home.history(), home.day()
    of_practice = tuple(t for t in history if t.asked.item_set is ItemSet.TREATED)
    return make(
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
    )
