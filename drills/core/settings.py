"""What can be set in a plan: names, words and limits, for whoever reads, writes or shows one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

# Letters of a name of a plan or a person, letters of a note, and blocks of a plan.
LONGEST_NAME = 80
LONGEST_NOTE = 2000
MOST_BLOCKS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """says: for the therapist.   low, high: limits of a number, or of the length of a text.

    A list is of numbers where it has limits, else of names.
    """

    key: str
    says: str
    low: float = 0
    high: float = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One table of the plan file; `made`, a dataclass, holds it and its defaults."""

    name: str
    made: type[Any]
    says: str
    settings: tuple[Setting, ...]
