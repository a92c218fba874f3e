"""Files from outside, read whole and never more than a bound."""

from __future__ import annotations

from pathlib import Path

from drills.core.problems import BadInput

MEGABYTE = 1_000_000


def read_bounded(path: Path, most_bytes: int, name: str = "") -> bytes:
    """What `path` holds.

    name: for the sentence, instead of the whole path.
    Raises: BadInput for what is no file, too large, or not to be read.
    """
    name = name or str(path)
    try:
        if path.is_dir():
            raise BadInput(f"{name} is a folder. Name a file.")
        if not path.is_file():
            raise BadInput(f"{name} is not there, or no file.")
        with path.open("rb") as file:
            data = file.read(most_bytes + 1)
    except (OSError, ValueError) as error:
        reason = error.strerror if isinstance(error, OSError) else "its name is none"
        raise BadInput(f"{name} could not be read: {reason}.") from None
    if len(data) > most_bytes:
        raise BadInput(
            f"{name} is larger than {most_bytes / MEGABYTE:g} MB, more than it can need."
        )
    return data
