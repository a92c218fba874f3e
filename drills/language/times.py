"""Days, months, hours and other words of time, and how they are printed and said."""

from __future__ import annotations

from types import MappingProxyType

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
MONTHS = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september",
    "october", "november", "december",
)  # fmt: skip
HOURS = tuple(str(hour) for hour in range(1, 13))
RATES = ("hour", "day", "week", "month", "year")
"""Times that are counted in: "once a day"."""

PAST_TIMES = MappingProxyType({"yesterday": "yesterday", "last-week": "last week"})
HABITS = MappingProxyType({"every-day": "every day", "every-week": "every week"})
FUTURE_TIMES = MappingProxyType({"tomorrow": "tomorrow", "next-week": "next week"})
NOW = MappingProxyType({"now": "now", "right-now": "right now"})
"""A tale of the past can say "now", but hardly "right now"."""
ORDER = MappingProxyType({"first": "first", "then": "then"})
FIRST_WORDS = MappingProxyType({**PAST_TIMES, **HABITS, **FUTURE_TIMES, **NOW, **ORDER})
"""Key -> words of a time that may stand first in a sentence."""

TIMES_OVER = ("once", "twice")


def shown(time: str) -> str:
    """A time as it is printed after its preposition: "Monday", "July", "3 o'clock"."""
    if time in HOURS:
        return f"{time} o'clock"
    return time.capitalize()


def abbreviated(weekday: str) -> str:
    """ "Mon"."""
    return weekday[:3].capitalize()
