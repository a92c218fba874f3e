"""The last net: an app that no fault of the program ends with a traceback over the screen."""

from __future__ import annotations

from textual.app import App
from textual.worker import WorkerFailed


class CaughtApp(App[int]):
    """Closes the records on a fault and prints nothing; `fault` is then for `running` to tell."""

    def abandon(self) -> None:
        """Close the records."""

    @property
    def fault(self) -> BaseException | None:
        """What ended the program against its will."""
        fault = self._exception
        return fault.error if isinstance(fault, WorkerFailed) else fault

    def _fatal_error(self) -> None:
        # Textual would render all that stood in memory here, which also takes long.
        self.abandon()
        self._close_messages_no_wait()

    def _print_error_renderables(self) -> None:
        self._exit_renderables.clear()
