"""Probe lists: never practised, like what is practised, balanced in every half."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import pairwise
from random import Random

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drills.core.clauses import clauses_of
from drills.core.items import Item, ItemSet, Kind
from drills.core.material import Material
from drills.core.meanings import Act, Described, Place
from drills.core.plans import PROBED, BlockPlan, Probed
from drills.exercises import make_items, names_of, targets_of
from drills.exercises.match import FAMILIES
from drills.exercises.match.rules import MATCH_RULES
from drills.exercises.probes import (
    BALANCED,
    ORDERS,
    ProbeItems,
    asked_in,
    broken_law,
    differences,
    exemplars_of,
    ordered,
    probe_items,
    shared,
)
from drills.exercises.probes.choosing import chosen_for
from drills.exercises.reserve import (
    exemplar_in,
    exemplar_key,
    exemplar_of,
    is_reserved,
    open_pairs,
)
from drills.exercises.scenes import verb_groups

ASKED = (
    Probed(construction="full-passive", item_set=ItemSet.PROBE),
    Probed(construction="object-question-which", item_set=ItemSet.RELATED),
    Probed(construction="locative", item_set=ItemSet.CONTROL),
)
ITEMS = 20
TOLD_BY_PAIRS = ("who-did-what", "yes-no", "what-happened")


@pytest.fixture(scope="module")
def probes(material: Material) -> ProbeItems:
    return probe_items(ASKED, material, items=ITEMS, options=2, seed=1)


def of(items: tuple[Item, ...], name: str) -> list[Item]:
    return [item for item in items if item.construction == name]


def lead(item: Item) -> tuple[str, str]:
    """Who does it and who has it done, or what is where."""
    assert item.answer is not None
    scene = item.options[item.answer].scene
    assert scene is not None
    meaning = scene.meaning.act if isinstance(scene.meaning, Described) else scene.meaning
    if isinstance(meaning, Place):
        return meaning.thing, meaning.landmark
    assert isinstance(meaning, Act)
    return meaning.doer, meaning.done_to


def test_each_construction_has_its_items_in_its_set_without_any_help(probes: ProbeItems) -> None:
    for asked in ASKED:
        items = of(probes.all, asked.construction)
        assert len(items) == ITEMS
        assert {item.item_set for item in items} == {asked.item_set}
        assert all(item.is_probe and not item.cues and item.effective_k == 2 for item in items)
    assert len({item.id for item in probes.all}) == len(probes.all)


def test_a_probe_holds_the_rules_of_every_other_item(
    probes: ProbeItems, material: Material
) -> None:
    # All but the ladder of help, which a probe has none of.
    rules = [rule for rule in MATCH_RULES if rule.__name__ not in ("ladder_climbs", "twin_stays")]
    assert len(rules) >= len(MATCH_RULES) - 2
    for item in probes.all:
        assert [problem for rule in rules for problem in rule(item, material)] == []


def test_no_two_probe_items_share_a_pair_in_an_act(probes: ProbeItems) -> None:
    assert max(Counter(map(exemplar_in, probes.all)).values()) == 1


def test_the_same_seed_makes_the_same_items_and_another_seed_others(
    probes: ProbeItems, material: Material
) -> None:
    again = probe_items(ASKED[:1], material, items=ITEMS, options=2, seed=1)
    other = probe_items(ASKED[:1], material, items=ITEMS, options=2, seed=2)
    own = {item.id for item in of(probes.all, "full-passive")}
    assert {item.id for item in again.all} == own
    assert {item.id for item in other.all} != own


@pytest.mark.parametrize("seed", [1, 2, 3])
@pytest.mark.parametrize("name", PROBED)
def test_what_is_chosen_is_like_what_is_practised_in_every_figure(
    name: str, seed: int, material: Material
) -> None:
    before = PROBED[: PROBED.index(name)][-4:]
    chosen = chosen_for(name, material.lexicon, items=ITEMS, seed=seed, after=before)
    practised = exemplars_of(name, material.lexicon, reserved=False)
    apart = differences(chosen.exemplars, practised)
    assert len(chosen.exemplars) == ITEMS
    assert {name: value for name, value in apart.items() if abs(value) > BALANCED} == {}
    # The figures once more by numpy, from the words themselves.
    nouns, verbs = material.lexicon.nouns, material.lexicon.verbs

    def frequencies(exemplars: object) -> list[float]:
        return [
            float(
                np.mean(
                    [nouns[key].zipf for key in each.pair]
                    + ([verbs[each.act].zipf] if each.act in verbs else [])
                )
            )
            for each in exemplars  # type: ignore[attr-defined]
        ]

    one, other = frequencies(chosen.exemplars), frequencies(practised)
    scale = np.sqrt((np.var(one, ddof=1) + np.var(other, ddof=1)) / 2)
    assert apart["frequency"] == pytest.approx((np.mean(one) - np.mean(other)) / scale, abs=1e-9)


def test_the_items_really_asked_stay_like_practice_spares_included(
    probes: ProbeItems, material: Material
) -> None:
    for asked in ASKED:
        items = of(probes.all, asked.construction)
        apart = differences(
            asked_in(items, material.lexicon),
            exemplars_of(asked.construction, material.lexicon, reserved=False),
        )
        assert max(map(abs, apart.values())) <= BALANCED


def test_probe_sentences_are_as_long_as_practised_ones(
    probes: ProbeItems, material: Material
) -> None:
    for asked in ASKED:
        block = BlockPlan(kind=Kind.MATCH, names=(asked.construction,), trials=1)
        targets = targets_of(block, material)
        practised = make_items(
            tuple(targets) * (40 // len(targets)), options=2, material=material, rng=Random(5)
        )
        own = {len(item.sentence.split()) for item in of(probes.all, asked.construction)}
        assert own <= {len(item.sentence.split()) for item in practised} | {7, 8}


def test_each_half_is_even_in_places_sides_words_and_verbs(probes: ProbeItems) -> None:
    for half in probes.halves:
        for asked in ASKED:
            items = of(half, asked.construction)
            assert len(items) == ITEMS // 2
            places = Counter(item.answer for item in items)
            sides = Counter(
                item.options[item.answer].scene.side  # type: ignore[index, union-attr]
                for item in items
            )
            assert set(places.values()) == {ITEMS // 4}
            assert set(sides.values()) == {ITEMS // 4}
            ahead: Counter[str] = Counter()
            for item in items:
                leads, follows = lead(item)
                ahead[leads] += 1
                ahead[follows] -= 1
            assert max(map(abs, ahead.values())) <= 2
    for asked in ASKED[:2]:
        groups = [
            Counter(item.target.group for item in of(half, asked.construction))
            for half in probes.halves
        ]
        for group in groups[0] | groups[1]:
            assert abs(groups[0][group] - groups[1][group]) <= 2


@pytest.mark.parametrize("name", PROBED)
def test_as_chosen_every_word_leads_as_often_as_it_follows_in_each_half(
    name: str, material: Material
) -> None:
    for half in chosen_for(name, material.lexicon, items=ITEMS, seed=4).halves:
        ahead: Counter[str] = Counter()
        for exemplar in half:
            ahead[exemplar.pair[0]] += 1
            ahead[exemplar.pair[1]] -= 1
        assert max(map(abs, ahead.values())) <= 1


@pytest.mark.parametrize("order", ORDERS)
def test_each_order_has_the_same_items_in_even_halves_and_no_long_runs(
    order: str, probes: ProbeItems
) -> None:
    halves = ordered(probes, order, seed=1)
    assert {frozenset(item.id for item in half) for half in halves} == {
        frozenset(item.id for item in half) for half in probes.halves
    }
    for half in halves:
        for index in range(3, len(half)):
            four = half[index - 3 : index + 1]
            assert len({item.construction for item in four}) > 1
            assert len({item.answer for item in four}) > 1
        assert all(one.words[0] != other.words[0] for one, other in pairwise(half))


def test_the_three_orders_are_fixed_and_differ(probes: ProbeItems) -> None:
    orders, again = (
        [[[item.id for item in half] for half in ordered(probes, each, seed=1)] for each in ORDERS]
        for _ in range(2)
    )
    assert orders == again
    assert orders[0] != orders[1] != orders[2] != orders[0]


# The law


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(seed=st.integers(0, 2**31), kind=st.sampled_from([Kind.MATCH, Kind.ACT_OUT, Kind.QUESTION]))
def test_nothing_practised_is_ever_probed_nor_the_other_way_round(
    seed: int, kind: Kind, material: Material, probes: ProbeItems
) -> None:
    rng = Random(seed)
    names = [
        name
        for name in names_of(kind, material)
        if kind is not Kind.QUESTION or name.partition(":")[0] in TOLD_BY_PAIRS
    ]
    targets = targets_of(BlockPlan(kind=kind, names=tuple(names), trials=1), material)
    items = make_items(rng.sample(targets, 20), options=2, material=material, rng=rng)
    assert broken_law((*items, *probes.all), material.lexicon) == ()
    assert shared(items, probes.all) == ()


@pytest.mark.parametrize("seed", [1, 2, 3])
def test_a_missing_word_is_never_asked_of_what_is_kept_for_probes(
    seed: int, material: Material, probes: ProbeItems
) -> None:
    names = names_of(Kind.CLOZE, material)
    targets = targets_of(BlockPlan(kind=Kind.CLOZE, names=tuple(names), trials=1), material)
    items = make_items(tuple(targets) * 6, options=2, material=material, rng=Random(seed))
    kept = [
        item
        for item in items
        if (each := exemplar_in(item)) and is_reserved(each, material.lexicon)
    ]
    assert sum(exemplar_in(item) is not None for item in items) > 20
    assert [item.sentence for item in kept] == []
    assert shared(items, probes.all) == ()
    told = [
        exemplar_key(clause.verb, (clause.subject.noun, clause.object.noun))
        for item in items
        if item.told is not None
        for clause in clauses_of(item.told)
        if clause.subject and clause.object and not clause.object.is_pronoun
    ]
    assert [each for each in told if is_reserved(each, material.lexicon)] == []


def test_what_is_planted_on_either_side_is_caught(probes: ProbeItems, material: Material) -> None:
    lexicon = material.lexicon
    practised = replace(probes.all[0], item_set=ItemSet.TREATED)
    assert len(broken_law([practised], lexicon)) == 1
    assert len(shared([practised], probes.all)) == 1
    block = BlockPlan(kind=Kind.MATCH, names=("active",), trials=1)
    fresh = make_items(targets_of(block, material)[:1], options=2, material=material, rng=Random(1))
    probed = replace(fresh[0], item_set=ItemSet.PROBE)
    assert len(broken_law([probed], lexicon)) == 1
    assert len(shared(fresh, [probed])) == 1


def test_the_reserve_is_closed_under_reversal_and_about_one_in_eight(material: Material) -> None:
    lexicon = material.lexicon
    every = [
        each for flag in (True, False) for each in exemplars_of("active", lexicon, reserved=flag)
    ]
    reserved = 0
    for each in every:
        act = Act(verb=each.act, doer=each.pair[0], done_to=each.pair[1])
        one, other = exemplar_of(act), exemplar_of(act.reversed())
        assert one is not None
        assert one == other
        reserved += is_reserved(one, lexicon)
    assert 0.10 < reserved / len(every) < 0.15


def test_practice_keeps_words_for_every_construction_and_group(material: Material) -> None:
    lexicon = material.lexicon
    for name, family in FAMILIES.items():
        for group in verb_groups(lexicon) if family.grouped else ("",):
            acts = family.acts(lexicon, name, group, False)
            open_to = [open_pairs(family.pairs(lexicon, name, act), act, lexicon) for act in acts]
            assert not acts or any(open_to), (name, group)


def test_too_small_a_reserve_is_refused(material: Material) -> None:
    with pytest.raises(ValueError, match="exemplars"):
        chosen_for("locative", material.lexicon, items=400, seed=1)
