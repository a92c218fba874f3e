"""What the therapist added at the home machine, on disk: a file a year that only grows.

The lines are those of the records (`lines`), the header says the format and the year. Files are
named `therapist/2026.jsonl` by the year of the entry in UTC.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import UTC, date
from pathlib import Path
from threading import RLock
from typing import Any

from drills.core.gestures import Tick
from drills.core.problems import BadInput, Failure, Problem
from drills.core.therapist import Answer, Decision, SecondScore, TherapistEntry, TherapistNote
from drills.core.visible import visible
from drills.ledger import disk, values
from drills.ledger.folder import THERAPIST, prepare
from drills.ledger.lines import Reading, Row, lines_of, read_lines
from drills.ledger.mending import free_beside
from drills.ledger.rows import time_out
from drills.ledger.sessions import said_of
from drills.ledger.storage import SessionFile, header_and_rows
from drills.ledger.upgrades import steps_from

FORMAT = 1
_YEAR = "[0-9][0-9][0-9][0-9]"
_HIGHEST_SCORE = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class TherapistRead:
    """What one file holds.

    rows: every whole line but the header, also those that are no entry known here.
    foreign: of a format that is not known here, and so not read.
    """

    entries: tuple[TherapistEntry, ...]
    problems: tuple[Problem, ...]
    rows: tuple[Row, ...] = ()
    damaged: bool = False
    foreign: bool = False


class TherapistFiles:
    """The therapist's entries of one practice folder; `core.ports.TherapistLog`.

    closed: why nothing may be written now, a plain clause, empty when it may; asked at each entry,
    since another program may have the folder.
    """

    def __init__(self, folder: Path, *, closed: Callable[[], str] = lambda: "") -> None:
        self._folder = folder
        self._closed = closed
        self._guard = RLock()

    @property
    def reason(self) -> str:
        return self._closed()

    @property
    def notices(self) -> tuple[str, ...]:
        return tuple(
            visible(str(problem))
            for path in files_in(self._folder)
            for problem in read_file(path).problems
        )

    def append(self, entry: TherapistEntry) -> None:
        """Put `entry` on disk before returning.

        Raises: Failure, and then nothing of it is kept; ValueError for a time without its offset.
        """
        if self.reason:
            raise Failure(f"Nothing can be saved: {self.reason}.")
        row = row_of(entry)
        year = entry.at.astimezone(UTC).year
        path = self._folder / THERAPIST / f"{year:04}.jsonl"
        with self._guard:
            prepare(self._folder)
            try:
                self._write(path, row, year)
            except OSError as error:
                raise Failure(f"Not saved, because {disk.plain_reason(error)}.") from error

    def entries(self) -> Sequence[TherapistEntry]:
        """All that can be read, in the order of writing.   Raises: Failure."""
        with self._guard:
            return tuple(
                entry for path in files_in(self._folder) for entry in read_file(path).entries
            )

    def _write(self, path: Path, row: Row, year: int) -> None:
        header = None
        if path.exists():
            read = read_file(path)
            if read.foreign:
                raise Failure(list(read.problems))
            if read.damaged:
                _mend(path, read)
        else:
            header = _header(year)
        file = SessionFile(path, header=header)
        try:
            file.insert(row)
        finally:
            file.close()


def files_in(folder: Path) -> list[Path]:
    """The files of all years, oldest first."""
    return sorted((folder / THERAPIST).glob(f"{_YEAR}.jsonl"))


def verify_therapist(folder: Path) -> list[Problem]:
    """All that is wrong with the therapist's entries; nothing is changed.   Raises: Failure."""
    return [problem for path in files_in(folder) for problem in read_file(path).problems]


def read_file(path: Path) -> TherapistRead:
    """What can be read of one file; it is not changed.   Raises: Failure."""
    try:
        reading = read_lines(path.read_bytes())
    except OSError as error:
        raise Failure(f"{path} cannot be read: {disk.plain_reason(error)}.") from error
    header, rows = header_and_rows(reading)
    try:
        steps_from(FORMAT if header is None else header["format"], where=str(path), now=FORMAT)
    except BadInput as error:
        return TherapistRead(entries=(), problems=tuple(error.problems), foreign=True)
    entries: list[TherapistEntry] = []
    problems = _faults(path, reading, has_header=header is not None)
    for line, row in rows:
        try:
            entries.append(entry_of(row))
        except (ValueError, KeyError, TypeError, OverflowError, AttributeError):
            message = "this line is whole, but it is no entry that this program knows."
            problems.append(
                Problem(where=str(path), line=line, message=message, mend="It is left out.")
            )
    return TherapistRead(
        entries=tuple(entries),
        problems=tuple(problems),
        rows=tuple(row for _, row in rows),
        damaged=bool(reading.damage) or header is None,
    )


def row_of(entry: TherapistEntry) -> dict[str, Any]:
    """Raises: ValueError for a time without its offset."""
    said = {"at": time_out(entry.at), "by": entry.by}
    match entry:
        case Decision():
            return {
                "entry": "decision",
                **said,
                "suggestion": entry.suggestion,
                "answer": entry.answer.value,
                "rule": entry.rule,
                "evidence": entry.evidence,
                "why": entry.why,
                "plan_name": entry.plan_name,
                "plan_version_before": entry.plan_version_before,
                "plan_version_after": entry.plan_version_after,
                "says": entry.says,
            }
        case SecondScore():
            return {
                "entry": "second score",
                **said,
                "session": entry.session,
                "trial": entry.trial,
                "score": entry.score,
                "ticks": [tick.value for tick in entry.ticks],
            }
        case TherapistNote():
            return {"entry": "note", **said, "about": entry.about.isoformat(), "text": entry.text}


def entry_of(row: Row) -> TherapistEntry:
    """Raises: ValueError, KeyError or TypeError when the row is no entry."""
    at, by = values.moment(row, "at"), values.text(row, "by")
    match row["entry"]:
        case "decision":
            return Decision(
                at=at,
                by=by,
                suggestion=values.text(row, "suggestion"),
                answer=Answer(row["answer"]),
                rule=values.text(row, "rule"),
                evidence=values.text(row, "evidence"),
                why=values.text(row, "why"),
                plan_name=values.text(row, "plan_name"),
                plan_version_before=values.whole(row, "plan_version_before"),
                plan_version_after=values.whole(row, "plan_version_after"),
                says=values.text(row, "says") if "says" in row else "",
            )
        case "second score":
            return SecondScore(
                at=at,
                by=by,
                session=values.text(row, "session"),
                trial=values.text(row, "trial"),
                score=values.whole(row, "score", high=_HIGHEST_SCORE + 1),
                ticks=tuple(Tick(tick) for tick in values.items(row, "ticks")),
            )
        case "note":
            about = date.fromisoformat(values.text(row, "about"))
            return TherapistNote(at=at, by=by, about=about, text=values.text(row, "text"))
        case unknown:
            raise ValueError(f"{unknown!r} is no kind of entry")


def _faults(path: Path, reading: Reading, *, has_header: bool) -> list[Problem]:
    found = [
        Problem(
            where=str(path),
            line=damage.line,
            message=said_of(damage),
            mend="Every whole entry is kept.",
        )
        for damage in reading.damage
    ]
    if not has_header:
        found.append(Problem(where=str(path), line=1, message="the header is not whole."))
    return found


def _mend(path: Path, read: TherapistRead) -> None:
    """Put the whole lines in its place; as it was found it stays beside.   Raises: OSError."""
    disk.write_new(free_beside(path, "damaged"), path.read_bytes())
    disk.replace_file(path, lines_of([_header(int(path.stem)), *read.rows]))


def _header(year: int) -> dict[str, Any]:
    return {"format": FORMAT, "therapist": year}
