"""The days that a digest covers."""

from __future__ import annotations

import re
from datetime import date, timedelta

from drills.core.problems import BadInput

# Far enough from the ends of the calendar that as many days before and after can be reckoned.
YEARS = range(2000, 2200)

_WEEK = re.compile(r"(\d{4})-W(\d{1,2})", re.ASCII)


def range_of_week(text: str) -> tuple[date, date]:
    """Monday and Sunday of a week of ISO 8601, written like 2026-W48.   Raises: BadInput."""
    match = _WEEK.fullmatch(text.strip().upper())
    if match is None:
        raise BadInput(f"{text!r} is no week. Write the year and the week, like 2026-W48.")
    year, week = int(match[1]), int(match[2])
    if year not in YEARS:
        raise BadInput(f"{text!r} is too far off. The year is {YEARS[0]} to {YEARS[-1]}.")
    try:
        first = date.fromisocalendar(year, week, 1)
        return first, first + timedelta(days=6)
    except ValueError:
        raise BadInput(f"{text!r} is no week: {year} has no week {week}.") from None


def days_between(first: date, last: date) -> tuple[date, ...]:
    """Every day from `first` to `last`, both included."""
    return tuple(first + timedelta(days=step) for step in range((last - first).days + 1))
