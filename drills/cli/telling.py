"""`drills digest`: the digest of a week or of a course as text, page, JSON or CSV."""

from __future__ import annotations

import argparse
import sys
from datetime import date, timedelta
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
    digest.add_argument(
        "--course", action="store_true", help="the whole course, from the first record to today"
    )
    digest.add_argument("--format", choices=FORMATS, help="text if not given")
    digest.add_argument("--out", metavar="FILE", help="write to a file (else to the terminal)")
    digest.add_argument(
        "--seal",
        action="store_true",
        help="write a page to read, and the same sealed to the therapist's key, to send",
    )
    digest.set_defaults(action=write_digest)


def write_digest(options: argparse.Namespace) -> int:
    ways = (options.week, options.first or options.last, options.course)
    if sum(map(bool, ways)) > 1:
        raise BadInput("Give --week, or --from and --to, or --course, only one of them.")
    if bool(options.first) != bool(options.last):
        raise BadInput("Give both --from and --to.")
    home = wiring.home(wiring.practice_folder(options.folder), speak=False)
    try:
        if options.seal:
            check_sealing(home.plan, options.out, options.format)
        digest = home.course() if options.course else home.digest(*_days(options, home.day()))
    finally:
        home.close()
    if options.seal:
        write_sealed(digest, home.plan.sealing.recipient, options.out, options.format)
    else:
        deliver(render(digest, options.format or "text"), options.out)
    return 0


def _days(options: argparse.Namespace, today: date) -> tuple[date, date]:
    """The first and the last day asked for; the last seven days when none was."""
    if options.week:
        return range_of_week(options.week)
    if not options.first:
        return today - timedelta(days=6), today
    if options.first > options.last:
        raise BadInput(f"--from {options.first} is after --to {options.last}. Change them round.")
    return options.first, options.last


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
