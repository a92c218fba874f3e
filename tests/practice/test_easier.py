"""Easier targets, never outside the plan."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from drills.core.items import Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, Order, Plan
from drills.exercises import make_items
from drills.language import CONSTRUCTIONS
from drills.practice.dealing import open_targets, plan_targets
from drills.practice.easier import EasierItems, difficulty, easier_than

PLAN = Plan(
    name="Short",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(
            kind=Kind.MATCH,
            names=("active", "subject-cleft", "full-passive", "object-cleft"),
            trials=8,
        ),
        BlockPlan(kind=Kind.CLOZE, names=("C3", "C4"), trials=4),
        BlockPlan(kind=Kind.QUESTION, names=("who-did-what:active",), trials=4),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "stop"), trials=4),
    ),
)


def match(name: str) -> Target:
    return Target(kind=Kind.MATCH, name=name, group="moving")


@pytest.mark.parametrize(
    ("hard", "easier"),
    [
        ("object-cleft", {"full-passive"}),
        ("full-passive", {"subject-cleft"}),
        ("subject-cleft", {"active"}),
        ("active", set()),
    ],
)
def test_the_next_easier_name_of_the_plan_is_taken(
    hard: str, easier: set[str], material: Material
) -> None:
    """Order of the constructions: common practice, no source."""
    found = easier_than(match(hard), PLAN, material)
    assert {target.name for target in found} == easier
    assert {target.kind for target in found} <= {Kind.MATCH}


def test_what_the_plan_does_not_prescribe_is_never_taken(material: Material) -> None:
    prescribed = {target for block in plan_targets(PLAN, material) for target in block}
    for target in prescribed:
        assert set(easier_than(target, PLAN, material)) <= prescribed - {target}
    only = replace(PLAN, blocks=PLAN.blocks[2:])
    assert easier_than(match("object-cleft"), only, material) == ()


def test_gestures_and_forms_of_question_have_no_order_among_them() -> None:
    assert difficulty(Target(kind=Kind.GESTURE, name="wave")) is None
    asked = difficulty(Target(kind=Kind.QUESTION, name="who-did-what:active"))
    assert asked is not None
    assert asked[0] != difficulty(match("active"))[0]  # type: ignore[index]


def test_levels_of_cloze_go_by_their_number(material: Material) -> None:
    harder = Target(kind=Kind.CLOZE, name="C4", group="is/are")
    assert {target.name for target in easier_than(harder, PLAN, material)} == {"C3"}


def test_only_what_is_as_hard_is_replaced_and_the_same_seed_deals_the_same(
    material: Material,
) -> None:
    targets = [match("full-passive"), match("active"), match("object-cleft")]
    items = make_items(targets, options=2, material=material, rng=Random(3))
    changed = EasierItems(PLAN, material, seed=5).instead_of(
        items, failed=match("full-passive"), options=2
    )
    assert [item.construction for item in changed] == ["subject-cleft", "active", "subject-cleft"]
    assert changed[1] is items[1]
    again = EasierItems(PLAN, material, seed=5).instead_of(
        items, failed=match("full-passive"), options=2
    )
    assert again == changed


def test_every_construction_has_a_place_in_the_order() -> None:
    assert all(1 <= CONSTRUCTIONS[name].rank <= 10 for name in CONSTRUCTIONS)


def test_a_name_that_its_block_has_not_opened_yet_is_never_the_easier_one(
    material: Material,
) -> None:
    opened = {match("subject-cleft"), match("full-passive"), match("object-cleft")}
    hard = match("subject-cleft")
    assert easier_than(hard, PLAN, material)
    assert easier_than(hard, PLAN, material, opened=opened) == ()
    assert set(easier_than(match("object-cleft"), PLAN, material, opened=opened)) == {
        match("full-passive")
    }
    easier = EasierItems(PLAN, material, seed=5, opened=opened)
    assert not easier.has_any(hard)
    items = make_items([hard, hard], options=2, material=material, rng=Random(3))
    assert easier.instead_of(items, failed=hard, options=2) == items


def test_a_block_that_goes_from_hard_to_easy_never_turns_to_what_waits_in_it(
    material: Material,
) -> None:
    block = replace(PLAN.blocks[0], order=Order.COMPLEX_FIRST)
    plan = replace(PLAN, blocks=(block,))
    (opened,) = open_targets(plan, material, ())
    assert {target.name for target in opened} == {"object-cleft"}
    easier = EasierItems(plan, material, seed=5, opened=set(opened))
    assert not easier.has_any(match("object-cleft"))
