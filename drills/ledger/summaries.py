"""Summaries of sessions: what the schedule asks of years of practice, without the sessions' files.

One file a month, one checksummed line a session, the last line of a session counts. A summary
holds each trial as last kept, without its words and pictures, and the size and checksum of the
session's file, so that a file cut off at the end of a line is noticed. All of it can be made again
from the records: a summary that is lost or out of date costs the time of reading the session.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, fields, replace
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Any

from drills.core.gestures import Tick
from drills.core.problems import Problem
from drills.core.records import Asked, Attempt, Trial, latest_trials
from drills.ledger import disk, values
from drills.ledger.lines import Row, lines_of, sound_rows
from drills.ledger.rows import asked_in, asked_out, time_out
from drills.ledger.sessions import SessionRead
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
    """

    name: str
    session: str
    opened: datetime
    size: int
    crc32: int
    entries: int
    reason: str
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
    row = {
        "file": read.path.name,
        "session": read.session,
        "opened": read.opened.isoformat(),
        "size": read.size,
        "crc32": read.crc32,
        "entries": len(read.entries),
        "reason": "" if reason is None else reason.value,
        **trials_out(latest_trials(read.entries)),
    }
    return _summary(row)


def trials_out(trials: Sequence[Trial]) -> dict[str, Any]:
    """Trials of one session as plain values, without sentence, words, options and answer."""
    asked: dict[Asked, int] = {}
    rows = []
    for trial in trials:
        slim = slimmed(trial).asked
        number = asked.setdefault(replace(slim, item_id=""), len(asked))
        rows.append(_trial_out(trial, number))
    return {"asked": [asked_out(each) for each in asked], "trials": rows}


def trials_in(
    session: str, row: Row, known: dict[str, Callable[..., Asked]] | None = None
) -> tuple[Trial, ...]:
    """What `trials_out` gave.   Raises: as `Summary.trials`.

    known: what was asked in other sessions, and is made only once; it is added to.
    """
    known = {} if known is None else known
    asked = []
    for each in row["asked"]:
        said = repr(each)
        if said not in known:
            known[said] = _items_like(asked_in(each))
        asked.append(known[said])
    return tuple(_trial_in(session, each, asked) for each in row["trials"])


def slimmed(trial: Trial) -> Trial:
    """A trial as a summary gives it back: all but its sentence, words, options and answer."""
    asked = replace(trial.asked, sentence="", words=(), options=(), answer=None)
    return replace(trial, asked=asked)


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
        known: dict[str, Callable[..., Asked]] = {}
        # A row takes several times the room of its trials: only one is in memory at a time.
        with suppress(*_NO_GOOD):
            for summary in self._each(month):
                found.pop(summary.name, None)
                if summary.name in wanted:
                    with suppress(*_NO_GOOD):
                        trials = trials_in(summary.session, summary.row, known)
                        found[summary.name] = (replace(summary, row={}), trials)
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
        row=row,
    )


def _trial_out(trial: Trial, asked: int) -> list[Any]:
    return [
        trial.trial,
        time_out(trial.started_at),
        time_out(trial.at),
        trial.block,
        asked,
        trial.asked.item_id,
        trial.ended,
        trial.skipped,
        trial.words_per_minute,
        [_attempt_out(attempt) for attempt in trial.attempts],
        *([trial.help_at_start] if trial.help_at_start else []),
    ]


def _items_like(asked: Asked) -> Callable[..., Asked]:
    """Makes the like of `asked` for any `item_id`; `replace` takes three times as long."""
    same = {each.name: getattr(asked, each.name) for each in fields(asked)}
    del same["item_id"]
    return partial(Asked, **same)


def _trial_in(session: str, row: list[Any], asked: list[Callable[..., Asked]]) -> Trial:
    trial, started_at, at, block, number, item, ended, skipped, words_per_minute, *rest = row
    attempts, *begun_with = rest
    return Trial(
        session=session,
        trial=trial,
        started_at=datetime.fromisoformat(started_at),
        at=datetime.fromisoformat(at),
        block=block,
        asked=asked[number](item_id=item),
        attempts=tuple(map(_attempt_in, attempts)),
        ended=ended,
        skipped=skipped,
        words_per_minute=words_per_minute,
        help_at_start=begun_with[0] if begun_with else 0,
    )


def _attempt_out(attempt: Attempt) -> list[Any]:
    return [
        attempt.right,
        attempt.cue_level,
        time_out(attempt.at),
        attempt.choice,
        attempt.score,
        [tick.value for tick in attempt.ticks],
        attempt.replays,
        attempt.latency_ms,
    ]


def _attempt_in(row: list[Any]) -> Attempt:
    right, cue_level, at, choice, score, ticks, replays, latency_ms = row
    return Attempt(
        right=right,
        cue_level=cue_level,
        at=datetime.fromisoformat(at),
        choice=choice,
        score=score,
        ticks=tuple(map(Tick, ticks)) if ticks else (),
        replays=replays,
        latency_ms=latency_ms,
    )
