"""Before and after, more and less: keys by school grammar, balance, listeners without grammar."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from drills.core.items import Foil, Item
from drills.core.material import Material
from drills.core.meanings import Comparison
from tests.exercises.test_question import questions

# Written without a look at how sentences are made: (first told, second told), and whether the
# first told is the earlier one.
_ORDERS = (
    (re.compile(r"^Before the \w+ (\w+), s?he (\w+)\.$"), False),
    (re.compile(r"^After the \w+ (\w+), s?he (\w+)\.$"), True),
    (re.compile(r"^The \w+ (\w+) before s?he (\w+)\.$"), True),
    (re.compile(r"^The \w+ (\w+) after s?he (\w+)\.$"), False),
)


@pytest.fixture(scope="module")
def orders(material: Material) -> list[Item]:
    return [
        item
        for options in (2, 3, 4)
        for seed in range(3)
        for item in questions(material, "before-after", count=80, options=options, seed=seed)
    ]


@pytest.fixture(scope="module")
def comparisons(material: Material) -> list[Item]:
    return [
        item for seed in range(6) for item in questions(material, "comparison", count=80, seed=seed)
    ]


def told(item: Item) -> tuple[str, str, bool]:
    for form, in_order in _ORDERS:
        if match := form.match(item.sentence):
            return match[1], match[2], in_order
    raise AssertionError(f"{item.sentence!r} is of no known form")


def key(item: Item) -> str:
    return item.options[item.answer or 0].text or ""


def test_first_and_last_are_what_school_grammar_says(orders: list[Item]) -> None:
    for item in orders:
        one, other, in_order = told(item)
        earlier, later = (one, other) if in_order else (other, one)
        wanted = earlier if item.prompt.endswith(" first?") else later
        assert item.prompt.endswith((" first?", " last?"))
        doer = item.prompt.split()[3]
        assert key(item) == f"The {doer} {wanted}."
        foils = {option.foil: option.text for option in item.options if option.foil}
        unwanted = later if wanted == earlier else earlier
        assert foils[Foil.WORD] == f"The {doer} {unwanted}."
        never = [option.text for option in item.options if option.foil is Foil.VERB]
        assert all(text.split()[-1] not in (f"{one}.", f"{other}.") for text in never if text)
        assert item.effective_k == 2


def test_both_orders_of_clauses_and_both_questions_come_equally_often(material: Material) -> None:
    for seed in range(4):
        batch = questions(material, "before-after", count=80, seed=seed)
        cells = Counter((item.construction, item.prompt.endswith("first?")) for item in batch)
        assert set(cells.values()) == {10}
        assert len(cells) == 8


def test_who_tells_events_in_the_order_of_words_is_right_half_the_time(
    orders: list[Item],
) -> None:
    right = 0
    for item in orders:
        one, other, _ = told(item)
        said = one if item.prompt.endswith("first?") else other
        right += key(item).endswith(f" {said}.")
    assert right * 2 == len(orders)


def test_help_tells_the_event_that_is_not_asked_for(orders: list[Item]) -> None:
    for item in orders:
        texts = {cue.level: cue.text for cue in item.cues}
        start = "Then" if item.prompt.endswith("first?") else "First"
        assert texts[6].startswith(f"{start} the ")
        assert key(item).split()[-1] not in texts[6].split()
        assert texts[4] != item.prompt
        assert (5 in texts) == (len(item.options) > 2)
        assert item.restated.text == texts[7].split("\n")[0]


_MORE = re.compile(r"^The (\w+) is (\w+) than the (\w+)\.$")
_OPPOSITES = {"taller": "shorter", "bigger": "smaller"}
_OPPOSITES |= {back: forth for forth, back in _OPPOSITES.items()}


def test_more_and_less_are_what_school_grammar_says(
    comparisons: list[Item], material: Material
) -> None:
    qualities = {each.comparative: each.base for each in material.lexicon.adjectives.values()}
    for item in comparisons:
        match = _MORE.match(item.sentence)
        assert match is not None
        more, quality, less = match.groups()
        asked = item.prompt.rstrip("?").split()
        assert asked[0] in ("Who", "Which")
        assert asked[1] == "is"
        if asked[2:] == [quality]:
            wanted = more
        else:
            wanted = less
            assert asked[2:] in ([_OPPOSITES.get(quality)], ["less", qualities[quality]])
        assert key(item) == f"the {wanted}"
        assert {option.text for option in item.options} == {f"the {more}", f"the {less}"}


def test_more_is_asked_as_often_as_less_and_each_noun_is_as_often_more(
    material: Material,
) -> None:
    for seed in range(4):
        batch = questions(material, "comparison", count=80, seed=seed)
        assert sum(item.options[item.answer or 0].text == _first(item) for item in batch) == 40
        lead: Counter[str] = Counter()
        for item in batch:
            assert isinstance(item.meaning, Comparison)
            lead[item.meaning.more] += 1
            lead[item.meaning.less] -= 1
        assert max(map(abs, lead.values())) <= 1


def _first(item: Item) -> str:
    return f"the {item.sentence.split()[1]}"


def test_help_tells_of_the_other_one(comparisons: list[Item]) -> None:
    for item in comparisons:
        texts = {cue.level: cue.text for cue in item.cues}
        other = next(option.text or "" for option in item.options if option.foil)
        assert texts[6].lower().startswith(f"{other} is ")
        assert texts[4] != item.prompt
