"""`drills digest`: the week's digest as text, page, JSON or CSV."""

from __future__ import annotations

import argparse
import sys
from datetime import timedelta
from pathlib import Path

from drills import wiring
from drills.cli.types import day
from drills.core.problems import BadInput, Failure
from drills.digest import FORMATS, range_of_week, render


def add(digest: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    digest.add_argument("--week", metavar="2026-W48", help="one week, Monday to Sunday")
    digest.add_argument(
        "--from", dest="first", type=day, metavar="DAY", help="first day (six days ago)"
    )
    digest.add_argument("--to", dest="last", type=day, metavar="DAY", help="last day (today)")
    digest.add_argument("--format", choices=FORMATS, default="text")
    digest.add_argument("--out", metavar="FILE", help="write to a file (else to the terminal)")
    digest.set_defaults(action=write_digest)


def write_digest(options: argparse.Namespace) -> int:
    if options.week and (options.first or options.last):
        raise BadInput("Give --week, or --from and --to, not both.")
    if bool(options.first) != bool(options.last):
        raise BadInput("Give both --from and --to.")
    home = wiring.home(wiring.practice_folder(options.folder), speak=False)
    try:
        if options.week:
            first, last = range_of_week(options.week)
        elif options.first:
            first, last = options.first, options.last
            if first > last:
                raise BadInput(f"--from {first} is after --to {last}. Change them round.")
        else:
            last = home.day()
            first = last - timedelta(days=6)
        text = render(home.digest(first, last), options.format)
    finally:
        home.close()
    deliver(text, options.out)
    return 0


def deliver(text: str, out: str | None) -> None:
    """Print `text`, or write it to the file `out` and say so."""
    if out is None:
        sys.stdout.write(text if text.endswith("\n") else f"{text}\n")
        return
    try:
        Path(out).write_text(text, encoding="utf-8", newline="")
    except OSError as error:
        raise Failure(f"{out} could not be written: {error.strerror}.") from None
    print(f"{out} is written.")
