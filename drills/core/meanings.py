"""What a sentence and a picture mean: who does what to whom, what is where.

A meaning holds keys of the lexicon (`"nurse"`, `"push"`), never finished words, so a sentence and
a picture of the same meaning cannot disagree.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Any, Self


class Tense(StrEnum):
    PAST = "past"
    PRESENT = "present"


class Relation(StrEnum):
    IN = "in"
    ON = "on"
    UNDER = "under"
    BEHIND = "behind"
    IN_FRONT_OF = "in front of"
    NEXT_TO = "next to"


class Side(StrEnum):
    """The side of a picture on which the doer (or the located thing) stands."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Side:
        return Side.RIGHT if self is Side.LEFT else Side.LEFT


_SEEN_AS = {Relation.UNDER: Relation.ON, Relation.BEHIND: Relation.IN_FRONT_OF}


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """`doer` does `verb` to `done_to`."""

    verb: str
    doer: str
    done_to: str
    tense: Tense = Tense.PAST

    def reversed(self) -> Self:
        return replace(self, doer=self.done_to, done_to=self.doer)

    @property
    def drawn(self) -> tuple[str, ...]:
        """What a picture can show of it; equal for meanings that look the same."""
        return ("act", self.verb, self.doer, self.done_to)

    def as_json(self) -> dict[str, Any]:
        row = {"verb": self.verb, "doer": self.doer, "done_to": self.done_to}
        if self.tense is not Tense.PAST:
            row["tense"] = self.tense.value
        return row


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """`thing` is in `relation` to `landmark`."""

    relation: Relation
    thing: str
    landmark: str
    tense: Tense = Tense.PRESENT

    def reversed(self) -> Self:
        return replace(self, thing=self.landmark, landmark=self.thing)

    @property
    def drawn(self) -> tuple[str, ...]:
        """What a picture can show of it; a cup under a box is seen as a box on a cup."""
        if self.relation in _SEEN_AS:
            return ("place", _SEEN_AS[self.relation], self.landmark, self.thing)
        if self.relation is Relation.NEXT_TO:
            return ("place", self.relation, *sorted((self.thing, self.landmark)))
        return ("place", self.relation, self.thing, self.landmark)

    def as_json(self) -> dict[str, Any]:
        row = {"relation": self.relation.value, "thing": self.thing, "landmark": self.landmark}
        if self.tense is not Tense.PRESENT:
            row["tense"] = self.tense.value
        return row


class Link(StrEnum):
    BE = "be"
    HAVE = "have"


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """`count` (1 to 3) of `subject` are or have `complement`: an adjective's or a thing's key."""

    subject: str
    count: int
    link: Link
    complement: str
    tense: Tense = Tense.PRESENT

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("state", self.subject, str(self.count), self.link, self.complement)

    def as_json(self) -> dict[str, Any]:
        row: dict[str, Any] = {
            "subject": self.subject,
            "count": self.count,
            "link": self.link.value,
            "complement": self.complement,
        }
        if self.tense is not Tense.PRESENT:
            row["tense"] = self.tense.value
        return row


Meaning = Act | Place | State


def meaning_from_json(row: Mapping[str, Any]) -> Meaning:
    """The meaning that `as_json` wrote.

    Raises: ValueError or KeyError when the row is no meaning.
    """
    if "verb" in row:
        return Act(
            verb=str(row["verb"]),
            doer=str(row["doer"]),
            done_to=str(row["done_to"]),
            tense=Tense(row.get("tense", Tense.PAST)),
        )
    if "link" in row:
        return State(
            subject=str(row["subject"]),
            count=int(row["count"]),
            link=Link(row["link"]),
            complement=str(row["complement"]),
            tense=Tense(row.get("tense", Tense.PRESENT)),
        )
    return Place(
        relation=Relation(row["relation"]),
        thing=str(row["thing"]),
        landmark=str(row["landmark"]),
        tense=Tense(row.get("tense", Tense.PRESENT)),
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """A meaning as it is to be drawn: `side` is where the doer (or the located thing) stands."""

    meaning: Meaning
    side: Side = Side.LEFT
