"""`drills caseload`: many persons' digests, most urgent first."""

from __future__ import annotations

import argparse
import os
from collections.abc import Sequence
from pathlib import Path

from drills import wiring
from drills.cli.reading import read_bounded
from drills.cli.types import positive_number
from drills.cli.unsealing import keys_in
from drills.core.problems import BadInput
from drills.digest.caseload import SILENT_DAYS, Case, NotRead, caseload, read_case
from drills.digest.caseload_text import caseload_json, caseload_text
from drills.digest.incoming import MOST_BYTES
from drills.sealing import is_sealed, unseal

_ENDINGS = (".json", ".age")


def add(parser: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    parser.add_argument("digests", metavar="FOLDER", help="the folder with the digests")
    parser.add_argument("--key", metavar="KEYFILE", help="opens sealed ones")
    parser.add_argument("--format", choices=("text", "json"), default="text")
    parser.add_argument(
        "--silent-days",
        type=positive_number,
        metavar="N",
        default=SILENT_DAYS,
        help=f"days after which the next digest is missed ({SILENT_DAYS})",
    )
    parser.set_defaults(action=show_caseload)


def show_caseload(options: argparse.Namespace) -> int:
    keys = keys_in(options.key) if options.key else ()
    paths, left_alone = _digests_in(Path(options.digests))
    cases: list[Case] = []
    not_read: list[NotRead] = []
    for path in paths:
        try:
            cases.append(_case_in(path, keys))
        except BadInput as error:
            not_read.append(NotRead(file=path.name, message=str(error)))
    load = caseload(
        cases,
        not_read,
        today=wiring.SystemClock().now().date(),
        silent_days=options.silent_days,
        left_alone=left_alone,
    )
    if options.format == "json":
        print(caseload_json(load), end="")
    elif cases or not_read:
        print(caseload_text(load), end="")
    else:
        print("There is no digest in this folder: no file that ends in .json or .age.")
    return 0


def _digests_in(folder: Path) -> tuple[list[Path], int]:
    """The files that may be digests, by name, and how many other things are there.

    Not followed into: folders, links, devices. A link could lead anywhere.
    """
    try:
        with os.scandir(folder) as found:
            entries = [(each.name, each.is_file(follow_symlinks=False)) for each in found]
    except OSError as error:
        raise BadInput(f"{folder} is no folder that can be read: {error.strerror}.") from None
    names = sorted(name for name, is_file in entries if is_file and name.lower().endswith(_ENDINGS))
    return [folder / name for name in names], len(entries) - len(names)


def _case_in(path: Path, keys: Sequence[str]) -> Case:
    data = read_bounded(path, MOST_BYTES, path.name)
    if is_sealed(data):
        if not keys:
            raise BadInput(f"{path.name} is sealed. Give the key file with --key.")
        data = unseal(data, keys, path.name)
    return read_case(data, path.name)
