"""Relatives: keys and foils held against a search of family trees, and the ladder's own rules."""

from __future__ import annotations

import re
from dataclasses import replace
from itertools import pairwise
from random import Random

import pytest

from drills.core.items import CueKind, Foil, Item, Kind
from drills.core.material import Material
from drills.core.meanings import Kin, State
from drills.core.plans import BlockPlan
from drills.core.words import Sex
from drills.exercises import check_block
from drills.exercises.choices import broken
from drills.exercises.question.family_tree import MOST_COLUMNS, MOST_LINES, family_tree
from drills.exercises.question.rules import QUESTION_RULES
from drills.language.kinship import chains
from drills.pictures import can_draw
from tests.exercises.test_question import questions
from tests.language.families import Person, random_person, relatives, walked

BY_SEX = ("kin:K2", "kin:K3", "kin:K5", "kin:K6")
EXCLUDED = re.compile(r"cousin|in-law|step|ex-|partner|wives|husbands")


@pytest.fixture(scope="module")
def families() -> list[Person]:
    """Source: random family trees that are searched one by one; they know nothing of chains."""
    rng = Random(20261127)
    return [random_person(rng) for _ in range(120)]


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    names = ("kin:K1", *BY_SEX, "kin:K4")
    return [
        item
        for options in (2, 4)
        for name in names
        for seed in range(3)
        for item in questions(material, name, count=60, options=options, seed=seed)
    ]


def said_terms(item: Item) -> tuple[str, ...]:
    """The chain as the printed sentence has it, read without a look at the meaning."""
    text = item.sentence.rstrip(".").removeprefix("This is ")
    if text.startswith("my "):
        return tuple(text.removeprefix("my ").replace("'s", "").split())
    parts = text.removeprefix("the ").split(" of ")
    return tuple(part.removeprefix("the ").removeprefix("my ") for part in reversed(parts))


def met(item: Item, families: list[Person]) -> list[tuple[Person, Person]]:
    """Speakers, with each one to whom the chain leads in their family."""
    return [(speaker, meant) for speaker in families for meant in walked(speaker, said_terms(item))]


def test_every_answer_by_sex_is_that_of_all_who_are_meant_in_any_family(
    items: list[Item], families: list[Person]
) -> None:
    found = 0
    for item in items:
        if item.target.name not in BY_SEX:
            continue
        words = {Sex.FEMALE: "a woman", Sex.MALE: "a man"}
        for _, meant in met(item, families):
            found += 1
            assert item.options[item.answer or 0].text == words[meant.sex], item.sentence
    assert found > 5000


def test_the_one_word_for_a_chain_is_what_every_family_says_and_no_foil_ever_is(
    items: list[Item], families: list[Person]
) -> None:
    found = 0
    for item in items:
        if item.level != "K4":
            continue
        texts = [(option.text or "").removeprefix("my ") for option in item.options]
        for speaker, meant in met(item, families):
            found += 1
            holds = [meant in relatives(speaker, text) for text in texts]
            assert [index for index, is_so in enumerate(holds) if is_so] == [item.answer], item
    assert found > 2000


def test_nobody_who_is_meant_may_be_the_one_who_speaks(
    items: list[Item], families: list[Person]
) -> None:
    for item in items:
        if isinstance(item.meaning, Kin):
            assert all(speaker is not meant for speaker, meant in met(item, families))


def test_head_and_possessor_differ_and_the_possessor_is_the_wrong_answer(
    items: list[Item], families: list[Person]
) -> None:
    """To take one for the other always shows. The possessor is found by the search as well."""
    words = {Sex.FEMALE: "a woman", Sex.MALE: "a man"}
    for item in items:
        terms = said_terms(item)
        foils = [option for option in item.options if option.foil is Foil.REVERSAL]
        if item.target.name in BY_SEX:
            owners = {meant.sex for one in families for meant in walked(one, terms[:-1])}
            assert [option.text for option in foils] == [words[sex] for sex in owners]
            assert words[next(iter(owners))] != item.options[item.answer or 0].text
        elif item.level == "K4":
            assert [option.text for option in foils] == [f"my {terms[0]}"]


def test_the_other_wrong_relatives_are_of_the_answers_sex_and_not_in_the_chain(
    items: list[Item], material: Material
) -> None:
    kin = material.lexicon.kin
    checked = 0
    for item in items:
        if item.level != "K4":
            continue
        key = (item.options[item.answer or 0].text or "").removeprefix("my ")
        for option in item.options:
            if option.foil is Foil.NOUN:
                checked += 1
                term = (option.text or "").removeprefix("my ")
                assert term not in said_terms(item)
                assert kin[term].sex is kin[key].sex
    assert checked > 100


def test_of_and_the_ending_are_mixed_so_that_order_alone_fails(items: list[Item]) -> None:
    for level in ("K3", "K6"):
        of_level = [item for item in items if item.level == level]
        by_of = [" of " in item.sentence for item in of_level]
        assert sum(by_of) * 2 == len(by_of)
        # Who takes the last noun for the one who is meant is right half the time.
        last = ["of" not in item.sentence.split() for item in of_level]
        assert sum(last) * 2 == len(last)
    assert not any(" of " in item.sentence for item in items if item.level in ("K2", "K5"))


def test_each_pair_of_the_fifth_level_comes_both_ways_in_one_block(material: Material) -> None:
    for seed in range(5):
        batch = questions(material, "kin:K5", count=12, seed=seed)
        told = [said_terms(item) for item in batch]
        assert all(terms[::-1] in told for terms in told)
        answers = {said_terms(item): item.options[item.answer or 0].text for item in batch}
        assert all(answers[terms] != answers[terms[::-1]] for terms in told)


def test_three_relatives_are_asked_of_only_where_a_plan_names_them(items: list[Item]) -> None:
    for item in items:
        if isinstance(item.meaning, Kin):
            assert len(said_terms(item)) == (3 if item.level == "K6" else 2)
    assert "K6" in {item.level for item in items}


def test_women_and_men_are_right_equally_often_in_each_place(material: Material) -> None:
    for name in ("kin:K2", "kin:K3", "kin:K6"):
        for seed in range(3):
            batch = questions(material, name, count=24, seed=seed)
            cells = [(item.answer, item.options[item.answer or 0].text) for item in batch]
            shares = [cells.count((at, text)) for at in (0, 1) for text in ("a woman", "a man")]
            assert max(shares) - min(shares) <= 1
            for before, after in pairwise(batch):
                assert not set(said_terms(before)) & set(said_terms(after))


def test_words_that_differ_between_cultures_or_hurt_are_not_there(items: list[Item]) -> None:
    for item in items:
        texts = (item.sentence, item.prompt, *(option.text or "" for option in item.options))
        assert not any(EXCLUDED.search(text) for text in texts)


# Whose hat


def test_the_picture_shows_the_owner_and_the_thing(items: list[Item], material: Material) -> None:
    lexicon = material.lexicon
    for item in items:
        if item.level != "K1":
            continue
        assert item.picture is not None
        shown = item.picture.meaning
        assert isinstance(shown, State)
        assert can_draw(shown)
        assert item.sentence == f"Whose {lexicon.nouns[shown.complement].singular} is it?"
        key = item.options[item.answer or 0].text
        assert key == f"the {lexicon.nouns[shown.subject].singular}'s"
        sexes = [
            next(noun.sex for noun in lexicon.people if f"the {noun.singular}'s" == option.text)
            for option in item.options
        ]
        # Who is seen to be a woman is told from at least one man, and the other way round.
        assert len(set(sexes)) == 2
        assert item.effective_k == len(item.options)


def test_a_plain_man_is_not_offered_against_another_man(items: list[Item]) -> None:
    """A baker is a man as well, so "the man's" would be right of him."""
    plain = {"the woman's", "the man's", "the girl's", "the boy's"}
    male = re.compile("the (man|boy|baker|farmer|sailor|judge|painter|king|waiter)'s")
    for item in items:
        texts = {option.text or "" for option in item.options}
        if item.level != "K1" or not texts & plain:
            continue
        key = item.options[item.answer or 0].text or ""
        alike = [text for text in texts if bool(male.match(text)) == bool(male.match(key))]
        assert alike == [key] or not plain & set(alike), texts


# Words switched off


@pytest.mark.parametrize("off", [("father",), ("mother", "husband"), ("son", "daughter")])
def test_a_word_that_is_switched_off_is_never_said_nor_meant(
    off: tuple[str, ...], material: Material, families: list[Person]
) -> None:
    lexicon = material.lexicon
    kept = {key: term for key, term in lexicon.kin.items() if key not in off}
    without = replace(material, lexicon=replace(lexicon, kin=kept))
    for name in (*BY_SEX, "kin:K4", "grid"):
        for item in questions(without, name, count=60, options=4):
            texts = (item.sentence, item.prompt, *(option.text or "" for option in item.options))
            cues = [cue.text for cue in item.cues]
            words = set(re.findall(r"[a-z]+", " ".join((*texts, *cues))))
            assert not words & set(off), item
            if item.target.name == "grid":
                continue
            for end in range(1, len(said_terms(item)) + 1):
                for speaker in families[:20]:
                    for meant in walked(speaker, said_terms(item)[:end]):
                        assert not any(meant in relatives(speaker, word) for word in off)


def test_too_many_words_switched_off_are_told(material: Material) -> None:
    lexicon = material.lexicon
    kept = {key: lexicon.kin[key] for key in ("wife", "husband")}
    without = replace(material, lexicon=replace(lexicon, kin=kept))
    block = BlockPlan(kind=Kind.QUESTION, names=("kin:K2",), trials=4)
    assert "no words" in str(check_block(block, without)[0])


# Planted faults


def test_a_chain_in_which_a_mistake_would_not_show_is_caught(material: Material) -> None:
    batch = questions(material, "kin:K2", count=20)
    for item in batch:
        assert isinstance(item.meaning, Kin)
        sister = {Sex.FEMALE: "aunt", Sex.MALE: "uncle"}
        sex = material.lexicon.kin[item.meaning.terms[-1]].sex
        hidden = Kin(terms=(sister[sex], item.meaning.terms[-1]))
        assert broken(replace(item, meaning=hidden), material, QUESTION_RULES)


def test_a_foil_that_may_be_true_and_one_that_is_not_the_possessor_are_caught(
    material: Material,
) -> None:
    for item in questions(material, "kin:K4", count=30, options=3):
        for foil in (Foil.REVERSAL, Foil.NOUN):
            options = list(item.options)
            at = next(index for index, option in enumerate(options) if option.foil is foil)
            text = "my wife" if foil is Foil.REVERSAL else item.options[item.answer or 0].text
            options[at] = replace(options[at], text=text)
            spoiled = replace(item, options=tuple(options))
            assert broken(spoiled, material, QUESTION_RULES)


# The family tree


def test_every_tree_fits_six_lines_of_forty_columns() -> None:
    every = (*chains(1), *chains(2), *chains(3))
    assert len(every) > 3000
    for terms in every:
        lines = family_tree(terms)
        assert len(lines) <= MOST_LINES
        assert max(map(len, lines)) <= MOST_COLUMNS


def test_a_tree_tells_every_role_in_its_generation() -> None:
    """Source: generations counted by school grammar, a row up for a parent, down for a child."""
    rises = {"mother": 1, "father": 1, "aunt": 1, "uncle": 1, "grandmother": 1, "grandfather": 1}
    rises |= {"son": -1, "daughter": -1, "niece": -1, "nephew": -1}
    rises |= {"grandson": -1, "granddaughter": -1}
    for terms in (*chains(2), *chains(3)[::7]):
        lines = family_tree(terms)
        words = [re.findall(r"[a-z]+", line) for line in lines]
        assert sorted(word for line in words for word in line) == sorted(["me", *terms])
        level, levels = 0, [0]
        for term in terms:
            level += rises.get(term, 0)
            levels.append(level)
        for index, word in enumerate(("me", *terms)):
            row = max(levels) - levels[index]
            assert word in words[row], (terms, lines)
        (asked,) = [line for line in lines if " ?" in line]
        assert f"{terms[-1]} ?" in asked


def test_a_tree_is_drawn_so() -> None:
    assert family_tree(("father", "sister")) == ("┌─ father ── sister ?", "me")
    assert family_tree(("daughter", "mother")) == ("me  ┌─ mother ?", "└─ daughter")
    assert family_tree(("mother", "brother", "uncle")) == (
        "             ┌─ uncle ?",
        "┌─ mother ── brother",
        "me",
    )


def test_the_tree_is_the_last_help_before_the_answer(items: list[Item]) -> None:
    for item in items:
        if isinstance(item.meaning, Kin):
            tree = item.cues[-2]
            assert (tree.level, tree.kind) == (6, CueKind.TREE)
            assert tree.text == "\n".join(family_tree(said_terms(item)))
            assert tree.spoken is not None
            assert tree.spoken.text.startswith("I have a")
