from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.items import Foil, Item, Kind, Option
from drills.core.material import ClozeLevel, Material
from drills.core.meanings import Place, Relation, Scene, State
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput
from drills.exercises import check_block
from drills.exercises.choices import broken
from drills.exercises.rules import (
    CLOSED_CLASSES,
    CLOZE_RULES,
    Rule,
    anchored,
    answers_come_out_even,
    answers_take_turns,
    contrast_faults,
    foils_are_wrong,
    one_closed_class,
    one_gap,
)
from tests.exercises.batches import make


@pytest.fixture(scope="module")
def place_item(material: Material) -> Item:
    (item,) = make(material, Kind.CLOZE, "C3", count=1, groups=("in-on",))
    return item


@pytest.fixture(scope="module")
def number_item(material: Material) -> Item:
    (item,) = make(material, Kind.CLOZE, "C4", count=1, groups=("is-are",))
    return item


def with_foil(item: Item, text: str, why: str | None = None) -> Item:
    """The item with its foil exchanged for `text`."""
    options = tuple(
        option
        if option.foil is None
        else replace(option, text=text, why_wrong=why or option.why_wrong)
        for option in item.options
    )
    return replace(item, options=options)


def test_a_made_item_breaks_no_rule(
    place_item: Item, number_item: Item, material: Material
) -> None:
    assert broken(place_item, material, CLOZE_RULES) == ()
    assert broken(number_item, material, CLOZE_RULES) == ()


@pytest.mark.parametrize("foil", ["inside", "the", "On", "are"])
def test_options_of_two_classes_or_spellings_are_refused(
    place_item: Item, material: Material, foil: str
) -> None:
    assert one_closed_class(with_foil(place_item, foil), material)


@pytest.mark.parametrize("foil", ["were", "has", "have", "am"])
def test_an_auxiliary_of_another_tense_or_verb_is_refused(
    number_item: Item, material: Material, foil: str
) -> None:
    assert one_closed_class(with_foil(number_item, foil), material)


@pytest.mark.parametrize(
    "pair",
    [
        # Source of the first nine: the pairs that the trade's own rules call ambiguous.
        ("in", "inside"),
        ("on", "onto"),
        ("under", "below"),
        ("near", "next to"),
        ("between", "among"),
        ("who", "that"),
        ("may", "can"),
        ("will", "is going to"),
        ("since", "because"),
        ("behind", "next to"),
        ("next to", "in front of"),
    ],
)
def test_pairs_that_can_both_be_right_are_refused_either_way_round(pair: tuple[str, str]) -> None:
    for words in (pair, pair[::-1]):
        assert any("both be right" in problem.message for problem in contrast_faults("x", words))


def test_every_other_pair_of_one_class_is_let_through() -> None:
    for words in CLOSED_CLASSES:
        for one in words:
            for other in words:
                near = {one, other} in ({"next to", "behind"}, {"next to", "in front of"})
                assert bool(contrast_faults("x", (one, other))) == (one == other or near)


def test_a_foil_that_is_true_of_the_picture_is_refused(
    place_item: Item, number_item: Item, material: Material
) -> None:
    right = place_item.options[place_item.answer or 0].text or ""
    assert foils_are_wrong(with_foil(place_item, right), material)
    right = number_item.options[number_item.answer or 0].text or ""
    assert foils_are_wrong(with_foil(number_item, right), material)


def test_a_foil_that_gives_the_wrong_reason_is_refused(
    place_item: Item, number_item: Item, material: Material
) -> None:
    foil = next(option.text or "" for option in place_item.options if option.foil)
    assert foils_are_wrong(with_foil(place_item, foil, "agreement"), material)
    foil = next(option.text or "" for option in number_item.options if option.foil)
    assert foils_are_wrong(with_foil(number_item, foil, "false_place"), material)


def test_a_right_word_that_is_wrong_is_refused(number_item: Item, material: Material) -> None:
    assert isinstance(number_item.meaning, State)
    other = replace(number_item.meaning, count=2 if number_item.meaning.count == 1 else 1)
    assert foils_are_wrong(replace(number_item, meaning=other), material)


def test_a_place_word_with_no_picture_or_another_one_is_refused(
    place_item: Item, material: Material
) -> None:
    assert anchored(replace(place_item, picture=None), material)
    assert isinstance(place_item.meaning, Place)
    elsewhere = replace(place_item.meaning, relation=Relation.UNDER)
    assert anchored(replace(place_item, picture=Scene(meaning=elsewhere)), material)


def test_a_number_with_no_numeral_is_refused(number_item: Item, material: Material) -> None:
    bare = number_item.sentence.split(maxsplit=1)[1].capitalize()
    assert anchored(replace(number_item, sentence=bare), material)


@pytest.mark.parametrize(("singular", "plural"), [("sheep", "sheep"), ("team", "teams")])
def test_a_noun_that_hides_its_number_is_refused_and_never_chosen(
    material: Material, number_item: Item, singular: str, plural: str
) -> None:
    nouns = dict(material.lexicon.nouns)
    nurse = replace(nouns["nurse"], key="hidden", singular=singular, plural=plural)
    lexicon = replace(material.lexicon, nouns={**nouns, "hidden": nurse})
    planted = replace(material, lexicon=lexicon)
    assert isinstance(number_item.meaning, State)
    meaning = replace(number_item.meaning, subject="hidden")
    assert anchored(replace(number_item, meaning=meaning), planted)
    made = make(planted, Kind.CLOZE, "C4", count=60)
    assert all(isinstance(i.meaning, State) and i.meaning.subject != "hidden" for i in made)


@pytest.mark.parametrize(
    "sentence",
    [
        "____ cup is in the box.",
        "The cup ____ in ____ box.",
        "The cup is in the box.",
        "The cup on the table is ____ the old box.",
    ],
)
def test_a_gap_that_is_first_double_missing_or_in_a_long_sentence_is_refused(
    place_item: Item, material: Material, sentence: str
) -> None:
    assert one_gap(replace(place_item, sentence=sentence), material)


def test_an_item_without_reasons_or_with_two_right_words_is_refused(
    place_item: Item, material: Material
) -> None:
    bare = tuple(replace(option, why_wrong=None) for option in place_item.options)
    twice = tuple(Option(text=option.text) for option in place_item.options)
    alike = (*place_item.options, Option(text="in", foil=Foil.WORD, why_wrong="false_place"))
    for options in (bare, twice, alike, place_item.options[:1]):
        assert broken(replace(place_item, options=options), material, CLOZE_RULES)
    assert broken(replace(place_item, effective_k=3), material, CLOZE_RULES)


def test_a_ladder_that_gives_the_answer_away_is_refused(
    place_item: Item, material: Material
) -> None:
    assert place_item.answer is not None
    first, *rest = place_item.cues
    taken = (replace(first, removes=(place_item.answer,)), *rest)
    for cues in (taken, place_item.cues[::-1], place_item.cues[:-1], ()):
        assert broken(replace(place_item, cues=cues), material, CLOZE_RULES)


def test_runs_and_shares_that_are_off_are_found(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C4", count=12, groups=("is-are",))
    by_word = sorted(batch, key=lambda item: item.restated.text.split()[2])
    assert answers_take_turns(batch) == answers_come_out_even(batch) == ()
    assert answers_take_turns(by_word)
    assert answers_come_out_even(by_word[:6])


def test_a_contrast_with_two_right_words_is_refused_before_an_item_is_made(
    material: Material,
) -> None:
    level = ClozeLevel(
        key="C3", name="x", hint="x", contrasts={"in-inside": ("in", "inside"), "on": ("on",)}
    )
    planted = replace(material, cloze={"C3": level})
    found = check_block(BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=4), planted)
    assert [problem.where for problem in found] == ["cloze level C3, in-inside"] * 2 + [
        "cloze level C3, on"
    ]
    with pytest.raises(BadInput, match="both be right"):
        make(planted, Kind.CLOZE, "C3", count=4)


@pytest.mark.parametrize("rule", CLOZE_RULES)
def test_every_rule_says_where_and_what(rule: Rule, place_item: Item, material: Material) -> None:
    wreck = replace(
        place_item,
        sentence="____.",
        options=tuple(Option(text="in", foil=Foil.WORD) for _ in range(2)),
        cues=(),
        picture=None,
        effective_k=1,
    )
    near = tuple(Option(text=text) for text in ("in", "inside"))
    problems = rule(wreck, material) or rule(replace(place_item, options=near), material)
    assert problems
    for problem in problems:
        assert problem.where == "item of cloze/C3/in-on"
        assert problem.message.endswith(".")
