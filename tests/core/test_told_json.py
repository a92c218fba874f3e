from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.clauses import (
    Clause,
    Day,
    Determined,
    Missing,
    Party,
    Person,
    Rank,
    Relative,
    Thing,
    Tie,
    Told,
    Wanted,
)
from drills.core.meanings import Aspect, Tense
from drills.core.told_json import told_as_json, told_from_json

WORDS = st.sampled_from(["", "nurse", "cup", "wet"])


def parties(depth: int) -> st.SearchStrategy[Party]:
    inner = st.none() if depth == 0 else st.none() | parties(depth - 1)
    relative = st.none() if depth == 0 else st.none() | relatives(depth - 1)
    return st.builds(
        Party,
        noun=WORDS,
        count=st.integers(1, 3),
        person=st.sampled_from(Person),
        determined=st.sampled_from(Determined),
        is_pronoun=st.booleans(),
        owner=inner,
        also=inner,
        rank=st.none() | st.sampled_from(Rank),
        thing=st.none() | st.sampled_from(Thing),
        relative=relative,
    )


def relatives(depth: int) -> st.SearchStrategy[Relative]:
    return st.builds(Relative, word=WORDS, missing=st.sampled_from(Missing), clause=clauses(depth))


def clauses(depth: int) -> st.SearchStrategy[Clause]:
    ties = st.builds(Tie, word=WORDS, party=st.none() | parties(0), time=WORDS)
    return st.builds(
        Clause,
        subject=st.none() | parties(depth),
        verb=WORDS,
        object=st.none() | parties(depth),
        tense=st.sampled_from(Tense),
        aspect=st.sampled_from(Aspect),
        negated=st.booleans(),
        ties=st.lists(ties, max_size=2).map(tuple),
    )


TOLD = st.builds(
    Told,
    clause=clauses(1),
    second=st.none() | clauses(0),
    before=st.lists(clauses(0), max_size=2).map(tuple),
    wanted=st.none() | st.sampled_from(Wanted),
    calendar=st.lists(
        st.builds(Day, weekday=WORDS, date=st.integers(1, 28), verb=WORDS), max_size=2
    ).map(tuple),
)


@given(TOLD)
def test_what_is_told_comes_back_from_its_row(told: Told) -> None:
    row = json.loads(json.dumps(told_as_json(told)))
    assert told_from_json(row) == told


@pytest.mark.parametrize(
    "row",
    [
        {},
        {"kind": "state"},
        {"kind": "told"},
        {"kind": "told", "clause": 3},
        {"kind": "told", "clause": {"subject": None, "verb": 3}},
        {"kind": "told", "clause": {"subject": None, "verb": "be"}, "wanted": "nobody"},
        {"kind": "told", "clause": {"subject": {"nouns": "x"}, "verb": "be"}},
    ],
)
def test_what_is_no_such_row_is_refused(row: dict[str, object]) -> None:
    with pytest.raises(ValueError, match=r"tells nothing|is not a valid"):
        told_from_json(row)
