"""A plan that is being changed."""

from __future__ import annotations

from dataclasses import fields, replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.catalogue.plan_settings import SECTIONS
from drills.core.kinds import Kind
from drills.core.plans import BlockPlan, Plan
from drills.core.problems import BadInput
from drills.core.settings import Section, Setting
from drills.practice.editing import (
    NONE,
    TOP,
    differences,
    limits,
    new_block,
    of_kind,
    raised,
    read_value,
    told,
    value_of,
    with_block,
    with_value,
    without_block,
)
from tests.catalogue.test_plan_writing import PLANS, SMALL

ALL = [(section, setting) for section in (TOP, *SECTIONS) for setting in section.settings]


@given(plan=PLANS, which=st.sampled_from(ALL))
def test_a_number_is_read_again_as_it_is_told(plan: Plan, which: tuple[Section, Setting]) -> None:
    section, setting = which
    value = value_of(plan, section, setting)
    is_typed = isinstance(value, int | float) or (isinstance(value, tuple) and setting.high)
    if is_typed and not isinstance(value, bool):
        assert read_value(setting, value, told(value)) == value


@given(plan=PLANS, other=PLANS, which=st.sampled_from(ALL))
def test_one_setting_that_is_changed_is_the_one_difference(
    plan: Plan, other: Plan, which: tuple[Section, Setting]
) -> None:
    section, setting = which
    value = value_of(other, section, setting)
    changed = with_value(plan, section, setting, value)
    assert value_of(changed, section, setting) == value
    found = differences(plan, changed, {})
    if value == value_of(plan, section, setting):
        assert found == ()
    else:
        (one,) = found
        assert setting.key in one.what


@given(plan=PLANS, other=PLANS)
def test_plans_differ_where_and_only_where_a_field_does(plan: Plan, other: Plan) -> None:
    found = [each.what.split(",")[0].split(" ")[0] for each in differences(plan, other, {})]
    fields_that_differ = {
        field.name.removesuffix("s") if field.name == "blocks" else field.name
        for field in fields(Plan)
        if field.name != "version" and getattr(plan, field.name) != getattr(other, field.name)
    }
    assert set(found) == fields_that_differ


def test_names_that_differ_are_told_in_plain_words_wherever_they_stand() -> None:
    probes = replace(SMALL.probes, treated=("full-passive",), finished=("active", "other"))
    labels = {"full-passive": "Passive", "active": "Active"}
    told = differences(SMALL, replace(SMALL, probes=probes), labels)
    assert [str(each) for each in told] == [
        "probes, treated: none -> Passive",
        "probes, finished: none -> Active; other",
    ]


def test_a_block_taken_out_is_one_difference_and_moves_no_other() -> None:
    blocks = tuple(
        BlockPlan(kind=Kind.MATCH, names=(name,), trials=5)
        for name in ("active", "full-passive", "locative")
    )
    plan = replace(SMALL, blocks=blocks)
    (gone,) = differences(plan, without_block(plan, 0), {})
    assert (gone.what, gone.after) == ("block 1", NONE)
    (more,) = differences(plan, with_block(plan, 3, new_block(Kind.CLOZE)), {})
    assert (more.what, more.before) == ("block 4", NONE)
    (changed,) = differences(plan, with_block(plan, 1, replace(blocks[1], trials=9)), {})
    assert str(changed) == "block 2, trials: 5 -> 9"


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("4", "4 is outside 5 to 90."),
        ("91", "91 is outside 5 to 90."),
        ("many", "'many' is no number. Write 5 to 90."),
        ("nan", "'nan' is no number. Write 5 to 90."),
        ("1e999", "'1e999' is no number. Write 5 to 90."),
        ("20.5", "'20.5' is not a whole number."),
        ("", "'' is no number. Write 5 to 90."),
    ],
)
def test_what_cannot_be_set_is_told_in_one_sentence_or_two(text: str, says: str) -> None:
    setting = Setting(key="minutes_per_session", says="length", low=5, high=90)
    with pytest.raises(BadInput) as caught:
        read_value(setting, 25, text)
    assert str(caught.value) == says


@pytest.mark.parametrize("text", ["4, 1", "1, 1", "", "1; 2", "0, 3"])
def test_days_that_do_not_rise_or_are_none_are_refused(text: str) -> None:
    with pytest.raises(BadInput):
        read_value(Setting(key="ladder_days", says="days", low=1, high=365), (1, 2), text)


def test_limits_are_the_settings_own() -> None:
    assert limits(Setting(key="a", says="b", low=5, high=90), 7) == "5 to 90"
    assert limits(Setting(key="a", says="b", high=20), "text") == "0 to 20 letters"
    assert limits(Setting(key="a", says="b"), True) == ""


def test_a_block_of_another_kind_keeps_the_names_that_the_kind_has() -> None:
    block = BlockPlan(kind=Kind.MATCH, names=("active", "locative"), trials=7, options=4)
    other = of_kind(block, Kind.ACT_OUT, ("active", "full-passive"))
    assert (other.kind, other.names, other.trials) == (Kind.ACT_OUT, ("active",), 7)
    assert of_kind(block, Kind.MATCH, ()) == block


def test_a_block_goes_up_by_one_and_the_first_stays() -> None:
    blocks = tuple(new_block(kind) for kind in (Kind.MATCH, Kind.CLOZE, Kind.GESTURE))
    plan = replace(SMALL, blocks=blocks)
    assert raised(plan, 2).blocks == (blocks[0], blocks[2], blocks[1])
    assert raised(plan, 0) == plan


def test_the_top_of_a_plan_is_limited_as_the_file_limits_it() -> None:
    keys = {setting.key for setting in TOP.settings}
    assert keys <= {field.name for field in fields(Plan)}
    with pytest.raises(BadInput, match="1 to 80 letters"):
        read_value(TOP.settings[0], "A plan", "x" * 81)
    with pytest.raises(BadInput, match="1 to 80 letters"):
        read_value(TOP.settings[0], "A plan", "  ")
