"""What is told as JSON rows and back; what is at its default is left out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import MISSING, fields, is_dataclass
from enum import StrEnum
from functools import cache
from types import NoneType, UnionType
from typing import Any, get_args, get_origin, get_type_hints

from drills.core.clauses import Told


def told_as_json(told: Told) -> dict[str, Any]:
    return {"kind": "told", **_row(told)}


def told_from_json(row: Mapping[str, Any]) -> Told:
    """What `told_as_json` wrote.

    Raises: ValueError when the row tells nothing.
    """
    if row.get("kind") != "told":
        raise ValueError(f"{dict(row)!r} tells nothing")
    values = {key: value for key, value in row.items() if key != "kind"}
    try:
        told: Told = _value(Told, values)
    except (KeyError, TypeError, AttributeError) as error:
        raise ValueError(f"{dict(row)!r} tells nothing") from error
    return told


def _row(value: Any) -> Any:
    if is_dataclass(value):
        return {
            field.name: _row(getattr(value, field.name))
            for field in fields(value)
            if field.default is MISSING or getattr(value, field.name) != field.default
        }
    if isinstance(value, StrEnum):
        return value.value
    return [_row(each) for each in value] if isinstance(value, tuple) else value


@cache
def _hints(kind: type) -> Mapping[str, Any]:
    return get_type_hints(kind)


def _value(hint: Any, value: Any) -> Any:
    if get_origin(hint) is UnionType:
        if value is None:
            return None
        hint = next(each for each in get_args(hint) if each is not NoneType)
    if get_origin(hint) is tuple:
        return tuple(_value(get_args(hint)[0], each) for each in value)
    if isinstance(hint, type) and is_dataclass(hint):
        hints = _hints(hint)
        return hint(**{key: _value(hints[key], each) for key, each in value.items()})
    if isinstance(hint, type) and issubclass(hint, StrEnum):
        return hint(value)
    if not isinstance(value, hint):
        raise TypeError(f"{value!r} is no {hint}")
    return value
