"""What is advised on a name that is practised; it suggests and changes nothing."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drills.core.kinds import Kind


class Advice(StrEnum):
    """READY: move up.   CEILING, NO_RISE, BELOW_CHANCE: hand back.   GO_ON: neither.

    TOO_FEW: not enough to say.
    """

    READY = "move up"
    CEILING = "known: practise something else"
    BELOW_CHANCE = "below guessing: look at it together"
    NO_RISE = "no rise: look at it together"
    GO_ON = "go on"
    TOO_FEW = "too few to say"


@dataclass(frozen=True, slots=True, kw_only=True)
class Progress:
    """What is advised on one name of one kind.   evidence: one sentence with its numbers."""

    kind: Kind
    name: str
    advice: Advice
    evidence: str

    @property
    def is_ready(self) -> bool:
        return self.advice in (Advice.READY, Advice.CEILING)
