from __future__ import annotations

from collections import Counter
from itertools import pairwise, permutations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.exercises.casting import Casting, Pair

CAST = ("ann", "bob", "cam", "dee", "eve")
"""Invented names."""


def all_pairs(_group: str, _act: str) -> tuple[Pair, ...]:
    return tuple(permutations(CAST, 2))


@given(st.lists(st.sampled_from(["first", "second", "third"]), max_size=60), st.integers(0, 2**32))
@settings(max_examples=60, deadline=None)
def test_everyone_plays_both_parts_equally_often_and_nothing_comes_twice_running(
    groups: list[str], seed: int
) -> None:
    casting = Casting(Random(seed), all_pairs)
    chosen = [casting.choose(group, ("push", "pull")) for group in groups]
    lead: Counter[tuple[str, str]] = Counter()
    for group, (_, (first, second)) in zip(groups, chosen, strict=True):
        lead[group, first] += 1
        lead[group, second] -= 1
    assert all(abs(value) <= 1 for value in lead.values())
    for (act, pair), (next_act, next_pair) in pairwise(chosen):
        assert act != next_act
        assert not set(pair) & set(next_pair)


def test_acts_and_words_come_out_even() -> None:
    casting = Casting(Random(5), all_pairs)
    chosen = [casting.choose("one", ("push", "pull", "lift")) for _ in range(90)]
    acts = Counter(act for act, _ in chosen)
    assert set(acts.values()) == {30}
    uses = Counter(noun for _, pair in chosen for noun in pair)
    assert max(uses.values()) - min(uses.values()) <= 2


def test_two_who_are_alone_play_both_parts_equally_often() -> None:
    casting = Casting(Random(1), lambda _group, _act: (("ann", "bob"), ("bob", "ann")))
    chosen = [casting.choose("one", ("push",))[1] for _ in range(10)]
    assert Counter(chosen) == {("ann", "bob"): 5, ("bob", "ann"): 5}


def test_no_pair_at_all_is_told() -> None:
    casting = Casting(Random(1), lambda _group, _act: ())
    with pytest.raises(ValueError, match="no two words suit push, pull"):
        casting.choose("one", ("push", "pull"))
