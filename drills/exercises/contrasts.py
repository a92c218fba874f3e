"""What a batch of cloze items asks for: which word is right, where it stands, what it is about."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from functools import lru_cache
from random import Random

from drills.core.meanings import Link, Place, Relation, State, Tense
from drills.core.words import Band, Lexicon, Sort
from drills.exercises.balance import runs, spread, without_runs
from drills.exercises.casting import Pair
from drills.exercises.rules import LONGEST_ANSWER_RUN, shows_number
from drills.pictures import can_draw

AUXILIARIES: dict[str, tuple[Link, Tense, bool]] = {
    "is": (Link.BE, Tense.PRESENT, True),
    "are": (Link.BE, Tense.PRESENT, False),
    "was": (Link.BE, Tense.PAST, True),
    "were": (Link.BE, Tense.PAST, False),
    "has": (Link.HAVE, Tense.PRESENT, True),
    "have": (Link.HAVE, Tense.PRESENT, False),
}
"""Link, tense and whether it goes with one."""

_MANY = (2, 3)
_IN_SAYINGS = ("ball",)
"""Things that, when had, say something else: to "have a ball"."""
_DEALS = 8


def right_words(
    rng: Random, groups: Sequence[str], contrasts: Sequence[Sequence[str]]
) -> list[str]:
    """The right word of each item: each of a contrast equally often, none three times running.

    Of several such deals the one that is most even over the whole batch, since a batch may hold
    one item of each contrast.
    """

    def deal() -> list[str]:
        words = [""] * len(groups)
        for group in dict.fromkeys(groups):
            indices = [index for index, other in enumerate(groups) if other == group]
            dealt = spread(rng, [group] * len(indices), contrasts[indices[0]])
            for index, word in zip(indices, dealt, strict=True):
                words[index] = word
        return words

    deals = [without_runs(rng, groups, deal, longest=LONGEST_ANSWER_RUN) for _ in range(_DEALS)]
    return min(
        deals,
        key=lambda words: (
            len(runs(words, longest=LONGEST_ANSWER_RUN)),
            _unevenness(words, contrasts),
        ),
    )


def _unevenness(words: Sequence[str], contrasts: Sequence[Sequence[str]]) -> int:
    """How far words, and one against many, are from being right as often as they are offered.

    In whole numbers, so that no machine rounds otherwise than another.
    """
    scale = math.lcm(*(len(contrast) for contrast in contrasts)) if contrasts else 1
    lead: Counter[str] = Counter()
    for word, contrast in zip(words, contrasts, strict=True):
        lead[word] += scale
        for other in contrast:
            lead[other] -= scale // len(contrast)
    number = sum(lead[word] if one else -lead[word] for word, (_, _, one) in AUXILIARIES.items())
    return sum(value * value for value in lead.values()) + number * number


def positions_of(
    rng: Random, groups: Sequence[str], words: Sequence[str], counts: Sequence[int]
) -> list[int]:
    """Where the right word stands: each place equally often, for each word too."""
    positions = [0] * len(groups)
    for count in dict.fromkeys(counts):
        indices = [index for index, other in enumerate(counts) if other == count]
        dealt = spread(
            rng,
            [groups[index] for index in indices],
            range(count),
            crossed=[words[index] for index in indices],
        )
        for index, position in zip(indices, dealt, strict=True):
            positions[index] = position
    return positions


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


class Holders:
    """Chooses who is or has something: every noun and complement in turn, none twice running."""

    def __init__(self, rng: Random, lexicon: Lexicon) -> None:
        self._rng = rng
        self._subjects = [
            noun.key
            for noun in lexicon.nouns.values()
            if noun.sort is Sort.PERSON and noun.band == Band.EVERYDAY and shows_number(noun)
        ]
        self._complements = {
            Link.BE: list(lexicon.adjectives),
            Link.HAVE: [noun.key for noun in lexicon.things if noun.singular not in _IN_SAYINGS],
        }
        self._uses: Counter[str] = Counter()
        self._last: tuple[str, str] = ("", "")

    def choose(self, word: str) -> State:
        link, tense, one = AUXILIARIES[word]
        subject = self._fresh(f"{one}", self._subjects)
        complement = self._fresh(link.value, self._complements[link])
        self._last = (subject, complement)
        count = 1 if one else self._rng.choice(_MANY)
        return State(subject=subject, count=count, link=link, complement=complement, tense=tense)

    def _fresh(self, slot: str, keys: Sequence[str]) -> str:
        """The key used least in this slot, so that no noun goes with one number only."""
        order = list(keys)
        self._rng.shuffle(order)
        chosen = min(order, key=lambda key: (key in self._last, self._uses[f"{slot} {key}"]))
        self._uses[f"{slot} {chosen}"] += 1
        return chosen
