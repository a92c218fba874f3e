"""`drills probe`: straight into a check."""

from __future__ import annotations

import argparse

from drills.cli.practising import open_screens
from drills.schedule.checks import LETTERS, CheckList


def add(probe: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    probe.add_argument(
        "--list",
        choices=LETTERS,
        help="begin the whole of this list (else the one whose turn it is, or today's goes on)",
    )
    probe.set_defaults(action=check)


def check(options: argparse.Namespace) -> int:
    chosen = None if options.list is None else CheckList(letter=options.list)
    return open_screens(options, start="check", check=chosen)
