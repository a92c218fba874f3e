"""A checkpoint: what the trials of years come to, so that they need not be folded at each start.

It names the sessions that it covers by their number, their last one, and a checksum of all their
files' names and sizes. Where any of that is no longer so, or the checkpoint itself is lost or
damaged, the trials are folded again: that costs time and nothing else.
"""

from __future__ import annotations

import os
import zlib
from bisect import bisect_right
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby, takewhile
from pathlib import Path

from drills.core.folds import PutBy
from drills.core.records import Trial
from drills.ledger import disk, values
from drills.ledger.lines import lines_of, sound_rows
from drills.ledger.names import SECOND_LENGTH, in_order, second_in_name
from drills.ledger.slim import trials_in, trials_out
from drills.ledger.summaries import FOLDER

CHECKPOINT_FORMAT = 1
NAME = "checkpoint"
_HEADER = {"format": CHECKPOINT_FORMAT}

# To read fewer takes less than to write a checkpoint.
FEWEST_TO_COVER = 20

NO_GOOD = (OSError, ValueError, KeyError, TypeError, IndexError)
"""What is raised by a checkpoint that is not there, damaged, or of something else."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Covered:
    """The sessions of a checkpoint.   newest: when the last of them was opened."""

    count: int
    last: str
    crc32: int
    newest: datetime


@dataclass(frozen=True, slots=True)
class OfSession:
    """The trials of one session.   name: of its file.   is_summarised: without reading that."""

    name: str
    opened: datetime
    trials: tuple[Trial, ...]
    is_summarised: bool


def coverable(
    sessions: Sequence[OfSession], listed: Sequence[str], until: datetime
) -> Sequence[OfSession]:
    """Those from the first on that a checkpoint may cover, before `until`; none for too few.

    sessions: of the files `listed`, in the order in which they were opened.
    A session that has no summary up to date is read each time, so that what is wrong with its file
    is told each time.
    """
    last = second_in_name(until)
    found = takewhile(
        lambda pair: (
            pair[0].is_summarised
            and pair[0].name == pair[1]
            and pair[1][:SECOND_LENGTH] == second_in_name(pair[0].opened) < last
        ),
        zip(sessions, listed, strict=False),
    )
    covered = [session for session, _ in found]
    return covered if len(covered) >= FEWEST_TO_COVER else []


def cover(records: Path, names: Sequence[str], newest: datetime) -> Covered:
    """The sessions in the files `names`, in order.   Raises: OSError."""
    crc32 = 0
    for name in names:
        size = os.stat(f"{records}/{name}").st_size  # noqa: PTH116 - thousands, at each start
        crc32 = zlib.crc32(f"{name} {size}\n".encode(), crc32)
    return Covered(count=len(names), last=names[-1], crc32=crc32, newest=newest)


def save(folder: Path, fold: str, since: datetime, covered: Covered, kept: PutBy) -> None:
    """Put a checkpoint in the place of the one before.   Raises: OSError; ValueError, TypeError."""
    row = {
        "fold": fold,
        "since": since.isoformat(),
        "count": covered.count,
        "last": covered.last,
        "crc32": covered.crc32,
        "newest": covered.newest.isoformat(),
        "values": kept.values,
        "sessions": [
            {"session": session, **trials_out(list(trials))}
            for session, trials in groupby(kept.trials, key=lambda trial: trial.session)
        ],
    }
    place = folder / FOLDER
    place.mkdir(mode=disk.PRIVATE_FOLDER, exist_ok=True)
    disk.replace_file(place / NAME, lines_of([_HEADER, row]))


def load(
    folder: Path, records: Path, fold: str, since: datetime, names: Sequence[str]
) -> tuple[Covered, PutBy]:
    """The checkpoint of `fold`.   names: of all sessions from `since` on, in order.

    Raises: one of NO_GOOD where it is not there, not whole, or not of these sessions.
    """
    with (folder / FOLDER / NAME).open("rb") as lines:
        header, row = sound_rows(lines)
    if header != _HEADER or row["fold"] != fold or row["since"] != since.isoformat():
        raise ValueError("this is the checkpoint of something else")
    last = values.text(row, "last")
    newest = values.moment(row, "newest")
    covered = cover(records, names[: bisect_right(names, in_order(last), key=in_order)], newest)
    if (covered.count, covered.last, covered.crc32) != (row["count"], last, row["crc32"]):
        raise ValueError("these are other sessions")
    trials = [trial for each in row["sessions"] for trial in trials_in(each["session"], each)]
    return covered, PutBy(values=row["values"], trials=trials)


def drop(folder: Path) -> None:
    """Have all trials folded again.   Raises: OSError."""
    with suppress(FileNotFoundError):
        (folder / FOLDER / NAME).unlink()
