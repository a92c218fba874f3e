"""The practice folder: who may read it, and the plan in force in it.

plan.toml      the plan in force
plans/         the plans before it
records/       one file a session, and what was damaged of one
therapist/     what the therapist decided, scored and noted, one file a year
summaries/     what the schedule asks of years of sessions; can be made again from records/
format         the format of the records; a program that is older than it stays out
"""

from __future__ import annotations

import re
import tomllib
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from drills.core.problems import BadInput, Failure, Problem
from drills.core.records import RECORD_FORMAT
from drills.ledger import disk

RECORDS = "records"
OLDER_PLANS = "plans"
THERAPIST = "therapist"
FORMAT = "format"
_SINCE = "%Y-%m-%dT%H%M%S"
_KEPT = re.compile(r"plan-v(\d{1,9})-(\d{4}-\d\d-\d\dT[0-2]\d[0-5]\d[0-5]\d)")


def plan_path(folder: Path) -> Path:
    """Where the plan in force lies, whether or not there is one."""
    return folder / "plan.toml"


def prepare(folder: Path) -> None:
    """Make the practice folder, for this user's eyes only, where it is not there yet.

    A folder that is there keeps its mode: it may hold other things of the user's.
    Raises: Failure when it cannot be made.
    """
    try:
        folder.mkdir(mode=disk.PRIVATE_FOLDER, parents=True, exist_ok=True)
        for name in (RECORDS, OLDER_PLANS, THERAPIST):
            (folder / name).mkdir(mode=disk.PRIVATE_FOLDER, exist_ok=True)
    except OSError as error:
        raise Failure([_unusable(folder, error)]) from error


def refuse_newer(folder: Path) -> None:
    """Raises: BadInput when a newer program has kept records here."""
    try:
        said = int((folder / FORMAT).read_bytes()[:9])
    except (OSError, ValueError):
        # Without it the header of each file still says how to read it.
        return
    if said > RECORD_FORMAT:
        raise BadInput(
            [
                Problem(
                    where=str(folder),
                    message=f"was used by a newer program (format {said}).",
                    mend="Update this program; nothing has been changed.",
                )
            ]
        )


def stamp(folder: Path) -> None:
    """Say which format is written from now on.   Raises: OSError."""
    place, said = folder / FORMAT, f"{RECORD_FORMAT}\n".encode()
    if not place.exists() or place.read_bytes() != said:
        disk.replace_file(place, said)


def put_plan_in_force(folder: Path, text: str) -> Path:
    """Make `text` the plan in force, in one step; the plan before it is kept in `plans/`.

    The kept copy is named by its version and by when it was put in force, in UTC.
    Raises: Failure when the folder cannot be written; the plan before is then still in force.
    """
    prepare(folder)
    place = plan_path(folder)
    data = text.encode()
    try:
        if place.exists():
            before = place.read_bytes()
            if before == data:
                return place
            since = datetime.fromtimestamp(place.stat().st_mtime, UTC)
            name = f"plan-v{_version(before)}-{since:{_SINCE}}.toml"
            disk.write_new(disk.free_name(folder / OLDER_PLANS / name), before)
        disk.replace_file(place, data)
    except OSError as error:
        raise Failure([_unusable(place, error)]) from error
    return place


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanVersion:
    """since: when it was put in force, UTC, as far as the folder tells."""

    version: int
    since: datetime
    path: Path


def plan_versions(folder: Path) -> tuple[PlanVersion, ...]:
    """Every plan that was ever in force here, the one in force last.   Raises: OSError."""
    found = []
    for path in (folder / OLDER_PLANS).glob("plan-v*.toml"):
        match = _KEPT.match(path.name)
        if match is not None:
            since = datetime.strptime(match[2], _SINCE).replace(tzinfo=UTC)
            found.append(PlanVersion(version=int(match[1]), since=since, path=path))
    found.sort(key=lambda each: (each.since, each.version))
    place = plan_path(folder)
    if place.exists():
        since = datetime.fromtimestamp(place.stat().st_mtime, UTC)
        found.append(PlanVersion(version=_version(place.read_bytes()), since=since, path=place))
    return tuple(found)


def _version(plan: bytes) -> int:
    """The `version` that a plan says; 0 when it says none that can be read."""
    try:
        said = tomllib.loads(plan.decode()).get("version", 0)
    except ValueError:
        return 0
    return said if isinstance(said, int) else 0


def _unusable(place: Path, error: OSError) -> Problem:
    return Problem(
        where=str(place),
        message=f"cannot be written, because {disk.plain_reason(error)}.",
        mend="Mend that, or choose another practice folder with --folder.",
    )
