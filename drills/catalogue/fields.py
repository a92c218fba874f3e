"""Values of one block, taken out one by one, with every fault noted and none raised."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from datetime import date
from enum import StrEnum
from itertools import pairwise
from types import MappingProxyType
from typing import Any, TypeVar

from drills.catalogue.toml_lines import Block
from drills.core.problems import Problem

Choice = TypeVar("Choice", bound=StrEnum)
Instead = TypeVar("Instead")

_LONGEST_TEXT = 400
_NOWHERE: Mapping[str, str] = MappingProxyType({})


class Fields:
    """Takes values from `block`; a fault is added to `problems` and something harmless returned.

    Whoever made the `problems` list raises when it is not empty, so the harmless values never
    reach a session. A key whose default is None must be there.
    """

    def __init__(self, block: Block, where: str, problems: list[Problem]) -> None:
        self.block = block
        self.where = where
        self.problems = problems
        self._asked: list[str] = []

    def note(self, message: str, mend: str = "", *, key: str = "") -> None:
        """Add a fault of this block, at the line of `key` where it has one."""
        line = self.block.line_of(key)
        self.problems.append(Problem(where=self.where, line=line, message=message, mend=mend))

    def text(self, key: str, *, default: str | None = None, longest: int = _LONGEST_TEXT) -> str:
        """Text that is not blank; only a default of "" lets it be empty."""
        value = self._value(key, default)
        if not isinstance(value, str):
            return self._wrong(key, value, "text between two quotation marks", default or "")
        if not value.strip() and default != "":
            self.note(f"`{key}` is empty.", "Write something between the marks.", key=key)
        if len(value) > longest:
            mend = f"Use at most {longest} letters."
            self.note(f"`{key}` has {len(value)} letters.", mend, key=key)
        return value

    def texts(self, key: str, *, default: tuple[str, ...] | None = None) -> tuple[str, ...]:
        """A list of texts, none twice; empty only where the default is."""
        value = self._value(key, default)
        if default is not None and not self.has(key):
            return default
        if not isinstance(value, list) or not all(isinstance(each, str) for each in value):
            return self._wrong(key, value, 'a list such as ["one", "two"]', default or ())
        self._check_list(key, value, may_be_empty=default == ())
        return tuple(value)

    def whole(self, key: str, low: int, high: int, *, default: int | None = None) -> int:
        value = self._value(key, default)
        if isinstance(value, bool) or not isinstance(value, int):
            return self._wrong(key, value, "a whole number", low)
        self._check_range(key, value, low, high)
        return value

    def wholes(
        self, key: str, low: int, high: int, *, default: tuple[int, ...] | None = None
    ) -> tuple[int, ...]:
        """A list of whole numbers, each larger than the one before."""
        value = self._value(key, default)
        if default is not None and not self.has(key):
            return default
        if not isinstance(value, list) or not all(type(each) is int for each in value):
            return self._wrong(key, value, "a list such as [1, 2, 4]", default or (low,))
        if not value:
            self.note(f"`{key}` is empty.", "Give at least one number.", key=key)
        for each in value:
            self._check_range(key, each, low, high)
        if any(later <= earlier for earlier, later in pairwise(value)):
            self.note(f"`{key}` does not rise.", "Put the numbers in rising order.", key=key)
        return tuple(value)

    def number(self, key: str, low: float, high: float, *, default: float | None = None) -> float:
        value = self._value(key, default)
        if isinstance(value, bool) or not isinstance(value, int | float):
            return self._wrong(key, value, "a number", low)
        self._check_range(key, value, low, high)
        return float(value)

    def flag(self, key: str, *, default: bool | None = None) -> bool:
        value = self._value(key, default)
        if not isinstance(value, bool):
            return self._wrong(key, value, "true or false", False)
        return value

    def day(self, key: str) -> date | None:
        """A date, or None where there is none."""
        self._asked.append(key)
        value = self.block.values.get(key)
        if value is None or type(value) is date:
            return value
        return self._wrong(key, value, "a date such as 2026-11-25, without marks", None)

    def choice(self, key: str, kind: type[Choice], *, default: Choice | None = None) -> Choice:
        """A member of `kind` by its value."""
        value = self._value(key, default)
        for member in kind:
            if member.value == value:
                return member
        self._not_one_of(key, value, [member.value for member in kind])
        return next(iter(kind))

    def choices(self, key: str, kind: type[Choice]) -> tuple[Choice, ...]:
        found = []
        for value in self.texts(key):
            member = next((each for each in kind if each.value == value), None)
            if member is None:
                self._not_one_of(key, value, [each.value for each in kind])
            else:
                found.append(member)
        return tuple(found)

    def one_of(self, key: str, allowed: Iterable[str]) -> str:
        value = self._value(key, None)
        if value in (options := list(allowed)):
            return str(value)
        self._not_one_of(key, value, options)
        return options[0]

    def has(self, key: str) -> bool:
        return key in self.block.values

    def raw(self, key: str) -> Any:
        """The value as it is, for a caller that checks it itself; None when it is missing."""
        return self._value(key, None)

    def close(self, elsewhere: Mapping[str, str] = _NOWHERE) -> None:
        """Note each key that nobody asked for, with the nearest right one.

        elsewhere: where a key of another section belongs ("under [dose]").
        """
        for key in self.block.values:
            if key not in self._asked:
                mend = nearest(key, self._asked)
                if key in elsewhere:
                    mend = f"It belongs {elsewhere[key]}."
                self.note(f"There is no setting `{key}` here.", mend, key=key)

    def _value(self, key: str, default: Any) -> Any:
        self._asked.append(key)
        if key in self.block.values:
            return self.block.values[key]
        if default is None:
            title = f"[[{self.block.name}]]" if self.block.name else "the top of the file"
            self.note(f"`{key}` is missing.", f"Add `{key} = ...` to {title}.")
        return default

    def _wrong(self, key: str, value: object, wanted: str, instead: Instead) -> Instead:
        if value is not None:
            self.note(f"`{key}` is {_shown(value)}.", f"It needs {wanted}.", key=key)
        return instead

    def _not_one_of(self, key: str, value: object, allowed: list[str]) -> None:
        if value is not None:
            mend = nearest(str(value), allowed)
            self.note(f"`{key}` cannot be {_shown(value)}.", mend, key=key)

    def _check_range(self, key: str, value: float, low: float, high: float) -> None:
        # Written this way round, so that "not a number" is out of range too.
        if not low <= value <= high:
            mend = f"Choose from {low} to {high}."
            self.note(f"`{key}` is {value}, which is out of range.", mend, key=key)

    def _check_list(self, key: str, value: list[str], *, may_be_empty: bool) -> None:
        if not value and not may_be_empty:
            self.note(f"`{key}` is empty.", "Give at least one entry.", key=key)
        for each in dict.fromkeys(value):
            if not each.strip():
                self.note(f"`{key}` has an empty entry.", "Remove it.", key=key)
            elif value.count(each) > 1:
                self.note(f"`{key}` has {_shown(each)} twice.", "Remove one.", key=key)


def nearest(word: str, allowed: Iterable[str]) -> str:
    """How to mend a word that is none of `allowed`."""
    options = list(allowed)
    close = difflib.get_close_matches(word, options, n=1)
    if close:
        return f"Did you mean `{close[0]}`?"
    return "It can be: " + ", ".join(options) + "."


def _shown(value: object) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    shown = f'"{value}"' if isinstance(value, str) else str(value)
    return shown if len(shown) <= 60 else shown[:57] + "..."
