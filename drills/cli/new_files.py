"""Files that a command writes and never overwrites."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from drills.core.problems import BadInput, Failure


@contextmanager
def told_of_failure(path: Path | str, *, because: str = "") -> Iterator[None]:
    """Says in one sentence why the new file `path` could not be written.

    because: why one that is there must stay, a clause; may be empty.
    Raises: BadInput for a file that is there already; Failure where the disk refuses.
    """
    try:
        yield
    except FileExistsError:
        clause = f", and {because}" if because else ""
        raise BadInput(f"{path} is there already{clause}. Name another file with --out.") from None
    except OSError as error:
        raise Failure(f"{path} could not be written: {error.strerror}.") from None


def write_new_text(path: Path, text: str) -> None:
    """Raises: as `told_of_failure`."""
    with told_of_failure(path), path.open("x", encoding="utf-8") as file:
        file.write(text)
