"""Planted violations: each is caught by the very rule that forbids it, and by no other."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest

from drills.core.items import Foil, Item, Kind, Option
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Place, Relation, Scene
from drills.core.problems import BadInput
from drills.exercises.choices import (
    Rule,
    broken,
    chance_counted,
    kept,
    one_right_option,
    options_differ,
    reasons_given,
)
from drills.exercises.match.rules import (
    MATCH_RULES,
    answers_stand_everywhere,
    foils_are_of_their_kind,
    only_the_answer_is_true,
    sides_are_even,
    told_apart,
    twin_offered,
    twin_stays,
)
from tests.exercises.batches import make
from tests.exercises.dealt import dealt, shown


@pytest.fixture(scope="module")
def item(material: Material) -> Item:
    (made,) = make(material, Kind.MATCH, "active", count=1, options=4)
    return made


def with_option(item: Item, index: int, **changes: object) -> Item:
    options = list(item.options)
    options[index] = replace(options[index], **changes)  # type: ignore[arg-type]
    return replace(item, options=tuple(options))


def of_kind(item: Item, foil: Foil | None) -> int:
    return [option.foil for option in item.options].index(foil)


def scene(meaning: object, side: Side = Side.LEFT) -> Scene:
    return Scene(meaning=meaning, side=side)  # type: ignore[arg-type]


def caught_by(item: Item, material: Material) -> set[Rule]:
    return {rule for rule in MATCH_RULES if rule(item, material)}


def _told(item: Item) -> Act:
    assert isinstance(item.meaning, Act)
    return item.meaning


# Each plants one thing; the rules named are those that must object.
PLANTED: tuple[tuple[str, Callable[[Item], Item], Sequence[Rule]], ...] = (
    (
        "two right answers",
        lambda item: with_option(item, of_kind(item, Foil.VERB), foil=None, why_wrong=None),
        (one_right_option,),
    ),
    (
        "a right answer with a reason",
        lambda item: with_option(item, item.answer or 0, why_wrong="false_role"),
        (reasons_given,),
    ),
    (
        "a foil without a reason",
        lambda item: with_option(item, of_kind(item, Foil.VERB), why_wrong=None),
        (reasons_given,),
    ),
    (
        "a foil that shows what the sentence says",
        lambda item: with_option(
            item, of_kind(item, Foil.NOUN), scene=scene(replace(_told(item), when=None))
        ),
        (only_the_answer_is_true, options_differ, foils_are_of_their_kind),
    ),
    (
        "an answer that is the reversal",
        lambda item: with_option(item, item.answer or 0, scene=scene(_told(item).reversed())),
        (only_the_answer_is_true, options_differ),
    ),
    (
        "no twin",
        lambda item: with_option(
            item,
            of_kind(item, Foil.REVERSAL),
            foil=Foil.NOUN,
            scene=scene(replace(_told(item), doer="sailor", done_to="baker")),
        ),
        (twin_offered, chance_counted),
    ),
    (
        "a reversal that is called a noun",
        lambda item: with_option(item, of_kind(item, Foil.NOUN), foil=Foil.REVERSAL),
        (foils_are_of_their_kind,),
    ),
    (
        "chance taken for one in four",
        lambda item: replace(item, effective_k=4),
        (chance_counted,),
    ),
    (
        "help that takes the twin away",
        lambda item: replace(
            item,
            cues=tuple(
                replace(cue, removes=(of_kind(item, Foil.REVERSAL),)) if cue.removes else cue
                for cue in item.cues
            ),
        ),
        (twin_stays,),
    ),
)


@pytest.mark.parametrize(
    ("plant", "rules"), [each[1:] for each in PLANTED], ids=[each[0] for each in PLANTED]
)
def test_a_planted_violation_is_caught_by_its_rule(
    plant: Callable[[Item], Item], rules: Sequence[Rule], item: Item, material: Material
) -> None:
    assert caught_by(item, material) == set()
    assert set(rules) <= caught_by(plant(item), material)
    with pytest.raises(BadInput):
        kept(plant(item), material, MATCH_RULES)


def test_two_lifted_who_look_alike_are_refused(material: Material) -> None:
    """Only by the rule of contrast: the pictures differ in meaning, and hardly to the eye."""
    (item,) = make(material, Kind.MATCH, "active", count=1)
    lift = Act(verb="lift", doer="baker", done_to="waiter")
    options = (
        Option(scene=scene(lift)),
        Option(scene=scene(lift.reversed()), foil=Foil.REVERSAL, why_wrong="false_role"),
    )
    planted = replace(item, meaning=lift, options=options, answer=0)
    assert caught_by(planted, material) == {told_apart}
    turned = with_option(planted, 1, scene=scene(lift.reversed(), Side.RIGHT))
    assert caught_by(turned, material) == set()


def test_another_act_is_refused_beside_what_does_not_happen(material: Material) -> None:
    """ "The judge is not lifting the farmer" is true of a judge who pushes the farmer."""
    item = dealt(material, "negation", 4)[0]
    told = _told(item)
    verb = "push" if told.verb != "push" else "pull"
    planted = with_option(
        item,
        of_kind(item, Foil.NOUN),
        foil=Foil.VERB,
        why_wrong="false_act",
        scene=scene(replace(told, verb=verb, negated=False)),
    )
    assert only_the_answer_is_true in caught_by(planted, material)


def test_a_third_one_who_did_it_is_refused_beside_a_question(material: Material) -> None:
    """ "Who pushed the baker?" is answered by anyone who is seen to push the baker."""
    item = dealt(material, "subject-question", 4)[0]
    right = shown(item, item.answer or 0)
    act = right.act  # type: ignore[union-attr]
    someone = next(
        key for key in ("nurse", "judge", "sailor") if key not in (act.doer, act.done_to)
    )
    other = replace(right, act=replace(act, doer=someone))  # type: ignore[call-arg, type-var]
    planted = with_option(item, of_kind(item, Foil.NOUN), scene=scene(other))
    assert only_the_answer_is_true in caught_by(planted, material)


def test_two_places_that_look_the_same_are_refused(item: Item, material: Material) -> None:
    """A cup on a box is a box under a cup."""
    on = Place(relation=Relation.ON, thing="cup", landmark="box")
    under = Place(relation=Relation.UNDER, thing="box", landmark="cup")
    options = (
        Option(scene=scene(on)),
        Option(scene=scene(under), foil=Foil.WORD, why_wrong="false_place"),
    )
    assert options_differ(replace(item, options=options), material)


def test_answers_that_stand_in_one_place_are_caught(material: Material) -> None:
    batch = dealt(material, "active", 2)
    assert answers_stand_everywhere(batch) == ()
    first = [replace(each, answer=0) for each in batch]
    assert answers_stand_everywhere(first)
    even_but_running = sorted(batch, key=lambda each: each.answer or 0)
    assert "running" in str(answers_stand_everywhere(even_but_running)[0])


def test_doers_that_stand_on_one_side_are_caught(material: Material) -> None:
    batch = dealt(material, "active", 2)
    assert sides_are_even(batch) == ()
    left = [
        with_option(each, each.answer or 0, scene=scene(shown(each, each.answer or 0), Side.LEFT))
        for each in batch
    ]
    assert sides_are_even(left)


def test_an_item_that_breaks_a_rule_is_never_given(item: Item, material: Material) -> None:
    assert broken(item, material, MATCH_RULES) == ()
    with pytest.raises(BadInput, match="counts 4 choices by chance where 2 are"):
        kept(replace(item, effective_k=4), material, MATCH_RULES)
