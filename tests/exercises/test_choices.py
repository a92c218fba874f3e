from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.items import Foil, Item, Kind, Option
from drills.core.material import Material
from drills.core.meanings import Act, Place, Relation, Scene
from drills.core.problems import BadInput
from drills.exercises.choices import (
    MATCH_RULES,
    broken,
    content_words,
    kept,
    options_differ,
    picture_of_meaning,
    reversal_offered,
)
from tests.exercises.batches import make, right_scene


@pytest.fixture(scope="module")
def item(material: Material) -> Item:
    (made,) = make(material, Kind.MATCH, "active", count=1, options=4)
    return made


def test_a_made_item_is_kept(item: Item, material: Material) -> None:
    assert kept(item, material, MATCH_RULES) is item


def test_an_item_that_breaks_a_rule_is_never_given(item: Item, material: Material) -> None:
    with pytest.raises(BadInput, match="counts 4 choices by chance where 2 are"):
        kept(replace(item, effective_k=4), material, MATCH_RULES)


def test_a_picture_of_something_else_is_refused(item: Item, material: Material) -> None:
    assert isinstance(item.meaning, Act)
    assert picture_of_meaning(replace(item, meaning=item.meaning.reversed()), material)
    assert reversal_offered(
        replace(item, options=tuple(o for o in item.options if o.foil is not Foil.REVERSAL)),
        material,
    )


def test_two_places_that_look_the_same_are_refused(item: Item, material: Material) -> None:
    """A cup on a box is a box under a cup."""
    on = Place(relation=Relation.ON, thing="cup", landmark="box")
    under = Place(relation=Relation.UNDER, thing="box", landmark="cup")
    options = (
        Option(scene=Scene(meaning=on)),
        Option(scene=Scene(meaning=under), foil=Foil.WORD, why_wrong="false_place"),
    )
    assert options_differ(replace(item, options=options), material)


def test_a_cue_never_takes_the_right_picture_or_the_reversal(
    item: Item, material: Material
) -> None:
    for index, option in enumerate(item.options):
        cues = tuple(replace(cue, removes=(index,)) if cue.removes else cue for cue in item.cues)
        spared = option.foil in (None, Foil.REVERSAL)
        assert bool(broken(replace(item, cues=cues), material, MATCH_RULES)) == spared


def test_content_words_leave_the_small_words_out(material: Material) -> None:
    act = Act(verb="push", doer="nurse", done_to="judge")
    assert content_words(act, material.lexicon) == ("push", "nurse", "judge")
    place = Place(relation=Relation.IN, thing="cup", landmark="box")
    assert content_words(place, material.lexicon) == ("cup", "box")


def test_the_right_picture_stands_where_the_answer_says(item: Item) -> None:
    assert right_scene(item).meaning == item.meaning
