"""Leaving the search for garbage until much has been read."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def uncollected() -> Iterator[None]:
    """Leave the search for garbage until afterwards: it would go through all trials of years again
    and again while they are made, and take longer than the reading.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
