"""Match items of every construction, dealt once a process, and what simple listeners see."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import fields
from random import Random
from typing import Any

from drills.core.items import Foil, Item, Kind
from drills.core.material import Material
from drills.core.meanings import Act, Described, Meaning
from drills.exercises.match import FAMILIES
from tests.exercises.batches import make, scene_of

EVERY = tuple(FAMILIES)
DOER_FIRST = ("active", "subject-cleft", "subject-question-which", "subject-relative")
DOER_SECOND = (
    "full-passive",
    "object-cleft",
    "object-question-which",
    "object-relative-right",
    "object-relative-centre",
)
ROLES = (*DOER_FIRST, *DOER_SECOND)
"""Those that name both a doer and a done-to, so that their order can mislead."""

SQUARES = ("subject-pronoun", "locative", "pronoun-reference", "dative")
"""Those of which four pictures can all show the same words."""


_DEALT: dict[tuple[str, str, int, int, int], tuple[Item, ...]] = {}


def dealt(
    material: Material, name: str, options: int, *, count: int = 12, seed: int = 1
) -> tuple[Item, ...]:
    key = (material.content_hash, name, options, count, seed)
    if key not in _DEALT:
        _DEALT[key] = make(material, Kind.MATCH, name, count=count, options=options, seed=seed)
    return _DEALT[key]


def every_item(material: Material, *, count: int = 12, seed: int = 1) -> Iterator[Item]:
    for options in (2, 3, 4):
        for name in EVERY:
            yield from dealt(material, name, options, count=count, seed=seed)


def shown(item: Item, index: int) -> Meaning:
    return scene_of(item, index).meaning


def act_shown(item: Item, index: int) -> Act:
    """The act in a picture, whoever in it is singled out."""
    meaning = shown(item, index)
    act = getattr(meaning, "act", meaning)
    assert isinstance(act, Act)
    return act


def values(meaning: Any, path: str = "") -> Iterator[tuple[str, str]]:
    """What a picture shows, field by field; tense, where and when are not seen."""
    for field in fields(meaning):
        value = getattr(meaning, field.name)
        if field.name in ("tense", "aspect", "where", "when"):
            continue
        if isinstance(value, Act):
            yield from values(value, f"{path}{field.name}.")
        else:
            yield f"{path}{field.name}", str(value)


def features(item: Item, index: int) -> frozenset[tuple[str, str]]:
    meaning = shown(item, index)
    described = {("subject", meaning.subject)} if isinstance(meaning, Described) else set()
    return frozenset({*values(meaning), *described})


def words_seen(item: Item, index: int) -> frozenset[str]:
    return frozenset(value for _, value in features(item, index))


def left_by_words(item: Item) -> list[int]:
    """The pictures that hold every content word of the sentence."""
    wanted = set(item.words)
    return [i for i in range(len(item.options)) if wanted <= words_seen(item, i)]


def left_by_roles(item: Item) -> list[int]:
    """The pictures left to one who has every word, small ones too, and not who does it.

    The right one, and those in which nothing but the parts is otherwise.
    """
    return [i for i, option in enumerate(item.options) if option.foil in (None, Foil.REVERSAL)]


def most_alike(item: Item, among: Sequence[int], rng: Random) -> int:
    """Of some pictures the one that has most in common with all the others."""
    seen = [features(item, index) for index in range(len(item.options))]
    order = list(among)
    rng.shuffle(order)
    return max(order, key=lambda i: sum(len(seen[i] & other) for other in seen))


def named_in_order(item: Item, material: Material) -> tuple[str, str]:
    """The two nouns of an act as they come in the sentence, by key."""
    text = item.sentence.rstrip(".?").replace(",", "").lower().split()
    act = act_shown(item, item.answer or 0)
    nouns = material.lexicon.nouns
    first, second = sorted((act.doer, act.done_to), key=lambda key: text.index(nouns[key].singular))
    return first, second
