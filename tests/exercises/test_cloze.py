from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest

from drills.catalogue import load
from drills.core.items import Cue, CueKind, Foil, Item, Kind, Target
from drills.core.material import Material
from drills.core.meanings import Place, Relation
from drills.exercises import make_items, names_of
from drills.exercises.choices import broken
from drills.exercises.cloze.help import first_letters
from drills.exercises.frames.table import FRAMES
from drills.exercises.gaps import GAP, frame_of, item_words, labels_of, right_label, right_text
from drills.exercises.rules import (
    CLOZE_RULES,
    OMISSION,
    OMISSION_LEVELS,
    answers_come_out_even,
    answers_take_turns,
)
from tests.exercises.batches import make

CONTENT = Path(__file__).parents[2] / "content"
SURE = 1e-4
LEVELS = tuple(f"C{number}" for number in range(1, 16))


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    """Some 1,400 items of every level and contrast, with two, three and four words."""
    contrasts = sum(len(level.contrasts) for level in material.cloze.values())
    return [
        item
        for options in (2, 3, 4)
        for seed in range(3)
        for item in make(material, Kind.CLOZE, count=contrasts, options=options, seed=seed)
    ]


def filled(item: Item, index: int) -> str:
    return item.sentence.replace(GAP, item.options[index].text or "")


def test_every_level_is_there_and_every_frame_is_used(material: Material) -> None:
    assert names_of(Kind.CLOZE, material) == LEVELS
    used = {each.frame for level in material.cloze.values() for each in level.sets}
    assert used == set(FRAMES)


def test_no_item_breaks_a_rule(items: list[Item], material: Material) -> None:
    assert len(items) > 1_400
    for item in items:
        assert broken(item, material, CLOZE_RULES) == ()


def test_every_word_of_a_contrast_has_its_item(material: Material) -> None:
    """Also a contrast of four words, which few items ask for."""
    for level in material.cloze.values():
        for group, words in level.contrasts.items():
            target = Target(kind=Kind.CLOZE, name=level.key, group=group)
            made = make_items([target] * len(words), options=4, material=material, rng=Random(5))
            assert sorted(right_label(item, material) for item in made) == sorted(words)


def test_the_right_word_gives_back_the_sentence(items: list[Item]) -> None:
    for item in items:
        assert item.answer is not None
        assert filled(item, item.answer) == item.restated.text


def test_every_foil_says_in_a_known_word_why_it_is_wrong(items: list[Item]) -> None:
    """Source of the seven words: the trade's own rules for items of this kind."""
    seen = {
        (option.foil, option.why_wrong)
        for item in items
        for option in item.options
        if option.foil is not None
    }
    assert seen == {
        (Foil.WORD, why)
        for why in (
            *("agreement", "tense", "case", "false_place", "false_role", "logic", "collocation"),
        )
    }


def test_as_many_words_are_offered_as_were_asked_for_if_there_are_so_many(
    material: Material,
) -> None:
    for options in (2, 3, 4):
        for item in make(material, Kind.CLOZE, count=160, options=options):
            assert len(item.options) == min(options, len(item_words(item))) == item.effective_k
            assert item.effective_k <= 4


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


def test_the_bare_form_is_offered_at_its_three_levels_and_nowhere_else(
    items: list[Item], material: Material
) -> None:
    for item in items:
        bare = OMISSION in labels_of(item, material)
        assert bare == (item.level in OMISSION_LEVELS and OMISSION in item_words(item))


def test_the_gap_is_never_first_up_to_c6_and_the_sentence_short(items: list[Item]) -> None:
    firsts = set()
    for item in items:
        level = int(item.level[1:])
        first = item.sentence.startswith(GAP)
        firsts.add((level > 6, first))
        assert not first or level > 6
        assert item.sentence.count(GAP) == 1
        most = 8 if level <= 6 else 12
        assert all(len(filled(item, index).split()) <= most for index in range(len(item.options)))
    assert (True, True) in firsts


def test_what_decides_is_shown_and_said(items: list[Item]) -> None:
    shown = {item.level for item in items if item.context}
    assert shown == {"C5", "C6", "C7", "C11", "C12", "C14"}
    for item in items:
        assert all(len(line) <= 40 for line in item.context.split("\n"))
        assert item.spoken.phrases[0] == item.prompt
        if item.level == "C11":
            assert " ".join(item.spoken.phrases[1:]) == item.context
        elif item.level == "C12" and item.context:
            days = [line.split(" ")[0] for line in item.context.split("\n")]
            assert [phrase[:3] for phrase in item.spoken.phrases[1:]] == days
        elif item.context:
            assert " ".join(item.spoken.phrases[1:]) == item.context.replace("\n", " ")
        else:
            assert item.spoken.text == item.prompt


@pytest.mark.parametrize("names", [*((level,) for level in LEVELS), ("C3", "C4"), ()])
@pytest.mark.parametrize("count", [8, 60])
def test_no_word_is_right_three_times_running_and_all_come_out_even(
    material: Material, names: tuple[str, ...], count: int
) -> None:
    batch = make(material, Kind.CLOZE, *names, count=count, seed=count)
    assert answers_take_turns(batch) == ()
    assert answers_come_out_even(batch, material) == ()


@given(st.integers(0, 2**32), st.integers(1, 40), st.sampled_from(["in-on", "in-on-under"]))
@settings(max_examples=40, deadline=None)
def test_one_contrast_over_and_over_takes_turns_too(
    material: Material, seed: int, count: int, group: str
) -> None:
    target = Target(kind=Kind.CLOZE, name="C3", group=group)
    batch = make_items([target] * count, options=3, material=material, rng=Random(seed))
    assert answers_take_turns(batch) == ()
    assert answers_come_out_even(batch, material) == ()


def test_one_and_many_are_right_equally_often_even_with_one_item_a_contrast(
    material: Material,
) -> None:
    for seed in range(20):
        groups = ("is-are", "was-were", "has-have")
        batch = make(material, Kind.CLOZE, "C4", count=3, seed=seed, groups=groups)
        ones = sum(right_text(item) in ("is", "was", "has") for item in batch)
        assert ones in (1, 2)


def test_the_right_word_stands_in_each_place_equally_often(material: Material) -> None:
    for level in LEVELS:
        batch = make(material, Kind.CLOZE, level, count=60)
        first = sum(item.answer == 0 for item in batch)
        assert abs(2 * first - len(batch)) <= 1


def test_single_items_are_as_fair_as_a_coin(material: Material) -> None:
    """Exact binomial test of scipy."""
    target = Target(kind=Kind.CLOZE, name="C4", group="is-are")
    lone = [
        make_items([target], options=2, material=material, rng=Random(seed))[0]
        for seed in range(400)
    ]
    assert binomtest(sum(right_text(item) == "is" for item in lone), 400).pvalue > SURE
    assert binomtest(sum(item.answer == 0 for item in lone), 400).pvalue > SURE
    together = sum((right_text(item) == "is") == (item.answer == 0) for item in lone)
    assert binomtest(together, 400).pvalue > SURE


def test_two_options_are_given_from_a_contrast_of_three_by_turns(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C3", count=60, options=2, groups=("in-on-under",))
    pairs = Counter(tuple(sorted(option.text or "" for option in item.options)) for item in batch)
    assert set(pairs) == {("in", "on"), ("in", "under"), ("on", "under")}
    assert {item.effective_k for item in batch} == {2}
    batch = make(material, Kind.CLOZE, "C3", count=9, options=4, groups=("in-on-under",))
    assert {len(item.options) for item in batch} == {item.effective_k for item in batch} == {3}


def test_hardly_a_content_word_comes_twice_running(material: Material) -> None:
    """Boxes that are empty may follow each other, as nothing else decides there."""
    met = Counter[str]()
    pairs = 0
    for level in LEVELS:
        for before, after in pairwise(make(material, Kind.CLOZE, level, count=60)):
            met.update(set(before.words) & set(after.words) - {"empty"})
            pairs += 1
    assert sum(met.values()) <= pairs * 0.01, met


def test_british_items_are_made_by_the_same_rules() -> None:
    british = load(CONTENT, locale="en-GB")
    for item in make(british, Kind.CLOZE, count=160, options=3):
        assert broken(item, british, CLOZE_RULES) == ()


def test_no_sentence_is_a_saying(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C4", count=200, groups=("has-have",))
    assert not any("a ball" in item.restated.text for item in batch)
    assert len({item.words[1] for item in batch}) > 3


def test_the_same_seed_makes_the_same_items(material: Material) -> None:
    first = make(material, Kind.CLOZE, count=160, options=3, seed=9)
    assert first == make(material, Kind.CLOZE, count=160, options=3, seed=9)
    assert len({item.id for item in first}) == len(first)


def test_no_help_below_the_top_says_an_offered_word_more_than_the_screen_does(
    items: list[Item],
) -> None:
    """Not even by the way: a hint with "is" in it would say one of "is" and "are".

    What every item says alike ("Listen to the sentence.") tells nothing of this one.
    """
    for item in items:
        shown = Counter(words_of(f"{item.sentence} {item.context}"))
        offered = {words_of(option.text or "")[0] for option in item.options}
        for cue in item.cues[:-1]:
            for text in own_words(cue):
                said = Counter(words_of(text))
                assert all(said[word] <= shown[word] for word in offered), (item.sentence, cue)
        assert filled(item, item.answer or 0) in item.cues[-1].text


def own_words(cue: Cue) -> tuple[str, ...]:
    """What a cue says of its very item."""
    spoken = cue.spoken.text if cue.spoken else ""
    match cue.kind:
        case CueKind.REPLAY:
            return (spoken,)
        case CueKind.FIRST_SOUND:
            start = cue.text.split("\n")[1]
            # "A" and "I" are no longer than how a word starts.
            return (start,) if len(start) > 1 and start.strip("_ ") != "a" else ()
        case CueKind.HINT:
            return (cue.text, spoken)
        case _:
            return ()


def words_of(text: str) -> list[str]:
    return re.findall("[a-z']+", text.lower())


def test_read_aloud_leaves_the_gap_silent_and_tells_the_context(items: list[Item]) -> None:
    for item in items:
        spoken = item.cues[0].spoken
        assert spoken is not None
        context = item.spoken.phrases[1:]
        before, after = item.sentence.split(GAP)
        silent = [part for part in (before.strip(), after.strip(" ,")) if part.strip(".")]
        said = spoken.text
        if item.sentence.endswith("?"):
            assert said == " ".join([*silent, *context])
        else:
            assert said == " ".join([*context, *silent])


def test_a_word_goes_away_only_where_more_than_two_are_offered(items: list[Item]) -> None:
    for item in items:
        levels = [cue.level for cue in item.cues]
        assert levels == ([1, 2, 3, 4, 5] if len(item.options) > 2 else [1, 2, 4, 5])
        assert all(
            item.options[gone].foil is Foil.WORD for cue in item.cues for gone in cue.removes
        )


def test_the_hint_is_that_of_the_frame(items: list[Item], material: Material) -> None:
    for item in items:
        (hint,) = [cue for cue in item.cues if cue.kind is CueKind.HINT]
        general, *details = hint.text.split("\n")
        assert general == material.cloze[item.level].set_of(item.target.group).hint
        if frame_of(item, material).name == "place":
            assert details[0].startswith("Where is the ")


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
        ("had", ["has"], "ha_"),
        ("walk", ["walked"], "w___"),
        ("a", ["the"], "a"),
    ],
)
def test_the_first_letters_tell_the_word_from_the_others(
    word: str, others: list[str], shown: str
) -> None:
    assert first_letters(word, others) == shown
