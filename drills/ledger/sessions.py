"""The file of one session: its header, and what can be read of it."""

from __future__ import annotations

import zlib
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from drills.core.problems import Problem
from drills.core.records import RECORD_FORMAT, CloseReason, Entry, SessionClosed, SessionOpened
from drills.ledger import names, values
from drills.ledger.lines import Damage, Fault, Row, read_lines
from drills.ledger.rows import entry_of
from drills.ledger.storage import header_and_rows
from drills.ledger.upgrades import steps_from

CUT_OFF = "the file is cut off in the middle of an entry, as after a loss of power."

_SAID = {
    Fault.BYTES: "{} bytes are damaged.",
    Fault.TORN: CUT_OFF,
    Fault.MISSING: "{} lines before this one are missing.",
    Fault.MOVED: "this line stands in the wrong place.",
    Fault.TWICE: "this line stands there twice.",
}


def said_of(damage: Damage) -> str:
    """What is wrong, one sentence."""
    return _SAID[damage.fault].format(damage.count)


def header_of(opened: SessionOpened) -> dict[str, Any]:
    return {
        "format": RECORD_FORMAT,
        "session": opened.session,
        "opened": opened.at.isoformat(),
    }


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionRead:
    """What a file holds.

    session, opened: from the first entry, else from the header, else from the file's name.
    rows: of today's format, the header left out; empty once the file is known to be whole.
    not_understood: numbers of whole lines that are no entry.   foreign: of another session.
    size, crc32: of the file as it was read.
    """

    path: Path
    written_as: int
    has_header: bool
    session: str
    opened: datetime
    entries: tuple[Entry, ...]
    rows: tuple[Row, ...]
    damage: tuple[Damage, ...]
    not_understood: tuple[int, ...]
    foreign: tuple[int, ...]
    size: int
    crc32: int

    @property
    def closed_as(self) -> CloseReason | None:
        for entry in reversed(self.entries):
            if isinstance(entry, SessionClosed):
                return entry.reason
        return None

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Every fault of the file, with its line."""
        where = str(self.path)
        mend = "Every whole entry is kept."
        found = [
            Problem(
                where=where,
                line=damage.line,
                message=said_of(damage),
                mend=mend,
            )
            for damage in self.damage
        ]
        for line in self.not_understood:
            message = "this line is whole, but it is no entry that this program knows."
            found.append(Problem(where=where, line=line, message=message, mend="It is left out."))
        for line in self.foreign:
            message = "this line belongs to another session."
            found.append(Problem(where=where, line=line, message=message, mend="It is left out."))
        if not self.entries:
            found.append(Problem(where=where, message="no entry of this session can be read."))
        return tuple(found)


def read_session(path: Path) -> SessionRead:
    """Read one file; it is not changed.

    Raises: BadInput for a format that this program does not know; OSError.
    """
    return understand(path, path.read_bytes())


def understand(path: Path, data: bytes) -> SessionRead:
    """What the bytes of one session's file say."""
    reading = read_lines(data)
    header, rows = header_and_rows(reading)
    # Without a header, rows are read as today's: one that is not is then not understood.
    written_as = RECORD_FORMAT if header is None else header["format"]
    steps = steps_from(written_as, where=str(path))
    entries: list[Entry] = []
    upgraded: list[Row] = []
    lines: list[int] = []
    strange: list[int] = []
    for line, document in rows:
        row: Row = document
        try:
            for step in steps:
                row = step(row)
            entries.append(entry_of(row))
            lines.append(line)
        except (ValueError, KeyError, TypeError, OverflowError, AttributeError):
            strange.append(line)
        upgraded.append(row)
    session, opened = _identity(path, header, entries)
    foreign = [line for line, entry in zip(lines, entries, strict=True) if entry.session != session]
    return SessionRead(
        path=path,
        written_as=written_as,
        has_header=header is not None,
        session=session,
        opened=opened,
        entries=tuple(entry for entry in entries if entry.session == session),
        rows=tuple(upgraded) if reading.damage or steps else (),
        damage=reading.damage,
        not_understood=tuple(strange),
        foreign=tuple(foreign),
        size=len(data),
        crc32=zlib.crc32(data),
    )


def _identity(path: Path, header: Row | None, entries: list[Entry]) -> tuple[str, datetime]:
    for entry in entries:
        if isinstance(entry, SessionOpened):
            return entry.session, entry.at
    try:
        if header is not None:
            return values.text(header, "session"), values.moment(header, "opened")
    except (TypeError, KeyError, ValueError):
        pass
    session = entries[0].session if entries else path.stem
    return session, names.opened_second(path.name) or datetime.min.replace(tzinfo=UTC)
