"""Facts of the world: as shipped, and with faults planted."""

from __future__ import annotations

from pathlib import Path

import pytest
import wordfreq

from drills.catalogue import load_lexicon
from drills.core.problems import BadInput
from drills.core.words import Band, Lexicon
from tests.catalogue.test_lexicon import faults, spoil


@pytest.fixture(scope="module")
def lexicon(content: Path) -> Lexicon:
    return load_lexicon(content, locale="en-US")


def test_frequencies_are_those_of_wordfreq(lexicon: Lexicon) -> None:
    """Source: wordfreq 3.1 (Speer), English, Zipf scale."""
    words = [(noun.singular, noun.zipf) for noun in lexicon.facts.nouns.values()]
    words += [(verb.base, verb.zipf) for verb in lexicon.facts.verbs.values()]
    for text, zipf in words:
        assert abs(zipf - wordfreq.zipf_frequency(text, "en")) <= 0.02, text


def test_every_rare_noun_is_rarer_than_every_everyday_one_and_no_verb_is_rare(
    lexicon: Lexicon,
) -> None:
    nouns = {**lexicon.facts.nouns, **lexicon.nouns}
    verbs = {**lexicon.facts.verbs, **lexicon.verbs}
    told = {key for fact in lexicon.facts.known for key in (fact.doer, fact.done_to)}
    rare = [nouns[key].zipf for key in told if nouns[key].band == Band.RARE]
    everyday = [nouns[key].zipf for key in told if nouns[key].band == Band.EVERYDAY]
    assert min(len(rare), len(everyday)) > 50
    assert max(rare) < min(everyday)
    assert min(verbs[fact.verb].zipf for fact in lexicon.facts.known) > max(rare)


def test_the_bands_have_as_many_facts_of_each_sort(lexicon: Lexicon) -> None:
    nouns = {**lexicon.facts.nouns, **lexicon.nouns}
    counts: dict[tuple[str, str], int] = {}
    for fact in lexicon.facts.known:
        key = (nouns[fact.doer].sort.value, str(nouns[fact.doer].band))
        counts[key] = counts.get(key, 0) + 1
        assert fact.source == "common knowledge, no source"
    for sort in ("person", "animal", "thing"):
        assert counts[sort, "everyday"] == counts[sort, "rare"] >= 10


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ('done_to = "mouse"', 'done_to = "house"', "Pair two of one sort."),
        ('done_to = "mouse"', 'done_to = "vole"', "Pair two of one band."),
        ('done_to = "mouse"', 'done_to = "mice"', "There is no `mice`."),
        ('verb = "catch"', 'verb = "caught"', "There is no `caught`."),
        (
            'doer = "dog"\nverb = "guard"\ndone_to = "sheep"',
            'doer = "mouse"\nverb = "catch"\ndone_to = "cat"',
            "the other way round",
        ),
        (
            'doer = "dog"\nverb = "guard"\ndone_to = "sheep"',
            'doer = "cat"\nverb = "catch"\ndone_to = "mouse"',
            "This fact is here twice.",
        ),
        ('sort = "animal"', 'sort = "beast"', "It can be: person, animal, thing."),
        ('singular = "mouse"', 'singular = "a mouse"', "Use one word in small letters."),
        ('source = "common knowledge, no source"', "", "`source` is missing."),
        ("[[fact]]\ndoer", "[[fact]]\nwho = 1\ndoer", "There is no setting `who` here."),
    ],
)
def test_a_fault_is_told_with_its_line(copied: Path, old: str, new: str, told: str) -> None:
    spoil(copied, "facts.toml", old, new)
    found = faults(copied)
    assert any(told in fault and "facts.toml:" in fault for fault in found), found


def test_facts_may_be_left_out(copied: Path, tmp_path: Path) -> None:
    (copied / "lexicon" / "facts.toml").unlink()
    assert load_lexicon(copied, locale="en-GB").facts.known == ()
    with pytest.raises(BadInput):
        load_lexicon(tmp_path / "nowhere", locale="en-GB")
