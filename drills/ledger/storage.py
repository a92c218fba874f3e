"""TinyDB over a file that only grows: the one place that imports tinydb.

What TinyDB gives: documents with ids, tables, and its queries over them (`where("entry") ==
"trial"`). What it would do to a file is put everything down again at each insert, in place; a
loss of power in the middle of that loses the session. Here an insert appends one checksummed line
and flushes it to disk, whatever is there already, and nothing else can change a document.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Mapping
from contextlib import suppress
from pathlib import Path
from typing import Any, NoReturn

from tinydb import TinyDB
from tinydb.storages import Storage
from tinydb.table import Table

from drills.ledger import disk
from drills.ledger.lines import Reading, Row, line_of, next_number, read_lines


class AppendOnlyStorage(Storage):
    """One file of checksummed lines. The first row is its header; the rows after it are documents.

    header: given for a new file only; it goes to disk with the first document, in one write.
    Nothing of the file stays in memory: what is read is read from disk, as TinyDB's own do.
    """

    def __init__(self, path: Path, *, header: Row | None = None) -> None:
        self.path = path
        self._file: int | None = None
        self._unwritten_header = header
        self._size = 0
        # The number of the next line; 0 until it is known.
        self._next = 0 if header is None else 1

    def reading(self) -> Reading:
        """What the file holds now.   Raises: OSError."""
        if self._unwritten_header is not None:
            return Reading(rows=(), damage=(), size=0)
        return read_lines(self.path.read_bytes())

    def read(self) -> dict[str, dict[str, Any]]:
        _, rows = header_and_rows(self.reading())
        documents = {number: dict(row) for number, (_, row) in enumerate(rows, start=1)}
        return {TinyDB.default_table_name: documents}  # type: ignore[dict-item]

    def write(self, data: dict[str, dict[str, Any]]) -> NoReturn:
        raise TypeError("records only grow: insert is the one way to write")

    def append(self, document: Row) -> int:
        """Put one document on disk; the document's id.

        Raises: OSError, and then the file is as it was before.
        """
        if not self._next:
            self._next = next_number(self.path.read_bytes())
        number, header = self._next, self._unwritten_header
        data = line_of(document, number + (header is not None))
        if header is not None:
            data = line_of(header, number) + data
        if self._file is None:
            self._file = (
                disk.create_file(self.path) if header is not None else disk.open_file(self.path)
            )
            # As it is, not as it was counted: taking back a broken line may have failed before.
            self._size = os.fstat(self._file).st_size
        try:
            disk.write_all(self._file, data)
            if header is not None:
                disk.sync_folder(self.path.parent)
        except OSError:
            self._undo()
            raise
        self._size += len(data)
        self._unwritten_header = None
        self._next = number + (1 if header is None else 2)
        return self._next - 2

    def _undo(self) -> None:
        """Take back a part of a line, so that trying again does not leave it in the middle."""
        file, self._file = self._file, None
        if file is None:
            return
        # Where even this fails, reading finds the next line behind the broken one all the same.
        with suppress(OSError):
            os.ftruncate(file, self._size)
        os.close(file)
        if self._unwritten_header is not None:
            with suppress(OSError):
                self.path.unlink()

    def close(self) -> None:
        if self._file is not None:
            os.close(self._file)
            self._file = None


def header_and_rows(reading: Reading) -> tuple[Row | None, tuple[tuple[int, Row], ...]]:
    """The header, None when it is lost, and the documents with their lines."""
    rows = reading.rows
    if rows and "format" in rows[0][1]:
        return rows[0][1], rows[1:]
    return None, rows


class EntryTable(Table):
    """A table whose insert costs one line of the file, however many there are."""

    def insert(self, document: Mapping[str, Any]) -> int:
        storage = self.storage
        if not isinstance(storage, AppendOnlyStorage):
            raise TypeError("an entry table needs a storage that appends")
        number = storage.append(document)
        self.clear_cache()
        return number

    def insert_multiple(self, documents: Iterable[Mapping[str, Any]]) -> list[int]:
        return [self.insert(document) for document in documents]

    def _update_table(self, updater: Callable[[dict[int, Any]], None]) -> NoReturn:
        # Every way of changing a document in a table comes through here.
        raise TypeError("records only grow: insert is the one way to write")


class SessionFile(TinyDB):
    """One session's file, or one month's summaries, as a TinyDB."""

    table_class = EntryTable

    def __init__(self, path: Path, *, header: Row | None = None) -> None:
        self.kept = AppendOnlyStorage(path, header=header)
        super().__init__(storage=lambda: self.kept)
