"""Even shares of what a construction can say: each word in both parts equally often."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

from drills.core.meanings import (
    Act,
    Aspect,
    Chain,
    Comparison,
    Described,
    Kin,
    Meaning,
    Order,
    Place,
    Report,
    Tense,
    Transfer,
)
from drills.core.words import Band, Lexicon
from drills.language.kinship import is_possible
from drills.language.padding import adjunct_choices
from drills.language.pool import meanings_of


def count_with_adjuncts(construction: str, lexicon: Lexicon, band: Band = Band.EVERYDAY) -> int:
    """How many meanings there are when where and when are told apart as well."""
    found: dict[object, int] = {}
    total = 0
    for meaning in meanings_of(construction, lexicon, band):
        # What can be added hangs on these alone.
        form = (_tense(meaning), _aspect(meaning), getattr(meaning, "quality", None))
        if form not in found:
            found[form] = len(adjunct_choices(meaning, construction, lexicon))
        total += found[form]
    return total


def exchanged(meaning: Meaning) -> Meaning | None:
    """The same construction with the two parts traded; None where it names no two that could.

    It is what a listener understands who has the words and loses the grammar.
    """
    match meaning:
        case Act() | Place() | Order() | Comparison() | Transfer():
            return meaning.reversed()
        case Described(act=act):
            return replace(meaning, act=act.reversed())
        case Chain(outer=outer, middle=middle):
            return replace(meaning, outer=middle, middle=outer)
        case Report(speaker=speaker, act=act):
            done_to = act.doer if act.done_to == speaker else speaker
            return replace(
                meaning, speaker=act.doer, act=replace(act, doer=speaker, done_to=done_to)
            )
        case Kin(terms=terms):
            back = terms[::-1]
            return meaning.reversed() if back != terms and is_possible(back) else None
        case _:
            return None


def deal(
    construction: str,
    lexicon: Lexicon,
    rng: Random,
    count: int,
    *,
    band: Band = Band.EVERYDAY,
    tenses: tuple[Tense, ...] = tuple(Tense),
    aspects: tuple[Aspect, ...] = (Aspect.SIMPLE,),
) -> tuple[Meaning, ...]:
    """`count` meanings in which every word plays both parts equally often, tenses alike.

    Each comes with its exchange somewhere in the deal, where the construction has one; an odd
    count leaves one without. The order is by chance.   Raises: ValueError for too few meanings.
    """
    # One form is enough to draw from: each meaning is in all of them.
    pool = meanings_of(construction, lexicon, band, ((tenses[0], aspects[0]),))
    if not pool:
        raise ValueError(f"{construction!r} has no meaning in these words")
    dealt: list[Meaning] = []
    turn = 0
    while len(dealt) < count:
        tense, aspect = tenses[turn % len(tenses)], aspects[turn // len(tenses) % len(aspects)]
        meaning = _in_form(rng.choice(pool), tense, aspect)
        back = exchanged(meaning)
        dealt += [meaning] if back is None else [meaning, back]
        turn += 1
    del dealt[count:]
    rng.shuffle(dealt)
    return tuple(dealt)


def _tense(meaning: Any) -> Tense:
    tense: Tense = (meaning.act if hasattr(meaning, "act") else meaning).tense
    return tense


def _aspect(meaning: Any) -> Aspect | None:
    return getattr(meaning.act if hasattr(meaning, "act") else meaning, "aspect", None)


def _in_form(meaning: Any, tense: Tense, aspect: Aspect) -> Meaning:
    holder = meaning.act if hasattr(meaning, "act") else meaning
    form: dict[str, Any] = {"tense": tense}
    if hasattr(holder, "aspect"):
        form["aspect"] = aspect
    moved = replace(holder, **form)
    made: Meaning = replace(meaning, act=moved) if hasattr(meaning, "act") else moved
    return made
