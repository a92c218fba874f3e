"""The trials of a session in their order."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drills.core.items import Kind
from drills.practice.dealing import Block


@dataclass(frozen=True, slots=True, kw_only=True)
class Dealt:
    """One item in its place.

    ordinal: counts through the session from 0 and names the trial.   block: from 0.
    number, total: where it is in its block, from 1.
    """

    ordinal: int
    block: int
    number: int
    total: int
    kind: Kind


def places(blocks: Sequence[Block]) -> list[Dealt]:
    """A place for every item of `blocks`, in order."""
    found: list[Dealt] = []
    for index, block in enumerate(blocks):
        for number in range(1, len(block.items) + 1):
            found.append(
                Dealt(
                    ordinal=len(found),
                    block=index,
                    number=number,
                    total=len(block.items),
                    kind=block.kind,
                )
            )
    return found
