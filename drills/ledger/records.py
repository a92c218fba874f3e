"""The records of one person: append-only, one file a session, one writer at a time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from threading import RLock

from filelock import FileLock, Timeout

from drills.core.folds import Fold
from drills.core.problems import Failure
from drills.core.records import Entry, SessionClosed, SessionOpened, Trial
from drills.core.sessions import SessionSpan
from drills.ledger import disk, mending, names, rescue
from drills.ledger.folder import RECORDS, prepare, refuse_newer, stamp
from drills.ledger.lines import line_of
from drills.ledger.reader import Reader
from drills.ledger.rows import row_of
from drills.ledger.sessions import header_of
from drills.ledger.storage import SessionFile

LOCK = "writing.lock"


def open_ledger(folder: Path, *, elsewhere: Sequence[Path] | None = None) -> Ledger:
    """Open the records in a practice folder, and make the folder where there is none.

    While another program writes there, the records open for reading alone: `reason` says so.
    Where the disk refuses, entries are held until it takes them.
    elsewhere: where to save what the folder has not taken by the end; None for the usual places.
    Raises: Failure when there is no folder and none can be made; BadInput for a newer format.
    """
    if not (folder / RECORDS).is_dir():
        prepare(folder)
    refuse_newer(folder)
    return Ledger(folder, rescue.usual_places(folder) if elsewhere is None else elsewhere)


@dataclass(slots=True)
class _Writing:
    """A session that is being written; it stays open from its first entry to its last."""

    file: SessionFile
    name: str
    opened: datetime
    last: datetime


class Ledger:
    """Records on disk; `core.ports.Records` for practice.

    folder: the practice folder.   reason: why nothing can be kept, empty when it can.
    held: entries that could not be written yet; the next `append` tries them first.
    """

    def __init__(self, folder: Path, elsewhere: Sequence[Path]) -> None:
        self.folder = folder
        self.reason = ""
        self._elsewhere = elsewhere
        self._records = folder / RECORDS
        self._lock = FileLock(folder / LOCK, mode=disk.PRIVATE_FILE, thread_local=False)
        self._guard = RLock()
        self._writing: dict[str, _Writing] = {}
        self._held: list[Entry] = []
        self._reader = Reader(folder)
        self._take_lock()
        try:
            self._reader.open()
            if self.writable:
                self._take_in()
        except BaseException:
            self._release()
            raise

    @property
    def writable(self) -> bool:
        """Whether this program alone may write."""
        return self._reader.mends

    @property
    def notices(self) -> tuple[str, ...]:
        """What was found and mended, or is odd, one plain sentence each, in the order found."""
        return tuple(self._reader.notices)

    @property
    def held(self) -> tuple[Entry, ...]:
        return tuple(self._held)

    def open_session(self, opened: SessionOpened) -> None:
        """Begin the file of a session.   Raises: Failure; ValueError for an id in use."""
        with self._guard:
            self._require_writable()
            if self._is_known(opened.session):
                raise ValueError(f"session {opened.session!r} was opened before")
            newest = self._reader.newest
            if newest is not None and opened.at < newest:
                late = f"{newest:%Y-%m-%d %H:%M} UTC"
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

        Only the files of those sessions are read.   Raises: Failure.
        """
        with self._guard:
            return self._reader.all_entries(since, until)

    def each(self, *, newest_first: bool = False) -> Iterator[Entry]:
        """Every entry, session by session, one at a time in memory."""
        return self._reader.backwards() if newest_first else self._reader.entries(None, None)

    def history(self, *, since: datetime | None = None) -> Sequence[Trial]:
        """As the protocol says, so that hardly a session's file is read.   Raises: Failure."""
        with self._guard:
            return self._reader.history(since)

    def spans(self, *, since: datetime, until: datetime) -> Sequence[SessionSpan]:
        """As the protocol says, from summaries.   Raises: Failure."""
        with self._guard:
            return self._reader.spans(since, until)

    def fold(self, into: Fold, *, since: datetime, until: datetime) -> Sequence[Trial]:
        """As the protocol says, by a checkpoint that is kept beside the records."""
        with self._guard:
            return self._reader.fold(into, since, until)

    def close(self) -> None:
        """Try once more what is held, and let the next program write.

        Raises: Failure that names how many entries could not be kept, and where they are saved.
        """
        with self._guard:
            try:
                if self._held:
                    self._write_held()
            except OSError as error:
                raise Failure(self._save_elsewhere(error)) from error
            finally:
                self._release()

    # Inside

    def _save_elsewhere(self, error: OSError) -> str:
        count = rescue.counted(len(self._held))
        text = f"{count} could not be kept, because {disk.plain_reason(error)}."
        saved = rescue.save(self.folder, self._held, self._elsewhere)
        if saved is None:
            return f"{text} No other place could take them."
        self._held.clear()
        return f"{text} Saved in {saved}; the next start takes them from there."

    def _take_lock(self) -> None:
        """Become the one writer where that can be; say why not where it cannot."""
        try:
            self._lock.acquire(timeout=0)
            self._reader.mends = True
            with suppress(OSError):
                stamp(self.folder)
        except Timeout:
            self.reason = "another program is writing the records in this folder"
        except NotImplementedError:
            self.reason = f"the disk that holds {self.folder} cannot keep two programs apart"
        except OSError as error:
            why = disk.plain_reason(error)
            self._notice(f"Nothing can be saved now, because {why}. Answers are held.")
        if self.reason:
            self._notice(f"The records are open for reading alone: {self.reason}.")

    def _release(self) -> None:
        for writing in self._writing.values():
            writing.file.close()
        self._writing.clear()
        self._reader.mends = False
        self.reason = self.reason or "the records have been closed"
        self._lock.release()

    def _require_writable(self) -> None:
        if self.reason:
            raise Failure(f"Nothing can be saved: {self.reason}.")

    def _put(self, entry: Entry) -> None:
        if not self._held and self.writable:
            try:
                self._write(entry)
            except OSError as error:
                self._held.append(entry)
                raise Failure(_not_saved(error)) from error
            return
        # What no file could ever hold is refused here, so that it cannot block the entries after.
        line_of(row_of(entry), 1)
        self._held.append(entry)
        try:
            self._write_held()
        except OSError as error:
            raise Failure(_not_saved(error)) from error

    def _write_held(self) -> None:
        if not self.writable:
            try:
                self._lock.acquire(timeout=0)
            except Timeout:
                raise OSError("another program is writing there") from None
            self._reader.mends = True
        while self._held:
            self._write(self._held[0])
            del self._held[0]

    def _write(self, entry: Entry) -> None:
        if isinstance(entry, SessionOpened):
            path = disk.free_name(self._records / names.file_name(entry))
            file = SessionFile(path, header=header_of(entry))
            file.insert(row_of(entry))
            self._writing[entry.session] = _Writing(file, path.name, entry.at, entry.at)
            self._reader.add(path.name)
            return
        writing = self._writing.get(entry.session) or self._reopen(entry.session)
        writing.file.insert(row_of(entry))
        if entry.at < writing.last:
            back = (writing.last - entry.at).total_seconds()
            self._notice(
                f"The clock went back by {back:.0f} s"
                f" in the session of {writing.opened:%Y-%m-%d %H:%M}."
            )
        writing.last = entry.at
        if isinstance(entry, SessionClosed):
            writing.file.close()
            del self._writing[entry.session]
            self._reader.seal(writing.name)

    def _reopen(self, session: str) -> _Writing:
        """Go on with the file of a session from before.   Raises: OSError."""
        read = self._reader.of_session(session)
        if read is None:
            raise FileNotFoundError(f"the file of session {session!r} is gone")
        if read.rows and not read.damage:
            older = mending.upgrade(read)
            self._notice(f"{read.path.name} is in today's format now; before: {older.name}.")
        last = read.entries[-1].at
        writing = _Writing(SessionFile(read.path), read.path.name, read.opened, last)
        self._writing[session] = writing
        return writing

    def _is_known(self, session: str) -> bool:
        """Opened here, waiting to be, or on disk from before."""
        return (
            session in self._writing
            or any(isinstance(e, SessionOpened) and e.session == session for e in self._held)
            or self._reader.of_session(session) is not None
        )

    def _take_in(self) -> None:
        """Bring in what an earlier start had to save elsewhere, each entry once."""
        for saved in rescue.find(self.folder, self._elsewhere):
            whole = saved.whole
            try:
                for entry in saved.entries:
                    read = self._reader.of_session(entry.session)
                    if read is None and not isinstance(entry, SessionOpened):
                        whole = False
                    elif read is None or entry not in read.entries:
                        self._write(entry)
                if whole:
                    saved.path.unlink()
                else:
                    saved.path.rename(disk.free_name(saved.path.with_suffix(".damaged")))
            except OSError as error:
                why = disk.plain_reason(error)
                self._notice(f"{saved.path} waits to be taken in, because {why}.")
            else:
                self._notice(
                    f"{rescue.counted(len(saved.entries))} were taken in from {saved.path}."
                )
        for writing in self._writing.values():
            writing.file.close()
        self._writing.clear()

    def _notice(self, text: str) -> None:
        self._reader.notice(text)


def _not_saved(error: OSError) -> str:
    return f"Not saved yet, because {disk.plain_reason(error)}; go on, it is tried again."
