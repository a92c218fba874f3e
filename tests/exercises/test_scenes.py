from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.meanings import Act, Relation
from drills.exercises.scenes import (
    act_pairs,
    nouns_like,
    other_verb,
    other_verbs,
    reversible_places,
    verb_groups,
    verbs_of,
)
from drills.pictures import can_draw
from tests.exercises.batches import make, with_few_words


@pytest.mark.parametrize("options", [2, 4])
def test_every_picture_that_is_offered_can_be_drawn(material: Material, options: int) -> None:
    for kind in (Kind.MATCH, Kind.CLOZE):
        for item in make(material, kind, count=100, options=options, seed=options):
            for option in item.options:
                assert option.scene is None or can_draw(option.scene.meaning), option
            assert item.picture is None or can_draw(item.picture.meaning)


def test_a_pair_is_as_likely_one_way_as_the_other(material: Material) -> None:
    for verb in material.lexicon.verbs:
        pairs = act_pairs(material.lexicon, verb)
        assert {pair[::-1] for pair in pairs} == set(pairs)
    for relation in Relation:
        pairs = reversible_places(material.lexicon, relation)
        assert {pair[::-1] for pair in pairs} == set(pairs)


def test_a_group_without_a_cast_is_left_out(material: Material) -> None:
    animals = with_few_words(material, "dog", "goat", "horse").lexicon
    assert [verb for group in verb_groups(animals) for verb in verbs_of(animals, group)] == [
        verb.key for verb in animals.verbs.values() if "animal" in verb.sorts
    ]
    assert verb_groups(with_few_words(material, "dog", "horse", "nurse").lexicon) == ()


def test_a_verb_foil_of_the_same_group_is_the_last_resort(material: Material) -> None:
    act = Act(verb="chase", doer="dog", done_to="goat")
    found = {other_verb(act, material.lexicon, Random(seed)) for seed in range(50)}
    assert {each.verb for each in found if each} == {"push"}
    group = material.lexicon.verbs["chase"].group
    verbs = {key: verb for key, verb in material.lexicon.verbs.items() if verb.group == group}
    few = replace(material.lexicon, verbs=verbs)
    found = {other_verb(act, few, Random(seed)) for seed in range(50)}
    assert {each.verb for each in found if each} == {"follow"}
    alone = replace(material.lexicon, verbs={"chase": verbs["chase"]})
    assert other_verb(act, alone, Random(1)) is None


def test_every_other_verb_is_drawn_of_the_same_two(material: Material) -> None:
    for verb in other_verbs(material.lexicon, "push", "nurse", "judge"):
        assert can_draw(Act(verb=verb, doer="nurse", done_to="judge"))
        assert verb != "push"


def test_a_noun_like_another_has_its_sort_and_size(material: Material) -> None:
    nouns = material.lexicon.nouns
    for key in ("nurse", "dog", "cup", "boy"):
        for other in nouns_like(material.lexicon, key):
            assert other != key
            assert (nouns[other].sort, nouns[other].size) == (nouns[key].sort, nouns[key].size)
    # The one cat has no animal of its size.
    assert nouns_like(material.lexicon, "cat")
    assert nouns_like(with_few_words(material, "nurse", "cup").lexicon, "nurse") == ()
