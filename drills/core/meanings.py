"""What a sentence and a picture mean: who does what to whom, what is where, and the like.

A meaning holds keys of the lexicon (`"nurse"`, `"push"`), never finished words, so a sentence and
a picture of the same meaning cannot disagree. Every meaning has `drawn`, what a picture can show
of it: two meanings with equal `drawn` look the same and are never offered against each other.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Self

from drills.core.acts import Act, Activity, Asked, Aspect, Role, Tense, Undergone
from drills.core.kinds import Side

__all__ = [
    "Act",
    "Activity",
    "Asked",
    "Aspect",
    "Chain",
    "Comparison",
    "Described",
    "Kin",
    "Link",
    "Meaning",
    "Order",
    "Place",
    "Relation",
    "Report",
    "Role",
    "Scene",
    "State",
    "Tense",
    "Transfer",
    "Undergone",
]


class Relation(StrEnum):
    IN = "in"
    ON = "on"
    UNDER = "under"
    BEHIND = "behind"
    IN_FRONT_OF = "in front of"
    NEXT_TO = "next to"


class Link(StrEnum):
    BE = "be"
    HAVE = "have"


_SEEN_AS = {Relation.UNDER: Relation.ON, Relation.BEHIND: Relation.IN_FRONT_OF}


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """`thing` is in `relation` to `landmark`."""

    relation: Relation
    thing: str
    landmark: str
    tense: Tense = Tense.PRESENT
    when: str | None = None

    def reversed(self) -> Self:
        return replace(self, thing=self.landmark, landmark=self.thing)

    @property
    def drawn(self) -> tuple[str, ...]:
        """A cup under a box is seen as a box on a cup."""
        if self.relation in _SEEN_AS:
            return ("place", _SEEN_AS[self.relation], self.landmark, self.thing)
        if self.relation is Relation.NEXT_TO:
            return ("place", self.relation, *sorted((self.thing, self.landmark)))
        return ("place", self.relation, self.thing, self.landmark)


@dataclass(frozen=True, slots=True, kw_only=True)
class State:
    """`count` (1 to 3) of `subject` are or have `complement`: an adjective's or a thing's key."""

    subject: str
    count: int
    link: Link
    complement: str
    tense: Tense = Tense.PRESENT
    where: str | None = None
    when: str | None = None

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("state", self.subject, str(self.count), self.link, self.complement)


@dataclass(frozen=True, slots=True, kw_only=True)
class Described:
    """One of the two in `act` is singled out, and may be in `state` (an adjective's key).

    "The goat that chased the pony was wet": the doer, wet. With no state the one is only pointed
    at: "I see the pony that the goat chased."
    """

    act: Act
    who: Role
    state: str | None = None

    def reversed(self) -> Self:
        """The other roles; the same one is singled out."""
        other = Role.DONE_TO if self.who is Role.DOER else Role.DOER
        return replace(self, act=self.act.reversed(), who=other)

    @property
    def subject(self) -> str:
        return self.act.doer if self.who is Role.DOER else self.act.done_to

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("described", *self.act.drawn, self.subject, str(self.state))


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """`speaker` tells of `act`, whose done-to is the speaker ("him") or its doer ("himself")."""

    speaker: str
    act: Act

    @property
    def is_reflexive(self) -> bool:
        return self.act.doer == self.act.done_to

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("report", self.speaker, *self.act.drawn)


@dataclass(frozen=True, slots=True, kw_only=True)
class Transfer:
    """`doer` gives, shows or brings `given` (a thing, a person or an animal) to `receiver`."""

    verb: str
    doer: str
    given: str
    receiver: str
    tense: Tense = Tense.PAST
    where: str | None = None
    when: str | None = None

    def reversed(self) -> Self:
        """Doer and receiver exchanged."""
        return replace(self, doer=self.receiver, receiver=self.doer)

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("transfer", self.verb, self.doer, self.given, self.receiver)


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """`doer` does `earlier`, then `later`; both are activities' verbs."""

    doer: str
    earlier: str
    later: str
    tense: Tense = Tense.PAST
    where: str | None = None
    when: str | None = None

    def reversed(self) -> Self:
        return replace(self, earlier=self.later, later=self.earlier)

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("order", self.doer, self.earlier, self.later)


# The opposite quality, seen the other way round: a taller nurse is a shorter baker.
_OPPOSITES = {"short": "tall", "small": "big"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Comparison:
    """`more` has more of `quality` (an adjective's key) than `less`."""

    quality: str
    more: str
    less: str
    tense: Tense = Tense.PRESENT
    when: str | None = None

    def reversed(self) -> Self:
        return replace(self, more=self.less, less=self.more)

    @property
    def drawn(self) -> tuple[str, ...]:
        if self.quality in _OPPOSITES:
            return ("comparison", _OPPOSITES[self.quality], self.less, self.more)
        return ("comparison", self.quality, self.more, self.less)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """`outer` does `verb` to `middle`, who does it to another `outer`: "Which nurse did ...?"."""

    verb: str
    outer: str
    middle: str
    tense: Tense = Tense.PAST
    where: str | None = None
    when: str | None = None

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("chain", self.verb, self.outer, self.middle)


@dataclass(frozen=True, slots=True, kw_only=True)
class Kin:
    """A relative, reached from the one who speaks by `terms`: ("aunt", "brother").

    terms: keys of kinship terms, one to three, the nearest first.   where: an adjunct's key, where
    the relative is.
    """

    terms: tuple[str, ...]
    tense: Tense = Tense.PRESENT
    where: str | None = None
    when: str | None = None

    def reversed(self) -> Self:
        """The terms in the other order: the brother's aunt."""
        return replace(self, terms=self.terms[::-1])

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("kin", *self.terms)


Meaning = (
    Act
    | Undergone
    | Asked
    | Activity
    | Place
    | State
    | Described
    | Report
    | Transfer
    | Order
    | Comparison
    | Chain
    | Kin
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Scene:
    """A meaning as it is to be drawn: `side` is where the doer (or the located thing) stands."""

    meaning: Meaning
    side: Side = Side.LEFT
