"""Names of a package that load their module only when they are first asked for (PEP 562)."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any


def late(package: str, where: Mapping[str, str]) -> Callable[[str], Any]:
    """The `__getattr__` of `package`; `where`: name -> the module of the package that has it.

    Raises: ValueError for a name that is also its module's: importing the module would hide it.
    """
    if hidden := [name for name, module in where.items() if name == module]:
        raise ValueError(f"{', '.join(hidden)} would be hidden by the module of that name")

    def find(name: str) -> Any:
        if name not in where:
            raise AttributeError(f"module {package!r} has no attribute {name!r}")
        return getattr(import_module(f"{package}.{where[name]}"), name)

    return find
