"""Meanings as JSON rows and back: the documented form, in files and on the command line."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, fields
from enum import StrEnum
from typing import Any, get_args, get_type_hints

from drills.core.meanings import Act, Meaning, Place

# Acts and places are told by their own fields; the other kinds say what they are.
_KINDS: Mapping[str, type[Any]] = {kind.__name__.lower(): kind for kind in get_args(Meaning)}
_UNNAMED = {"act": "verb", "place": "relation"}


def as_json(meaning: Meaning) -> dict[str, Any]:
    """The row of a meaning; optional fields at their default are left out."""
    row: dict[str, Any] = {}
    name = type(meaning).__name__.lower()
    if name not in _UNNAMED:
        row["kind"] = name
    for field in fields(meaning):
        value = getattr(meaning, field.name)
        if field.default is not MISSING and value == field.default:
            continue
        row[field.name] = _value_as_json(value)
    return row


def from_json(row: Mapping[str, Any]) -> Meaning:
    """The meaning that `as_json` wrote.

    Raises: ValueError when the row is no meaning.
    """
    name = row.get("kind") or next((kind for kind, key in _UNNAMED.items() if key in row), None)
    if not isinstance(name, str) or name not in _KINDS:
        raise ValueError(f"{dict(row)!r} is no meaning")
    kind = _KINDS[name]
    hints = get_type_hints(kind)
    values = {key: value for key, value in row.items() if key != "kind"}
    try:
        made = {key: _value_from_json(hints[key], value) for key, value in values.items()}
        meaning: Meaning = kind(**made)
    except (KeyError, TypeError) as error:
        raise ValueError(f"{dict(row)!r} is no meaning of kind {name}") from error
    return meaning


def _value_as_json(value: Any) -> Any:
    if isinstance(value, StrEnum):
        return value.value
    if isinstance(value, Act | Place):
        return as_json(value)
    return list(value) if isinstance(value, tuple) else value


def _value_from_json(hint: Any, value: Any) -> Any:
    if hint is Act:
        return from_json(value)
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return hint(value)
    return tuple(value) if isinstance(value, list) else value
