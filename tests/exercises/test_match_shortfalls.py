from __future__ import annotations

from dataclasses import replace
from random import Random

from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Scene
from drills.exercises.match.shortfalls import shortfalls
from drills.pictures import tells_apart
from tests.exercises.batches import right_scene, scene_of
from tests.exercises.dealt import dealt


def test_what_falls_short_is_listed_by_act(material: Material) -> None:
    """Held against the picture room's own measure of two scenes."""
    listed = {
        (each.act, each.keeps): each
        for each in shortfalls("active", material.lexicon, Random(1), options=2, sample=6)
    }
    assert all(0 <= each.told < each.asked for each in listed.values())
    lift = Act(verb="lift", doer="baker", done_to="waiter")
    assert not tells_apart(
        Scene(meaning=lift), Scene(meaning=lift.reversed()), columns=38, lines=15
    )
    assert ("lift", False) in listed
    assert ("push", True) not in listed


def test_him_and_himself_are_told_apart_in_large_pictures_only_when_turned_round(
    material: Material,
) -> None:
    found = list(shortfalls("pronoun-reference", material.lexicon, Random(1), options=2, sample=2))
    same_way = [each for each in found if not each.keeps]
    assert same_way
    assert all(each.is_whole for each in same_way)
    for item in dealt(material, "pronoun-reference", 2):
        assert {scene_of(item, 0).side, scene_of(item, 1).side} == set(Side)
        assert right_scene(item).side in Side


def test_what_falls_short_in_one_way_is_dealt_in_the_other(material: Material) -> None:
    """Who is pointed at looks like the same one in the twin, unless the picture is turned round."""
    for item in dealt(material, "subject-question", 2):
        right, twin = right_scene(item), scene_of(item, 1 - (item.answer or 0))
        same_side = replace(twin, side=right.side)
        if not tells_apart(right, same_side, columns=38, lines=15):
            assert twin.side is not right.side
