"""The reserve: who does what to whom that is kept for probes and never practised.

About one pair of words in eight of every act, told by a fixed hash, so that nothing has to be
kept or looked up and a plan that changes later still finds fresh exemplars. It is the same for all
constructions and kinds of exercise, and for a pair in either order: a picture that was practised
in an active sentence is not new in a passive one, nor is its reversal.
"""

from __future__ import annotations

from collections.abc import Sequence
from hashlib import sha256

from drills.core.items import Item, ItemSet
from drills.core.meanings import Act, Chain, Described, Meaning, Place, Relation, Report
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.scenes import act_pairs, reversible_places

SHARE = 8
"""One pair in so many is reserved. Common practice, no source."""
FEWEST_PAIRS = 24
"""An act with fewer pairs, in either order, has none to spare."""

# Whom "she" and "him" mean: they are the only pair of that construction.
_ALWAYS_OPEN = frozenset({"woman", "man"})
# Seen the same, with the two exchanged.
_SAME_ACT: dict[str, str] = {Relation.IN_FRONT_OF: Relation.BEHIND}

Exemplar = tuple[str, frozenset[str]]
"""A verb or a relation, and the two words that could trade parts in it."""


def exemplar_key(act: str, pair: Pair) -> Exemplar:
    return str(_SAME_ACT.get(act, act)), frozenset(pair)


def exemplar_of(meaning: Meaning) -> Exemplar | None:
    """What a meaning tells of two that could trade parts; None where it tells of no such two."""
    match meaning:
        case Act():
            return exemplar_key(meaning.verb, (meaning.doer, meaning.done_to))
        case Described(act=act) | Report(act=act):
            return exemplar_of(act)
        case Chain():
            return exemplar_key(meaning.verb, (meaning.outer, meaning.middle))
        case Place():
            return exemplar_key(meaning.relation, (meaning.thing, meaning.landmark))
        case _:
            return None


def exemplar_in(item: Item) -> Exemplar | None:
    """The exemplar that an item asks, also where its sentence leaves one of the two out."""
    right = None if item.answer is None else item.options[item.answer].scene
    for meaning in (item.meaning, None if right is None else right.meaning):
        if meaning is not None and (found := exemplar_of(meaning)) is not None:
            return found
    return None


def is_reserved(exemplar: Exemplar, lexicon: Lexicon) -> bool:
    """Whether it is kept for probes, whatever the plan."""
    act, words = exemplar
    pairs = _pairs_of(act, lexicon)
    if len(pairs) < FEWEST_PAIRS or words == _ALWAYS_OPEN or len(words) < 2:
        return False
    if tuple(sorted(words)) not in pairs and tuple(sorted(words))[::-1] not in pairs:
        return False
    text = " ".join((act, *sorted(words)))
    return int.from_bytes(sha256(text.encode("utf-8")).digest()[:4]) % SHARE == 0


def open_pairs(
    pairs: Sequence[Pair], act: str, lexicon: Lexicon, *, item_set: ItemSet = ItemSet.TREATED
) -> Sequence[Pair]:
    """The pairs of an act that may be practised."""
    if item_set is not ItemSet.TREATED:
        return pairs
    return tuple(pair for pair in pairs if not is_reserved(exemplar_key(act, pair), lexicon))


def _pairs_of(act: str, lexicon: Lexicon) -> Sequence[Pair]:
    if act in lexicon.verbs:
        return act_pairs(lexicon, act)
    return reversible_places(lexicon, act) if act in tuple(Relation) else ()
