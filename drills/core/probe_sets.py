"""Sets of a plan: the very exemplars that checks ask, in words that a therapist can read."""

from __future__ import annotations

import re
from dataclasses import dataclass

from drills.core.kinds import ItemSet

SET_ROLES = {
    "treated": ItemSet.PROBE,
    "related": ItemSet.RELATED,
    "control": ItemSet.CONTROL,
}
"""What a set stands for, as the plan says it. Treated: new sentences of what is practised."""

_WRITTEN = re.compile(r"\s*([^:,]*[^:,\s])\s*:\s*([^:,]*[^:,\s])\s*,\s*([^:,]*[^:,\s])\s*")


@dataclass(frozen=True, slots=True, kw_only=True)
class SetExemplar:
    """act: the key of a verb, or a relation.   first: who does it, or what is there.

    second: whom it is done to, or what it is there to.   As text: "push: nurse, farmer".
    """

    act: str
    first: str
    second: str

    def __str__(self) -> str:
        return f"{self.act}: {self.first}, {self.second}"

    @classmethod
    def parse(cls, text: str) -> SetExemplar:
        """What `str` wrote.   Raises: ValueError."""
        found = _WRITTEN.fullmatch(text)
        if found is None or found[2] == found[3]:
            raise ValueError(f"{text!r} is no exemplar")
        return cls(act=found[1], first=found[2], second=found[3])


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeSet:
    """What checks ask of one construction: half of it, in this order, and the other half."""

    item_set: ItemSet
    construction: str
    exemplars: tuple[SetExemplar, ...]

    @property
    def role(self) -> str:
        return next(role for role, item_set in SET_ROLES.items() if item_set is self.item_set)
