from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.items import Foil, Item, Kind
from drills.core.material import Material
from drills.core.meanings import Act, Aspect, Place, Relation, Tense, Undergone
from drills.core.problems import BadInput
from drills.exercises.choices import CHOICE_RULES, broken, content_words, fits_words, kept
from drills.language import CONSTRUCTIONS, meanings_of, realise
from tests.exercises.batches import make, right_scene

FORM = ((Tense.PRESENT, Aspect.PROGRESSIVE),)


@pytest.fixture(scope="module")
def item(material: Material) -> Item:
    (made,) = make(material, Kind.MATCH, "active", count=1, options=4)
    return made


def test_a_made_item_is_kept(item: Item, material: Material) -> None:
    assert kept(item, material, CHOICE_RULES) is item


def test_an_item_that_breaks_a_rule_is_never_given(item: Item, material: Material) -> None:
    with pytest.raises(BadInput, match="counts 4 choices by chance where 2 are"):
        kept(replace(item, effective_k=4), material, CHOICE_RULES)


def test_a_cue_never_takes_the_right_picture_or_the_only_reversal(
    item: Item, material: Material
) -> None:
    for index, option in enumerate(item.options):
        cues = tuple(replace(cue, removes=(index,)) if cue.removes else cue for cue in item.cues)
        spared = option.foil in (None, Foil.REVERSAL)
        assert bool(broken(replace(item, cues=cues), material, CHOICE_RULES)) == spared


def test_content_words_leave_the_small_words_out(material: Material) -> None:
    act = Act(verb="push", doer="nurse", done_to="judge")
    assert content_words(act, material.lexicon) == ("push", "nurse", "judge")
    place = Place(relation=Relation.IN, thing="cup", landmark="box")
    assert content_words(place, material.lexicon) == ("cup", "box")
    she = Act(verb="push", doer="woman", done_to="man")
    assert content_words(she, material.lexicon, "subject-pronoun") == ("push",)


def test_content_words_of_every_construction_are_words_of_its_sentence(
    material: Material,
) -> None:
    """A noun or an adjective as it is, a verb and a comparative in some form of it."""
    for name in CONSTRUCTIONS:
        if "kinship" in name:
            continue
        meaning = meanings_of(name, material.lexicon, forms=FORM)[0]
        text = realise(meaning, name, material.lexicon).text.lower().replace("himself", "")
        for word in content_words(meaning, material.lexicon, name):
            assert word[0] in {each[0] for each in text.split()}, (name, word, text)


def test_words_that_a_picture_lacks_leave_it_out(material: Material) -> None:
    told = Undergone(verb="push", done_to="judge")
    assert fits_words(told, Act(verb="push", doer="nurse", done_to="judge"))
    assert fits_words(told, Act(verb="push", doer="judge", done_to="nurse"))
    assert not fits_words(told, Act(verb="pull", doer="nurse", done_to="judge"))
    assert not fits_words(told, Act(verb="push", doer="nurse", done_to="baker"))


def test_the_right_picture_stands_where_the_answer_says(item: Item) -> None:
    assert right_scene(item).meaning == item.meaning
