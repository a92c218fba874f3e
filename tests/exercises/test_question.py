"""Questions of every form: rules, balance, help, and faults that are planted."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from itertools import cycle, islice
from random import Random

import pytest
from scipy.stats import binomtest

from drills.core.items import CueKind, Foil, Item, Kind, Option, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput
from drills.core.question_words import NO, YES
from drills.exercises import check_block, make_items, names_of, targets_of
from drills.exercises.balance import runs
from drills.exercises.choices import broken
from drills.exercises.question.form import form_of
from drills.exercises.question.offering import FORMS
from drills.exercises.question.rules import (
    BATCH_RULES,
    QUESTION_RULES,
    guesses,
)

PRACTISED = (*FORMS, "kin:K6")
TEN_THOUSAND = 10_000


def questions(
    material: Material, *names: str, count: int, options: int = 2, seed: int = 1
) -> tuple[Item, ...]:
    """Items of these names in one batch, their targets in turn from any one on."""
    block = BlockPlan(kind=Kind.QUESTION, names=names, trials=count, options=options)
    targets = list(targets_of(block, material))
    rng = Random(seed)
    rng.shuffle(targets)
    return make_items(
        tuple(islice(cycle(targets), count)), options=options, material=material, rng=rng
    )


@pytest.fixture(scope="module")
def batches(material: Material) -> list[tuple[Item, ...]]:
    """10,000 items: each form alone, then all together, with two, three and four answers."""
    made = []
    seed = 0
    while sum(map(len, made)) < TEN_THOUSAND:
        seed += 1
        for options in (2, 3, 4):
            for name in PRACTISED:
                made.append(questions(material, name, count=40, options=options, seed=seed))
            made.append(questions(material, *PRACTISED, count=120, options=options, seed=seed))
    return made


@pytest.fixture(scope="module")
def items(batches: list[tuple[Item, ...]]) -> list[Item]:
    return [item for batch in batches for item in batch]


def test_ten_thousand_items_keep_every_rule(
    batches: list[tuple[Item, ...]], items: list[Item], material: Material
) -> None:
    assert len(items) >= TEN_THOUSAND
    assert {form_of(item.target) for item in items} == set(FORMS)
    faults = [str(fault) for item in items for fault in broken(item, material, QUESTION_RULES)]
    faults += [str(fault) for batch in batches for rule in BATCH_RULES for fault in rule(batch)]
    assert faults == []


def test_the_right_answer_stands_nowhere_for_long(batches: list[tuple[Item, ...]]) -> None:
    """In a batch of one form; several forms have their places apart from each other."""
    checked = 0
    for batch in batches:
        forms = {form_of(item.target) for item in batch}
        if len(forms) == 1 and forms != {"who-did-what+neither"}:
            checked += 1
            assert not runs([item.answer for item in batch], longest=3), batch[0].target
    assert checked > 100


def test_a_listener_who_guesses_among_what_the_words_leave_is_right_by_chance(
    items: list[Item],
) -> None:
    """Within the exact 99.99 % interval of scipy's binomial test, form by form."""
    rng = Random(3)
    for form in FORMS:
        right = of = 0
        for item in items:
            open_options = [
                index
                for index, option in enumerate(item.options)
                if item.picture is not None or option.foil in (None, Foil.REVERSAL, Foil.WORD)
            ]
            assert len(open_options) == item.effective_k
            if form_of(item.target) == form and item.effective_k == 2:
                right += rng.choice(open_options) == item.answer
                of += 1
        interval = binomtest(right, of).proportion_ci(0.9999, method="exact")
        assert interval.low < 1 / 2 < interval.high, form


def test_sentence_and_question_are_both_said(items: list[Item]) -> None:
    for item in items:
        told = item.sentence if item.level == "K1" else f"{item.sentence} {item.prompt}"
        assert item.spoken.text == told


def test_help_rises_and_ends_with_the_answer(items: list[Item]) -> None:
    for item in items:
        levels = [cue.level for cue in item.cues]
        assert levels[:2] == [1, 2]
        assert levels[-1] == 7
        assert item.cues[-1].text.endswith(f"Now press {(item.answer or 0) + 1}.")
        assert item.cues[-1].kind is CueKind.ANSWER
        # Text that a plan leaves to the ear needs a cue that shows it.
        assert any(cue.kind is CueKind.TEXT for cue in item.cues) == (item.level != "K1")
        removed = [cue.removes for cue in item.cues if cue.removes]
        if removed:
            assert len(item.options) > 2


def test_what_a_patient_reads_as_help_is_short(items: list[Item]) -> None:
    """At most eight words a sentence and six lines of forty letters. Common practice."""
    for item in items:
        for cue in item.cues:
            if cue.kind in (CueKind.TEXT, CueKind.ANSWER):
                continue
            lines = cue.text.split("\n")
            assert len(lines) <= 6
            for line in lines:
                assert len(line) <= 48, line
                for sentence in line.split(". "):
                    assert len(sentence.split()) <= 8, line


def test_it_is_said_once_more_in_plain_words(items: list[Item]) -> None:
    for item in items:
        assert item.restated.text.endswith(".")
        for words in (" by ", " that ", "before", "after"):
            assert words not in item.restated.text


def test_both_answers_to_yes_or_no_stand_in_one_order(items: list[Item]) -> None:
    for item in items:
        texts = [option.text for option in item.options]
        assert (YES in texts) == (NO in texts)
        assert YES not in texts or texts == [YES, NO]


def test_the_same_seed_makes_the_same_items(material: Material) -> None:
    one = questions(material, *PRACTISED, count=100, options=3, seed=5)
    assert one == questions(material, *PRACTISED, count=100, options=3, seed=5)
    assert one != questions(material, *PRACTISED, count=100, options=3, seed=6)


# What a plan may name


def test_a_form_spreads_over_its_parts_and_a_part_is_practised_alone(material: Material) -> None:
    def practised(*names: str) -> list[str]:
        block = BlockPlan(kind=Kind.QUESTION, names=names, trials=8)
        return list(dict.fromkeys(target.name for target in targets_of(block, material)))

    assert practised("kin") == ["kin:K1", "kin:K2", "kin:K3", "kin:K4", "kin:K5"]
    assert practised("kin", "kin:K6")[-1] == "kin:K6"
    assert practised("yes-no:full-passive") == ["yes-no:full-passive"]
    assert practised("full-passive") == ["who-did-what:full-passive"]
    assert practised("comparison") == ["comparison"]
    assert practised("before-after") == [
        "before-after:before-in-order",
        "before-after:after-in-order",
        "before-after:before-reversed",
        "before-after:after-reversed",
    ]
    assert len(practised("who-did-what")) == 7


def test_forms_of_acts_alone_have_verb_groups(material: Material) -> None:
    named = BlockPlan(kind=Kind.QUESTION, names=("kin",), trials=8, groups=("moving",))
    assert "group" in str(check_block(named, material)[0])
    both = replace(named, names=("kin", "yes-no:active"))
    assert [str(target) for target in targets_of(both, material)][-1] == (
        "question/yes-no:active/moving"
    )


def test_a_form_without_its_words_is_told(material: Material) -> None:
    lexicon = material.lexicon
    bare = replace(
        material, lexicon=replace(lexicon, kin={}, facts=replace(lexicon.facts, known=()))
    )
    for name in ("kin:K2", "kin:K4", "grid"):
        block = BlockPlan(kind=Kind.QUESTION, names=(name,), trials=8)
        assert "no words" in str(check_block(block, bare)[0])
    spread = BlockPlan(kind=Kind.QUESTION, names=("kin",), trials=8)
    assert [target.name for target in targets_of(spread, bare)] == ["kin:K1"]


def test_a_target_of_any_form_is_read_back(material: Material) -> None:
    for name in names_of(Kind.QUESTION, material):
        block = BlockPlan(kind=Kind.QUESTION, names=(name,), trials=8)
        for target in targets_of(block, material):
            assert Target.parse(str(target)) == target


# Planted faults


def flipped(item: Item) -> Item:
    """Another option is called right, and the right one wrong, in every place that says so."""
    foil = next(option for option in item.options if option.foil is not None)
    options = list(item.options)
    key = item.answer or 0
    other = options.index(foil)
    options[key] = replace(options[key], foil=foil.foil, why_wrong=foil.why_wrong)
    options[other] = Option(text=options[other].text)
    return replace(
        item, options=tuple(options), answer=other, effective_k=guesses(options, item.picture)
    )


def two_right(item: Item) -> Item:
    return replace(item, options=tuple(Option(text=option.text) for option in item.options))


def twice_the_same(item: Item) -> Item:
    first, second, *rest = item.options
    return replace(item, options=(first, replace(second, text=first.text), *rest))


def no_reason(item: Item) -> Item:
    return replace(item, options=tuple(replace(option, why_wrong=None) for option in item.options))


def too_sure(item: Item) -> Item:
    return replace(item, effective_k=item.effective_k + 1)


def no_top_cue(item: Item) -> Item:
    return replace(item, cues=item.cues[:-1])


def other_question(item: Item) -> Item:
    sentence = "Whose umbrella is it?" if item.level == "K1" else item.sentence
    return replace(item, prompt="Who waved?", sentence=sentence)


def long_option(item: Item) -> Item:
    options = list(item.options)
    wrong = next(index for index, option in enumerate(options) if option.foil is not None)
    options[wrong] = replace(options[wrong], text="the one who " * 5)
    return replace(item, options=tuple(options))


@pytest.mark.parametrize(
    "spoil",
    [
        flipped,
        two_right,
        twice_the_same,
        no_reason,
        too_sure,
        no_top_cue,
        other_question,
        long_option,
    ],
)
def test_a_planted_fault_is_caught_in_every_form(
    spoil: Callable[[Item], Item], items: list[Item], material: Material
) -> None:
    rng = Random(9)
    for form in PRACTISED:
        of_form = [item for item in items if item.target.name.startswith(form)]
        for item in rng.sample(of_form, 40):
            if spoil is other_question and form == "grid":
                continue
            assert broken(spoil(item), material, QUESTION_RULES), (form, item)


def test_a_statement_that_says_something_else_is_caught(
    items: list[Item], material: Material
) -> None:
    for item in [item for item in items if item.target.name == "grid"][:200]:
        doer, verb, done_to = item.words
        for spoiled in (
            replace(item, words=(done_to, verb, doer)),
            replace(item, sentence=item.sentence.replace(".", " now.")),
            replace(item, construction="active"),
        ):
            assert broken(spoiled, material, QUESTION_RULES)


@pytest.mark.parametrize("name", ["yes-no:full-passive", "grid", "who-did-what:active"])
def test_a_batch_that_leans_is_caught(name: str, material: Material) -> None:
    batch = questions(material, name, count=40)
    fair = [item for item in batch if item.answer == 0]
    leaning = (*fair, *fair)
    assert any(rule(leaning) for rule in BATCH_RULES)
    assert not any(rule(batch) for rule in BATCH_RULES)


def test_an_item_that_breaks_a_rule_is_never_given(material: Material) -> None:
    """The maker raises with every rule that is broken; here the words themselves are spoiled."""
    lexicon = material.lexicon
    verbs = {
        key: replace(verb, past="was pulled by the much too long one that nobody knows at all")
        for key, verb in lexicon.verbs.items()
    }
    spoiled = replace(material, lexicon=replace(lexicon, verbs=verbs))
    with pytest.raises(BadInput, match="too long"):
        questions(spoiled, "who-did-what:active", count=4)
