"""Values of a row, each checked: what a damaged or foreign file says must not pass for an answer.

Each function raises ValueError, KeyError or TypeError for what cannot be.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from typing import Any

from drills.ledger.lines import Row

# A clock that has lost its battery starts in 1970; nearer to the ends of the calendar, adding or
# taking away a day would fail.
FIRST_YEAR, LAST_YEAR = 1970, 9000
MOST = 2**63


def text(row: Row, key: str) -> str:
    value = row[key]
    if not isinstance(value, str):
        raise TypeError(f"{key} is no text")
    # Half of a pair of surrogates can be written to no file or screen; the rest is kept.
    return value if value.isascii() else value.encode(errors="replace").decode()


def texts(row: Row, key: str) -> tuple[str, ...]:
    found = items(row, key)
    if all(isinstance(each, str) and each.isascii() for each in found):
        return tuple(found)
    return tuple(text({key: each}, key) for each in found)


def maybe_text(row: Row, key: str) -> str | None:
    return None if row[key] is None else text(row, key)


def flag(row: Row, key: str) -> bool:
    value = row[key]
    if not isinstance(value, bool):
        raise TypeError(f"{key} is neither true nor false")
    return value


def maybe_flag(row: Row, key: str) -> bool | None:
    return None if row[key] is None else flag(row, key)


def whole(row: Row, key: str, low: int = 0, high: int = MOST) -> int:
    """A whole number in `low <= number < high`."""
    value = row[key]
    if not isinstance(value, int) or isinstance(value, bool):
        raise TypeError(f"{key} is no whole number")
    if not low <= value < high:
        raise ValueError(f"{key} is {value}, and that cannot be")
    return value


def maybe_whole(row: Row, key: str, low: int = 0, high: int = MOST) -> int | None:
    return None if row[key] is None else whole(row, key, low, high)


def items(row: Row, key: str) -> list[Any]:
    value = row[key]
    if not isinstance(value, list):
        raise TypeError(f"{key} is no list")
    return value


def mapping(row: Row, key: str) -> Mapping[str, Any]:
    value = row[key]
    if not isinstance(value, dict):
        raise TypeError(f"{key} is no group of values")
    return value


def moment(row: Row, key: str) -> datetime:
    value = datetime.fromisoformat(text(row, key))
    if value.utcoffset() is None:
        raise ValueError(f"{key} has no offset from UTC")
    if not FIRST_YEAR <= value.year <= LAST_YEAR:
        raise ValueError(f"{key} lies in the year {value.year}")
    return value
