"""From the first screen to the exit code, whatever happens in between."""

from __future__ import annotations

import asyncio
import contextlib
import os
import tempfile
import traceback
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from drills.core.cells import Encoding
from drills.core.problems import Failure
from drills.practice.home import Home
from drills.tui.app import PracticeApp, Start

if TYPE_CHECKING:
    from drills.schedule.checks import CheckList

LAST_ERROR = "last-error.txt"
_PRIVATE = 0o600


def run(
    home: Home,
    *,
    start: Start = "home",
    minutes: int | None = None,
    check: CheckList | None = None,
    encoding: Encoding,
) -> int:
    """Show the screens until the person leaves; the exit code.

    minutes: for the sessions begun here; None for as prescribed.
    check: the list of a check to begin; None for the one whose turn it is.
    Raises: Failure, in a few plain sentences, when a fault of the program has ended it.
    """
    app = PracticeApp(home, start=start, minutes=minutes, check=check, encoding=encoding)
    fault: BaseException | None = None
    try:
        # Leaving while a screen comes or goes cancels that, and nothing else.
        with contextlib.suppress(asyncio.CancelledError):
            app.run()
    except Exception as error:
        fault = error
    finally:
        app.abandon()
    fault = app.fault or fault
    if fault is not None:
        raise Failure(_account(fault, app, home)) from fault
    return app.return_code or 0


def _account(fault: BaseException, app: PracticeApp, home: Home) -> str:
    trouble = None if app.session is None else app.session.trouble
    kept = trouble or "Your answers are kept."
    place = write_account(fault, home.folder or Path(tempfile.gettempdir()), home.clock.now())
    where = "" if place is None else f" What happened is written in {place}."
    return f"The program had to stop. {kept}{where}"


def write_account(fault: BaseException, folder: Path, at: datetime) -> Path | None:
    """Where in `folder` the details of `fault` now are; None where they could not be written."""
    place = folder / LAST_ERROR
    text = f"{at.isoformat()}\n{''.join(traceback.format_exception(fault))}"
    try:
        with contextlib.suppress(FileNotFoundError):
            place.unlink()
        # Only for this user, as all that is in the practice folder; never through another's link.
        descriptor = os.open(place, os.O_WRONLY | os.O_CREAT | os.O_EXCL, _PRIVATE)
        with os.fdopen(descriptor, "w", encoding="utf-8", errors="backslashreplace") as file:
            file.write(text)
    except OSError:
        return None
    return place
