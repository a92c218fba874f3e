"""Names of the files of sessions: when a session was opened, in UTC, then its id."""

from __future__ import annotations

import os
import re
from bisect import bisect_left
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path

from drills.core.records import SessionOpened

_NAME = re.compile(
    r"(\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3])[0-5]\d[0-5]\d)"
    r"-[A-Za-z0-9-]+\.jsonl"
)
SECOND_LENGTH = len("2026-11-25T130420")


def file_name(opened: SessionOpened) -> str:
    """When the session was opened, in UTC, then its id as far as letters and digits go."""
    return f"{second_in_name(opened.at)}-{slug_of(opened.session)}.jsonl"


def second_in_name(at: datetime) -> str:
    at = at.astimezone(UTC).replace(tzinfo=None, microsecond=0)
    return at.isoformat().replace(":", "")


def slug_of(session: str) -> str:
    return re.sub(r"[^A-Za-z0-9]+", "-", session).strip("-")[:40] or "session"


def opened_second(name: str) -> datetime | None:
    """The second, UTC, that the name of a file says; None when it is no session's name."""
    match = _NAME.fullmatch(name)
    if match is None:
        return None
    try:
        return datetime.fromisoformat(match[1]).replace(tzinfo=UTC)
    except ValueError:
        return None


def session_names(records: Path) -> list[str]:
    """The name of every session's file, oldest first; names sort as their times do."""
    found = [name for name in _lines_files(records) if _NAME.fullmatch(name)]
    # Only a day after the 28th may not be in the calendar.
    return sorted((n for n in found if n[8:10] <= "28" or opened_second(n)), key=in_order)


def in_order(name: str) -> str:
    """What names are sorted by: `s-2.jsonl` came after `s.jsonl`."""
    return name.removesuffix(".jsonl")


def stray_names(records: Path) -> list[str]:
    """Files that look like a session's but for their name."""
    return sorted(name for name in _lines_files(records) if opened_second(name) is None)


def _lines_files(records: Path) -> list[str]:
    try:
        return [name for name in os.listdir(records) if name.endswith(".jsonl")]  # noqa: PTH208
    except FileNotFoundError:
        return []


def names_between(
    names: Sequence[str], since: datetime | None, until: datetime | None
) -> Sequence[str]:
    """Those of `names`, sorted, that may have been opened in `since <= at < until`."""
    low, high = 0, len(names)
    if since is not None:
        low = bisect_left(names, second_in_name(since))
    if until is not None:
        # The name leaves out fractions of a second.
        high = bisect_left(names, second_in_name(until + timedelta(seconds=1)))
    return names[low:high]
