"""Simulated listeners: what each scores says what the items test.

Intervals are the exact binomial ones of scipy.
"""

from __future__ import annotations

from collections.abc import Callable
from random import Random

import pytest
from scipy.stats import binomtest

from drills.catalogue import load_profiles
from drills.core.items import Foil, Item, Kind
from drills.core.material import Material
from drills.rehearsal.patient import Patient
from tests.conftest import ROOT
from tests.exercises.batches import ACTS, make, scene_of
from tests.exercises.dealt import (
    DOER_FIRST,
    DOER_SECOND,
    EVERY,
    ROLES,
    act_shown,
    dealt,
    left_by_roles,
    left_by_words,
    most_alike,
    named_in_order,
)

SURE = 1e-4


def covers(right: int, count: int, chance: float, *, level: float) -> bool:
    interval = binomtest(right, count).proportion_ci(level, method="exact")
    return bool(interval.low <= chance <= interval.high)


@pytest.mark.parametrize("options", [2, 4])
def test_a_listener_who_knows_the_words_and_guesses_roles_is_right_half_the_time(
    material: Material, options: int
) -> None:
    """50 % within the exact 95 % interval on two and on four pictures."""
    rng, right, count = Random(options), 0, 0
    for name in ROLES:
        for item in dealt(material, name, options):
            left = left_by_roles(item)
            assert len(left) == 2
            assert sorted(left_by_words(item)) == left
            right += rng.choice(left) == item.answer
            count += 1
    print(f"{options} pictures, guessing roles: {right} of {count}")
    assert covers(right, count, 0.5, level=0.95)


@pytest.mark.parametrize("options", [2, 3, 4])
def test_the_content_words_leave_as_many_pictures_as_the_item_says(
    material: Material, options: int
) -> None:
    for name in EVERY:
        for item in dealt(material, name, options):
            left = left_by_words(item)
            assert item.answer in left
            assert len(left) == item.effective_k, (name, item.sentence)


def _taking_first_for_doer(item: Item, material: Material) -> int:
    """The picture in which the first noun of the sentence does it to the second."""
    first, second = named_in_order(item, material)
    verb = act_shown(item, item.answer or 0).verb
    for index in range(len(item.options)):
        act = act_shown(item, index)
        if (act.verb, act.doer, act.done_to) == (verb, first, second):
            return index
    raise AssertionError(f"no picture has {first} do it to {second}")


@pytest.mark.parametrize("options", [2, 4])
def test_a_listener_who_takes_the_first_noun_for_the_doer_is_found_out(
    material: Material, options: int
) -> None:
    """100 % where the doer comes first, 0 % elsewhere, and then by the reversal alone.

    Source: Berndt, Mitchum & Haendiges 1996, Cognition 58:289 (both tails are told apart).
    """
    for names, share in ((DOER_FIRST, 1.0), (DOER_SECOND, 0.0)):
        for name in names:
            batch = dealt(material, name, options)
            choices = [_taking_first_for_doer(item, material) for item in batch]
            right = sum(c == item.answer for c, item in zip(choices, batch, strict=True))
            assert right == share * len(batch), name
            for choice, item in zip(choices, batch, strict=True):
                assert item.options[choice].foil in (None, Foil.REVERSAL)


@pytest.mark.parametrize("options", [2, 4])
def test_a_short_passive_takes_such_a_listener_in(material: Material, options: int) -> None:
    """The one noun that is named is taken for the doer: never right."""
    for item in dealt(material, "short-passive", options):
        named = item.words[1]
        verb = item.words[0]
        as_doer = [
            index
            for index in range(options)
            if (act_shown(item, index).verb, act_shown(item, index).doer) == (verb, named)
        ]
        assert [item.options[index].foil for index in as_doer] == [Foil.REVERSAL]


@pytest.mark.parametrize("options", [3, 4])
@pytest.mark.parametrize("name", EVERY)
def test_who_sees_only_the_pictures_finds_the_right_one_no_oftener_than_by_chance(
    name: str, options: int, material: Material
) -> None:
    """The picture most like the others, which may be a foil, against 1 / effective k.

    Each comparison is made four times, since ties are settled by chance.
    """
    rng, right, count, chance = Random(options), 0, 0, 0.0
    for item in dealt(material, name, options):
        chance = 1 / item.effective_k
        for _ in range(4):
            right += most_alike(item, range(options), rng) == item.answer
            count += 1
    assert binomtest(right, count, chance, "greater").pvalue > SURE, (right, count)


@pytest.mark.parametrize("options", [3, 4])
@pytest.mark.parametrize("square", [False, True])
def test_who_compares_the_pictures_that_the_words_leave_is_at_chance(
    material: Material, options: int, *, square: bool
) -> None:
    """Exact 95 % interval around 1 / effective k, over all constructions."""
    rng, right, count, chance = Random(7), 0, 0, 4 if square else 2
    for name in EVERY:
        for item in dealt(material, name, options):
            if item.effective_k == chance:
                right += most_alike(item, left_by_words(item), rng) == item.answer
                count += 1
    if options == 3 and square:
        assert count == 0
        return
    print(f"{options} pictures, {chance} left, comparing them: {right} of {count}")
    assert covers(right, count, 1 / chance, level=0.95)


@pytest.mark.parametrize("place", [0, 1, "left", "right"])
def test_a_listener_who_has_a_favourite_place_or_side_gains_nothing(
    material: Material, place: int | str
) -> None:
    right = count = 0
    for seed in range(4):
        for item in make(material, Kind.MATCH, *ACTS, count=40, seed=seed):
            if isinstance(place, int):
                right += item.answer == place
            else:
                # Of the pictures with the doer on this side, or of both, the first.
                here = [i for i in (0, 1) if scene_of(item, i).side == place] or [0]
                right += item.answer == here[0]
            count += 1
    assert binomtest(right, count, 0.5).pvalue > SURE


Part = Callable[[Item, int], str]


@pytest.mark.parametrize("options", [3, 4])
@pytest.mark.parametrize("part", ["doer", "done_to"])
@pytest.mark.parametrize("name", ROLES)
def test_a_listener_who_trusts_the_part_seen_most_often_is_right_half_the_time(
    material: Material, options: int, part: str, name: str
) -> None:
    """The words leave the target and its reversal; the one whose doer is seen oftener is taken."""
    rng, right, count = Random(options), 0, 0
    for item in dealt(material, name, options):
        seen = [getattr(act_shown(item, index), part) for index in range(options)]
        left = left_by_roles(item)
        rng.shuffle(left)
        right += max(left, key=lambda i: seen.count(seen[i])) == item.answer
        count += 1
    assert binomtest(right, count, 0.5).pvalue > SURE, (right, count)


@pytest.mark.parametrize("options", [2, 4])
def test_every_simulated_patient_answers_every_construction(
    material: Material, options: int
) -> None:
    """Also those whose sentence names one noun, or none."""
    profiles = load_profiles(ROOT / "content" / "profiles.toml")
    for profile in profiles.values():
        patient = Patient(profile, material.lexicon, Random(options))
        for name in EVERY:
            for item in dealt(material, name, options)[:4]:
                choice = patient.choose(item, cue_level=0, removed=frozenset())
                assert choice in range(options)
