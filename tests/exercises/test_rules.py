"""Each of the ten rules of a cloze finds the violation that is planted for it, and by itself."""

from __future__ import annotations

import re
from dataclasses import replace
from random import Random

import pytest

from drills.core.clauses import Clause, Party, Tie, Told
from drills.core.closed_words import TOO_NEAR
from drills.core.items import Foil, Item, Kind, Option, Target
from drills.core.material import ClozeLevel, ClozeSet, Material
from drills.core.meanings import Place, Relation, Scene, State
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput
from drills.exercises import check_block, make_items
from drills.exercises.choices import Rule, broken, chance_counted, reasons_given
from drills.exercises.contrasts import contrast_faults
from drills.exercises.frames.frame import Anchor, Dealt
from drills.exercises.frames.table import FRAMES
from drills.exercises.gaps import GAP, dealt_of, frame_of
from drills.exercises.rules import (
    CLOZE_RULES,
    anchored,
    answers_come_out_even,
    answers_take_turns,
    article_is_forced,
    foils_are_wrong,
    guesses_counted,
    none_too_near,
    nothing_hides,
    omission_offered,
    one_closed_class,
    one_gap,
    one_locale,
    says_its_meaning,
    sounds_fit,
)
from drills.language.told import lay
from tests.exercises.batches import make


def one(material: Material, level: str, group: str, *, seed: int = 1, options: int = 2) -> Item:
    target = Target(kind=Kind.CLOZE, name=level, group=group)
    (item,) = make_items([target], options=options, material=material, rng=Random(seed))
    return item


def with_right(material: Material, level: str, group: str, word: str) -> Item:
    """An item of the contrast whose right text is `word`."""
    for seed in range(60):
        item = one(material, level, group, seed=seed)
        if item.options[item.answer or 0].text == word:
            return item
    raise AssertionError(word)


@pytest.fixture(scope="module")
def place_item(material: Material) -> Item:
    return one(material, "C3", "in-on")


@pytest.fixture(scope="module")
def number_item(material: Material) -> Item:
    return one(material, "C4", "is-are")


@pytest.fixture(scope="module")
def past_item(material: Material) -> Item:
    return one(material, "C8", "bare-ed")


def with_two(item: Item, *texts: str) -> Item:
    """The item with `texts` on its two options."""
    options = tuple(
        replace(option, text=text) for option, text in zip(item.options, texts, strict=True)
    )
    return replace(item, options=options)


def with_foil(item: Item, text: str, why: str | None = None) -> Item:
    """The item with its foils exchanged for `text`."""
    options = tuple(
        option
        if option.foil is None
        else replace(option, text=text, why_wrong=why or option.why_wrong)
        for option in item.options
    )
    return replace(item, options=options)


def caught(rule: Rule, item: Item, material: Material) -> bool:
    problems = rule(item, material)
    for problem in problems:
        assert problem.where == f"item of {item.target}"
        assert problem.message.endswith(".")
    return bool(problems)


def only(rule: Rule, item: Item, material: Material) -> bool:
    """Whether the rule finds something, and no other of the ten does."""
    return [each for each in CLOZE_RULES if each(item, material)] == [rule]


def test_a_made_item_breaks_no_rule(
    place_item: Item, number_item: Item, past_item: Item, material: Material
) -> None:
    for item in (place_item, number_item, past_item):
        assert broken(item, material, CLOZE_RULES) == ()


# Rule 1


@pytest.mark.parametrize("foil", ["inside", "the", "On", "are"])
def test_rule_1_options_of_two_classes_or_spellings_are_refused(
    place_item: Item, material: Material, foil: str
) -> None:
    assert caught(one_closed_class, with_foil(place_item, foil), material)


@pytest.mark.parametrize("foil", ["were", "has", "have", "am"])
def test_rule_1_an_auxiliary_of_another_tense_or_verb_is_refused(
    number_item: Item, material: Material, foil: str
) -> None:
    assert caught(one_closed_class, with_foil(number_item, foil), material)


def test_rule_1_an_article_that_does_not_suit_the_next_sound_is_refused(
    material: Material,
) -> None:
    item = with_right(material, "C5", "a-the", "the")
    assert not caught(sounds_fit, item, material)
    assert caught(sounds_fit, with_foil(item, "an"), material)


# Rule 2


def test_rule_2_a_foil_without_a_reason_is_refused(place_item: Item, material: Material) -> None:
    bare = tuple(replace(option, why_wrong=None) for option in place_item.options)
    assert caught(reasons_given, replace(place_item, options=bare), material)
    odd = with_foil(place_item, "on", "because")
    assert caught(reasons_given, odd, material)


@pytest.mark.parametrize(
    ("level", "group"),
    [("C3", "in-on"), ("C4", "is-are"), ("C6", "he-him"), ("C8", "bare-ed"), ("C13", "for-to")],
)
def test_rule_2_a_foil_that_is_right_is_refused(level: str, group: str, material: Material) -> None:
    item = one(material, level, group)
    right = item.options[item.answer or 0].text or ""
    assert caught(foils_are_wrong, with_foil(item, right), material)


def test_rule_2_a_foil_that_gives_the_wrong_reason_is_refused(
    place_item: Item, number_item: Item, material: Material
) -> None:
    for item, why in ((place_item, "agreement"), (number_item, "false_place")):
        foil = next(option.text or "" for option in item.options if option.foil)
        assert only(foils_are_wrong, with_foil(item, foil, why), material)


def test_rule_2_a_right_word_that_is_wrong_is_refused(
    number_item: Item, material: Material
) -> None:
    assert isinstance(number_item.meaning, State)
    other = replace(number_item.meaning, count=2 if number_item.meaning.count == 1 else 1)
    assert caught(foils_are_wrong, replace(number_item, meaning=other), material)


def test_rule_2_a_sentence_that_says_something_else_is_refused(
    number_item: Item, past_item: Item, material: Material
) -> None:
    for item in (number_item, past_item):
        other = item.sentence.replace("the ", "a ", 1).replace("One", "Two").replace("Two", "Six")
        if other == item.sentence:
            other = f"Then {item.sentence}"
        assert caught(says_its_meaning, replace(item, sentence=other), material)


@pytest.mark.parametrize("foil", ["of", "about", "with", "to"])
def test_rule_2_a_foil_that_can_go_with_the_noun_before_it_is_refused(
    foil: str, material: Material
) -> None:
    """ "The nurse hides the brush of the dancer": whose brush it is."""
    group = next(
        group
        for group, words in material.cloze["C13"].contrasts.items()
        if "from" in words and "to" in words and len(words) == 2
    )
    item = with_right(material, "C13", group, "from")
    assert item.told is not None
    clause = replace(
        item.told.clause,
        verb="hide",
        state="",
        object=Party(noun="brush"),
        ties=(Tie(word="from", party=Party(noun="dancer")),),
    )
    dealt = Dealt(told=replace(item.told, clause=clause))
    frame = frame_of(item, material)
    assert frame.why_wrong(foil, dealt, material.cloze_words) is None
    assert caught(foils_are_wrong, replace(item, told=dealt.told), material)


@pytest.mark.parametrize(
    ("group", "told"),
    [
        ("because-but", "The nurse eats because she is hungry."),
        ("if-but", "The nurse will eat if she is hungry."),
        ("because-so", "The nurse eats because she is hungry."),
    ],
)
def test_rule_2_and_3_two_clauses_alone_do_not_fix_how_they_go_on(
    group: str, told: str, material: Material
) -> None:
    """ "She eats but she is hungry" can be said, unless more is told."""
    item = with_right(material, "C7", group, group.partition("-")[0])
    assert item.told is not None
    assert item.told.second is not None
    bare = replace(
        item.told,
        clause=replace(item.told.clause, subject=Party(noun="nurse")),
        second=replace(item.told.second, subject=Party(noun="nurse", is_pronoun=True), only=False),
        before=(),
    )
    lexicon = material.cloze_words.lexicon
    assert lay(bare, lexicon).sentence.text.split()[0] == told.partition(" ")[0]
    assert caught(foils_are_wrong, replace(item, told=bare), material)
    assert caught(
        anchored, replace(item, told=bare, sentence=f"The nurse eats {GAP} so."), material
    )


def test_rule_2_where_is_no_foil_after_a_thing_that_is_worked_on(material: Material) -> None:
    """ "The ladder where the painter paints is big" can be said."""
    item = with_right(material, "C15", "who-which", "which")
    frame = frame_of(item, material)
    assert frame.why_wrong("who", dealt_of(item), material.cloze_words) is not None
    assert frame.why_wrong("where", dealt_of(item), material.cloze_words) is None


def test_rule_2_by_is_no_foil_with_a_tool_where_nobody_does_it(material: Material) -> None:
    item = with_right(material, "C14", "by-with", "with")
    assert item.told is not None
    assert " by the " in item.sentence
    alone = replace(item.told.clause, ties=item.told.clause.ties[:1])
    planted = replace(item, told=replace(item.told, clause=alone))
    assert not caught(foils_are_wrong, item, material)
    assert caught(foils_are_wrong, planted, material)


# Rule 3


@pytest.mark.parametrize("when", ["Now", "Every day", "Then"])
def test_rule_3_a_time_that_is_said_of_the_past_too_fixes_no_tense(
    when: str, material: Material
) -> None:
    item = with_right(material, "C4", "is-was", "is")
    assert item.sentence.startswith("Right now ")
    planted = replace(item, sentence=item.sentence.replace("Right now", when))
    assert caught(anchored, planted, material)


@pytest.mark.parametrize(("level", "group"), [("C5", "these-those"), ("C5", "this-that")])
def test_rule_3_near_is_fixed_by_what_is_not_meant(
    level: str, group: str, material: Material
) -> None:
    """ "Those shoes here with me" can be said."""
    item = one(material, level, group)
    start = item.sentence.partition(",")[0]
    assert not caught(anchored, item, material)
    assert caught(anchored, replace(item, sentence=f"{start} with me."), material)


def test_rule_3_here_is_fixed_by_where_the_speaker_is(material: Material) -> None:
    item = one(material, "C5", "here-there")
    assert not caught(anchored, item, material)
    assert caught(anchored, replace(item, context=""), material)


def without(item: Item, anchor: Anchor) -> Item:
    """The item with what anchors it taken off the screen."""
    sentence = item.sentence
    match anchor:
        case Anchor.PICTURE:
            return replace(item, picture=None)
        case Anchor.CONTEXT:
            return replace(item, context="")
        case Anchor.NUMERAL:
            for numeral in ("one", "two", "three"):
                sentence = sentence.replace(f"{numeral} ", "the ")
                sentence = sentence.replace(f"{numeral.capitalize()} ", "The ")
        case Anchor.TIME_WORD:
            sentence = re.sub(r"^\w+ (week |day |now )?", "", sentence)
        case Anchor.WORD_BEFORE:
            sentence = GAP + sentence.split(GAP)[1]
        case Anchor.WORD_AFTER | Anchor.NOUN_FORM | Anchor.OWN | Anchor.TIME_NOUN:
            sentence = f"{sentence.split(GAP)[0]}{GAP}."
        case Anchor.WORD_ORDER:
            sentence = f"{GAP}."
        case Anchor.PAIR_WORD:
            sentence = sentence.split(maxsplit=1)[1].replace("only ", "")
        case Anchor.PLACE_WORD:
            sentence = re.sub("far away|with me|t?here, not", "", sentence)
        case Anchor.HEAD:
            sentence = f"The nurse {GAP} the king."
    return replace(item, sentence=sentence)


@pytest.mark.parametrize("frame", list(FRAMES))
def test_rule_3_what_fixes_the_word_must_be_on_the_screen(frame: str, material: Material) -> None:
    """Of every frame, for every anchor that its items of each word rest on."""
    level, group = next(
        (level.key, group)
        for level in material.cloze.values()
        for each in level.sets
        if each.frame == frame
        for group in each.contrasts
    )
    tried = set()
    for seed in range(8):
        item = one(material, level, group, seed=seed)
        assert not caught(anchored, item, material)
        demands = frame_of(item, material).demands(dealt_of(item), material.cloze_words)
        for anchor in {demand.anchor for demand in demands}:
            tried.add(anchor)
            wrecked = without(item, anchor)
            assert caught(anchored, wrecked, material), (anchor, wrecked.sentence)
    assert tried


def test_rule_3_a_picture_of_something_else_is_refused(
    place_item: Item, material: Material
) -> None:
    assert isinstance(place_item.meaning, Place)
    elsewhere = replace(place_item.meaning, relation=Relation.UNDER)
    assert only(anchored, replace(place_item, picture=Scene(meaning=elsewhere)), material)


# Rule 4


@pytest.mark.parametrize("pair", TOO_NEAR)
def test_rule_4_pairs_that_can_both_be_right_are_refused_either_way_round(
    pair: tuple[str, str], place_item: Item, material: Material
) -> None:
    for words in (pair, pair[::-1]):
        options = tuple(
            replace(option, text=text)
            for option, text in zip(place_item.options, words, strict=True)
        )
        assert caught(none_too_near, replace(place_item, options=options), material)


@pytest.mark.parametrize("some", ["some", "any"])
@pytest.mark.parametrize("other", ["every", "each", "another"])
def test_rule_4_some_or_any_is_never_offered_with_what_goes_before_one(
    some: str, other: str, material: Material
) -> None:
    """ "The cyclist pulls some boat" can be said of one that is not named."""
    item = one(material, "C5", "every-all")
    assert caught(none_too_near, with_two(item, some, other), material)
    of = material.cloze["C5"].set_of("every-all")
    assert contrast_faults("here", (some, other), of, material.cloze_words)


@pytest.mark.parametrize("group", ["its-their", "her-their", "him-them", "his-their"])
def test_rule_4_their_is_never_offered_for_the_things_of_one(
    group: str, material: Material
) -> None:
    """ "The cow has their own pillow" is said of one whose sex is not told."""
    words = tuple(group.split("-"))
    item = one(material, "C6", "my-its")
    assert caught(none_too_near, with_two(item, *words), material)
    of = material.cloze["C6"].set_of("my-its")
    assert contrast_faults("here", words, of, material.cloze_words)


def test_rule_4_has_every_pair_that_the_trade_calls_ambiguous() -> None:
    """Source of these nine: the trade's own rules for items of this kind."""
    assert {
        ("in", "inside"),
        ("on", "onto"),
        ("under", "below"),
        ("near", "next to"),
        ("between", "among"),
        ("who", "that"),
        ("may", "can"),
        ("will", "is going to"),
        ("since", "because"),
    } <= set(TOO_NEAR)


@pytest.mark.parametrize(
    ("singular", "plural"),
    [("sheep", "sheep"), ("team", "teams"), ("family", "families"), ("bread", "breads")],
)
def test_rule_4_a_noun_that_hides_its_number_is_refused_and_never_chosen(
    material: Material, number_item: Item, singular: str, plural: str
) -> None:
    nouns = dict(material.lexicon.nouns)
    nurse = replace(nouns["nurse"], key="hidden", singular=singular, plural=plural)
    planted = with_nouns(material, {**nouns, "hidden": nurse})
    assert isinstance(number_item.meaning, State)
    meaning = replace(number_item.meaning, subject="hidden")
    assert caught(nothing_hides, replace(number_item, meaning=meaning), planted)
    made = make(planted, Kind.CLOZE, "C2", "C4", "C10", count=90)
    assert all(singular not in item.words for item in made)


def with_nouns(material: Material, nouns: dict[str, object]) -> Material:
    lexicon = replace(material.lexicon, nouns=nouns)
    whole = replace(
        material.cloze_words.lexicon, nouns={**material.cloze_words.lexicon.nouns, **nouns}
    )
    words = replace(material.cloze_words, lexicon=whole)
    return replace(material, lexicon=lexicon, cloze_words=words)


def test_rule_4_a_verb_of_one_form_is_refused(past_item: Item, material: Material) -> None:
    clause = Clause(subject=Party(noun="nurse"), verb="cut", object=Party(noun="cake"))
    assert caught(nothing_hides, replace(past_item, told=Told(clause=clause)), material)


def test_rule_4_a_noun_that_is_said_otherwise_abroad_is_refused(
    past_item: Item, material: Material
) -> None:
    nouns = dict(material.lexicon.nouns)
    nouns["weekend"] = replace(nouns["nurse"], key="w", singular="weekend", plural="weekends")
    clause = Clause(subject=Party(noun="weekend"), verb="walk")
    planted = with_nouns(material, nouns)
    assert caught(nothing_hides, replace(past_item, told=Told(clause=clause)), planted)


# Rule 5


def test_rule_5_the_stands_against_a_only_where_a_cannot_be(material: Material) -> None:
    item = with_right(material, "C5", "a-an", "a")
    assert not caught(article_is_forced, item, material)
    assert caught(article_is_forced, with_foil(item, "the"), material)


# Rule 6


@pytest.mark.parametrize(
    "sentence",
    [
        "____ cup is in the box.",
        "The cup ____ in ____ box.",
        "The cup is in the box.",
        "The cup on the table is ____ the old box.",
    ],
)
def test_rule_6_a_gap_that_is_first_double_missing_or_in_a_long_sentence_is_refused(
    place_item: Item, material: Material, sentence: str
) -> None:
    assert caught(one_gap, replace(place_item, sentence=sentence), material)


def test_rule_6_from_c7_a_gap_may_be_first_and_a_sentence_longer(material: Material) -> None:
    item = one(material, "C11", "who-what")
    assert item.sentence.startswith(GAP)
    assert not caught(one_gap, item, material)
    long = f"{GAP} " + "does " * 12 + "?"
    assert caught(one_gap, replace(item, sentence=long), material)


def test_rule_6_runs_and_shares_that_are_off_are_found(material: Material) -> None:
    batch = make(material, Kind.CLOZE, "C4", count=12, groups=("is-are",))
    by_word = sorted(batch, key=lambda item: item.restated.text.split()[2])
    assert answers_take_turns(batch) == answers_come_out_even(batch, material) == ()
    assert answers_take_turns(by_word)
    assert answers_come_out_even(by_word[:6], material)


# Rule 7


def test_rule_7_options_that_are_not_counted_as_chances_are_refused(
    place_item: Item, material: Material
) -> None:
    assert caught(guesses_counted, replace(place_item, effective_k=3), material)
    assert caught(chance_counted, replace(place_item, effective_k=3), material)
    assert caught(guesses_counted, replace(place_item, options=place_item.options[:1]), material)
    more = (*place_item.options, Option(text="under", foil=Foil.WORD, why_wrong="false_place"))
    assert caught(guesses_counted, replace(place_item, options=more, effective_k=3), material)


# Rule 9


@pytest.mark.parametrize("word", ["whilst", "grey", "mum"])
def test_rule_9_a_word_of_another_region_is_refused(
    place_item: Item, material: Material, word: str
) -> None:
    planted = replace(place_item, sentence=f"The {word} is ____ the box.")
    assert caught(one_locale, planted, material)
    assert caught(one_locale, replace(place_item, context=f"The {word} is here."), material)
    british = replace(material, lexicon=replace(material.lexicon, locale="en-GB"))
    assert not caught(one_locale, planted, british)


# Rule 10


def test_rule_10_the_bare_form_must_be_offered_at_c8_to_c10_and_only_there(
    material: Material,
) -> None:
    item = one(material, "C9", "bare-'s-s", options=3)
    assert not caught(omission_offered, item, material)
    bare = item.told
    assert bare is not None
    lexicon = material.cloze_words.lexicon
    form = frame_of(item, material).surface("bare", dealt_of(item), lexicon)
    kept = tuple(option for option in item.options if option.text != form)
    assert caught(omission_offered, replace(item, options=kept), material)
    early = replace(item, level="C2", target=replace(item.target, name="C2"))
    moved = {**material.cloze, "C2": replace(material.cloze["C9"], key="C2")}
    assert caught(omission_offered, early, replace(material, cloze=moved))


# Rules of every kind that offers options


def test_an_item_with_two_right_words_or_alike_ones_is_refused(
    place_item: Item, material: Material
) -> None:
    twice = tuple(Option(text=option.text) for option in place_item.options)
    alike = (*place_item.options, Option(text="in", foil=Foil.WORD, why_wrong="false_place"))
    for options in (twice, alike):
        assert broken(replace(place_item, options=options), material, CLOZE_RULES)


def test_a_ladder_that_gives_the_answer_away_is_refused(
    place_item: Item, material: Material
) -> None:
    assert place_item.answer is not None
    first, *rest = place_item.cues
    taken = (replace(first, removes=(place_item.answer,)), *rest)
    for cues in (taken, place_item.cues[::-1], place_item.cues[:-1], ()):
        assert broken(replace(place_item, cues=cues), material, CLOZE_RULES)


# Contrasts, before an item is made


def planted(material: Material, frame: str, *contrasts: tuple[str, ...]) -> Material:
    sets = ClozeSet(frame=frame, hint="x", contrasts={"-".join(each): each for each in contrasts})
    return replace(material, cloze={"C3": ClozeLevel(key="C3", name="x", sets=(sets,))})


def test_a_contrast_with_two_right_words_is_refused_before_an_item_is_made(
    material: Material,
) -> None:
    wrong = planted(material, "place", ("in", "inside"), ("on",))
    found = check_block(BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=4), wrong)
    assert [problem.where for problem in found] == ["cloze level C3, in-inside"] * 2 + [
        "cloze level C3, on"
    ]
    with pytest.raises(BadInput, match="both be right"):
        make(wrong, Kind.CLOZE, "C3", count=4)


@pytest.mark.parametrize(
    ("frame", "words", "said"),
    [
        ("nowhere", ("in", "on"), "there is no frame 'nowhere'."),
        ("place", ("in", "he"), "he is not of the closed class"),
        ("bound", ("for", "with"), "nothing asks for 'for' alone."),
    ],
)
def test_a_contrast_that_no_frame_can_ask_for_is_refused(
    frame: str, words: tuple[str, ...], said: str, material: Material
) -> None:
    wrong = planted(material, frame, words)
    found = check_block(BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=4), wrong)
    assert any(said in problem.message for problem in found), found


def test_the_shipped_contrasts_have_no_fault(material: Material) -> None:
    for level in material.cloze.values():
        for each in level.sets:
            for group, words in each.contrasts.items():
                assert contrast_faults(group, words, each, material.cloze_words) == ()
