"""Looking after the records: checking them, and making again what is derived from them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from filelock import FileLock, Timeout

from drills.core.problems import BadInput, Failure, Problem
from drills.ledger import checkpoint, disk, names
from drills.ledger.folder import FORMAT, RECORDS, THERAPIST, refuse_newer
from drills.ledger.reader import cut_since
from drills.ledger.records import LOCK
from drills.ledger.sessions import SessionRead, read_session
from drills.ledger.summaries import Summaries, Summary, month_of, summarise
from drills.ledger.therapist import verify_therapist


@contextmanager
def sole_writer(folder: Path) -> Iterator[None]:
    """Keep every other program from writing meanwhile.   Raises: Failure when one is."""
    lock = FileLock(folder / LOCK, mode=disk.PRIVATE_FILE, thread_local=False)
    try:
        lock.acquire(timeout=0)
    except Timeout:
        raise Failure(f"Another program is using {folder}. Close it and try again.") from None
    except (OSError, NotImplementedError) as error:
        why = disk.plain_reason(error) if isinstance(error, OSError) else "its disk has no locks"
        raise Failure(f"Nothing can be written in {folder}, because {why}.") from error
    try:
        yield
    finally:
        lock.release()


def verify(folder: Path) -> tuple[Problem, ...]:
    """Read every record in a practice folder and say all that is wrong; nothing is changed."""
    records = folder / RECORDS
    summaries = Summaries(folder)
    found = _about_format(folder)
    for stray in names.stray_names(records):
        message = "is not named like a session, so it is not read."
        found.append(Problem(where=str(records / stray), message=message, mend="Name it rightly."))
    there = names.session_names(records)
    for name in there:
        path = records / name
        try:
            read = read_session(path)
        except BadInput as error:
            found.extend(error.problems)
            continue
        except OSError as error:
            message = f"cannot be read: {disk.plain_reason(error)}."
            found.append(Problem(where=str(path), message=message))
            continue
        found.extend(read.problems)
        if not read.has_header:
            found.append(Problem(where=str(path), line=1, message="the header is not whole."))
        found.extend(_against_summary(read, summaries.find(name)))
    found.extend(summaries.problems())
    found.extend(_gone(folder, summaries, set(there)))
    found.extend(verify_therapist(folder))
    return tuple(found)


def set_aside_in(folder: Path) -> tuple[Path, ...]:
    """What was damaged or of an older format and is kept as it was."""
    rooms = (RECORDS, THERAPIST)
    return tuple(path for room in rooms for path in sorted((folder / room).glob("*.jsonl.*-*")))


def rebuild(folder: Path) -> int:
    """Make every summary anew from the records; how many sessions there are.

    What summaries alone knew, that a file was longer once or is gone, is forgotten.
    Raises: Failure when the folder cannot be written.
    """
    records = folder / RECORDS
    refuse_newer(folder)
    with sole_writer(folder):
        summaries = Summaries(folder)
        try:
            count = 0
            months: dict[str, list[str]] = defaultdict(list)
            for name in names.session_names(records):
                months[month_of(name)].append(name)
            for month in summaries.months():
                if month not in months:
                    summaries.drop(month)
            checkpoint.drop(folder)
            for month, of_month in months.items():
                made = list(_made(records, of_month))
                summaries.replace_month(month, made)
                count += len(made)
        except OSError as error:
            raise Failure(
                f"The summaries in {folder} could not be made, because {disk.plain_reason(error)}."
            ) from error
    return count


def _made(records: Path, of_month: list[str]) -> Iterator[Summary]:
    for name in of_month:
        # What cannot be read has no summary; `verify` says so.
        with suppress(BadInput):
            read = read_session(records / name)
            if read.entries:
                yield summarise(read)


def _about_format(folder: Path) -> list[Problem]:
    try:
        refuse_newer(folder)
        said = (folder / FORMAT).read_bytes().strip()
    except BadInput as error:
        return list(error.problems)
    except OSError:
        return []
    if said.isdigit():
        return []
    message = "does not say the format of the records."
    return [Problem(where=str(folder / FORMAT), message=message, mend="Remove this file.")]


def _against_summary(read: SessionRead, summary: Summary | None) -> Iterator[Problem]:
    if summary is None:
        return
    cut = cut_since(summary, read)
    if not cut and read.size == summary.size and read.crc32 != summary.crc32 and not read.damage:
        cut = "the file is not the one that its summary was made from."
    if cut:
        mend = "Put it back from a backup; or run `drills records rebuild` to go on without."
        yield Problem(where=str(read.path), message=cut, mend=mend)


def _gone(folder: Path, summaries: Summaries, there: set[str]) -> Iterator[Problem]:
    for month in summaries.months():
        for summary in summaries.of_month(month):
            if summary.name not in there:
                yield Problem(
                    where=str(folder / RECORDS / summary.name),
                    message=f"this session's file is gone, with its {summary.entries} entries.",
                    mend="Put it back from a backup; or run `drills records rebuild`.",
                )
