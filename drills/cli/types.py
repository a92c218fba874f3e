"""Arguments that several commands take."""

from __future__ import annotations

import argparse
from datetime import date


def positive_number(text: str) -> int:
    number = int(text) if text.isdigit() else 0
    if not 1 <= number <= 100_000:
        raise argparse.ArgumentTypeError(f"{text!r} is not a whole number from 1 to 100000")
    return number


def any_number(text: str) -> int:
    try:
        return int(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text!r} is not a whole number") from None


def day(text: str) -> date:
    try:
        found = date.fromisoformat(text)
    except ValueError:
        raise argparse.ArgumentTypeError(f"{text!r} is not a day like 2026-11-25") from None
    # Nearer to the ends of the calendar, days before and after cannot be reckoned.
    if not 2000 <= found.year <= 2199:
        raise argparse.ArgumentTypeError(f"{text!r} is not in the years 2000 to 2199")
    return found


def cell_size(text: str) -> tuple[int, int]:
    """Columns and lines from `38x15`; each 8 to 400."""
    columns, _, lines = text.lower().partition("x")
    if columns.isdigit() and lines.isdigit():
        size = (int(columns), int(lines))
        if all(8 <= side <= 400 for side in size):
            return size
    raise argparse.ArgumentTypeError(f"{text!r} is not a size like 38x15, each side 8 to 400")
