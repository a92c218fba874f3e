"""`drills records`: check, back up, put back, and give out what is kept."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from pathlib import Path

from drills import wiring
from drills.core.problems import Failure
from drills.core.visible import visible
from drills.ledger import (
    back_up,
    export,
    export_csv,
    open_ledger,
    rebuild,
    restore,
    set_aside_in,
    verify,
)

_EXPORTS = {"jsonl": (export, "\n"), "csv": (export_csv, "\r\n")}


def add(records: argparse.ArgumentParser, everywhere: argparse.ArgumentParser) -> None:
    parts = records.add_subparsers(metavar="PART", required=True)
    check = parts.add_parser("verify", parents=[everywhere], help="read every record and check it")
    check.set_defaults(action=verify_records)
    keep = parts.add_parser("backup", parents=[everywhere], help="all of it in one new file")
    keep.add_argument("file", metavar="FILE")
    keep.set_defaults(action=back_up_records)
    back = parts.add_parser(
        "restore", parents=[everywhere], help="put a backup back; overwrites nothing"
    )
    back.add_argument("file", metavar="FILE")
    back.set_defaults(action=restore_records)
    again = parts.add_parser(
        "rebuild", parents=[everywhere], help="make what is derived from the records anew"
    )
    again.set_defaults(action=rebuild_records)
    out = parts.add_parser("export", parents=[everywhere], help="every record, for other programs")
    out.add_argument("--format", choices=tuple(_EXPORTS), default="jsonl")
    out.add_argument("--out", metavar="FILE", help="write to a file (else to the terminal)")
    out.set_defaults(action=export_records)


def verify_records(options: argparse.Namespace) -> int:
    folder = wiring.practice_folder(options.folder)
    problems = verify(folder)
    if problems:
        raise Failure(problems)
    print(f"All records in {folder} are whole.")
    aside = set_aside_in(folder)
    if aside:
        names = visible(", ".join(path.name for path in aside))
        print(f"Kept as found beside them: {names}.")
    return 0


def back_up_records(options: argparse.Namespace) -> int:
    count = back_up(wiring.practice_folder(options.folder), Path(options.file))
    print(f"{options.file} is written and checked; it holds {count} files.")
    return 0


def restore_records(options: argparse.Namespace) -> int:
    folder = wiring.practice_folder(options.folder)
    done = restore(folder, Path(options.file))
    there = f"; {done.same} were there already" if done.same else ""
    print(f"{done.files} files are put back in {folder}{there}.")
    return 0


def rebuild_records(options: argparse.Namespace) -> int:
    folder = wiring.practice_folder(options.folder)
    print(f"{rebuild(folder)} sessions in {folder} are summarised anew.")
    return 0


def export_records(options: argparse.Namespace) -> int:
    write, end = _EXPORTS[options.format]
    ledger = open_ledger(wiring.practice_folder(options.folder))
    try:
        _deliver((line + end for line in write(ledger.each())), options.out)
    finally:
        ledger.close()
    return 0


def _deliver(lines: Iterable[str], out: str | None) -> None:
    """One line at a time: years of records need not fit into memory."""
    if out is None:
        for line in lines:
            print(line, end="")
        return
    try:
        with Path(out).open("w", encoding="utf-8", newline="") as file:
            file.writelines(lines)
    except OSError as error:
        raise Failure(f"{out} could not be written: {error.strerror}.") from None
    print(f"{out} is written.")
