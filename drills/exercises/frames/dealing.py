"""Which nouns and verbs an item of a batch is about: each in turn, none twice running."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Hashable, Sequence
from random import Random
from typing import TypeVar

from drills.core.clauses import Determined, Party, Told, clauses_of, parties_of
from drills.core.closed_words import (
    ONE_FORM_FOR_MANY,
    ONE_FORM_FOR_THEN,
    UNCLEAR_NUMBER,
    UNCOUNTED,
)
from drills.core.material import ClozeWords, GoesWith, Material
from drills.core.meanings import Link
from drills.core.words import Band, Lexicon, Noun, Sex, Sort, Verb
from drills.exercises.casting import Casting

T = TypeVar("T", bound=Hashable)

_UNCLEAR = UNCLEAR_NUMBER | UNCOUNTED | ONE_FORM_FOR_MANY
_IN_SAYINGS = ("ball", "letter")
"""Things that, when had, may say something else: to "have a ball"."""
_TOO_LARGE = 3
_KINDS: dict[GoesWith, tuple[str, ...]] = {
    GoesWith.TOY: ("ball", "kite"),
    GoesWith.NOISE: ("bell", "drum", "phone", "clock"),
    GoesWith.ROLE: ("queen", "king", "nurse", "judge", "dancer", "sailor"),
    GoesWith.GARMENT: ("coat", "hat", "glove", "boot", "shoe"),
    GoesWith.VEHICLE: ("boat", "car", "tent"),
    GoesWith.LARGE: ("tree", "tent", "table", "car", "boat"),
    GoesWith.CONTAINER: ("box", "bucket", "basket", "bag", "pot", "barrel"),
    GoesWith.MANY: ("apple", "flower", "book", "key", "letter"),
}
SEXED = {
    Sex.FEMALE: ("queen", "bride", "woman", "girl"),
    Sex.MALE: ("king", "man", "boy"),
}
"""Nouns that in themselves tell a woman from a man."""


def _members(key: Hashable) -> tuple[Hashable, ...]:
    """The words of a pair or a triple, or the word alone."""
    return key if isinstance(key, tuple) else (key,)


def shows_number(noun: Noun) -> bool:
    """One and many differ in form, and all speakers count it alike."""
    return noun.singular != noun.plural and noun.singular not in _UNCLEAR


def shows_tense(verb: Verb) -> bool:
    """Now and then differ in form."""
    return verb.base != verb.past and verb.base not in ONE_FORM_FOR_THEN


class Dealer:
    """Deals the words of one item after another; each pool's words come equally often."""

    def __init__(self, rng: Random, material: Material) -> None:
        self.rng = rng
        self.material = material
        self.lexicon: Lexicon = material.cloze_words.lexicon
        self.words: ClozeWords = material.cloze_words
        self._uses: Counter[tuple[str, Hashable]] = Counter()
        self._last: frozenset[Hashable] = frozenset()
        self._now: set[Hashable] = set()
        self._castings: dict[Hashable, Casting] = {}

    def casting(self, name: Hashable, make: Callable[[], Casting]) -> Casting:
        """The casting of that name, made at its first use."""
        return self._castings.setdefault(name, make())

    def begin(self) -> None:
        """A new item."""
        self._last, self._now = frozenset(self._now), set()

    def note(self, *keys: Hashable) -> None:
        """These are in the item, so the next one leaves them out."""
        self._now.update(keys)

    def fresh(self, pool: str, keys: Sequence[T]) -> T:
        """The key that this pool had least, none of this item's or the last one's if possible.

        Raises: ValueError for an empty pool.
        """
        order = list(keys)
        if not order:
            raise ValueError(f"there is nothing for {pool}")
        self.rng.shuffle(order)
        chosen = min(
            order,
            key=lambda key: (
                self._meets(key, self._now),
                self._meets(key, self._last),
                self._uses[pool, key],
            ),
        )
        self._uses[pool, chosen] += 1
        self.note(*_members(chosen))
        return chosen

    def is_new(self, *keys: Hashable) -> bool:
        """Whether neither this item nor the last one has any of them."""
        return not any(key in self._now or key in self._last for key in keys)

    @staticmethod
    def _meets(key: Hashable, others: Collection[Hashable]) -> bool:
        return any(member in others for member in _members(key))

    # Pools

    def person(self, pool: str = "person", suits: Callable[[str], bool] = lambda _key: True) -> str:
        return self.fresh(pool, [key for key in self._nouns(Sort.PERSON) if suits(key)])

    def animal(self) -> str:
        return self.fresh("animal", self._nouns(Sort.ANIMAL))

    def thing(self, pool: str = "thing", suits: Callable[[Noun], bool] | None = None) -> str:
        """A thing that can be had and held."""
        nouns = [self.lexicon.nouns[key] for key in self._nouns(Sort.THING)]
        small = [noun for noun in nouns if noun.size < _TOO_LARGE]
        return self.fresh(
            pool,
            [
                noun.key
                for noun in small
                if noun.singular not in _IN_SAYINGS and (suits is None or suits(noun))
            ],
        )

    def of_kind(self, kind: GoesWith) -> str:
        """A noun that a head and its preposition go with."""
        if kind is GoesWith.PERSON:
            return self.person()
        if kind is GoesWith.ANIMAL:
            return self.animal()
        if kind is GoesWith.THING:
            return self.thing()
        return self.fresh(kind.value, [key for key in _KINDS[kind] if key in self.lexicon.nouns])

    def sexed(self, sex: Sex) -> str:
        known = [key for key in SEXED[sex] if key in self.lexicon.nouns]
        return self.fresh(f"{sex}", known)

    def alone(self, pool: str = "alone", suits: Callable[[Verb], bool] = shows_tense) -> str:
        """A verb of one on nobody that the lexicon itself has."""
        return self.fresh(
            pool, [key for key, verb in self.material.lexicon.alone.items() if suits(verb)]
        )

    def act_on_thing(
        self, pool: str = "act", suits: Callable[[Verb], bool] = shows_tense
    ) -> tuple[str, str]:
        """A verb, and a thing that it is done to."""
        verbs = self.material.lexicon.verbs
        known = self.material.lexicon.nouns
        verb = self.fresh(
            pool,
            [
                key
                for key, each in verbs.items()
                if suits(each) and each.band == Band.EVERYDAY and _known(each, known)
            ],
        )
        return verb, self.fresh(f"{pool} of {verb}", _known(verbs[verb], known))

    def state(self, pool: str = "state", *, passing: bool = True) -> str:
        """A state that comes and goes, or a quality that stays."""
        return self.fresh(
            pool,
            [
                key
                for key, each in self.material.lexicon.adjectives.items()
                if each.passing == passing
            ],
        )

    def cause(self) -> tuple[str, str]:
        """A state, and what one does for it."""
        return self.fresh("cause", [(each.state, each.act) for each in self.words.causes])

    def _nouns(self, sort: Sort) -> list[str]:
        return [
            noun.key
            for noun in self.material.lexicon.nouns.values()
            if noun.sort is sort and noun.band == Band.EVERYDAY and shows_number(noun)
        ]

    # Parties

    def named(self) -> Party:
        """ "the nurse" """
        return Party(noun=self.person())

    def counted(self, count: int, pool: str = "person") -> Party:
        """ "one nurse", "three nurses" """
        return Party(noun=self.person(pool), count=count, determined=Determined.COUNTED)

    def many(self) -> int:
        return self.rng.choice((2, 3))


def _known(verb: Verb, nouns: object) -> list[str]:
    return [key for key in verb.things if key in nouns]  # type: ignore[operator]


def content_keys(told: Told) -> tuple[str, ...]:
    """Keys of the nouns, adjectives and verbs that carry content, each once."""
    keys: list[str] = []
    for party in parties_of(told):
        keys += [key for key in (party.noun, party.quality) if key]
    for clause in clauses_of(told):
        keys += [clause.state] if clause.state else []
        keys += [clause.verb] if clause.verb not in _SMALL_VERBS else []
    return tuple(dict.fromkeys(keys))


_SMALL_VERBS = (Link.BE.value, Link.HAVE.value, "see")


def content_words(told: Told, lexicon: Lexicon) -> tuple[str, ...]:
    """Lemmas of the content words."""
    return tuple(_lemma(key, lexicon) for key in content_keys(told))


def _lemma(key: str, lexicon: Lexicon) -> str:
    for verbs in (lexicon.verbs, lexicon.alone, lexicon.transfers):
        if key in verbs:
            return verbs[key].base
    if key in lexicon.nouns:
        return lexicon.nouns[key].singular
    return lexicon.adjectives[key].base
