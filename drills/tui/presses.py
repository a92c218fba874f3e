"""Which presses of a key are meant."""

from __future__ import annotations

from drills.core.ports import Clock

# A key held down repeats after 250 to 660 ms on common desktops (from memory, no source); the
# first repeat would else slip past a shorter second-press time as an answer of its own.
SAME_KEY_MS = 700


class Presses:
    """Tells a press that is meant from a tremor, a double press or a key held down.

    second_press_ms: a press this soon after any other does not count. Presses that do not count
    still start the time again, so a held key counts once.
    """

    def __init__(self, clock: Clock, *, second_press_ms: int) -> None:
        self._clock = clock
        self._second_press_ms = second_press_ms
        self._last_ms: float | None = None
        self._last_key = ""

    def is_meant(self, key: str) -> bool:
        now = self._clock.monotonic_ms()
        since = None if self._last_ms is None else now - self._last_ms
        same = key == self._last_key
        self._last_ms, self._last_key = now, key
        if since is None:
            return True
        limit = max(self._second_press_ms, SAME_KEY_MS) if same else self._second_press_ms
        return since >= limit
