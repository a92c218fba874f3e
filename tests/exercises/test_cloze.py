from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from random import Random

import lemminflect
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest

from drills.core.items import CueKind, Foil, Item, Kind, Target
from drills.core.material import Material
from drills.core.meanings import Act, Place, Relation, State
from drills.exercises import make_items
from drills.exercises.cloze import first_letters
from drills.exercises.rules import (
    GAP,
    answers_come_out_even,
    answers_take_turns,
    right_text,
)
from tests.exercises.batches import make

SURE = 1e-4


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    """Some 1,450 items of every level and contrast."""
    return [
        item
        for options in (2, 3, 4)
        for seed in range(8)
        for item in make(material, Kind.CLOZE, count=61, options=options, seed=seed)
    ]


def filled(item: Item, index: int) -> str:
    return item.sentence.replace(GAP, item.options[index].text or "")


def test_the_right_word_gives_back_the_sentence(items: list[Item]) -> None:
    for item in items:
        assert item.answer is not None
        assert filled(item, item.answer) == item.restated.text


def test_every_foil_is_false_or_ungrammatical_and_says_so(items: list[Item]) -> None:
    for item in items:
        for option in item.options:
            if option.foil is not None:
                wanted = "false_place" if isinstance(item.meaning, Place) else "agreement"
                assert (option.foil, option.why_wrong) == (Foil.WORD, wanted)


def test_a_place_word_is_decided_by_the_picture_alone(
    items: list[Item], material: Material
) -> None:
    nouns = material.lexicon.nouns
    for item in items:
        if isinstance(item.meaning, Place):
            assert item.picture is not None
            assert item.picture.meaning == item.meaning
            if any(option.text == "in" for option in item.options):
                # Else everyone would know that nothing can be in it.
                assert nouns[item.meaning.landmark].container
        else:
            assert item.picture is None


# What a place word says of two solid boxes, in plain coordinates (x right, y up, z towards the
# viewer); written without a look at `drawn`. Common practice, no source.
_AT = {
    Relation.IN: (0.0, 0.0, 0.0),
    Relation.ON: (0.0, 1.0, 0.0),
    Relation.UNDER: (0.0, -1.0, 0.0),
    Relation.BEHIND: (0.0, 0.0, -1.0),
    Relation.IN_FRONT_OF: (0.0, 0.0, 1.0),
    Relation.NEXT_TO: (1.0, 0.0, 0.0),
}


def test_each_place_foil_puts_the_thing_elsewhere(items: list[Item]) -> None:
    for item in items:
        if isinstance(item.meaning, Place):
            right = _AT[item.meaning.relation]
            assert right == _AT[Relation(right_text(item))]
            for option in item.options:
                if option.foil is not None:
                    assert _AT[Relation(option.text)] != right


_AUXILIARY = {"is": "be", "are": "be", "was": "be", "were": "be", "has": "have", "have": "have"}


def test_auxiliaries_agree_as_an_outside_inflector_says(items: list[Item]) -> None:
    """Forms of verb and noun from lemminflect 0.2 (NIH SPECIALIST lexicon), by Penn tags."""
    seen = set()
    for item in items:
        if not isinstance(item.meaning, State):
            continue
        numeral, noun = item.sentence.split()[:2]
        one = numeral == "One"
        lemma = item.words[0]
        assert noun in lemminflect.getInflection(lemma, "NN" if one else "NNS")
        present = "VBZ" if one else "VBP"
        for option in item.options:
            word = option.text or ""
            verb = _AUXILIARY[word]
            if word in ("was", "were"):
                # The past of `be` alone shows number: VBD lists "was" for one, "were" for many.
                fits = (word == lemminflect.getInflection("be", "VBD")[0]) == one
                assert word in lemminflect.getInflection("be", "VBD")
            else:
                fits = word in lemminflect.getInflection(verb, present)
            assert fits == (option.foil is None), item.sentence
            seen.add((word, fits))
    assert seen == {(word, fits) for word in _AUXILIARY for fits in (True, False)}


def test_the_gap_is_never_first_and_the_sentence_short(items: list[Item]) -> None:
    for item in items:
        assert item.sentence.split().index(GAP) > 0
        assert item.sentence.count(GAP) == 1
        assert all(len(filled(item, i).split()) <= 8 for i in range(len(item.options)))


@pytest.mark.parametrize("names", [("C3",), ("C4",), ("C3", "C4")])
@pytest.mark.parametrize("count", [8, 40, 100])
def test_no_word_is_right_three_times_running_and_all_come_out_even(
    material: Material, names: tuple[str, ...], count: int
) -> None:
    for seed in range(6):
        batch = make(material, Kind.CLOZE, *names, count=count, seed=seed)
        assert answers_take_turns(batch) == ()
        assert answers_come_out_even(batch) == ()


@given(st.integers(0, 2**32), st.integers(1, 40), st.sampled_from(["in-on", "in-on-under"]))
@settings(max_examples=40, deadline=None)
def test_one_contrast_over_and_over_takes_turns_too(
    material: Material, seed: int, count: int, group: str
) -> None:
    target = Target(kind=Kind.CLOZE, name="C3", group=group)
    batch = make_items([target] * count, options=3, material=material, rng=Random(seed))
    assert answers_take_turns(batch) == ()
    assert answers_come_out_even(batch) == ()


def test_one_and_many_are_right_equally_often_even_with_one_item_a_contrast(
    material: Material,
) -> None:
    for seed in range(20):
        batch = make(material, Kind.CLOZE, "C4", count=3, seed=seed)
        ones = sum(right_text(item) in ("is", "was", "has") for item in batch)
        assert ones in (1, 2)


def test_the_right_word_stands_in_each_place_equally_often(material: Material) -> None:
    for seed in range(5):
        batch = make(material, Kind.CLOZE, count=60, seed=seed)
        first = sum(item.answer == 0 for item in batch)
        assert abs(2 * first - len(batch)) <= 1
        for word in ("in", "on", "is", "are"):
            here = [item.answer for item in batch if right_text(item) == word]
            assert abs(2 * sum(place == 0 for place in here) - len(here)) <= 4


def test_single_items_are_as_fair_as_a_coin(material: Material) -> None:
    """Exact binomial test of scipy."""
    target = Target(kind=Kind.CLOZE, name="C4", group="is-are")
    lone = [
        make_items([target], options=2, material=material, rng=Random(seed))[0]
        for seed in range(400)
    ]
    assert binomtest(sum(right_text(item) == "is" for item in lone), 400).pvalue > SURE
    assert binomtest(sum(item.answer == 0 for item in lone), 400).pvalue > SURE
    assert (
        binomtest(
            sum((right_text(item) == "is") == (item.answer == 0) for item in lone), 400
        ).pvalue
        > SURE
    )


def test_two_options_are_given_from_a_contrast_of_three_by_turns(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C3", count=60, options=2, groups=("in-on-under",))
    pairs = Counter(tuple(sorted(option.text or "" for option in item.options)) for item in batch)
    assert set(pairs) == {("in", "on"), ("in", "under"), ("on", "under")}
    assert {item.effective_k for item in batch} == {2}
    batch = make(material, Kind.CLOZE, "C3", count=9, options=4, groups=("in-on-under",))
    assert {len(item.options) for item in batch} == {item.effective_k for item in batch} == {3}


def test_no_content_word_comes_twice_running(material: Material) -> None:
    for seed in range(6):
        for level in ("C3", "C4"):
            batch = make(material, Kind.CLOZE, level, count=60, seed=seed)
            for before, after in pairwise(batch):
                assert not set(before.words) & set(after.words)


def test_no_sentence_is_a_saying(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C4", count=200, groups=("has-have",))
    assert not any("a ball" in item.restated.text for item in batch)
    assert len({item.words[1] for item in batch}) > 3


def test_no_noun_goes_with_one_number_only(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C4", count=120, groups=("is-are",))
    numbers: dict[str, set[bool]] = {}
    for item in batch:
        assert isinstance(item.meaning, State)
        numbers.setdefault(item.meaning.subject, set()).add(item.meaning.count == 1)
    assert all(found == {True, False} for found in numbers.values())


def test_no_help_below_the_top_says_a_word_that_is_offered(items: list[Item]) -> None:
    """Not even by the way: "The first letter is ..." would say one of "is" and "are"."""
    for item in items:
        offered = {(option.text or "").split()[0] for option in item.options}
        assert item.spoken.text == item.prompt
        for cue in item.cues[:-1]:
            said = f"{cue.text} {cue.spoken.text if cue.spoken else ''}".lower()
            assert not offered & set(re.findall("[a-z]+", said)), cue
        assert filled(item, item.answer or 0) in item.cues[-1].text


def test_read_aloud_leaves_the_gap_silent(items: list[Item]) -> None:
    for item in items:
        spoken = item.cues[0].spoken
        assert spoken is not None
        before, after = spoken.phrases
        assert f"{before} {right_text(item)} {after}" == item.restated.text


def test_a_word_goes_away_only_where_more_than_two_are_offered(items: list[Item]) -> None:
    for item in items:
        levels = [cue.level for cue in item.cues]
        assert levels == ([1, 2, 3, 4, 5] if len(item.options) > 2 else [1, 2, 4, 5])
        for cue in item.cues:
            assert all(item.options[index].foil is Foil.WORD for index in cue.removes)


def test_the_hint_counts_or_asks_where(items: list[Item]) -> None:
    hints = {
        type(item.meaning): cue.text
        for item in items
        for cue in item.cues
        if cue.kind is CueKind.HINT
    }
    assert hints.keys() == {Place, State}
    assert Act not in hints
    assert "Where is the " in hints[Place]


@pytest.mark.parametrize(
    ("word", "others", "shown"),
    [
        ("in", ["on"], "i_"),
        ("was", ["were"], "w__"),
        ("has", ["have"], "h__"),
        ("behind", ["in front of"], "b_____"),
        ("in", ["in front of"], "i_"),
        ("in front of", ["behind"], "i_ _____ __"),
        ("his", ["has"], "hi_"),
    ],
)
def test_the_first_letters_tell_the_word_from_the_others(
    word: str, others: list[str], shown: str
) -> None:
    assert first_letters(word, others) == shown
