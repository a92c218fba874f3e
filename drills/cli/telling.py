"""`drills digest`: the week's digest as text, page, JSON or CSV."""

from __future__ import annotations

import argparse
import sys
from datetime import timedelta
from pathlib import Path

from drills import wiring
from drills.cli.sealing import check_sealing, write_sealed
from drills.cli.types import day
from drills.core.problems import BadInput, Failure
from drills.digest import FORMATS, range_of_week, render


def add(digest: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    digest.add_argument("--week", metavar="2026-W48", help="one week, Monday to Sunday")
    digest.add_argument(
        "--from", dest="first", type=day, metavar="DAY", help="first day (six days ago)"
    )
    digest.add_argument("--to", dest="last", type=day, metavar="DAY", help="last day (today)")
    digest.add_argument("--format", choices=FORMATS, help="text if not given")
    digest.add_argument("--out", metavar="FILE", help="write to a file (else to the terminal)")
    digest.add_argument(
        "--seal",
        action="store_true",
        help="write a page to read, and the same sealed to the therapist's key, to send",
    )
    digest.set_defaults(action=write_digest)


def write_digest(options: argparse.Namespace) -> int:
    if options.week and (options.first or options.last):
        raise BadInput("Give --week, or --from and --to, not both.")
    if bool(options.first) != bool(options.last):
        raise BadInput("Give both --from and --to.")
    home = wiring.home(wiring.practice_folder(options.folder), speak=False)
    try:
        if options.seal:
            check_sealing(home.plan, options.out, options.format)
        if options.week:
            first, last = range_of_week(options.week)
        elif options.first:
            first, last = options.first, options.last
            if first > last:
                raise BadInput(f"--from {first} is after --to {last}. Change them round.")
        else:
            last = home.day()
            first = last - timedelta(days=6)
        digest = home.digest(first, last)
    finally:
        home.close()
    if options.seal:
        write_sealed(digest, home.plan.sealing.recipient, options.out, options.format)
    else:
        deliver(render(digest, options.format or "text"), options.out)
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
