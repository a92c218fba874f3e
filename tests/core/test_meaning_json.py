"""Every meaning survives its row, and the row of an act is the documented one."""

from __future__ import annotations

import json
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.meaning_json import as_json, from_json
from drills.core.meanings import Act, Meaning, Place, Relation, Tense

MEANINGS = st.one_of(*(st.from_type(kind) for kind in get_args(Meaning)))


@given(MEANINGS)
def test_a_meaning_survives_its_row(meaning: Meaning) -> None:
    assert from_json(json.loads(json.dumps(as_json(meaning)))) == meaning


def test_an_act_is_its_verb_doer_and_done_to() -> None:
    act = Act(verb="push", doer="nurse", done_to="baker")
    assert as_json(act) == {"verb": "push", "doer": "nurse", "done_to": "baker"}
    present = Act(verb="push", doer="nurse", done_to="baker", tense=Tense.PRESENT)
    assert as_json(present)["tense"] == "present"


def test_a_place_is_its_relation_thing_and_landmark() -> None:
    place = Place(relation=Relation.IN_FRONT_OF, thing="cup", landmark="box")
    assert as_json(place) == {"relation": "in front of", "thing": "cup", "landmark": "box"}


@pytest.mark.parametrize(
    "row",
    [
        {},
        {"kind": "nothing"},
        {"verb": "push"},
        {"relation": "over", "thing": "cup", "landmark": "box"},
        {"verb": "push", "doer": "nurse", "done_to": "baker", "colour": "red"},
    ],
)
def test_a_row_that_is_no_meaning_is_refused(row: dict[str, str]) -> None:
    with pytest.raises(ValueError, match=r"no meaning|not a valid"):
        from_json(row)


@given(st.from_type(Act))
def test_a_reversed_act_twice_is_the_act(act: Act) -> None:
    assert act.reversed().reversed() == act
