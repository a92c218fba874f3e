"""Sets in the plan: checks ask these very sentences, whatever else changes."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.items import Item, ItemSet, Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, ProbeSettings
from drills.core.probe_sets import SetExemplar
from drills.core.problems import BadInput
from drills.exercises.probes import BALANCED, asked_in, broken_law
from drills.practice.checks import items_of_check
from drills.practice.dealing import check_plan
from drills.practice.sets import set_reports, with_sets
from drills.schedule.checks import CheckList

PLAN = Plan(
    name="A plan with checks",
    version=1,
    locale="en-US",
    blocks=(BlockPlan(kind=Kind.MATCH, names=("full-passive", "object-cleft"), trials=4),),
    probes=ProbeSettings(
        on=True, related=("object-question-which",), control=("subject-relative",)
    ),
)
A = CheckList(letter="A")


@pytest.fixture(scope="module")
def made(material: Material) -> Plan:
    return with_sets(PLAN, material)


def told(items: tuple[Item, ...]) -> set[tuple[str, ItemSet, str]]:
    """Construction, set and exemplar of each item, by its right picture."""
    found = set()
    for item in items:
        scene = item.options[item.answer or 0].scene
        assert scene is not None
        meaning = getattr(scene.meaning, "act", scene.meaning)
        text = f"{meaning.verb}: {meaning.doer}, {meaning.done_to}"  # type: ignore[union-attr]
        found.add((item.construction, item.item_set, text))
    return found


def in_plan(plan: Plan) -> set[tuple[str, ItemSet, str]]:
    return {
        (each.construction, each.item_set, str(one))
        for each in plan.probes.sets
        for one in each.exemplars
    }


def test_a_check_asks_exactly_what_stands_in_the_plan(made: Plan, material: Material) -> None:
    items = items_of_check(made, material, A)
    assert len(items) == 4 * PLAN.probes.items
    assert told(items) == in_plan(made)
    assert broken_law(items, material.lexicon) == ()
    assert check_plan(made, material) == ()


def test_each_half_of_each_set_has_the_doer_as_often_left_as_right(
    made: Plan, material: Material
) -> None:
    for half in (0, 1):
        items = items_of_check(made, material, CheckList(letter="A", half=half))
        for probe_set in made.probes.sets:
            own = [item for item in items if item.construction == probe_set.construction]
            sides = [item.options[item.answer or 0].scene.side for item in own]  # type: ignore[union-attr]
            assert sides.count(Side.LEFT) == sides.count(Side.RIGHT) == PLAN.probes.items // 4


def test_sets_as_asked_are_alike_in_every_figure(made: Plan, material: Material) -> None:
    reports = set_reports(made, material)
    assert [each.construction for each in reports] == [
        each.construction for each in made.probes.sets
    ]
    for each in reports:
        assert each.furthest <= BALANCED
        assert each.doer_left == PLAN.probes.items // 2
        assert set(each.between) == {other.construction for other in reports} - {each.construction}


def test_other_words_and_another_seed_leave_the_sentences_of_a_set_as_they_are(
    made: Plan, material: Material
) -> None:
    other_seed = replace(made, probes=replace(made.probes, seed=7))
    assert told(items_of_check(other_seed, material, A)) == in_plan(made)
    # Later content: other figures of frequency, and a noun that no set names is gone.
    named = {
        word
        for each in made.probes.sets
        for one in each.exemplars
        for word in (one.first, one.second)
    }
    lexicon = material.lexicon
    gone = next(
        key
        for key, noun in lexicon.nouns.items()
        if key not in named and noun.sort is lexicon.nouns["nurse"].sort
    )
    nouns = {
        key: replace(noun, zipf=noun.zipf / 2) for key, noun in lexicon.nouns.items() if key != gone
    }
    later = replace(material, lexicon=replace(lexicon, nouns=nouns), content_hash="later content")
    assert told(items_of_check(made, later, A)) == in_plan(made)
    # Without sets the seed chooses anew, which is what sets are for.
    assert told(items_of_check(PLAN, later, A)) != told(items_of_check(PLAN, material, A))


def test_the_same_plan_and_seed_make_the_same_sets_and_another_seed_others(
    made: Plan, material: Material
) -> None:
    assert with_sets(made, material) == made
    assert in_plan(with_sets(PLAN, material, seed=2)) != in_plan(made)


def changed(plan: Plan, number: int, exemplar: SetExemplar) -> Plan:
    sets = list(plan.probes.sets)
    sets[number] = replace(sets[number], exemplars=(exemplar, *sets[number].exemplars[1:]))
    return replace(plan, probes=replace(plan.probes, sets=tuple(sets)))


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("push: nurse, farmer", "practice may give this pair"),
        ("push: nurse, unicorn", "the content has no such pair"),
        ("juggle: nurse, farmer", "the content has no such pair"),
        ("push: nurse, cup", "the content has no such pair"),
    ],
)
def test_an_exemplar_that_cannot_be_asked_is_one_sentence(
    text: str, message: str, made: Plan, material: Material
) -> None:
    (problem,) = check_plan(changed(made, 1, SetExemplar.parse(text)), material)
    assert message in problem.message
    assert problem.where == f"set 2, {text}"
    assert "drills plan sets" in problem.mend


def test_a_set_too_many_or_too_few_is_told(made: Plan, material: Material) -> None:
    fewer = replace(made, probes=replace(made.probes, sets=made.probes.sets[:-1]))
    (problem,) = check_plan(fewer, material)
    assert "'subject-relative' is to be checked and has no set" in problem.message
    other = replace(made, probes=replace(made.probes, control=()))
    (problem,) = check_plan(other, material)
    assert problem.where == "set 4"
    assert "no check of this plan asks 'subject-relative' as control" in problem.message


def test_a_treated_set_that_is_practised_no_longer_points_to_finished(
    made: Plan, material: Material
) -> None:
    (block,) = made.blocks
    fewer = replace(made, blocks=(replace(block, names=("object-cleft",)),))
    (problem,) = check_plan(fewer, material)
    assert problem.where == "set 1"
    assert problem.mend.startswith("If it was practised before, name it under finished.")
    probes = replace(made.probes, treated=("object-cleft",), finished=("full-passive",))
    assert check_plan(replace(fewer, probes=probes), material) == ()


def test_a_plan_without_anything_to_check_makes_no_sets(material: Material) -> None:
    bare = replace(PLAN, blocks=(BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=2),))
    bare = replace(bare, probes=ProbeSettings())
    with pytest.raises(BadInput, match="nothing that can be checked"):
        with_sets(bare, material)


def test_places_are_asked_as_they_stand_too(material: Material) -> None:
    plan = replace(
        PLAN,
        blocks=(BlockPlan(kind=Kind.MATCH, names=("locative",), trials=4),),
        probes=ProbeSettings(on=True),
    )
    made = with_sets(plan, material)
    items = items_of_check(made, material, A)
    exemplars = {(each.act, each.pair) for each in asked_in(items, material.lexicon)}
    assert exemplars == {
        (each.act, (each.first, each.second)) for each in made.probes.sets[0].exemplars
    }
