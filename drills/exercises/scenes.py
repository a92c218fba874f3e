"""Meanings for pictures: which words can play, and how a foil changes a meaning."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from random import Random
from typing import TypeVar

from drills.core.meanings import Act, Meaning, Place, Relation
from drills.core.words import Lexicon, Verb
from drills.exercises.casting import Pair
from drills.pictures import SMALL_UNREADABLE, can_draw

REVERSIBLE = tuple(relation for relation in Relation if relation is not Relation.NEXT_TO)
"""Relations that tell a from b; beside is the same both ways."""

Changed = TypeVar("Changed", Act, Place)


@lru_cache(maxsize=256)
def act_pairs(lexicon: Lexicon, verb: str) -> tuple[Pair, ...]:
    """Doers and done-tos that are as likely one way as the other, and can be drawn."""
    return tuple(
        (a.key, b.key)
        for a, b in lexicon.partners(lexicon.verbs[verb])
        if can_draw(act := Act(verb=verb, doer=a.key, done_to=b.key)) and can_draw(act.reversed())
    )


def verb_groups(lexicon: Lexicon) -> tuple[str, ...]:
    """Groups that can be practised, in the order of the content."""
    groups = (verb.group for verb in lexicon.verbs.values() if _has_cast(lexicon, verb))
    return tuple(dict.fromkeys(groups))


def verbs_of(lexicon: Lexicon, group: str, *, small: bool = False) -> tuple[str, ...]:
    """Verbs of a group that can be practised.

    small: without those that are not made out in small pictures, unless no other is left.
    """
    verbs = tuple(
        verb.key
        for verb in lexicon.verbs.values()
        if verb.group == group and _has_cast(lexicon, verb)
    )
    seen = tuple(verb for verb in verbs if verb not in SMALL_UNREADABLE)
    return seen or verbs if small else verbs


def _has_cast(lexicon: Lexicon, verb: Verb) -> bool:
    """Two nouns at least could trade parts in it, and be drawn."""
    return bool(act_pairs(lexicon, verb.key))


@lru_cache(maxsize=64)
def reversible_places(lexicon: Lexicon, relation: str) -> tuple[Pair, ...]:
    """Things of one size that can be so both ways round; inside needs two containers."""
    inside = relation == Relation.IN
    return tuple(
        (a.key, b.key)
        for a in lexicon.things
        for b in lexicon.things
        if a is not b
        and a.size == b.size
        and (not inside or (a.container and b.container))
        and can_draw(place := Place(relation=Relation(relation), thing=a.key, landmark=b.key))
        and can_draw(place.reversed())
    )


def other_verb(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    """The same two, another act that is made out in small pictures; None when none suits them.

    From another group where there is one: acts of one group may hold of each other, as one who
    chases also follows.
    """
    sorts = {lexicon.nouns[act.doer].sort, lexicon.nouns[act.done_to].sort}
    verbs = [
        verb
        for verb in lexicon.verbs.values()
        if verb.key not in (act.verb, *SMALL_UNREADABLE)
        and sorts <= verb.sorts
        and can_draw(replace(act, verb=verb.key))
    ]
    apart = [verb for verb in verbs if verb.group != lexicon.verbs[act.verb].group]
    return replace(act, verb=rng.choice(apart or verbs).key) if verbs else None


def other_doer(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    """Another doer, of the same size if there is one."""
    return _another(act.doer, lexicon, rng, lambda key: replace(act, doer=key))


def other_done_to(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    return _another(act.done_to, lexicon, rng, lambda key: replace(act, done_to=key))


def other_thing(place: Place, lexicon: Lexicon, rng: Random) -> Place | None:
    return _another(place.thing, lexicon, rng, lambda key: replace(place, thing=key))


def other_landmark(place: Place, lexicon: Lexicon, rng: Random) -> Place | None:
    return _another(place.landmark, lexicon, rng, lambda key: replace(place, landmark=key))


def other_relation(
    place: Place, lexicon: Lexicon, rng: Random, *, unlike: tuple[Meaning, ...]
) -> Place | None:
    """The same two, elsewhere, looking like none of `unlike`."""
    seen = [meaning.drawn for meaning in unlike]
    containers = lexicon.nouns[place.landmark].container and lexicon.nouns[place.thing].container
    places = [replace(place, relation=relation) for relation in Relation]
    fresh = [
        other
        for other in places
        if other.drawn not in seen
        and (other.relation is not Relation.IN or containers)
        and can_draw(other)
    ]
    return rng.choice(fresh) if fresh else None


def _another(
    key: str, lexicon: Lexicon, rng: Random, put: Callable[[str], Changed]
) -> Changed | None:
    """The meaning with another noun of the same sort and band, of the same size if can be."""
    noun = lexicon.nouns[key]
    others = [
        (other, meaning)
        for other in lexicon.nouns.values()
        if other.key != key
        and other.sort is noun.sort
        and other.band == noun.band
        and _suits(meaning := put(other.key), lexicon)
    ]
    same_size = [meaning for other, meaning in others if other.size == noun.size]
    pool = same_size or [meaning for _, meaning in others]
    return rng.choice(pool) if pool else None


def _suits(meaning: Act | Place, lexicon: Lexicon) -> bool:
    """It can be drawn, and what is inside something could have it inside as well."""
    if isinstance(meaning, Place) and meaning.relation is Relation.IN:
        both = (meaning.thing, meaning.landmark)
        if not all(lexicon.nouns[key].container for key in both):
            return False
    return can_draw(meaning)
