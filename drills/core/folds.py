"""What years of trials come to, folded one by one, put by, and gone on from."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Protocol

if TYPE_CHECKING:
    from drills.core.records import Trial


@dataclass(frozen=True, slots=True, kw_only=True)
class PutBy:
    """A fold put by.   values: as JSON holds them.   trials: kept whole, but for their words."""

    values: Mapping[str, Any]
    trials: Sequence[Trial] = ()


class Fold(Protocol):
    """Trials folded in the order in which they were given."""

    @property
    def name(self) -> str:
        """What is folded and by which settings: what was put by under another name is no good."""

    def take(self, trials: Sequence[Trial]) -> None: ...

    def put_by(self) -> PutBy | None:
        """All that was taken so far; None where it would not hold later."""

    def go_on_from(self, kept: PutBy) -> None:
        """Stand as after all trials that `kept` was made from, when nothing was taken yet.

        Raises: ValueError, KeyError, TypeError or IndexError, and then nothing is changed.
        """
