"""The records of one person: append-only, one file a session, one writer at a time."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from datetime import datetime, timedelta
from pathlib import Path
from threading import RLock

from filelock import FileLock, Timeout

from drills.core.problems import BadInput, Failure
from drills.core.records import Entry, SessionOpened
from drills.ledger import disk
from drills.ledger.folder import RECORDS, prepare
from drills.ledger.lines import canonical, line_of
from drills.ledger.rows import row_of
from drills.ledger.sessions import (
    CUT_OFF,
    SessionRead,
    file_name,
    header_of,
    read_session,
    session_files,
    slug_of,
    stray_files,
)
from drills.ledger.storage import SessionFile


def open_ledger(folder: Path) -> Ledger:
    """Open the records in a practice folder, and make the folder where there is none.

    While another program writes there, or where nothing can be written, the records open for
    reading alone: `writable` is False and `reason` says why.
    Raises: Failure when there is no folder and none can be made; BadInput for a newer format.
    """
    if not (folder / RECORDS).is_dir():
        prepare(folder)
    lock = FileLock(folder / "writing.lock", mode=disk.PRIVATE_FILE, thread_local=False)
    reason = ""
    try:
        lock.acquire(timeout=0)
    except Timeout:
        reason = "another program is writing the records in this folder"
    except OSError as error:
        reason = f"nothing can be written in {folder}, because {disk.plain_reason(error)}"
    except NotImplementedError:
        reason = f"the disk that holds {folder} cannot keep two programs apart"
    return Ledger(folder, lock=None if reason else lock, reason=reason)


class Ledger:
    """Records on disk; `core.ports.Records` for practice.

    folder: the practice folder.   writable, reason: see `open_ledger`.
    held: entries that could not be written yet; the next `append` tries them first.
    """

    def __init__(self, folder: Path, *, lock: FileLock | None, reason: str) -> None:
        self.folder = folder
        self.writable = lock is not None
        self.reason = reason
        self._records = folder / RECORDS
        self._lock = lock
        self._guard = RLock()
        self._read: dict[Path, SessionRead] = {}
        self._paths: dict[str, Path] = {}
        self._held: list[Entry] = []
        self._notices: dict[str, None] = {}
        if reason:
            self._notice(f"The records are open for reading alone: {reason}.")
        for stray in stray_files(self._records):
            self._notice(f"{stray.name} is not named like a session, so it is not read.")
        self._newest: datetime | None = None
        try:
            files = list(session_files(self._records))
            if files:
                self._newest, newest = files[-1]
                self._session(newest)
        except BaseException:
            self._release()
            raise

    @property
    def notices(self) -> tuple[str, ...]:
        """What was found and mended, or is odd, one plain sentence each, in the order found."""
        return tuple(self._notices)

    @property
    def held(self) -> tuple[Entry, ...]:
        return tuple(self._held)

    def open_session(self, opened: SessionOpened) -> None:
        """Begin the file of a session.   Raises: Failure; ValueError for an id in use."""
        with self._guard:
            self._require_writable()
            if self._is_known(opened.session):
                raise ValueError(f"session {opened.session!r} was opened before")
            if self._newest is not None and opened.at < self._newest:
                late = f"{self._newest:%Y-%m-%d %H:%M} UTC"
                self._notice(f"The clock went back: a session from {late} is kept already.")
            self._put(opened)

    def append(self, entry: Entry) -> None:
        """Put `entry` on disk before returning.

        Raises: Failure, and then the entry is in `held`; ValueError for an unopened session.
        """
        with self._guard:
            self._require_writable()
            if isinstance(entry, SessionOpened) or not self._is_known(entry.session):
                raise ValueError(f"session {entry.session!r} has not been opened")
            self._put(entry)

    def entries(
        self, *, since: datetime | None = None, until: datetime | None = None
    ) -> Sequence[Entry]:
        """Entries of the sessions opened in `since <= opened.at < until`, oldest first.

        Only the files of those sessions are read; each is read once.
        Raises: BadInput for a format that this program does not know; Failure.
        """
        with self._guard:
            chosen = []
            for second, path in session_files(self._records):
                # The name leaves out fractions of a second.
                if since is not None and second <= since - timedelta(seconds=1):
                    continue
                if until is not None and second >= until:
                    continue
                read = self._session(path)
                if (since is None or since <= read.opened) and (
                    until is None or read.opened < until
                ):
                    chosen.append(read)
            chosen.sort(key=lambda read: read.opened)
            return tuple(entry for read in chosen for entry in read.entries)

    def close(self) -> None:
        """Try once more what is held, and let the next program write.

        Raises: Failure that names how many entries could not be kept.
        """
        with self._guard:
            try:
                if self._held and self.writable:
                    self._write_held()
            except OSError as error:
                count = _counted(len(self._held))
                raise Failure(
                    f"{count} could not be kept, because {disk.plain_reason(error)}."
                ) from error
            finally:
                self._release()

    def _release(self) -> None:
        for read in self._read.values():
            read.file.close()
        if self.writable:
            self.writable, self.reason = False, "the records have been closed"
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def _require_writable(self) -> None:
        if not self.writable:
            raise Failure(f"Nothing can be saved: {self.reason}.")

    def _put(self, entry: Entry) -> None:
        # What no file could ever hold is refused here, so that it cannot block the entries after.
        canonical(row_of(entry))
        self._held.append(entry)
        try:
            self._write_held()
        except OSError as error:
            raise Failure(
                f"{_counted(len(self._held))} not saved yet, because {disk.plain_reason(error)};"
                " go on, and it will be tried again."
            ) from error

    def _write_held(self) -> None:
        while self._held:
            self._write(self._held[0])
            del self._held[0]

    def _write(self, entry: Entry) -> None:
        row = row_of(entry)
        if isinstance(entry, SessionOpened):
            path = disk.free_name(self._records / file_name(entry))
            file = SessionFile(path, header=header_of(entry))
            file.insert(row)
            self._read[path] = SessionRead(
                file=file,
                session=entry.session,
                opened=entry.at,
                entries=[entry],
                not_understood=(),
            )
            self._paths[entry.session] = path
            second = entry.at.replace(microsecond=0)
            self._newest = second if self._newest is None else max(self._newest, second)
            return
        read = self._read[self._paths[entry.session]]
        read.file.insert(row)
        if read.entries and entry.at < read.entries[-1].at:
            back = read.entries[-1].at - entry.at
            self._notice(
                f"The clock went back by {back.total_seconds():.0f} s"
                f" in the session of {read.opened:%Y-%m-%d %H:%M}."
            )
        read.entries.append(entry)

    def _is_known(self, session: str) -> bool:
        """Opened here, waiting to be, or on disk from before."""
        if session in self._paths or any(
            entry.session == session for entry in self._held if isinstance(entry, SessionOpened)
        ):
            return True
        slug = slug_of(session)
        for _, path in session_files(self._records):
            if slug in path.stem:
                with suppress(BadInput):
                    self._session(path)
        return session in self._paths

    def _session(self, path: Path) -> SessionRead:
        known = self._read.get(path)
        # Another program's session grows while this one reads.
        if known is not None and (self.writable or known.file.kept.size == path.stat().st_size):
            return known
        try:
            read = read_session(path)
        except OSError as error:
            raise Failure(f"{path} cannot be read: {disk.plain_reason(error)}.") from error
        for problem in read.problems:
            # A reader may come upon a line that the other program is just writing.
            if self.writable or not problem.message.startswith(CUT_OFF):
                self._notice(str(problem))
        if self.writable and (read.file.kept.reading.damage or not read.entries):
            read = self._set_aside(read)
        self._read[path] = read
        if read.entries:
            self._paths[read.session] = path
        return read

    def _set_aside(self, read: SessionRead) -> SessionRead:
        """Keep the damaged file as it is under another name; go on with its whole lines."""
        path = read.file.kept.path
        number = 1
        while (aside := path.with_name(f"{path.name}.damaged-{number}")).exists():
            number += 1
        rows = [row for _, row in read.file.kept.reading.rows]
        if read.file.kept.header is None:
            opened = [entry for entry in read.entries if isinstance(entry, SessionOpened)]
            rows[:0] = [header_of(entry) for entry in opened[:1]]
        try:
            if read.entries:
                disk.write_new(aside, path.read_bytes())
                disk.replace_file(path, b"".join(line_of(row) for row in rows))
            else:
                path.rename(aside)
        except OSError as error:
            self._notice(f"{path.name} is left damaged, because {disk.plain_reason(error)}.")
            return read
        self._notice(f"{path.name} as it was found is kept as {aside.name}.")
        return read_session(path) if read.entries else read

    def _notice(self, text: str) -> None:
        self._notices[text] = None


def _counted(number: int) -> str:
    return f"{number} {'entry' if number == 1 else 'entries'}"
