from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest, fisher_exact

from drills.core.items import CueKind, Foil, Item, ItemSet, Kind, Target
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Aspect, Meaning, Place, Relation, Tense
from drills.core.problems import BadInput
from drills.exercises import make_items
from drills.exercises.balance import runs
from drills.exercises.match import FAMILIES, NOT_SHOWN
from drills.exercises.match.rules import BATCH_RULES
from drills.exercises.match.truth import is_true_of
from drills.language import CONSTRUCTIONS, lengths, meanings_of
from drills.pictures import SMALL_UNREADABLE, Encoding, draw, why_not
from drills.pictures.contrast import share_that_differs
from tests.exercises.batches import ACTS, make, right_scene, scene_of, with_few_words
from tests.exercises.dealt import EVERY, SQUARES, act_shown, dealt, every_item, shown

SURE = 1e-4
"""A fair maker fails a check at this level once in ten thousand; seeds are fixed."""


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    """Every construction, each number of pictures."""
    return list(every_item(material))


@pytest.fixture(scope="module")
def lone_items(material: Material) -> list[Item]:
    """400 batches of one item, where nothing but chance can balance."""
    target = Target(kind=Kind.MATCH, name="full-passive", group="moving")
    return [
        make_items([target], options=2, material=material, rng=Random(seed))[0]
        for seed in range(400)
    ]


def test_every_construction_is_asked_or_is_said_why_not() -> None:
    assert {*FAMILIES, *NOT_SHOWN} == set(CONSTRUCTIONS)
    assert not set(FAMILIES) & set(NOT_SHOWN)


@pytest.mark.parametrize("name", NOT_SHOWN)
def test_what_is_said_not_to_be_shown_cannot_be_drawn(name: str, material: Material) -> None:
    form = ((Tense.PAST, Aspect.SIMPLE),)
    assert all(why_not(each) for each in meanings_of(name, material.lexicon, forms=form))


def test_the_sentence_is_true_of_the_right_picture_and_of_no_other(
    items: list[Item], material: Material
) -> None:
    for item in items:
        assert item.meaning is not None
        true = [
            is_true_of(item.meaning, item.construction, shown(item, index), material.lexicon)
            for index in range(len(item.options))
        ]
        assert [index for index, is_true in enumerate(true) if is_true] == [item.answer]
        right = item.as_json()["options"][item.answer or 0]
        assert (right["foil"], right["why_wrong"]) == (None, None)


def test_the_right_picture_shows_the_meaning_unless_somebody_is_left_out(
    items: list[Item],
) -> None:
    left_out = {"short-passive"} | {name for name in FAMILIES if "question" in name}
    for item in items:
        assert (right_scene(item).meaning == item.meaning) == (item.construction not in left_out)


# The table of the clinical brief: R reversal, V verb, N noun, X word-specific. Where three or four
# pictures need more foils than the table names, another verb or noun stands in.
FOILS = {
    "active": "RVN", "negation": "XN", "number": "XVN", "agreement": "XVN", "locative": "RXN",
    "subject-pronoun": "RXV", "pronoun-reference": "XRVN", "subject-question": "RNV",
    "subject-question-which": "RNV", "subject-cleft": "RVN", "subject-relative": "RNV",
    "dative": "RN", "short-passive": "RVN", "full-passive": "RVN", "object-question-who": "RNV",
    "object-question-which": "RNV", "before-in-order": "XVN", "after-in-order": "XVN",
    "before-reversed": "XVN", "after-reversed": "XVN", "comparative": "RN", "object-cleft": "RVN",
    "object-relative-right": "RNV", "object-relative-centre": "RNV",
}  # fmt: skip
LETTERS = {Foil.REVERSAL: "R", Foil.VERB: "V", Foil.NOUN: "N", Foil.WORD: "X"}


def test_each_construction_has_the_foils_of_the_table(items: list[Item]) -> None:
    seen: dict[str, set[str]] = {name: set() for name in EVERY}
    for item in items:
        seen[item.construction] |= {LETTERS[o.foil] for o in item.options if o.foil}
    assert seen == {name: set(letters) for name, letters in FOILS.items()}


@pytest.mark.parametrize("name", EVERY)
def test_two_pictures_are_the_right_one_and_its_twin(name: str, material: Material) -> None:
    """The first letter of the table; nothing but grammar tells the two apart."""
    for item in dealt(material, name, 2):
        (foil,) = [option.foil for option in item.options if option.foil]
        assert LETTERS[foil] == FOILS[name][0]
        assert item.effective_k == 2


def test_every_foil_says_why_it_is_wrong(items: list[Item]) -> None:
    reasons = {
        (option.foil, option.why_wrong)
        for item in items
        for option in item.options
        if option.foil is not None
    }
    assert reasons == {
        (Foil.REVERSAL, "false_role"),
        (Foil.REVERSAL, "false_place"),
        (Foil.VERB, "false_act"),
        (Foil.VERB, "false_state"),
        (Foil.NOUN, "false_noun"),
        (Foil.WORD, "false_place"),
        (Foil.WORD, "false_order"),
        (Foil.WORD, "false_referent"),
        (Foil.WORD, "false_gender"),
        (Foil.WORD, "negation"),
        (Foil.WORD, "agreement"),
    }


def test_no_two_pictures_look_the_same(items: list[Item]) -> None:
    for item in items:
        looks = [shown(item, index).drawn for index in range(len(item.options))]
        assert len(set(looks)) == len(looks)


def test_a_verb_foil_is_another_act_of_the_same_two(items: list[Item], material: Material) -> None:
    verbs = material.lexicon.verbs
    for item in items:
        for index, option in enumerate(item.options):
            if option.foil is Foil.VERB and hasattr(item.meaning, "verb"):
                if item.construction in ("number", "agreement"):
                    continue
                told, changed = act_shown(item, item.answer or 0), act_shown(item, index)
                assert {changed.doer, changed.done_to} == {told.doer, told.done_to}
                # Whoever chases also follows: acts of one group may both be true.
                assert verbs[changed.verb].group != verbs[told.verb].group


def test_chance_counts_the_pictures_that_the_content_words_leave(items: list[Item]) -> None:
    for item in items:
        square = item.construction in SQUARES and len(item.options) == 4
        assert item.effective_k == (4 if square else 2)


def test_sentences_are_about_equally_long(items: list[Item], material: Material) -> None:
    """Seven or eight words, the length of what needs no more; the brief asks for 7 to 11."""
    for item in items:
        assert item.meaning is not None
        assert len(item.sentence.split()) in (7, 8), item.sentence
        assert 7 in lengths(item.meaning, item.construction, material.lexicon) or len(
            item.sentence.split()
        ) == min(lengths(item.meaning, item.construction, material.lexicon))


@pytest.mark.parametrize("name", EVERY)
@pytest.mark.parametrize(("options", "lines", "least"), [(2, 15, 0.20), (4, 9, 0.15)])
def test_every_foil_can_be_told_from_the_right_picture_at_the_size_it_is_shown(
    name: str, options: int, lines: int, least: float, material: Material
) -> None:
    """All drawn together, in half blocks; the gates are those of the picture room."""
    for item in dealt(material, name, options)[:4]:
        scenes = [scene_of(item, index) for index in range(options)]
        cells = draw(scenes, columns=38, lines=lines, encoding=Encoding.HALVES)
        right = cells[item.answer or 0]
        apart = [share_that_differs(right, other) for other in cells if other is not right]
        assert min(apart) >= least, item.sentence


def test_things_that_trade_places_can_do_so(material: Material) -> None:
    nouns = material.lexicon.nouns
    relations = set()
    for item in make(material, Kind.MATCH, "locative", count=30):
        assert isinstance(item.meaning, Place)
        thing, landmark = nouns[item.meaning.thing], nouns[item.meaning.landmark]
        relations.add(item.meaning.relation)
        assert thing.size == landmark.size
        if item.meaning.relation is Relation.IN:
            assert thing.container
            assert landmark.container
    assert relations == set(Relation) - {Relation.NEXT_TO}


@pytest.mark.parametrize("options", [2, 3, 4])
@pytest.mark.parametrize("count", [6, 20, 73])
def test_a_batch_puts_the_answer_in_each_place_equally_often(
    material: Material, options: int, count: int
) -> None:
    for seed in range(2):
        batch = make(material, Kind.MATCH, *ACTS, count=count, options=options, seed=seed)
        places = Counter(item.answer for item in batch)
        shares = [places[place] for place in range(options)]
        assert max(shares) - min(shares) <= 1
        assert runs([item.answer for item in batch], longest=3) == []
        for rule in BATCH_RULES:
            assert rule(batch) == ()


@pytest.mark.parametrize("options", [2, 3, 4])
@pytest.mark.parametrize("name", EVERY)
def test_a_batch_of_any_construction_is_balanced(
    name: str, options: int, material: Material
) -> None:
    batch = dealt(material, name, options)
    for rule in BATCH_RULES:
        assert rule(batch) == ()


@pytest.mark.parametrize("options", [2, 4])
def test_a_batch_puts_the_doer_on_each_side_equally_often_wherever_the_answer_is(
    material: Material, options: int
) -> None:
    for seed in range(3):
        batch = make(material, Kind.MATCH, *ACTS, count=64, options=options, seed=seed)
        sides = Counter(right_scene(item).side for item in batch)
        assert abs(sides[Side.LEFT] - sides[Side.RIGHT]) <= 1
        for name in ACTS:
            cells = Counter(
                (item.answer, right_scene(item).side) for item in batch if item.construction == name
            )
            for place in range(options):
                assert abs(cells[place, Side.LEFT] - cells[place, Side.RIGHT]) <= 1


def test_half_of_the_reversals_keep_the_places_of_the_two(material: Material) -> None:
    for seed in range(3):
        batch = make(material, Kind.MATCH, *ACTS, count=64, seed=seed)
        kept = sum(scene_of(item, 0).side is not scene_of(item, 1).side for item in batch)
        assert abs(kept - 32) <= 1


def test_single_items_are_as_fair_as_a_coin(lone_items: list[Item]) -> None:
    """Exact binomial test of scipy, and Fisher's exact test that side and answer are apart."""
    count = len(lone_items)
    second = sum(item.answer == 1 for item in lone_items)
    left = sum(right_scene(item).side is Side.LEFT for item in lone_items)
    kept = sum(scene_of(item, 0).side is not scene_of(item, 1).side for item in lone_items)
    for successes in (second, left, kept):
        assert binomtest(successes, count, 0.5).pvalue > SURE
    table = [
        [
            sum(item.answer == place and right_scene(item).side is side for item in lone_items)
            for side in Side
        ]
        for place in (0, 1)
    ]
    assert fisher_exact(table).pvalue > SURE


def _parts(meaning: Meaning) -> tuple[str, str]:
    """The two that trade parts."""
    parts = {
        "Place": ("thing", "landmark"),
        "Comparison": ("more", "less"),
        "Transfer": ("doer", "receiver"),
        "Order": ("earlier", "later"),
        "Report": ("speaker", "act"),
    }.get(type(meaning).__name__, ("doer", "done_to"))
    act = getattr(meaning, "act", meaning)
    if parts == ("speaker", "act"):
        return getattr(meaning, "speaker", ""), act.doer
    return getattr(act, parts[0]), getattr(act, parts[1])


NO_PARTS = ("number", "agreement")


@pytest.mark.parametrize("name", [name for name in EVERY if name not in NO_PARTS])
def test_each_word_plays_either_part_equally_often(name: str, material: Material) -> None:
    lead: Counter[str] = Counter()
    for item in dealt(material, name, 2, count=24, seed=3):
        first, second = _parts(right_scene(item).meaning)
        lead[first] += 1
        lead[second] -= 1
    assert max(map(abs, lead.values())) <= 1


@pytest.mark.parametrize("name", NO_PARTS)
def test_one_and_two_come_equally_often(name: str, material: Material) -> None:
    counts = Counter(getattr(item.meaning, "count", 0) for item in dealt(material, name, 2))
    assert counts == {1: 6, 2: 6}


def test_him_and_himself_come_equally_often(material: Material) -> None:
    own = Counter(
        getattr(item.meaning, "is_reflexive", None)
        for item in dealt(material, "pronoun-reference", 2)
    )
    assert own == {True: 6, False: 6}


@pytest.mark.parametrize("names", [ACTS, ("full-passive",), ("locative",), ("active", "locative")])
def test_no_verb_and_no_noun_comes_twice_running(
    material: Material, names: tuple[str, ...]
) -> None:
    for seed in range(3):
        batch = make(material, Kind.MATCH, *names, count=60, seed=seed)
        for before, after in pairwise(batch):
            assert not set(before.words) & set(after.words)
            if isinstance(before.meaning, Place) and isinstance(after.meaning, Place):
                assert before.meaning.relation is not after.meaning.relation


def test_a_batch_as_long_as_a_session_shows_no_picture_twice(material: Material) -> None:
    for seed in range(4):
        batch = make(material, Kind.MATCH, *ACTS, count=40, seed=seed)
        assert len({item.meaning for item in batch}) == len(batch)


@pytest.mark.parametrize("options", [3, 4])
def test_small_pictures_show_no_verb_that_is_not_made_out_in_them(
    material: Material, options: int
) -> None:
    seen = Counter(
        value
        for name in EVERY
        for item in dealt(material, name, options)
        for index in range(options)
        for value in [getattr(getattr(shown(item, index), "act", shown(item, index)), "verb", "")]
    )
    assert seen
    assert not set(seen) & set(SMALL_UNREADABLE)


@given(st.integers(0, 2**32), st.integers(1, 12), st.integers(2, 4), st.sampled_from(EVERY))
@settings(max_examples=12, deadline=None)
def test_the_same_seed_makes_the_same_items(
    material: Material, seed: int, count: int, options: int, name: str
) -> None:
    one = make(material, Kind.MATCH, name, count=count, options=options, seed=seed)
    assert one == make(material, Kind.MATCH, name, count=count, options=options, seed=seed)


def test_levels_of_help_keep_their_numbers(items: list[Item]) -> None:
    for item in items:
        levels = [cue.level for cue in item.cues]
        more = len(item.options) > 2
        assert levels == ([1, 2, 3, 4, 5, 6, 7] if more else [1, 2, 3, 4, 6, 7])
        assert item.cues[-1].kind is CueKind.ANSWER
        assert item.cues[-1].text.endswith(f"press {(item.answer or 0) + 1}.")


def test_help_asks_and_tells_in_few_plain_words(items: list[Item]) -> None:
    for item in items:
        assert len(item.prompt.split()) <= 8
        for cue in item.cues:
            if cue.kind in (CueKind.ROLE_QUESTION, CueKind.NAME_DOER, CueKind.HINT):
                assert len(cue.text.split()) <= 8, cue.text
                assert cue.text[0].isupper()
                assert cue.text[-1] in ".?"


# What the help says of one item of each family, written by hand.
HELP = {
    "active": ("Who was ", "The "),
    "negation": ("Is the ", "The "),
    "subject-question": ("Who was being ", "The "),
    "object-question-which": ("Who was ", "The "),
    "short-passive": ("Who was being ", "The "),
    "locative": ("Where is the ", "The "),
    "number": ("How many are there?", "There "),
    "agreement": ("How many are there?", "There "),
    "pronoun-reference": ("Who was being ", "The "),
    "before-reversed": ("What did the ", "First the "),
    "comparative": ("Wh", "The "),
    "dative": ("Who was ", "The "),
}


@pytest.mark.parametrize("name", HELP)
def test_help_is_of_the_meaning(name: str, material: Material) -> None:
    asks, tells = HELP[name]
    for item in dealt(material, name, 2):
        texts = {cue.level: cue.text for cue in item.cues}
        assert texts[4].startswith(asks)
        assert texts[6].startswith(tells)


def test_help_with_a_report_says_neither_him_nor_himself(material: Material) -> None:
    """ "The king washed." would say himself, "The king washed someone." would say him."""
    for item in dealt(material, "pronoun-reference", 2):
        (named,) = [cue.text for cue in item.cues if cue.kind is CueKind.NAME_DOER]
        assert named.endswith(" did it.")


def test_a_set_is_passed_on(material: Material) -> None:
    target = Target(kind=Kind.MATCH, name="active", group="moving")
    (item,) = make_items(
        [target], options=2, material=material, rng=Random(1), item_set=ItemSet.PROBE
    )
    assert item.item_set is ItemSet.PROBE
    assert item.content_hash == material.content_hash


def test_too_few_words_for_the_pictures_are_told(material: Material) -> None:
    few = with_few_words(material, "horse", "cow")
    lexicon = replace(few.lexicon, verbs={"chase": few.lexicon.verbs["chase"]})
    few = replace(few, lexicon=lexicon)
    assert len(make(few, Kind.MATCH, "active", count=5, groups=("going",))) == 5
    with pytest.raises(BadInput, match="too few words for 4 pictures"):
        make(few, Kind.MATCH, "active", count=5, options=4, groups=("going",))


def test_a_negated_sentence_has_no_foil_that_makes_it_true(material: Material) -> None:
    """The same two at another act do not lift either."""
    for item in dealt(material, "negation", 4):
        for index, option in enumerate(item.options):
            if option.foil is Foil.NOUN:
                told = act_shown(item, item.answer or 0)
                other = act_shown(item, index)
                assert {other.doer, other.done_to} != {told.doer, told.done_to}
                assert isinstance(item.meaning, Act)
