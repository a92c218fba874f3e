"""The grid of words and grammar: truth by the facts as written, cells, lengths, listeners."""

from __future__ import annotations

import re
import tomllib
from collections import Counter
from itertools import pairwise
from pathlib import Path

import pytest

from drills.core.items import Item
from drills.core.material import Material
from tests.exercises.test_question import questions

FACTS = Path(__file__).parents[2] / "content" / "lexicon" / "facts.toml"
CELLS = ("everyday/easy", "everyday/hard", "rare/easy", "rare/hard")

# School grammar: who does it to whom in each form, written without a look at how they are made.
_ART = r"[Aa]n? "
_FORMS = (
    (re.compile(rf"^{_ART}(\w+) is {_ART}\w+ and (\w+) {_ART}(\w+)\.$"), (0, 1, 2)),
    (re.compile(rf"^{_ART}\w+ such as {_ART}(\w+) (\w+) {_ART}(\w+)\.$"), (0, 1, 2)),
    (re.compile(rf"^{_ART}(\w+) is {_ART}\w+ (?!that)(\w+) by {_ART}(\w+)\.$"), (2, 1, 0)),
    (re.compile(rf"^{_ART}(\w+) is {_ART}\w+ that {_ART}(\w+) (\w+)\.$"), (1, 2, 0)),
    (re.compile(rf"^{_ART}\w+ that {_ART}(\w+) (\w+) is {_ART}(\w+)\.$"), (0, 1, 2)),
)


@pytest.fixture(scope="module")
def written() -> set[tuple[str, str, str]]:
    """Source: the facts file, read by tomllib; each with every form of its verb."""
    found = set()
    rows = tomllib.loads(FACTS.read_text(encoding="utf-8"))
    lexicon = [
        tomllib.loads(path.read_text(encoding="utf-8"))
        for path in FACTS.parent.glob("*")
        if path.suffix == ".toml"
    ]
    verbs = {
        verb["key"]: verb
        for each in lexicon
        for section in ("verb", "fact_verb")
        for verb in each.get(section, [])
    }
    for fact in rows["fact"]:
        for form in ("third_person", "past_participle"):
            found.add((fact["doer"], verbs[fact["verb"]][form], fact["done_to"]))
    return found


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    return [item for seed in range(6) for item in questions(material, "grid", count=200, seed=seed)]


def read(sentence: str) -> tuple[str, str, str]:
    for form, (doer, verb, done_to) in _FORMS:
        if match := form.match(sentence):
            words = match.groups()
            return words[doer], words[verb], words[done_to]
    raise AssertionError(f"{sentence!r} is of no known form")


def is_true(item: Item) -> bool:
    return item.options[item.answer or 0].text == "yes"


def test_yes_is_right_of_what_is_written_and_of_nothing_else(
    items: list[Item], written: set[tuple[str, str, str]]
) -> None:
    for item in items:
        doer, verb, done_to = read(item.sentence)
        assert is_true(item) == ((doer, verb, done_to) in written)
        # What is false is a fact the other way round, so the words alone tell nothing.
        assert is_true(item) or (done_to, verb, doer) in written


def test_the_four_cells_come_equally_often_and_half_of_each_is_true(material: Material) -> None:
    for count in (4, 8, 40, 61):
        for seed in range(4):
            batch = questions(material, "grid", count=count, seed=seed)
            cells = Counter(item.level for item in batch)
            assert max(cells.values()) - min(cells[cell] for cell in CELLS) <= 1
            for cell in CELLS:
                true = [is_true(item) for item in batch if item.level == cell]
                assert abs(2 * sum(true) - len(true)) <= 1


def test_every_statement_has_nine_words(items: list[Item]) -> None:
    assert {len(item.sentence.split()) for item in items} == {9}


def test_a_cell_holds_words_of_its_band_and_grammar_of_its_kind(
    items: list[Item], material: Material
) -> None:
    lexicon = material.lexicon
    nouns = {**lexicon.facts.nouns, **lexicon.nouns}
    forms: dict[str, set[str]] = {}
    for item in items:
        band, grammar = item.level.split("/")
        doer, _, done_to = item.words
        assert {nouns[doer].band, nouns[done_to].band} == {band}
        forms.setdefault(grammar, set()).add(item.construction)
        # The doer comes first in easy grammar, second in hard, but for what is said of its sort.
        first = item.sentence.index(f" {doer} ") if f" {doer} " in item.sentence else 99
        after = item.sentence.index(f" {done_to}")
        if grammar == "easy":
            assert first < after
    assert forms == {
        "easy": {"sort-first", "example-first"},
        "hard": {"passive-relative", "object-relative", "centre-embedded"},
    }


def test_facts_and_forms_take_turns(items: list[Item], material: Material) -> None:
    for band in ("everyday", "rare"):
        words = [frozenset(item.words) for item in items if item.level.startswith(band)]
        assert len(set(words)) == 33
    for before, after in pairwise(items[:200]):
        assert not {before.words[0], before.words[2]} & {after.words[0], after.words[2]}


def test_the_words_alone_tell_nothing_in_any_cell(items: list[Item]) -> None:
    """Who has the words and no grammar meets each bag of words as often true as false."""
    bags: dict[tuple[str, frozenset[str]], list[bool]] = {}
    for item in items:
        words = frozenset(re.findall(r"[a-z]+", item.sentence.lower())) - {"a", "an"}
        bags.setdefault((item.level, words), []).append(is_true(item))
    mixed = [truths for truths in bags.values() if len(truths) > 3]
    assert len(mixed) > 100
    assert sum(len(set(truths)) == 2 for truths in mixed) > 0.7 * len(mixed)


def test_who_takes_the_first_noun_for_the_doer_is_right_in_easy_and_wrong_in_passive_grammar(
    items: list[Item], written: set[tuple[str, str, str]]
) -> None:
    for item in items:
        nouns = [word for word in item.words if word in item.sentence.rstrip(".").split()]
        doer, verb, done_to = read(item.sentence)
        first, second = sorted(
            (doer, done_to), key=lambda word: item.sentence.rstrip(".").split().index(word)
        )
        says = (first, verb, second) in written
        if item.level.endswith("easy"):
            assert says == is_true(item)
        elif item.construction in ("passive-relative", "object-relative"):
            assert says != is_true(item)
        assert nouns


def test_help_says_it_shortly_then_says_what_is_so(items: list[Item]) -> None:
    for item in items:
        texts = {cue.level: cue.text for cue in item.cues}
        doer, verb, done_to = read(item.sentence)
        short = re.match(r"^In short: an? (\w+) (\w+) an? (\w+)\.\nIs this true\?$", texts[4])
        assert short is not None
        assert (short[1], short[3]) == (doer, done_to)
        so = re.match(r"^An? (\w+) (\w+) an? (\w+)\.$", texts[6])
        assert so is not None
        assert (so[1], so[3]) == ((doer, done_to) if is_true(item) else (done_to, doer))
        assert item.restated.text == texts[6]
        assert texts[7].startswith("Yes." if is_true(item) else "No.")
        assert verb
