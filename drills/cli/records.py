"""`drills records`: verify and export what is kept."""

from __future__ import annotations

import argparse

from drills import wiring
from drills.cli.telling import deliver
from drills.core.problems import Failure
from drills.ledger import export, open_ledger, verify


def add(records: argparse.ArgumentParser, everywhere: argparse.ArgumentParser) -> None:
    parts = records.add_subparsers(metavar="PART", required=True)
    check = parts.add_parser("verify", parents=[everywhere], help="read every record and check it")
    check.set_defaults(action=verify_records)
    out = parts.add_parser("export", parents=[everywhere], help="every record as JSON Lines")
    out.add_argument("--out", metavar="FILE", help="write to a file (else to the terminal)")
    out.set_defaults(action=export_records)


def verify_records(options: argparse.Namespace) -> int:
    folder = wiring.practice_folder(options.folder)
    problems = verify(folder)
    if problems:
        raise Failure(problems)
    print(f"All records in {folder} are whole.")
    return 0


def export_records(options: argparse.Namespace) -> int:
    ledger = open_ledger(wiring.practice_folder(options.folder))
    try:
        deliver("".join(f"{line}\n" for line in export(ledger.entries())), options.out)
    finally:
        ledger.close()
    return 0
