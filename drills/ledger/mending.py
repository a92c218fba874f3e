"""Files put in order without losing what they were: the original stays under another name."""

from __future__ import annotations

from pathlib import Path

from drills.core.records import SessionOpened
from drills.ledger import disk
from drills.ledger.lines import lines_of
from drills.ledger.sessions import SessionRead, header_of


def set_aside(read: SessionRead) -> Path:
    """Put the whole lines in the file's place; where the damaged file is kept as it was found.

    A file with no entry at all is only renamed.   Raises: OSError.
    """
    aside = free_beside(read.path, "damaged")
    if read.entries:
        _put_in_place(read, aside)
    else:
        read.path.rename(aside)
        disk.sync_folder(aside.parent)
    return aside


def upgrade(read: SessionRead) -> Path:
    """Write the file in today's format; where the older one is kept.   Raises: OSError."""
    older = free_beside(read.path, f"format-{read.written_as}")
    _put_in_place(read, older)
    return older


def _put_in_place(read: SessionRead, kept: Path) -> None:
    header = header_of(_opened(read))
    disk.write_new(kept, read.path.read_bytes())
    disk.replace_file(read.path, lines_of([header, *read.rows]))


def _opened(read: SessionRead) -> SessionOpened:
    """What the header is made from, also where the entry itself is lost."""
    for entry in read.entries:
        if isinstance(entry, SessionOpened):
            return entry
    return SessionOpened(
        session=read.session,
        at=read.opened,
        plan_name="",
        plan_version=0,
        program="",
        content_hash="",
        seed=0,
    )


def free_beside(path: Path, sort: str) -> Path:
    """The first of `path.sort-1`, `path.sort-2` ... that is not taken."""
    number = 1
    while (free := path.with_name(f"{path.name}.{sort}-{number}")).exists():
        number += 1
    return free
