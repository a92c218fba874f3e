from __future__ import annotations

from pathlib import Path
from random import Random

from drills.catalogue.word_counts import read_word_counts
from drills.core.items import Kind
from drills.core.material import Material
from drills.exercises import make_items
from drills.exercises.cloze.blind import blind_text, key_of
from drills.exercises.cloze.coverage import coverage
from drills.exercises.gaps import right_label
from tests.exercises.batches import make

CONTENT = Path(__file__).parents[2] / "content"
WANTED = 0.95


def test_the_words_asked_for_are_nineteen_in_twenty_of_those_spoken(material: Material) -> None:
    """Shares: Universal Dependencies English GUM, conversation and vlogs (Zeldes 2017, CC BY 4.0).

    The table counts 's as one word, mostly for "is"; the items ask for the 's of an owner.
    """
    shares = read_word_counts(CONTENT)
    found = coverage(material, shares)
    without_ending = found.share - shares["'s"]
    print(f"\n{len(found.asked)} words, {found.share:.2%}; without 's {without_ending:.2%}")
    assert found.share >= WANTED
    assert without_ending >= WANTED
    assert not set(found.asked) & set(found.missing)
    assert abs(found.share + sum(found.missing.values()) - sum(shares.values())) < 1e-9


def test_each_word_that_counts_as_covered_is_the_answer_of_an_item(material: Material) -> None:
    for word, target in coverage(material, read_word_counts(CONTENT)).asked.items():
        words = len(material.cloze[target.name].contrasts[target.group])
        made = make_items([target] * words, options=2, material=material, rng=Random(1))
        assert word in {right_label(item, material).lower() for item in made}, word


def test_a_blind_list_shows_all_that_decides_and_nothing_that_tells(material: Material) -> None:
    items = make(material, Kind.CLOZE, count=160, options=3)
    names = [f"{number}.png" if item.picture else "" for number, item in enumerate(items)]
    parts = blind_text(items, picture_names=names).split("\n\n")
    assert len(parts) == len(items)
    for item, name, part in zip(items, names, parts, strict=True):
        lines = [line.strip() for line in part.split("\n")]
        assert item.sentence in lines
        assert all(line in lines for line in item.context.split("\n") if line)
        assert (f"picture: {name}" in lines) == bool(name)
        assert [line.split("  ", 1)[1] for line in lines[-len(item.options) :]] == [
            option.text for option in item.options
        ]
        if item.sentence.endswith("?"):
            assert lines.index(item.sentence) < lines.index(item.context)
        assert not any(why in part for why in ("agreement", "collocation", str(item.target)))
    key = key_of(items)
    for row, item in zip(key, items, strict=True):
        assert item.answer is not None
        assert (row["answer"], row["word"]) == (item.answer + 1, item.options[item.answer].text)
