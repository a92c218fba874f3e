"""Frames whose meaning is one that pictures show or that the constructions already say."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

from drills.core.material import ClozeWords
from drills.core.meanings import Link, Place, Relation, State, Tense
from drills.core.words import Lexicon
from drills.exercises.casting import Casting, Pair
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.reasons import WhyWrong
from drills.exercises.reserve import open_pairs
from drills.pictures import can_draw

AUXILIARIES: Mapping[str, tuple[Link, Tense, bool]] = MappingProxyType(
    {
        "is": (Link.BE, Tense.PRESENT, True),
        "are": (Link.BE, Tense.PRESENT, False),
        "was": (Link.BE, Tense.PAST, True),
        "were": (Link.BE, Tense.PAST, False),
        "has": (Link.HAVE, Tense.PRESENT, True),
        "have": (Link.HAVE, Tense.PRESENT, False),
    }
)
"""Link, tense and whether it goes with one."""


@lru_cache(maxsize=64)
def open_places(lexicon: Lexicon, contrast: tuple[str, ...]) -> tuple[Pair, ...]:
    """Things that could be in any of the places offered, so that only the picture decides."""
    relations = [Relation(word) for word in contrast]
    inside = Relation.IN in relations
    return tuple(
        (a.key, b.key)
        for a in lexicon.things
        for b in lexicon.things
        if a is not b
        and a.size == b.size
        and (b.container or not inside)
        and all(
            can_draw(Place(relation=relation, thing=a.key, landmark=b.key))
            for relation in relations
        )
    )


def _deal_place(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    lexicon = dealer.material.lexicon
    offered = tuple(each.value for each in Relation if each.value in (word, *others))

    def casting() -> Casting:
        return Casting(
            dealer.rng,
            lambda group, word: open_pairs(
                open_places(lexicon, tuple(group.split("/"))), word, lexicon
            ),
        )

    relation, (thing, landmark) = dealer.casting("place", casting).choose(
        "/".join(offered), (word,), lambda _relation, pair: dealer.is_new(*pair)
    )
    dealer.note(thing, landmark)
    return Dealt(meaning=Place(relation=Relation(relation), thing=thing, landmark=landmark))


def _place_wrong(label: str, dealt: Dealt, _words: ClozeWords) -> WhyWrong | None:
    place = dealt.meaning
    if not isinstance(place, Place):
        raise TypeError("there is no place")
    claimed = Place(
        relation=Relation(label), thing=place.thing, landmark=place.landmark, tense=place.tense
    )
    return None if claimed.drawn == place.drawn else WhyWrong.FALSE_PLACE


def _place_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    place = dealt.meaning
    value = place.relation.value if isinstance(place, Place) else ""
    return (Demand(feature="place", value=value, why=WhyWrong.FALSE_PLACE, anchor=Anchor.PICTURE),)


def _deal_number(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    link, tense, one = AUXILIARIES[word]
    count = 1 if one else dealer.many()
    subject = dealer.person(f"number {one}")
    complement = dealer.state("number state") if link is Link.BE else dealer.thing("number thing")
    return Dealt(
        meaning=State(subject=subject, count=count, link=link, complement=complement, tense=tense)
    )


def _number_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    state = dealt.meaning
    one = isinstance(state, State) and state.count == 1
    return (
        Demand(
            feature="number",
            value="one" if one else "many",
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.NUMERAL,
        ),
    )


PICTURED = (
    Frame(
        name="place",
        traits={relation.value: values(place=relation.value) for relation in Relation},
        deal=_deal_place,
        demands=_place_demands,
        fits=_place_wrong,
    ),
    Frame(
        name="number",
        traits={
            "is": values(number="one"),
            "are": values(number="many"),
            "was": values(number="one"),
            "were": values(number="many"),
            "has": values(number="one"),
            "have": values(number="many"),
        },
        deal=_deal_number,
        demands=_number_demands,
    ),
)
