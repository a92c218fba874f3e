"""Who did what, what happened, yes or no: held against readers who know nothing of the program."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from random import Random
from typing import Any

import pytest
from scipy.stats import binomtest

from drills.core.items import CueKind, Foil, Item, Kind, Target
from drills.core.material import Material
from drills.core.meanings import Act, Described
from drills.exercises import make_items
from drills.exercises.question.acts import TELLING
from drills.language import realise
from tests.exercises.batches import CANONICAL, NON_CANONICAL, heard, make
from tests.exercises.test_question import questions
from tests.language.parsing import load, read

SURE = 1e-4
SCHOOL_GRAMMAR = (*CANONICAL, *NON_CANONICAL)
# What the parser reads of these constructions as well as of any; see tests/language/test_parsing.
TRUSTED = ("active", "subject-cleft", "full-passive")


@pytest.fixture(scope="module")
def parser() -> Any:
    return load()


@pytest.fixture(scope="module")
def who(material: Material) -> list[Item]:
    names = [f"who-did-what:{name}" for name in SCHOOL_GRAMMAR]
    return [
        item
        for seed in range(8)
        for item in make(material, Kind.QUESTION, *names, count=80, seed=seed)
    ]


def act_of(item: Item) -> Act:
    told = item.meaning.act if isinstance(item.meaning, Described) else item.meaning
    assert isinstance(told, Act)
    return told


def asks_doer(item: Item) -> bool:
    """Read off the printed question: "Who was pulled?" asks for the other one."""
    return not item.prompt.startswith("Who was ")


def named(item: Item, index: int) -> str:
    return (item.options[index].text or "").removeprefix("the ")


def parsed(item: Item, text: str, parser: Any, material: Material) -> tuple[str, str] | None:
    """Doer and done-to as the parser reads them; None where it does not find both."""
    found = read(act_of(item), parser(text), material.lexicon)
    return (found["doer"], found["done_to"]) if len(found) == 2 else None


def test_a_reader_of_plain_grammar_answers_every_question(who: list[Item]) -> None:
    for item in who:
        words = heard(item.sentence)
        assert item.answer is not None
        assert named(item, item.answer) == (words.doer if asks_doer(item) else words.done_to)
        assert {named(item, 0), named(item, 1)} == {words.doer, words.done_to}


@pytest.mark.parametrize("construction", TRUSTED)
def test_the_keys_are_those_of_an_independent_parser(
    construction: str, material: Material, parser: Any
) -> None:
    """Source: spaCy 3.8, small English model 3.8.0; at least 99 % of 200, as everywhere else."""
    items = questions(material, f"who-did-what:{construction}", count=200)
    agreed = 0
    for item in items:
        roles = parsed(item, item.sentence, parser, material)
        wanted = None if roles is None else roles[0 if asks_doer(item) else 1]
        agreed += named(item, item.answer or 0) == wanted
    assert agreed >= 198


@pytest.mark.parametrize("construction", TRUSTED)
def test_yes_is_right_where_the_parser_reads_the_same_in_sentence_and_question(
    construction: str, material: Material, parser: Any
) -> None:
    """Source: spaCy 3.8, small English model 3.8.0.

    The question is put to it as a statement, "The nurse did pull the baker", which it reads better.
    """
    items = questions(material, f"yes-no:{construction}", count=200)
    agreed = 0
    for item in items:
        words = item.prompt.rstrip("?").split()
        statement = f"The {words[2]} did {' '.join(words[3:])}."
        told = parsed(item, item.sentence, parser, material)
        base = material.lexicon.verbs[act_of(item).verb].base
        same_verb = base in words
        asked = parsed(item, statement, parser, material) if same_verb else ("", "")
        key = "yes" if told == asked else "no"
        agreed += item.options[item.answer or 0].text == key
    assert agreed >= 198


def test_relatives_ask_of_the_act_and_not_of_the_state(material: Material) -> None:
    """The words between "that" and the end, read by school grammar."""
    names = [f"who-did-what:{name}" for name in TELLING if "relative" in name]
    for item in make(material, Kind.QUESTION, *names, count=200):
        words = item.sentence.rstrip(".").split()
        at = words.index("that")
        head, after = words[at - 1], words[at + 1 :]
        other = after[1] if after[0] == "the" else after[2]
        doer, done_to = (other, head) if after[0] == "the" else (head, other)
        assert named(item, item.answer or 0) == (doer if asks_doer(item) else done_to)


def test_the_one_wrong_name_is_a_reversal(who: list[Item]) -> None:
    for item in who:
        wrong = item.options[1 - (item.answer or 0)]
        assert (wrong.foil, wrong.why_wrong) == (Foil.REVERSAL, "false_role")
        assert item.effective_k == len(item.options) == 2


def test_whoever_is_woken_is_no_answer_to_who_woke_someone(who: list[Item]) -> None:
    """Such verbs are asked with an object; without one the question would have two answers."""
    turning = [item for item in who if act_of(item).verb in ("wake", "stop", "wash", "dry")]
    assert {act_of(item).verb for item in turning} == {"wake", "stop", "wash", "dry"}
    for item in filter(asks_doer, turning):
        assert item.prompt.endswith(" someone?")


@pytest.mark.parametrize("count", [16, 84])
def test_both_parts_are_asked_for_equally_often_wherever_the_answer_is(
    material: Material, count: int
) -> None:
    for seed in range(5):
        batch = make(material, Kind.QUESTION, "who-did-what", count=count, seed=seed)
        assert abs(2 * sum(map(asks_doer, batch)) - count) <= 1
        assert abs(2 * sum(item.answer == 0 for item in batch) - count) <= 1
        for name in TELLING:
            cells = Counter(
                (asks_doer(item), item.answer) for item in batch if item.construction == name
            )
            shares = [cells[asked, place] for asked in (True, False) for place in (0, 1)]
            assert max(shares) - min(shares) <= 1


def test_a_listener_who_guesses_is_right_half_the_time(who: list[Item]) -> None:
    """Within the exact 99.99 % interval of scipy's binomial test."""
    rng = Random(3)
    right = sum(rng.randrange(2) == item.answer for item in who)
    interval = binomtest(right, len(who)).proportion_ci(0.9999, method="exact")
    assert interval.low < 1 / 2 < interval.high


def test_a_listener_who_names_the_first_noun_gains_nothing(who: list[Item]) -> None:
    right = sum(heard(item.sentence).first == named(item, item.answer or 0) for item in who)
    assert binomtest(right, len(who)).pvalue > SURE


@pytest.mark.parametrize(("names", "share"), [(CANONICAL, 1), (NON_CANONICAL, 0)])
def test_a_listener_who_takes_the_first_noun_for_the_doer_is_found_out(
    material: Material, names: tuple[str, ...], share: int
) -> None:
    batch = make(material, Kind.QUESTION, *names, count=80)
    right = 0
    for item in batch:
        words = heard(item.sentence)
        said = words.first if asks_doer(item) else words.second
        right += said == named(item, item.answer or 0)
    assert right == share * len(batch)


@pytest.mark.parametrize(("names", "share"), [(CANONICAL, 1), (NON_CANONICAL, 0)])
def test_so_it_is_with_yes_and_no_but_for_other_verbs(
    material: Material, names: tuple[str, ...], share: int
) -> None:
    """Who takes the first noun for the doer tells true from false always, or never."""
    batch = make(material, Kind.QUESTION, *(f"yes-no:{name}" for name in names), count=80)
    for item in batch:
        if item.effective_k == 1:
            continue
        words = heard(item.sentence)
        asked = item.prompt.split()[2]
        says = "yes" if asked == words.first else "no"
        assert (says == item.options[item.answer or 0].text) == bool(share)


def test_half_is_true_and_one_false_in_four_has_another_verb(material: Material) -> None:
    batch = make(material, Kind.QUESTION, "yes-no", count=140, seed=2)
    for name in TELLING:
        true = [item.answer == 0 for item in batch if item.construction == name]
        assert abs(2 * sum(true) - len(true)) <= 1
    false = [item.options[0].foil for item in batch if item.answer == 1]
    assert false.count(Foil.VERB) in (17, 18)
    assert false.count(Foil.REVERSAL) == len(false) - false.count(Foil.VERB)


def test_help_turns_to_the_one_who_is_not_asked_about(who: list[Item]) -> None:
    for item in who:
        assert [cue.level for cue in item.cues] == [1, 2, 3, 4, 6, 7]
        kinds = {cue.kind: cue.text for cue in item.cues}
        other = named(item, 1 - (item.answer or 0))
        text = kinds.get(CueKind.NAME_DOER) or kinds[CueKind.HINT]
        assert text.startswith(f"The {other} ")
        assert len(text.split()) <= 5
        assert kinds[CueKind.ROLE_QUESTION] != item.prompt
        assert named(item, item.answer or 0) not in kinds[CueKind.ROLE_QUESTION].rstrip("?").split()


def test_each_noun_is_equally_often_doer_and_done_to_and_none_comes_twice_running(
    material: Material,
) -> None:
    for seed in range(6):
        batch = make(material, Kind.QUESTION, "who-did-what", count=84, seed=seed)
        lead: Counter[tuple[str, str]] = Counter()
        for item in batch:
            lead[item.construction, act_of(item).doer] += 1
            lead[item.construction, act_of(item).done_to] -= 1
        assert max(map(abs, lead.values())) <= 1
        for before, after in pairwise(batch):
            one, other = act_of(before), act_of(after)
            assert not {one.doer, one.done_to} & {other.doer, other.done_to}


def test_one_in_ten_at_most_asks_of_a_third_one(material: Material) -> None:
    for count, catches in ((9, 0), (10, 1), (40, 4), (49, 4)):
        batch = questions(material, "who-did-what+neither", count=count, seed=count)
        caught = [item for item in batch if item.options[item.answer or 0].text == "neither"]
        assert len(caught) == catches
        for item in batch:
            assert [option.text for option in item.options][2] == "neither"
            assert {named(item, 0), named(item, 1)} == {
                material.lexicon.nouns[key].singular
                for key in (act_of(item).doer, act_of(item).done_to)
            }
            assert item.effective_k == (1 if item in caught else 2)
        for item in caught:
            third = [word for word in item.prompt.rstrip("?").split() if word in _nouns(material)]
            assert len(third) == 1
            assert third[0] not in item.sentence.rstrip(".").split()


def _nouns(material: Material) -> set[str]:
    return {noun.singular for noun in material.lexicon.nouns.values()}


@pytest.mark.parametrize("options", [2, 3, 4])
def test_what_happened_is_answered_by_the_plain_clause(options: int, material: Material) -> None:
    batch = questions(material, "what-happened", count=84, options=options)
    for item in batch:
        act = act_of(item)
        assert (
            item.prompt == f"What happened to the {material.lexicon.nouns[act.done_to].singular}?"
        )
        assert item.options[item.answer or 0].text == realise(act, "active", material.lexicon).text
        foils = [option.foil for option in item.options if option.foil is not None]
        assert foils.count(Foil.REVERSAL) == 1
        assert set(foils) <= {Foil.REVERSAL, Foil.VERB}
        assert len(item.options) == options
        assert item.effective_k == 2
    if options == 3:
        # Another verb goes with the right parts as often as with the traded ones.
        doers = [
            next(option.text or "" for option in item.options if option.foil is Foil.VERB).split()[
                1
            ]
            == material.lexicon.nouns[act_of(item).doer].singular
            for item in batch
        ]
        assert abs(2 * sum(doers) - len(doers)) <= 2


def test_a_target_names_form_and_construction(material: Material) -> None:
    target = Target(kind=Kind.QUESTION, name="who-did-what:object-cleft", group="moving")
    (item,) = make_items([target], options=2, material=material, rng=Random(1))
    assert (item.target, item.construction, item.level) == (
        target,
        "object-cleft",
        "who-did-what",
    )
    assert Target.parse(str(target)) == target
