"""Batches of items for tests, and listeners who answer them."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from itertools import cycle, islice
from random import Random

from drills.core.items import Item, Kind
from drills.core.material import Material
from drills.core.meanings import Act, Scene
from drills.core.plans import BlockPlan
from drills.exercises import make_items, names_of, targets_of

CANONICAL = ("active", "subject-cleft")
NON_CANONICAL = ("full-passive", "object-cleft")
ACTS = (*CANONICAL, *NON_CANONICAL)


def make(
    material: Material,
    kind: Kind,
    *names: str,
    count: int = 60,
    options: int = 2,
    seed: int = 1,
    groups: tuple[str, ...] = (),
) -> tuple[Item, ...]:
    """Items of the targets of one block, taken in turn; no names means every name."""
    block = BlockPlan(
        kind=kind,
        names=names or names_of(kind, material),
        trials=count,
        options=options,
        groups=groups,
    )
    targets = tuple(islice(cycle(targets_of(block, material)), count))
    return make_items(targets, options=options, material=material, rng=Random(seed))


def with_few_words(material: Material, *keys: str) -> Material:
    """The same material with no other nouns than these."""
    nouns = {key: material.lexicon.nouns[key] for key in keys}
    return replace(material, lexicon=replace(material.lexicon, nouns=nouns))


def scene_of(item: Item, index: int) -> Scene:
    scene = item.options[index].scene
    assert scene is not None
    return scene


def right_scene(item: Item) -> Scene:
    assert item.answer is not None
    return scene_of(item, item.answer)


@dataclass(frozen=True)
class Heard:
    """Who did what to whom, read off the printed words alone."""

    first: str
    second: str
    doer: str
    done_to: str


# Plain school grammar, written without a look at how sentences are made.
_FORMS = (
    (re.compile(r"^It was the (\w+) that \w+ the (\w+)\.$"), True),
    (re.compile(r"^It was the (\w+) that the (\w+) \w+\.$"), False),
    (re.compile(r"^The (\w+) was \w+ by the (\w+)\.$"), False),
    (re.compile(r"^The (\w+) \w+ the (\w+)\.$"), True),
)


def heard(sentence: str) -> Heard:
    for form, doer_first in _FORMS:
        if match := form.match(sentence):
            first, second = match.groups()
            doer, done_to = (first, second) if doer_first else (second, first)
            return Heard(first=first, second=second, doer=doer, done_to=done_to)
    raise AssertionError(f"{sentence!r} is of no known form")


def picture_with(item: Item, verb_of: Act, doer: str, done_to: str, material: Material) -> int:
    """The option that shows these two in these parts, doing what the item is about."""
    nouns = material.lexicon.nouns
    for index, option in enumerate(item.options):
        shown = option.scene.meaning if option.scene else None
        if (
            isinstance(shown, Act)
            and shown.verb == verb_of.verb
            and nouns[shown.doer].singular == doer
            and nouns[shown.done_to].singular == done_to
        ):
            return index
    raise AssertionError(f"no picture of {doer} and {done_to}")
