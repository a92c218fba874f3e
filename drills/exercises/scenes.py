"""Meanings for pictures: which words can play, and how a foil changes a meaning."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from random import Random

from drills.core.meanings import Act, Place, Relation
from drills.core.words import Lexicon, Verb
from drills.exercises.casting import Pair
from drills.pictures import SMALL_UNREADABLE, can_draw

REVERSIBLE = tuple(relation for relation in Relation if relation is not Relation.NEXT_TO)
"""Relations that tell a from b; beside is the same both ways."""


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
    return made_out(verbs) if small else verbs


def made_out(verbs: tuple[str, ...]) -> tuple[str, ...]:
    """The verbs that small pictures show, or all when no other is left."""
    return tuple(verb for verb in verbs if verb not in SMALL_UNREADABLE) or verbs


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


@lru_cache(maxsize=1024)
def other_verbs(lexicon: Lexicon, verb: str, doer: str, done_to: str) -> tuple[str, ...]:
    """Other acts of the same two that are made out in small pictures.

    From other groups where there are any: acts of one group may hold of each other, as one who
    chases also follows.
    """
    sorts = {lexicon.nouns[doer].sort, lexicon.nouns[done_to].sort}
    act = Act(verb=verb, doer=doer, done_to=done_to)
    verbs = [
        other
        for other in lexicon.verbs.values()
        if other.key not in (verb, *SMALL_UNREADABLE)
        and sorts <= other.sorts
        and can_draw(replace(act, verb=other.key))
    ]
    apart = [other for other in verbs if other.group != lexicon.verbs[verb].group]
    return tuple(other.key for other in apart or verbs)


def other_verb(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    """The same two in another act, as `other_verbs` says; None when none suits them."""
    verbs = other_verbs(lexicon, act.verb, act.doer, act.done_to)
    return replace(act, verb=rng.choice(verbs)) if verbs else None


@lru_cache(maxsize=256)
def nouns_like(lexicon: Lexicon, key: str) -> tuple[str, ...]:
    """Other nouns of the same sort and band, of the same size if there are any."""
    noun = lexicon.nouns[key]
    others = [
        other
        for other in lexicon.nouns.values()
        if other.key != key and other.sort is noun.sort and other.band == noun.band
    ]
    same_size = [other for other in others if other.size == noun.size]
    return tuple(other.key for other in same_size or others)
