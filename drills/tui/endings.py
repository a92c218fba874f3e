"""How the program may be ended or stopped for a while from outside."""

from __future__ import annotations

import asyncio
import contextlib
import signal
from collections.abc import Callable
from types import FrameType


def heed_endings(leave: Callable[[], None]) -> None:
    """Call `leave` when the program is asked to end, interrupted, or its window is closed."""
    for name in ("SIGTERM", "SIGHUP", "SIGINT"):
        # Not on Windows, where a closed window ends the program at once.
        with contextlib.suppress(AttributeError, NotImplementedError, ValueError, RuntimeError):
            asyncio.get_running_loop().add_signal_handler(getattr(signal, name), leave)
    _go_on_only_after_a_stop()


def _go_on_only_after_a_stop() -> None:
    """Let Textual take the terminal again only when it has given it up.

    A closed window also sends "go on", and Textual would then start a second reader of keys, of
    which its end waits for one only: the other may read a dead terminal for ever.
    """
    with contextlib.suppress(AttributeError, ValueError):
        stop, go_on = signal.getsignal(signal.SIGTSTP), signal.getsignal(signal.SIGCONT)
        if not callable(stop) or not callable(go_on):
            return
        is_stopped = False

        def stopped(number: int, frame: FrameType | None) -> None:
            nonlocal is_stopped
            is_stopped = True
            stop(number, frame)

        def gone_on(number: int, frame: FrameType | None) -> None:
            nonlocal is_stopped
            if is_stopped:
                is_stopped = False
                go_on(number, frame)

        signal.signal(signal.SIGTSTP, stopped)
        signal.signal(signal.SIGCONT, gone_on)
