from __future__ import annotations

from collections import Counter
from itertools import pairwise
from random import Random

import pytest
from scipy.stats import binomtest

from drills.core.items import CueKind, Foil, Item, Kind, Target
from drills.core.material import Material
from drills.core.meanings import Act
from drills.exercises import make_items
from tests.exercises.batches import ACTS, CANONICAL, NON_CANONICAL, heard, make

SURE = 1e-4


@pytest.fixture(scope="module")
def items(material: Material) -> list[Item]:
    return [
        item for seed in range(12) for item in make(material, Kind.QUESTION, count=80, seed=seed)
    ]


def asks_doer(item: Item) -> bool:
    """Read off the printed question: "Who was pulled?" asks for the other one."""
    return not item.prompt.startswith("Who was ")


def named(item: Item, index: int) -> str:
    return (item.options[index].text or "").removeprefix("the ")


def test_a_reader_of_plain_grammar_answers_every_question(items: list[Item]) -> None:
    for item in items:
        words = heard(item.sentence)
        assert item.answer is not None
        assert named(item, item.answer) == (words.doer if asks_doer(item) else words.done_to)
        assert {named(item, 0), named(item, 1)} == {words.doer, words.done_to}


def test_the_one_wrong_name_is_a_reversal(items: list[Item]) -> None:
    for item in items:
        wrong = item.options[1 - (item.answer or 0)]
        assert (wrong.foil, wrong.why_wrong) == (Foil.REVERSAL, "false_role")
        assert item.effective_k == len(item.options) == 2


@pytest.mark.parametrize("count", [16, 80])
def test_both_parts_are_asked_for_equally_often_wherever_the_answer_is(
    material: Material, count: int
) -> None:
    for seed in range(5):
        batch = make(material, Kind.QUESTION, count=count, seed=seed)
        assert abs(2 * sum(map(asks_doer, batch)) - count) <= 1
        assert abs(2 * sum(item.answer == 0 for item in batch) - count) <= 1
        for name in ACTS:
            cells = Counter(
                (asks_doer(item), item.answer) for item in batch if item.construction == name
            )
            shares = [cells[asked, place] for asked in (True, False) for place in (0, 1)]
            assert max(shares) - min(shares) <= 1


def test_a_listener_who_guesses_is_right_half_the_time(items: list[Item]) -> None:
    """Within the exact 99.99 % interval of scipy's binomial test."""
    rng = Random(3)
    right = sum(rng.randrange(2) == item.answer for item in items)
    interval = binomtest(right, len(items)).proportion_ci(0.9999, method="exact")
    assert interval.low < 1 / 2 < interval.high


def test_a_listener_who_names_the_first_noun_gains_nothing(items: list[Item]) -> None:
    right = sum(heard(item.sentence).first == named(item, item.answer or 0) for item in items)
    assert binomtest(right, len(items)).pvalue > SURE


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


def test_sentence_and_question_are_both_said(items: list[Item]) -> None:
    for item in items:
        assert item.spoken.text == f"{item.sentence} {item.prompt}"


def test_help_turns_to_the_one_who_is_not_asked_about(items: list[Item]) -> None:
    for item in items:
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
        batch = make(material, Kind.QUESTION, count=80, seed=seed)
        lead: Counter[tuple[str, str]] = Counter()
        for item in batch:
            assert isinstance(item.meaning, Act)
            lead[item.construction, item.meaning.doer] += 1
            lead[item.construction, item.meaning.done_to] -= 1
        assert max(map(abs, lead.values())) <= 1
        for before, after in pairwise(batch):
            assert not set(before.words) & set(after.words)


def test_a_target_names_form_and_construction(material: Material) -> None:
    target = Target(kind=Kind.QUESTION, name="who-did-what:object-cleft", group="moving")
    (item,) = make_items([target], options=2, material=material, rng=Random(1))
    assert (item.target, item.construction, item.level) == (
        target,
        "object-cleft",
        "who-did-what",
    )
    assert Target.parse(str(target)) == target
