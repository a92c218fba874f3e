"""The file of one session: its name, its header, and what can be read of it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from drills.core.problems import Problem
from drills.core.records import RECORD_FORMAT, Entry, SessionOpened
from drills.ledger.rows import entry_of
from drills.ledger.storage import SessionFile
from drills.ledger.upgrades import steps_from

CUT_OFF = "the file is cut off"

_NAME = re.compile(r"(\d{4}-\d\d-\d\dT\d{6})-[A-Za-z0-9-]+\.jsonl")


def file_name(opened: SessionOpened) -> str:
    """When the session was opened, in UTC, then its id as far as letters and digits go."""
    at = opened.at.astimezone(UTC).replace(tzinfo=None, microsecond=0)
    return f"{at.isoformat().replace(':', '')}-{slug_of(opened.session)}.jsonl"


def slug_of(session: str) -> str:
    return re.sub(r"[^A-Za-z0-9]+", "-", session).strip("-")[:40] or "session"


def opened_second(path: Path) -> datetime | None:
    """The second, UTC, that the name says; None when it is no session's name."""
    match = _NAME.fullmatch(path.name)
    if match is None:
        return None
    try:
        return datetime.strptime(match[1] + "+0000", "%Y-%m-%dT%H%M%S%z")
    except ValueError:
        return None


def session_files(records: Path) -> Iterator[tuple[datetime, Path]]:
    """Every session's file with the second in its name, oldest first."""
    found = [(opened_second(path), path) for path in records.glob("*.jsonl")]
    named = [(second, path) for second, path in found if second is not None]
    yield from sorted(named, key=lambda pair: (pair[0], pair[1].stem))


def stray_files(records: Path) -> list[Path]:
    """Files that look like a session's but for their name."""
    return sorted(path for path in records.glob("*.jsonl") if opened_second(path) is None)


def header_of(opened: SessionOpened) -> dict[str, Any]:
    return {
        "format": RECORD_FORMAT,
        "session": opened.session,
        "opened": opened.at.isoformat(),
    }


@dataclass(slots=True, kw_only=True)
class SessionRead:
    """What a file holds.

    session, opened: from the header, else from the first entry, else from the file's name.
    not_understood: numbers of whole lines that are no entry.
    """

    file: SessionFile
    session: str
    opened: datetime
    entries: list[Entry]
    not_understood: tuple[int, ...]

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Every fault of the file, with its line."""
        where = str(self.file.kept.path)
        found = []
        for damage in self.file.kept.reading.damage:
            message = (
                f"{CUT_OFF} in the middle of an entry, as after a loss of power."
                if damage.torn
                else f"{max(damage.end - damage.start, 1)} bytes are damaged."
            )
            mend = "Every whole entry is kept."
            found.append(Problem(where=where, line=damage.line, message=message, mend=mend))
        for line in self.not_understood:
            message = "this line is whole, but it is no entry that this program knows."
            found.append(Problem(where=where, line=line, message=message, mend="It is left out."))
        if not self.entries:
            found.append(Problem(where=where, message="no entry of this session can be read."))
        return tuple(found)


def read_session(path: Path) -> SessionRead:
    """Read one file; it is not changed.

    Raises: BadInput for a format that this program does not know; OSError.
    """
    file = SessionFile(path)
    header = file.kept.header
    # Without a header, rows are read as today's: one that is not is then not understood.
    written_as = RECORD_FORMAT if header is None else header.get("format")
    steps = steps_from(written_as, where=str(path))
    entries: list[Entry] = []
    strange: list[int] = []
    lines = [line for line, _ in file.kept.reading.rows][0 if header is None else 1 :]
    for line, document in zip(lines, file, strict=True):
        row: Any = document
        try:
            for step in steps:
                row = step(row)
            entries.append(entry_of(row))
        except (ValueError, KeyError, TypeError):
            strange.append(line)
    session, opened = _identity(path, header, entries)
    return SessionRead(
        file=file,
        session=session,
        opened=opened,
        entries=entries,
        not_understood=tuple(strange),
    )


def _identity(path: Path, header: Any, entries: list[Entry]) -> tuple[str, datetime]:
    for entry in entries:
        if isinstance(entry, SessionOpened):
            return entry.session, entry.at
    try:
        return str(header["session"]), datetime.fromisoformat(header["opened"])
    except (TypeError, KeyError, ValueError):
        session = entries[0].session if entries else path.stem
        return session, opened_second(path) or datetime.min.replace(tzinfo=UTC)
