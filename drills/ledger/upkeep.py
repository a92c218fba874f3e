"""Looking after the records: checking them, and giving them out."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from pathlib import Path

from drills.core.problems import BadInput, Problem
from drills.core.records import RECORD_FORMAT, Entry
from drills.ledger import disk
from drills.ledger.folder import RECORDS
from drills.ledger.rows import row_of
from drills.ledger.sessions import read_session, session_files, stray_files


def verify(folder: Path) -> tuple[Problem, ...]:
    """Read every record in a practice folder and say all that is wrong; nothing is changed."""
    records = folder / RECORDS
    found: list[Problem] = []
    for stray in stray_files(records):
        message = "is not named like a session, so it is not read."
        found.append(Problem(where=str(stray), message=message, mend="Give it its name back."))
    for _, path in session_files(records):
        try:
            read = read_session(path)
        except BadInput as error:
            found.extend(error.problems)
        except OSError as error:
            message = f"cannot be read: {disk.plain_reason(error)}."
            found.append(Problem(where=str(path), message=message))
        else:
            found.extend(read.problems)
            if read.file.kept.header is None:
                message = "the header is not whole."
                found.append(Problem(where=str(path), line=1, message=message))
            read.file.close()
    return tuple(found)


def export(entries: Iterable[Entry]) -> Iterator[str]:
    """Entries as JSON Lines, each with its `format` number; without line ends."""
    for entry in entries:
        yield json.dumps({"format": RECORD_FORMAT, **row_of(entry)}, ensure_ascii=False)
