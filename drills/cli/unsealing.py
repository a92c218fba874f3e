"""`drills unseal`: open a sealed digest with the therapist's key."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from drills.cli.new_files import told_of_failure
from drills.cli.reading import read_bounded
from drills.digest.as_json import inert_json
from drills.digest.incoming import MOST_BYTES, page_in, read_digest
from drills.ledger import disk
from drills.sealing import private_keys, unseal

# A file of keys has a few lines; more is no key file.
_MOST_KEY_BYTES = 100_000


def add(parser: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    parser.add_argument("file", metavar="FILE", help="the sealed digest")
    parser.add_argument(
        "--key", metavar="KEYFILE", required=True, help="the file of `drills plan key`"
    )
    parser.add_argument(
        "--format", choices=("html", "json"), default="html", help="its page (html), or its numbers"
    )
    parser.add_argument(
        "--out", metavar="FILE", help="a new file (the page: FILE.html; the numbers: the terminal)"
    )
    parser.set_defaults(action=open_sealed)


def open_sealed(options: argparse.Namespace) -> int:
    path = Path(options.file)
    data = unseal(read_bounded(path, MOST_BYTES), keys_in(options.key), str(path))
    out = options.out
    if options.format == "html":
        text = page_in(data, str(path))
        out = out or str(path.with_suffix(".html"))
    else:
        read_digest(data, str(path))
        text = inert_json(data.decode("utf-8-sig"))
    if out is None:
        sys.stdout.write(text)
        return 0
    with told_of_failure(out):
        disk.write_new(Path(out), text.encode("utf-8"))
    print(f"{out} is written; others on this machine cannot read it.")
    return 0


def keys_in(name: str) -> tuple[str, ...]:
    """The private keys in the file `name`.   Raises: BadInput."""
    return private_keys(read_bounded(Path(name), _MOST_KEY_BYTES), name)
