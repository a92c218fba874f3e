"""Reading the records of one practice folder, and mending what reading finds."""

from __future__ import annotations

from bisect import insort
from collections.abc import Iterator, Sequence
from contextlib import suppress
from datetime import datetime
from itertools import groupby
from pathlib import Path

from drills.core.folds import Fold
from drills.core.garbage import uncollected
from drills.core.problems import BadInput, Failure
from drills.core.records import Entry, Trial, latest_trials
from drills.core.sessions import SessionSpan
from drills.core.visible import visible
from drills.ledger import checkpoint, disk, mending, names
from drills.ledger.checkpoint import OfSession
from drills.ledger.folder import RECORDS
from drills.ledger.sessions import CUT_OFF, SessionRead, read_session
from drills.ledger.slim import slimmed
from drills.ledger.summaries import Summaries, Summary, month_of, summarise

# Entries that stay in memory, of the sessions used last: a few days.
_MOST_KEPT = 600


class Reader:
    """mends: this program is the one writer, so what is damaged may be put in order.

    notices: what was found, in the order found.   newest: when the last session was opened.
    """

    def __init__(self, folder: Path) -> None:
        self.mends = False
        self.notices: dict[str, None] = {}
        self._folder = folder
        self._records = folder / RECORDS
        self._summaries = Summaries(folder)
        self._listing: list[str] | None = None
        self._kept: dict[str, SessionRead] = {}

    def open(self) -> None:
        """Look over the folder and the newest session.   Raises: BadInput for a newer format."""
        for stray in names.stray_names(self._records):
            self.notice(f"{stray} is not named like a session, so it is not read.")
        listed = self._names()
        if listed:
            self._read(listed[-1])

    @property
    def newest(self) -> datetime | None:
        listed = self._names()
        return names.opened_second(listed[-1]) if listed else None

    def add(self, name: str) -> None:
        """A session's file is new."""
        if self._listing is not None:
            insort(self._listing, name, key=names.in_order)

    def all_entries(self, since: datetime | None, until: datetime | None) -> tuple[Entry, ...]:
        """The same at once, for a range that fits into memory."""
        with uncollected():
            return tuple(self.entries(since, until))

    def entries(self, since: datetime | None, until: datetime | None) -> Iterator[Entry]:
        """Of the sessions opened in `since <= opened < until`, oldest first."""
        for read in self._sessions(since, until):
            yield from read.entries

    def backwards(self) -> Iterator[Entry]:
        """Of every session, the newest first; within a session in the order of writing."""
        for name in reversed(self._names()):
            read = self._session(name)
            if read is not None:
                yield from read.entries

    def history(self, since: datetime | None) -> tuple[Trial, ...]:
        """Each trial as last kept, slimmed, from summaries where they are up to date."""
        with uncollected():
            return self._history(since)

    def fold(self, into: Fold, since: datetime, until: datetime) -> tuple[Trial, ...]:
        """Bring `into` to a checkpoint, a new one when there is enough; the trials after it."""
        with uncollected():
            return self._fold(into, since, until)

    def spans(self, since: datetime, until: datetime) -> tuple[SessionSpan, ...]:
        """Of the sessions opened in `since <= opened < until`, oldest first."""
        found = []
        for name in names.names_between(self._names(), since, until):
            span = self._span(name)
            if span is not None and span.opened_at is not None:
                found.append((span.opened_at, span))
        found.sort(key=lambda pair: pair[0])
        return tuple(span for opened, span in found if since <= opened < until)

    def _span(self, name: str) -> SessionSpan | None:
        """From the summary where it is up to date."""
        summary = self._summaries.find(name)
        if summary is not None and summary.span is not None and self._is_current(summary):
            return summary.span
        read = self._session(name)
        if read is None:
            return None
        self._keep_summary(read)
        return SessionSpan.of(read.session, read.entries)

    def _history(self, since: datetime | None) -> tuple[Trial, ...]:
        found = self._kept_trials(names.names_between(self._names(), since, None))
        return tuple(
            trial
            for session in found
            if since is None or session.opened >= since
            for trial in session.trials
        )

    def _fold(self, into: Fold, since: datetime, until: datetime) -> tuple[Trial, ...]:
        listed = names.names_between(self._names(), since, None)
        covered, after = 0, []
        try:
            at, kept = checkpoint.load(self._folder, self._records, into.name, since, listed)
            after = self._kept_trials(listed[at.count :])
            if after and after[0].opened < at.newest:
                raise ValueError("a session is older than those before it")
            into.go_on_from(kept)
            covered = at.count
        except checkpoint.NO_GOOD:
            after = [each for each in self._kept_trials(listed) if each.opened >= since]
        taken = [] if not self.mends else checkpoint.coverable(after, listed[covered:], until)
        if taken:
            into.take([trial for session in taken for trial in session.trials])
            self._put_by(into, since, listed[: covered + len(taken)], taken[-1].opened)
        return tuple(trial for session in after[len(taken) :] for trial in session.trials)

    def _put_by(
        self, fold: Fold, since: datetime, covered: Sequence[str], newest: datetime
    ) -> None:
        kept = fold.put_by()
        if kept is not None:
            # What fails here is made up for at the next start.
            with suppress(*checkpoint.NO_GOOD):
                sessions = checkpoint.cover(self._records, covered, newest)
                checkpoint.save(self._folder, fold.name, since, sessions, kept)

    def _kept_trials(self, listed: Sequence[str]) -> list[OfSession]:
        """Of the sessions in these files, in the order in which they were opened."""
        found: list[OfSession] = []
        for month, names_of_month in groupby(listed, key=month_of):
            of_month = dict.fromkeys(names_of_month)
            summaries = self._summaries.with_trials(month, of_month)
            for name in of_month:
                summary, trials = summaries.get(name, (None, ()))
                if summary is not None and self._is_current(summary):
                    found.append(OfSession(name, summary.opened, trials, is_summarised=True))
                    continue
                read = self._session(name)
                if read is not None:
                    self._keep_summary(read)
                    trials = tuple(map(slimmed, latest_trials(read.entries)))
                    found.append(OfSession(name, read.opened, trials, is_summarised=False))
        found.sort(key=lambda session: session.opened)
        return found

    def of_session(self, session: str) -> SessionRead | None:
        """The session of that id, None when there is no such file."""
        slug = names.slug_of(session)
        for name in self._names():
            if slug in name:
                read = self._session(name)
                if read is not None and read.session == session and read.entries:
                    return read
        return None

    def seal(self, name: str) -> None:
        """Summarise a session that has been closed; what fails here is made up for later."""
        with suppress(BadInput, OSError):
            self._summaries.keep(summarise(read_session(self._records / name)))

    # Inside

    def _names(self) -> Sequence[str]:
        """The one writer knows what is new; a reader looks each time."""
        if not self.mends:
            self._listing = None
            return names.session_names(self._records)
        if self._listing is None:
            self._listing = names.session_names(self._records)
        return self._listing

    def _sessions(self, since: datetime | None, until: datetime | None) -> Iterator[SessionRead]:
        chosen: list[SessionRead] = []
        second = ""
        # Sessions of one second may be named in another order than they were opened in.
        for name in [*names.names_between(self._names(), since, until), ""]:
            if name[: names.SECOND_LENGTH] != second:
                yield from sorted(chosen, key=lambda read: read.opened)
                chosen, second = [], name[: names.SECOND_LENGTH]
            read = self._session(name) if name else None
            if (
                read is not None
                and (since is None or since <= read.opened)
                and (until is None or read.opened < until)
            ):
                chosen.append(read)

    def _session(self, name: str) -> SessionRead | None:
        """None for a file of a format that this program does not know."""
        try:
            return self._read(name)
        except BadInput as error:
            self.notice(str(error))
            return None

    def _read(self, name: str) -> SessionRead:
        path = self._records / name
        known = self._kept.pop(name, None)
        try:
            if known is not None and known.size == path.stat().st_size:
                self._kept[name] = known
                return known
            read = read_session(path)
        except OSError as error:
            raise Failure(f"{path} cannot be read: {disk.plain_reason(error)}.") from error
        for problem in read.problems:
            # A reader may come upon a line that the other program is just writing.
            if self.mends or problem.message != CUT_OFF:
                self.notice(str(problem))
        summary = self._summaries.find(name)
        if summary is not None and (cut := cut_since(summary, read)):
            self.notice(f"{path}: {cut}")
        if self.mends and (read.damage or not read.entries):
            read = self._mend(read)
        if read.entries:
            self._kept[name] = read
        while len(self._kept) > 1 and sum(len(r.entries) for r in self._kept.values()) > _MOST_KEPT:
            del self._kept[next(iter(self._kept))]
        return read

    def _mend(self, read: SessionRead) -> SessionRead:
        path = read.path
        try:
            aside = mending.set_aside(read)
        except OSError as error:
            self.notice(f"{path.name} is left damaged, because {disk.plain_reason(error)}.")
            return read
        self.notice(f"{path.name} as it was found is kept as {aside.name}.")
        if not read.entries:
            self._listing = None
            return read
        read = read_session(path)
        if self._summaries.find(path.name) is not None:
            self.seal(path.name)
        return read

    def _is_current(self, summary: Summary) -> bool:
        """Whether the session's file is as long as it was then."""
        try:
            return (self._records / summary.name).stat().st_size == summary.size
        except OSError:
            return False

    def _keep_summary(self, read: SessionRead) -> None:
        """Never in the place of one that knows of more than the file now holds."""
        before = self._summaries.find(read.path.name)
        is_better = (
            before is None
            or before.size < read.size
            or (before.span is None and (before.size, before.crc32) == (read.size, read.crc32))
        )
        if self.mends and read.entries and is_better:
            with suppress(OSError):
                self._summaries.keep(summarise(read))

    def notice(self, text: str) -> None:
        self.notices[visible(text)] = None


def cut_since(summary: Summary, read: SessionRead) -> str:
    """A sentence when the file holds less than at the time of its summary, else empty."""
    if read.damage or read.size >= summary.size:
        return ""
    lost = summary.entries - len(read.entries)
    return f"the file is cut off: {lost} of its {summary.entries} entries are gone."
