"""Oracle: the ISO 8601 week dates that the standard library's calendar knows."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.problems import BadInput
from drills.digest import range_of_week


@pytest.mark.parametrize(
    ("week", "first", "last"),
    [
        ("2026-W48", date(2026, 11, 23), date(2026, 11, 29)),
        # ISO 8601: week 1 holds the first Thursday; 2026 has 53 weeks.
        ("2026-W01", date(2025, 12, 29), date(2026, 1, 4)),
        ("2026-W53", date(2026, 12, 28), date(2027, 1, 3)),
        ("2026-w5", date(2026, 1, 26), date(2026, 2, 1)),
    ],
)
def test_a_week_is_its_monday_to_its_sunday(week: str, first: date, last: date):
    assert range_of_week(week) == (first, last)


@given(st.dates(min_value=date(2000, 1, 3), max_value=date(2199, 12, 29)))
def test_every_day_lies_in_the_week_that_the_calendar_gives_it(day: date):
    year, week, _ = day.isocalendar()
    first, last = range_of_week(f"{year}-W{week:02}")
    assert first <= day <= last
    assert (first.weekday(), last - first) == (0, timedelta(days=6))


@pytest.mark.parametrize("text", ["2026-W54", "2025-W53", "2026-W00"])
def test_a_week_that_the_year_lacks_is_told(text: str):
    with pytest.raises(BadInput, match="has no week"):
        range_of_week(text)


@pytest.mark.parametrize("text", ["0000-W01", "0001-W01", "1999-W52", "2200-W01", "9999-W52"])
def test_a_week_too_far_off_to_reckon_around_is_refused(text: str):
    with pytest.raises(BadInput, match="2000 to 2199"):
        range_of_week(text)


@pytest.mark.parametrize("text", ["", "W48", "2026-48", "2026-11-23", "2026-W480", "२०२६-W48"])
def test_what_is_no_week_is_told_with_an_example(text: str):
    with pytest.raises(BadInput, match="like 2026-W48"):
        range_of_week(text)
