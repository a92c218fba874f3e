"""How the program may be ended from outside."""

from __future__ import annotations

import asyncio
import contextlib
import signal
from collections.abc import Callable


def heed_endings(leave: Callable[[], None]) -> None:
    """Call `leave` when the program is asked to end, interrupted, or its window is closed."""
    for name in ("SIGTERM", "SIGHUP", "SIGINT"):
        # Not on Windows, where a closed window ends the program at once.
        with contextlib.suppress(AttributeError, NotImplementedError, ValueError, RuntimeError):
            asyncio.get_running_loop().add_signal_handler(getattr(signal, name), leave)
