"""What people and animals do, to each other or alone."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum
from typing import Self


class Tense(StrEnum):
    PAST = "past"
    PRESENT = "present"


class Aspect(StrEnum):
    SIMPLE = "simple"
    PROGRESSIVE = "progressive"


class Role(StrEnum):
    """A part in an act."""

    DOER = "doer"
    DONE_TO = "done_to"


@dataclass(frozen=True, slots=True, kw_only=True)
class Act:
    """`doer` does `verb` to `done_to`.

    where, when: keys of adjuncts of the lexicon ("in the garden", "this morning"), drawn nowhere.
    negated: it is not so; a picture shows the two with no act between them.
    """

    verb: str
    doer: str
    done_to: str
    tense: Tense = Tense.PAST
    aspect: Aspect = Aspect.SIMPLE
    negated: bool = False
    where: str | None = None
    when: str | None = None

    def reversed(self) -> Self:
        return replace(self, doer=self.done_to, done_to=self.doer)

    @property
    def drawn(self) -> tuple[str, ...]:
        if self.negated:
            return ("no act", *sorted((self.doer, self.done_to)))
        return ("act", self.verb, self.doer, self.done_to)


@dataclass(frozen=True, slots=True, kw_only=True)
class Undergone:
    """Someone does `verb` to `done_to`, and it is not said who: "The farmer was splashed".

    A picture shows an act that fits it, with the other one to be seen.
    """

    verb: str
    done_to: str
    tense: Tense = Tense.PAST
    aspect: Aspect = Aspect.SIMPLE
    where: str | None = None
    when: str | None = None

    def by(self, doer: str) -> Act:
        """The act that a picture shows."""
        return Act(
            verb=self.verb,
            doer=doer,
            done_to=self.done_to,
            tense=self.tense,
            aspect=self.aspect,
            where=self.where,
            when=self.when,
        )

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("undergone", self.verb, self.done_to)


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """An open act: who plays `asked` in it is wanted, `known` plays the other part.

    "Who pushed the pony?" asks for the doer and knows the pony.
    """

    verb: str
    known: str
    asked: Role
    tense: Tense = Tense.PAST
    aspect: Aspect = Aspect.SIMPLE
    where: str | None = None
    when: str | None = None

    def reversed(self) -> Self:
        """The same one known, in the other part."""
        other = Role.DONE_TO if self.asked is Role.DOER else Role.DOER
        return replace(self, asked=other)

    def answered(self, by: str) -> Act:
        """The act, with `by` in the part that is asked for."""
        doer, done_to = (by, self.known) if self.asked is Role.DOER else (self.known, by)
        return Act(
            verb=self.verb,
            doer=doer,
            done_to=done_to,
            tense=self.tense,
            aspect=self.aspect,
            where=self.where,
            when=self.when,
        )

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("asked", self.verb, self.known, self.asked)


@dataclass(frozen=True, slots=True, kw_only=True)
class Activity:
    """`count` (1 to 3) of `doer` do `verb`, to nobody."""

    verb: str
    doer: str
    count: int = 1
    tense: Tense = Tense.PRESENT
    aspect: Aspect = Aspect.PROGRESSIVE
    where: str | None = None
    when: str | None = None

    @property
    def drawn(self) -> tuple[str, ...]:
        return ("activity", self.verb, self.doer, str(self.count))
