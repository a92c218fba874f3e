"""The program in a real pseudo-terminal, its screen read as a person would read it."""

from __future__ import annotations

import os
import signal
import sys
import time
from collections.abc import Callable, Sequence
from pathlib import Path
from select import select

import pyte
from ptyprocess import PtyProcess

ROOT = Path(__file__).parent.parent


class Terminal:
    """`command` run in a terminal of `columns` x `lines`."""

    def __init__(
        self,
        command: Sequence[str],
        *,
        columns: int = 80,
        lines: int = 24,
        environment: dict[str, str] | None = None,
    ) -> None:
        self.raw = bytearray()
        self._screen = pyte.Screen(columns, lines)
        self._stream = pyte.ByteStream(self._screen)
        inherited = {
            name: value
            for name, value in os.environ.items()
            if name not in {"NO_COLOR", "COLUMNS", "LINES"}
        }
        self.process = PtyProcess.spawn(
            list(command),
            dimensions=(lines, columns),
            env={
                **inherited,
                "TERM": "xterm-256color",
                "COLORTERM": "truecolor",
                "DRILLS_VOICE": "off",
                **(environment or {}),
            },
            cwd=str(ROOT),
        )

    @property
    def pid(self) -> int:
        return int(self.process.pid)

    def read(self, seconds: float = 0.05) -> None:
        """Take in the next thing that the program writes, waiting at most `seconds`."""
        ready, _, _ = select([self.process.fd], [], [], seconds)
        while ready:
            try:
                data = os.read(self.process.fd, 65536)
            except OSError:
                return  # the program has ended
            if not data:
                return
            self.raw += data
            self._stream.feed(data)
            ready, _, _ = select([self.process.fd], [], [], 0)

    def settle(self, *, quiet: float = 0.12, seconds: float = 10) -> None:
        """Read until the program has written nothing for `quiet` seconds."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            before = len(self.raw)
            self.read(quiet)
            if len(self.raw) == before:
                return

    @property
    def text(self) -> str:
        """What stands on the screen, line by line."""
        return "\n".join(line.rstrip() for line in self._screen.display)

    @property
    def cells(self) -> list[list[tuple[str, str, str]]]:
        """Every cell of the screen: character, ink and paper, colours as six hex digits."""
        columns, lines = self._screen.columns, self._screen.lines
        return [
            [(cell.data, cell.fg, cell.bg) for cell in map(row.__getitem__, range(columns))]
            for row in (self._screen.buffer[line] for line in range(lines))
        ]

    def press(self, keys: str) -> None:
        self.process.write(keys.encode())

    def resize(self, columns: int, lines: int) -> None:
        self._screen.resize(lines, columns)
        self.process.setwinsize(lines, columns)

    def wait_for(self, *wanted: str, seconds: float = 20) -> str:
        """Read until one of the texts stands on the screen; gives that one.

        Raises: AssertionError with the screen when none comes.
        """
        return self.wait_until(
            lambda: next((text for text in wanted if text in self.text), ""),
            seconds=seconds,
            what=" or ".join(repr(text) for text in wanted),
        )

    def wait_until(
        self, found: Callable[[], str], *, seconds: float = 20, what: str = "the screen"
    ) -> str:
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            if result := found():
                return result
            self.read(0.05)
            if not self.process.isalive():
                self.read(0.05)
                if result := found():
                    return result
                break
        raise AssertionError(f"waited for {what}; the screen was:\n{self.text}")

    def kill(self) -> None:
        """End the program as a power cut would."""
        os.kill(self.pid, signal.SIGKILL)
        self.process.wait()

    def end(self, seconds: float = 10) -> int:
        """Wait for the program to end by itself; gives its exit code."""
        limit = time.monotonic() + seconds
        while self.process.isalive():
            if time.monotonic() > limit:
                self.kill()
                raise AssertionError(f"the program did not end; the screen was:\n{self.text}")
            self.read(0.05)
        self.read(0.1)
        return int(self.process.exitstatus or 0)

    def __enter__(self) -> Terminal:
        return self

    def __exit__(self, *_: object) -> None:
        if self.process.isalive():
            self.kill()
        self.process.close(force=True)


def drills(*arguments: str) -> list[str]:
    """The installed program of the environment that runs the tests."""
    program = Path(sys.executable).parent / "drills"
    return [str(program), *arguments]
