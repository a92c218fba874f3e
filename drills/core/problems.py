"""What can be wrong with input, said so that a person can mend it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """One fault in something that was read.

    where: a file or the name of a setting.   line: 1-based, None when not known; never guessed.
    """

    where: str
    message: str
    mend: str = ""
    line: int | None = None

    def __str__(self) -> str:
        place = self.where if self.line is None else f"{self.where}:{self.line}"
        return f"{place}: {self.message}" + (f" {self.mend}" if self.mend else "")


class DrillsError(Exception):
    """Anything that is told to a person in plain words; `exit_code` is what a command ends with."""

    exit_code = 1

    def __init__(self, problems: Sequence[Problem] | str) -> None:
        if isinstance(problems, str):
            self.problems: tuple[Problem, ...] = ()
            super().__init__(problems)
        else:
            self.problems = tuple(problems)
            super().__init__("\n".join(str(problem) for problem in problems))


class BadInput(DrillsError):
    """The fault is in what was given: a file, an option, a name."""

    exit_code = 2


class Failure(DrillsError):
    """The input was fine; the machine could not do it."""

    exit_code = 1
