"""What a family of constructions is: how it is dealt, what is right, what is wrong and why.

A case is one meaning with its pictures. Its twin is the picture of a listener who has the words
and misses the grammar; the others are wrong in a word, and half of them are made from the twin.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from random import Random
from typing import Any

from drills.core.items import Foil
from drills.core.meanings import Asked, Chain, Meaning
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.reasons import WhyWrong

PROMPT = "Which picture fits?"
PROMPT_WHO = "Which arrow shows the answer?"


@dataclass(frozen=True, slots=True, kw_only=True)
class Wrong:
    """What a wrong picture shows, of which kind it is, and why it is wrong."""

    shown: Meaning
    foil: Foil
    why: WhyWrong


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One item's meaning and its pictures.

    told: what the sentence says.   right: what the right picture shows; the same unless the
    sentence leaves somebody out.   twin: the same words, other grammar.
    square: two more pictures that the words fit. With the right one and the twin they make a
    square in which every picture is as like the others as any, so only four are shown together.
    """

    told: Meaning
    right: Meaning
    twin: Wrong
    square: tuple[Wrong, ...] = ()

    @property
    def is_question(self) -> bool:
        return isinstance(self.told, Asked | Chain)


@dataclass(frozen=True, slots=True, kw_only=True)
class Help:
    """role_question: what level 4 asks.   named: what level 6 tells."""

    role_question: str
    named: str
    named_is_doer: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Wish:
    """What a case is asked to be.

    turn: 0 or 1, each equally often: which of two a construction varies, such as one or two
    doers, him or himself.   options: how many pictures are shown.
    """

    construction: str
    act: str
    pair: Pair
    turn: int
    options: int


Others = Callable[[Any, Any, Lexicon], Iterable[Wrong]]
"""What is told, and the right or the twin's picture: pictures of it that are wrong in one word."""

Helps = Callable[[Any, Any, Lexicon], Help]
"""What is told, and the right picture: the words of the steps of help."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Family:
    """Constructions whose items are made alike.

    acts: what a batch takes turns in (verbs, relations, doers of two events, ...), for a
    construction and a verb group; small: those made out in small pictures only.
    pairs: the two words that trade parts in an act.
    cases: what can be asked of an act and a pair, in the order of preference; none where nothing
    can.   others: one or two kinds, used by turns.   helps: words for the steps of help.
    grouped: a target names a verb group.   mirrored_at: rows at which the twin is told from the
    right picture only when the whole is turned round, so it always is.
    """

    constructions: tuple[str, ...]
    acts: Callable[[Lexicon, str, str, bool], tuple[str, ...]]
    pairs: Callable[[Lexicon, str, str], Sequence[Pair]]
    cases: Callable[[Wish, Lexicon, Random], Iterable[Case]]
    others: tuple[Others, ...]
    helps: Helps
    grouped: bool = True
    mirrored_at: tuple[int, ...] = ()
    prompt: str = PROMPT
