"""Summaries of sessions: what the schedule asks of years of practice, without the sessions' files.

One file a month, one checksummed line a session, the last line of a session counts. A summary
holds how long the session took, each trial as last kept, without its words and pictures, and the
size and checksum of the session's file, so that a file cut off at the end of a line is noticed. All
of it can be made again from the records: a summary that is lost or out of date costs the time of
reading the session.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import Any

from drills.core.problems import Problem
from drills.core.records import Asked, CloseReason, Trial, latest_trials
from drills.core.sessions import SessionSpan
from drills.ledger import disk, values
from drills.ledger.lines import Row, lines_of, sound_rows
from drills.ledger.sessions import SessionRead
from drills.ledger.slim import trials_in, trials_out
from drills.ledger.storage import SessionFile

SUMMARY_FORMAT = 1
FOLDER = "summaries"

# What is raised by a file of summaries that is not there, or damaged, or by a row in it.
_NO_GOOD = (OSError, ValueError, KeyError, TypeError, IndexError)


@dataclass(frozen=True, slots=True, kw_only=True)
class Summary:
    """What is kept of one session.

    name: of its file.   size, crc32: of its file when the summary was made.
    reason: how it was closed; empty when it was broken off.
    span: None in a summary from before that was kept.
    """

    name: str
    session: str
    opened: datetime
    size: int
    crc32: int
    entries: int
    reason: str
    span: SessionSpan | None
    row: Row

    @property
    def trials(self) -> tuple[Trial, ...]:
        """Each trial as last kept, without its sentence, words, options and answer.

        Only of a summary that was asked for with its trials.
        Raises: ValueError, KeyError, TypeError or IndexError when the summary is no good.
        """
        return trials_in(self.session, self.row)


def summarise(read: SessionRead) -> Summary:
    """The summary of a session, from what its file holds."""
    reason = read.closed_as
    span = SessionSpan.of(read.session, read.entries)
    row = {
        "file": read.path.name,
        "session": read.session,
        "opened": read.opened.isoformat(),
        "size": read.size,
        "crc32": read.crc32,
        "entries": len(read.entries),
        "reason": "" if reason is None else reason.value,
        "span": {
            "is_opened": span.opened_at is not None,
            "seconds": span.seconds,
            "continues": span.continues,
            "check": span.check,
            "simulated": span.simulated,
        },
        **trials_out(latest_trials(read.entries)),
    }
    return _summary(row)


def month_of(name: str) -> str:
    """The month, UTC, of a session's file."""
    return name[: len("2026-11")]


class Summaries:
    """The summaries of one practice folder.

    What stays in memory of a month that was read are its sessions' names and sizes, no trials.
    """

    def __init__(self, folder: Path) -> None:
        self._folder = folder / FOLDER
        self._months: dict[str, dict[str, Summary]] = {}

    def find(self, name: str) -> Summary | None:
        """The summary of the session in the file `name`; None when there is none to trust."""
        return self._month(month_of(name)).get(name)

    def with_trials(
        self, month: str, wanted: Collection[str]
    ) -> Mapping[str, tuple[Summary, tuple[Trial, ...]]]:
        """The summaries of the files `wanted` of one month that can be read, with their trials."""
        found: dict[str, tuple[Summary, tuple[Trial, ...]]] = {}
        bare: dict[str, Summary] = {}
        known: dict[str, Callable[..., Asked]] = {}
        # A row takes several times the room of its trials: only one is in memory at a time.
        with suppress(*_NO_GOOD):
            for summary in self._each(month):
                found.pop(summary.name, None)
                bare[summary.name] = replace(summary, row={})
                if summary.name in wanted:
                    with suppress(*_NO_GOOD):
                        trials = trials_in(summary.session, summary.row, known)
                        found[summary.name] = (bare[summary.name], trials)
            self._months[month] = bare
            return found
        return {}

    def keep(self, summary: Summary) -> None:
        """Put one summary on disk.   Raises: OSError."""
        month = month_of(summary.name)
        known = self._month(month)
        path = self._path(month)
        if known:
            file = SessionFile(path)
        else:
            self._folder.mkdir(mode=disk.PRIVATE_FOLDER, exist_ok=True)
            # What is there cannot be read, and is made again from the records.
            path.unlink(missing_ok=True)
            file = SessionFile(path, header=_header(month))
        try:
            file.insert(summary.row)
        finally:
            file.close()
        known[summary.name] = replace(summary, row={})

    def replace_month(self, month: str, found: list[Summary]) -> None:
        """Make the summaries of one month anew.   Raises: OSError."""
        self._folder.mkdir(mode=disk.PRIVATE_FOLDER, exist_ok=True)
        rows = [_header(month), *(summary.row for summary in found)]
        disk.replace_file(self._path(month), lines_of(rows))
        self._months.pop(month, None)

    def months(self) -> Iterator[str]:
        for path in sorted(self._folder.glob("*.jsonl")):
            yield path.stem

    def of_month(self, month: str) -> tuple[Summary, ...]:
        return tuple(self._month(month).values())

    def problems(self) -> tuple[Problem, ...]:
        """What is wrong with the files of summaries themselves."""
        return tuple(
            Problem(
                where=str(self._path(month)),
                message="this month's summaries are damaged.",
                mend="Run `drills records rebuild`.",
            )
            for month in self.months()
            if not self._month(month)
        )

    def drop(self, month: str) -> None:
        with suppress(FileNotFoundError):
            self._path(month).unlink()
        self._months.pop(month, None)

    def _path(self, month: str) -> Path:
        return self._folder / f"{month}.jsonl"

    def _month(self, month: str) -> dict[str, Summary]:
        """By file name; empty when any of it is damaged, since it can all be made again."""
        if month not in self._months:
            self._months[month] = {}
            with suppress(*_NO_GOOD):
                found = {each.name: replace(each, row={}) for each in self._each(month)}
                self._months[month] = found
        return self._months[month]

    def _each(self, month: str) -> Iterator[Summary]:
        """As they stand in the file.   Raises: one of `_NO_GOOD` when any of it is damaged."""
        with self._path(month).open("rb") as lines:
            rows = sound_rows(lines)
            if next(rows, None) != _header(month):
                raise ValueError("this is no file of summaries")
            yield from map(_summary, rows)


def _header(month: str) -> dict[str, Any]:
    return {"format": SUMMARY_FORMAT, "month": month}


def _summary(row: Row) -> Summary:
    return Summary(
        name=values.text(row, "file"),
        session=values.text(row, "session"),
        opened=values.moment(row, "opened"),
        size=values.whole(row, "size"),
        crc32=values.whole(row, "crc32"),
        entries=values.whole(row, "entries"),
        reason=values.text(row, "reason"),
        span=_span(row),
        row=row,
    )


def _span(row: Row) -> SessionSpan | None:
    span, reason = row.get("span"), values.text(row, "reason")
    if span is None:
        return None
    return SessionSpan(
        session=values.text(row, "session"),
        opened_at=values.moment(row, "opened") if span["is_opened"] else None,
        seconds=span["seconds"],
        reason=CloseReason(reason) if reason else None,
        continues=span["continues"],
        check=span["check"],
        simulated=span["simulated"],
    )
