"""`drills` and `drills practice`: the screens."""

from __future__ import annotations

import argparse
import os
import sys
from typing import TYPE_CHECKING, Literal

from drills import wiring
from drills.cli.types import positive_number
from drills.core.problems import BadInput, Failure

if TYPE_CHECKING:
    from drills.schedule.checks import CheckList

COLUMNS, LINES = 80, 24


def add_first_screen(parser: argparse.ArgumentParser) -> None:
    parser.set_defaults(action=open_home_screen)


def add(practice: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    practice.add_argument(
        "--minutes",
        type=positive_number,
        metavar="N",
        help="a shorter session of about N minutes",
    )
    practice.set_defaults(action=practise)


def open_home_screen(options: argparse.Namespace) -> int:
    return open_screens(options, start="home")


def practise(options: argparse.Namespace) -> int:
    return open_screens(options, start="practice", minutes=options.minutes)


def open_screens(
    options: argparse.Namespace,
    *,
    start: Literal["home", "practice", "check"],
    minutes: int | None = None,
    check: CheckList | None = None,
) -> int:
    """Show the screens until the person leaves; the exit code.   check: a list by its letter."""
    _require_terminal()
    home = wiring.home(wiring.practice_folder(options.folder))
    most = home.plan.dose.minutes_per_session
    if minutes is not None and minutes > most:
        home.close()
        raise BadInput(f"The plan prescribes {most} minutes. Give --minutes 1 to {most}.")
    from drills.tui import run  # noqa: PLC0415 - the other commands never load the screens

    try:
        return run(home, start=start, minutes=minutes, check=check, encoding=wiring.encoding_of())
    finally:
        home.close()


def _require_terminal() -> None:
    if not (sys.stdin.isatty() and sys.stdout.isatty()):
        raise Failure(
            "The program needs a terminal window to show its screens. "
            "Start it in one, or use `drills --help` for commands that need none."
        )
    size = os.get_terminal_size(sys.stdout.fileno())
    # A size of 0 means that the terminal does not tell; the screens look for themselves.
    if size.columns and size.lines and (size.columns < COLUMNS or size.lines < LINES):
        raise Failure(
            f"This window is {size.columns} x {size.lines}, and the program needs at least "
            f"{COLUMNS} x {LINES}. Make it larger and start again."
        )
