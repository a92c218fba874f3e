"""Days as people write them, and any text made harmless for a terminal."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from datetime import date


def inert(text: str) -> str:
    """`text` on one line, with every control and direction character made visible and harmless."""
    return "".join(_inert(character) for character in _WHITE.sub(" ", text).strip())


# Holds words on one line; it leaves the text form as a plain space.
KEEP = "\N{NO-BREAK SPACE}"
_WHITE = re.compile(rf"[^\S{KEEP}]+")


def kept(text: str) -> str:
    return text.replace(" ", KEEP)


def _inert(character: str) -> str:
    # Cc: escape sequences; Cf: hidden direction marks; Cs: half characters that no file can hold.
    if unicodedata.category(character) in ("Cc", "Cf", "Cs", "Zl", "Zp"):
        code = ord(character)
        return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}"
    return character


def day(on: date) -> str:
    return f"{_DAYS[on.weekday()]} {on.day} {_MONTHS[on.month - 1]}"


def span(first: date, last: date) -> str:
    """`Wed 25 to Thu 26 Nov`."""
    if first == last:
        return day(last)
    same_month = (first.year, first.month) == (last.year, last.month)
    return f"{day(first).rsplit(' ', 1)[0] if same_month else day(first)} to {day(last)}"


def day_and_year(on: date) -> str:
    return f"{day(on)} {on.year}"


# Not strftime, whose names follow the machine's locale.
_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def days(on: Sequence[date]) -> str:
    return ", ".join(day(each) for each in on)
