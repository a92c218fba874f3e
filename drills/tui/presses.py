"""Which presses of a key are meant."""

from __future__ import annotations

from drills.core.ports import Clock

# A key held down repeats first after 250 to 660 ms on common desktops (from memory, no source);
# with the default second-press time of 400 ms this factor outlasts that first repeat.
SAME_KEY_FACTOR = 1.75


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

    def heed(self, key: str) -> None:
        """`key` was pressed and counted without a question: what follows is judged by it."""
        self._last_ms, self._last_key = self._clock.monotonic_ms(), key

    def is_meant(self, key: str) -> bool:
        now = self._clock.monotonic_ms()
        since = None if self._last_ms is None else now - self._last_ms
        same = key == self._last_key
        self.heed(key)
        if since is None:
            return True
        return since >= self._second_press_ms * (SAME_KEY_FACTOR if same else 1)
