"""Meanings for pictures: which words can play, and how a foil changes a meaning."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random

from drills.core.meanings import Act, Meaning, Place, Relation
from drills.core.words import Lexicon, Noun, Verb
from drills.exercises.casting import Pair

REVERSIBLE = tuple(relation for relation in Relation if relation is not Relation.NEXT_TO)
"""Relations that tell a from b; beside is the same both ways."""


def act_pairs(lexicon: Lexicon, verb: str) -> tuple[Pair, ...]:
    """Doers and done-tos that are as likely one way as the other."""
    return tuple((a.key, b.key) for a, b in lexicon.partners(lexicon.verbs[verb]))


def verb_groups(lexicon: Lexicon) -> tuple[str, ...]:
    """Groups that can be practised, in the order of the content."""
    groups = (verb.group for verb in lexicon.verbs.values() if _has_cast(lexicon, verb))
    return tuple(dict.fromkeys(groups))


def verbs_of(lexicon: Lexicon, group: str) -> tuple[str, ...]:
    return tuple(
        verb.key
        for verb in lexicon.verbs.values()
        if verb.group == group and _has_cast(lexicon, verb)
    )


def _has_cast(lexicon: Lexicon, verb: Verb) -> bool:
    """Two nouns at least could trade parts in it."""
    classes = Counter(
        (noun.sort, noun.size) for noun in lexicon.nouns.values() if noun.sort in verb.sorts
    )
    return any(count > 1 for count in classes.values())


def reversible_places(lexicon: Lexicon, relation: str) -> tuple[Pair, ...]:
    """Things of one size that can be so both ways round; inside needs two containers."""
    inside = relation == Relation.IN
    return tuple(
        (a.key, b.key)
        for a in lexicon.things
        for b in lexicon.things
        if a is not b and a.size == b.size and (not inside or (a.container and b.container))
    )


def other_verb(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    """The same two, another act; None when no other act suits them.

    From another group where there is one: acts of one group may hold of each other, as one who
    chases also follows.
    """
    sorts = {lexicon.nouns[act.doer].sort, lexicon.nouns[act.done_to].sort}
    verbs = [
        verb for verb in lexicon.verbs.values() if verb.key != act.verb and sorts <= verb.sorts
    ]
    apart = [verb for verb in verbs if verb.group != lexicon.verbs[act.verb].group]
    return replace(act, verb=rng.choice(apart or verbs).key) if verbs else None


def other_doer(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    """Another doer, of the same size if there is one."""
    noun = _another(act.doer, act.done_to, lexicon, rng)
    return None if noun is None else replace(act, doer=noun)


def other_done_to(act: Act, lexicon: Lexicon, rng: Random) -> Act | None:
    noun = _another(act.done_to, act.doer, lexicon, rng)
    return None if noun is None else replace(act, done_to=noun)


def other_thing(place: Place, lexicon: Lexicon, rng: Random) -> Place | None:
    noun = _another(place.thing, place.landmark, lexicon, rng, place.relation is Relation.IN)
    return None if noun is None else replace(place, thing=noun)


def other_landmark(place: Place, lexicon: Lexicon, rng: Random) -> Place | None:
    noun = _another(place.landmark, place.thing, lexicon, rng, place.relation is Relation.IN)
    return None if noun is None else replace(place, landmark=noun)


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
        if other.drawn not in seen and (other.relation is not Relation.IN or containers)
    ]
    return rng.choice(fresh) if fresh else None


def _another(
    key: str, partner: str, lexicon: Lexicon, rng: Random, container: bool = False
) -> str | None:
    noun = lexicon.nouns[key]

    def suits(other: Noun) -> bool:
        return (
            other.key not in (key, partner)
            and other.sort is noun.sort
            and (other.container or not container)
        )

    others = [other for other in lexicon.nouns.values() if suits(other)]
    same_size = [other.key for other in others if other.size == noun.size]
    pool = same_size or [other.key for other in others]
    return rng.choice(pool) if pool else None
