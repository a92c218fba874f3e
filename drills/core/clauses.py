"""What a sentence with a gap says: clauses of small words, finer than a picture can show.

A value here holds keys of the lexicon and facts (how many, whose, when), never a finished phrase;
language/told.py makes the words. `None` and "" mean that nothing of the sort is said.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drills.core.acts import Aspect, Tense


class Person(StrEnum):
    """Who speaks, who is spoken to, and everyone else."""

    FIRST = "first"
    SECOND = "second"
    THIRD = "third"


class Determined(StrEnum):
    """How the listener is to find the one that is meant.

    NEAR, FAR: "this", "that".   COUNTED: "two".   BARE: nothing stands before the noun.
    """

    THE = "the"
    A = "a"
    NEAR = "near"
    FAR = "far"
    COUNTED = "counted"
    BARE = "bare"
    EVERY = "every"
    EACH = "each"
    ALL = "all"
    SOME = "some"
    ANY = "any"
    NO = "no"
    ANOTHER = "another"


class Rank(StrEnum):
    """Which one of its kind; no other article than "the" goes with it."""

    MOST = "most"
    SAME = "same"


class Thing(StrEnum):
    """What is meant where no noun names it."""

    SOMETHING = "something"
    NOTHING = "nothing"
    ANYTHING = "anything"
    THERE = "there"


@dataclass(frozen=True, slots=True, kw_only=True)
class Party:
    """Who or what a clause names.

    noun: key of a noun; empty for the speaker, the hearer, a bare "this", with `thing`, and with an
    owner alone ("mine").
    owner: whose it is, which takes the place of a determiner; own: "my own".
    quality: key of an adjective.   also: a second one, joined by `pair` ("both ... and").
    relative: what singles it out.   tall as `quality` with `rank` MOST: "the tallest".
    """

    noun: str = ""
    count: int = 1
    person: Person = Person.THIRD
    determined: Determined = Determined.THE
    is_pronoun: bool = False
    is_reflexive: bool = False
    owner: Party | None = None
    own: bool = False
    quality: str = ""
    rank: Rank | None = None
    thing: Thing | None = None
    also: Party | None = None
    pair: str = ""
    relative: Relative | None = None


class Missing(StrEnum):
    """What part of its clause a relative word stands for."""

    SUBJECT = "subject"
    OBJECT = "object"
    PLACE = "place"


@dataclass(frozen=True, slots=True, kw_only=True)
class Relative:
    """`clause` tells of the one it follows; `word` joins them: that, who, which, what, where."""

    word: str
    missing: Missing
    clause: Clause


@dataclass(frozen=True, slots=True, kw_only=True)
class Tie:
    """A preposition with what it goes with: a party, or a time ("monday", "july", "3")."""

    word: str
    party: Party | None = None
    time: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Clause:
    """One clause; a party of a relative clause that is missing is None.

    verb: key of a verb, or "be", "have".   modal: "can", "will" and the like.
    state: key of an adjective.   than: what is compared with, "taller than the king"; equal: "as
    tall as the king".   particle: "up", "off".   when: key of a time that stands first.
    place: "here" or "there".   rate: so often in that time, "once a day".   either: the first of
    two that may be so.   only: "only the cup is wet"; of a second clause, "only because ...".
    rather_than: the far ones where the object is near, and the other way round: "here, not those".
    """

    subject: Party | None
    verb: str
    object: Party | None = None
    state: str = ""
    than: Party | None = None
    equal: bool = False
    tense: Tense = Tense.PRESENT
    aspect: Aspect = Aspect.SIMPLE
    perfect: bool = False
    passive: bool = False
    negated: bool = False
    modal: str = ""
    particle: str = ""
    place: str = ""
    far_away: bool = False
    ties: tuple[Tie, ...] = ()
    when: str = ""
    rate: str = ""
    times: int = 1
    only: bool = False
    either: bool = False
    rather_than: Party | None = None


class Wanted(StrEnum):
    """What part of a clause is asked for."""

    SUBJECT = "subject"
    OBJECT = "object"
    PLACE = "place"
    TIME = "time"
    REASON = "reason"
    WHICH = "which"


@dataclass(frozen=True, slots=True, kw_only=True)
class Day:
    """A line of a small calendar.   weekday: key.   date: of the month.   verb: what is done."""

    weekday: str
    date: int
    verb: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Told:
    """What is told, or asked and answered.

    link: what joins `second` to `clause`: "because".   before: what was said first.
    wanted: the part of `clause` that is asked for; its answer is printed with the question.
    calendar: what is to be seen of the days.   seen: what the picture shows, told nowhere.
    """

    clause: Clause
    link: str = ""
    second: Clause | None = None
    before: tuple[Clause, ...] = ()
    wanted: Wanted | None = None
    calendar: tuple[Day, ...] = ()
    seen: Clause | None = None


def parties_of(told: Told) -> tuple[Party, ...]:
    """Everyone and everything that is named, in the order of the clauses."""
    clauses = [*told.before, told.clause, *((told.second,) if told.second else ())]
    return tuple(party for clause in clauses for party in _of_clause(clause))


def clauses_of(told: Told) -> tuple[Clause, ...]:
    """Every clause, those of relative clauses with them."""
    whole = [*told.before, told.clause, *((told.second,) if told.second else ())]
    inner = [party.relative.clause for party in parties_of(told) if party.relative is not None]
    return (*whole, *inner)


def _of_clause(clause: Clause) -> list[Party]:
    named = [clause.subject, clause.object, clause.than, *(tie.party for tie in clause.ties)]
    return [each for party in named if party is not None for each in _of_party(party)]


def _of_party(party: Party) -> list[Party]:
    found = [party]
    for other in (party.owner, party.also):
        if other is not None:
            found += _of_party(other)
    if party.relative is not None:
        found += _of_clause(party.relative.clause)
    return found
