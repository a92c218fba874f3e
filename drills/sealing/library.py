"""The library of the age format, loaded when something is sealed or opened."""

from __future__ import annotations

from typing import Any

from drills.core.problems import Failure


def age() -> Any:
    """The module `pyrage`.   Raises: Failure where it is not installed."""
    try:
        import pyrage  # noqa: PLC0415 - not on every machine, and few commands need it
    except ImportError:
        raise Failure(
            "Sealing needs the Python package pyrage, and it is not installed here. "
            "Install it: python -m pip install pyrage."
        ) from None
    return pyrage
