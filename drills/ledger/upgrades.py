"""Rows of older formats as today's: one function a version, each from its format to the next.

Rows are upgraded as they are read, and the file stays as it was written; one that is gone on with
is written anew, and the older one kept beside it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from drills.core.problems import BadInput, Problem
from drills.core.records import RECORD_FORMAT
from drills.ledger.lines import Row

Step = Callable[[Row], Row]

# {1: from_1_to_2, ...}; format 1 is the first there is.
STEPS: Mapping[int, Step] = {}


def steps_from(
    written_as: object, *, where: str, steps: Mapping[int, Step] = STEPS, now: int = RECORD_FORMAT
) -> tuple[Step, ...]:
    """The steps that bring a row of format `written_as` to format `now`, in order.

    Raises: BadInput for a format that this program does not know.
    """
    is_number = isinstance(written_as, int) and not isinstance(written_as, bool)
    if isinstance(written_as, int) and written_as > now:
        raise BadInput(
            [
                Problem(
                    where=where,
                    message=f"was written by a newer program (format {written_as}).",
                    mend="Update this program; the file has been left as it is.",
                )
            ]
        )
    if not isinstance(written_as, int) or not is_number or written_as < 1:
        raise BadInput(
            [
                Problem(
                    where=where,
                    message=f"says format {written_as!r}, and there is none such.",
                    mend="Put the file back from a copy; it has been left as it is.",
                )
            ]
        )
    return tuple(steps[version] for version in range(written_as, now))
