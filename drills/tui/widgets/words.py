"""Plain lines of text that come from content or from a plan, shown as they are."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content
from textual.widgets import Static


class Words(Static):
    """Lines of text; `[cup]` is six characters and no markup."""

    DEFAULT_CSS = """
    Words { width: 1fr; height: auto; color: $ink; }
    """

    def __init__(
        self,
        lines: Sequence[str] = (),
        *,
        apart: bool = False,
        fixed: bool = False,
        classes: str = "",
    ) -> None:
        """apart: a blank line between lines.   fixed: its height does not follow the lines.

        What is fixed is painted by itself, at once, and not with the whole screen.
        """
        super().__init__(classes=classes)
        self._gap = "\n\n" if apart else "\n"
        self._is_fixed = fixed
        self.lines: tuple[str, ...] = ()
        self.say(lines)

    def say(self, lines: Sequence[str]) -> None:
        self.lines = tuple(lines)
        self.update(Content(self._gap.join(self.lines)), layout=not self._is_fixed)


class Trouble(Words):
    """One calm line on what could not be saved; takes no room while there is nothing to say."""

    DEFAULT_CSS = """
    Trouble { color: $trouble; padding: 0 1; max-height: 2; }
    Trouble.-none { display: none; }
    """

    def __init__(self, trouble: str | None = None) -> None:
        super().__init__()
        self.tell(trouble)

    def tell(self, trouble: str | None) -> None:
        if trouble is None and self.has_class("-none"):
            return
        self.set_class(trouble is None, "-none")
        self.say(() if trouble is None else (trouble,))
