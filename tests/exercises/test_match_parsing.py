"""The parts in the key of items really dealt, held against an independent dependency parser.

Source: spaCy 3.8 and its small English model 3.8.0. Where the parser itself errs (test_parsing of
the language room counts it, over 200 sentences a construction) the same share is allowed here.
"""

from __future__ import annotations

from typing import Any

import pytest
from scipy.stats import binom

from drills.core.items import Item
from drills.core.material import Material
from drills.core.meanings import Act, Chain, Described, Meaning, Role
from tests.exercises.dealt import EVERY, act_shown, dealt
from tests.language.parsing import load, meant, read
from tests.language.test_parsing import COUNT, ENOUGH, PARSER_ERRS

SURE = 1e-3
SEEDS = (1, 2, 3)


@pytest.fixture(scope="module")
def parser() -> Any:
    return load()


def _misread(items: list[Item], material: Material, parser: Any) -> list[str]:
    lexicon = material.lexicon
    wrong = []
    for item in items:
        assert item.meaning is not None
        right = meant(item.meaning, item.construction, lexicon)
        found = read(item.meaning, parser(item.sentence), lexicon)
        if any(found.get(part) != word for part, word in right.items()):
            wrong.append(item.sentence)
    return wrong


@pytest.mark.parametrize("name", EVERY)
def test_a_parser_finds_the_parts_of_the_key(name: str, material: Material, parser: Any) -> None:
    """No oftener misread than the parser errs in this construction, or than once in a hundred."""
    items = [item for seed in SEEDS for item in dealt(material, name, 2, seed=seed)]
    wrong = _misread(items, material, parser)
    share = PARSER_ERRS.get(name, COUNT - ENOUGH) / COUNT
    print(f"{name}: {len(items) - len(wrong)} of {len(items)}")
    assert len(wrong) <= binom.ppf(1 - SURE, len(items), share), wrong


def _in_words(meaning: Meaning, material: Material) -> tuple[str, str]:
    act = meaning.act if isinstance(meaning, Described) else meaning
    assert isinstance(act, Act)
    nouns = material.lexicon.nouns
    return nouns[act.doer].singular, nouns[act.done_to].singular


@pytest.mark.parametrize("name", ["active", "subject-cleft", "full-passive", "subject-relative"])
def test_what_the_parser_finds_is_what_the_right_picture_shows_and_not_the_twin(
    name: str, material: Material, parser: Any
) -> None:
    agreed = count = 0
    for item in dealt(material, name, 2):
        assert item.meaning is not None
        found = read(item.meaning, parser(item.sentence), material.lexicon)
        parts = (found.get("doer"), found.get("done_to"))
        fitting = [
            index for index in range(2) if parts == _in_words(act_shown(item, index), material)
        ]
        agreed += fitting == [item.answer]
        count += 1
    assert agreed >= count - 1


def test_a_question_asks_for_whoever_the_arrow_shows(material: Material) -> None:
    for name in ("subject-question-which", "object-question-which"):
        for item in dealt(material, name, 2):
            assert isinstance(item.meaning, Chain)
            right = item.options[item.answer or 0].scene
            assert right is not None
            assert isinstance(right.meaning, Described)
            assert right.meaning.subject == item.meaning.outer
            assert (right.meaning.who is Role.DOER) == name.startswith("subject")
