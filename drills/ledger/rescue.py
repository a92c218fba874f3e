"""Answers that the practice folder could not take, kept elsewhere until it can."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from drills.core.records import RECORD_FORMAT, Entry
from drills.ledger import disk
from drills.ledger.lines import Row, lines_of, read_lines
from drills.ledger.rows import entry_of, row_of
from drills.ledger.storage import header_and_rows
from drills.ledger.upgrades import steps_from

_STEM = "drills-unsaved"


@dataclass(frozen=True, slots=True, kw_only=True)
class Rescued:
    """whole: everything in the file could be read."""

    path: Path
    entries: tuple[Entry, ...]
    whole: bool


def usual_places(folder: Path) -> tuple[Path, ...]:
    """Where answers may go that the records cannot take, the nearest first."""
    own: list[Path] = []
    with suppress(RuntimeError):
        own.append(Path.home())
    return (folder, *own, Path(tempfile.gettempdir()))


def save(folder: Path, entries: Sequence[Entry], places: Sequence[Path]) -> Path | None:
    """Write `entries` in the first place that takes them; None where none does."""
    header: Row = {"format": RECORD_FORMAT, "unsaved_in": str(folder.resolve())}
    data = lines_of([header, *map(row_of, entries)])
    for place in places:
        try:
            path = disk.free_name(place / f"{_STEM}.jsonl")
            disk.write_new(path, data)
        except OSError:
            continue
        return path
    return None


def find(folder: Path, places: Sequence[Path]) -> Iterator[Rescued]:
    """What was saved for this practice folder, in any of the places."""
    for place in dict.fromkeys(places):
        for path in sorted(place.glob(f"{_STEM}*.jsonl")):
            try:
                if _is_own(path):
                    found = _read(path, folder, is_here=place == folder)
                    if found is not None:
                        yield found
            except OSError:
                continue


def _is_own(path: Path) -> bool:
    """Whether this user wrote it: the places may be open to others."""
    seen = path.lstat()
    return path.is_file() and not path.is_symlink() and seen.st_uid == _user(seen)


def _user(seen: os.stat_result) -> int:
    return os.getuid() if hasattr(os, "getuid") else seen.st_uid


def _read(path: Path, folder: Path, *, is_here: bool) -> Rescued | None:
    reading = read_lines(path.read_bytes())
    header, rows = header_and_rows(reading)
    if header is None or not (is_here or header.get("unsaved_in") == str(folder.resolve())):
        return None
    steps = steps_from(header["format"], where=str(path))
    entries = []
    whole = not reading.damage
    for _, document in rows:
        row = document
        try:
            for step in steps:
                row = step(row)
            entries.append(entry_of(row))
        except (ValueError, KeyError, TypeError):
            whole = False
    return Rescued(path=path, entries=tuple(entries), whole=whole)


def counted(number: int) -> str:
    return f"{number} {'entry' if number == 1 else 'entries'}"
