from __future__ import annotations

from collections import Counter
from collections.abc import Hashable, Sequence
from itertools import pairwise, product
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from drills.exercises.balance import runs, spread, without_runs

groups = st.lists(st.sampled_from("abc"), max_size=40)
seeds = st.integers(0, 2**32)


def is_even(values: Sequence[Hashable], expected: Sequence[Hashable]) -> bool:
    counts = Counter(values)
    shares = [counts[value] for value in expected]
    return max(shares) - min(shares) <= 1


@given(groups, st.integers(1, 4), seeds)
def test_every_value_comes_equally_often_in_all_and_in_each_group(
    names: list[str], size: int, seed: int
) -> None:
    dealt = spread(Random(seed), names, range(size))
    assert len(dealt) == len(names)
    assert is_even(dealt, range(size))
    for name in set(names):
        here = [value for value, other in zip(dealt, names, strict=True) if other == name]
        assert is_even(here, range(size))


@given(st.lists(st.tuples(st.sampled_from("ab"), st.sampled_from("xyz")), max_size=40), seeds)
def test_a_value_tells_nothing_of_what_it_is_crossed_with(
    pairs: list[tuple[str, str]], seed: int
) -> None:
    names = [name for name, _ in pairs]
    dealt = spread(Random(seed), names, (0, 1), crossed=[other for _, other in pairs])
    for pair in set(pairs):
        here = [value for value, other in zip(dealt, pairs, strict=True) if other == pair]
        assert is_even(here, (0, 1))
    for name in set(names):
        here = [value for value, other in zip(dealt, names, strict=True) if other == name]
        assert is_even(here, (0, 1))


@given(st.integers(0, 60), st.integers(2, 4), st.integers(2, 3), seeds)
def test_a_group_that_can_avoid_long_runs_does(
    count: int, size: int, longest: int, seed: int
) -> None:
    rng, names = Random(seed), ["one"] * count
    order = without_runs(rng, names, lambda: spread(rng, names, range(size)), longest=longest)
    assert runs(order, longest=longest) == []
    assert is_even(order, range(size))


def test_a_batch_that_must_run_comes_back_whole() -> None:
    assert without_runs(Random(1), ["a"] * 4, lambda: [7] * 4, longest=2) == [7] * 4


def test_a_listener_who_always_changes_gains_no_more_than_short_runs_allow() -> None:
    """Short runs make changes likelier; the least that must be is counted, not taken on trust.

    The count is over every sequence of 12 that is even and has no run of three.
    """
    sequences = [
        each for each in product((0, 1), repeat=12) if sum(each) == 6 and not runs(each, longest=2)
    ]
    least = sum(a != b for each in sequences for a, b in pairwise(each)) / (11 * len(sequences))
    rng, names, changes = Random(1), ["one"] * 12, 0
    for _ in range(400):
        order = without_runs(rng, names, lambda: spread(rng, names, (0, 1)), longest=2)
        changes += sum(a != b for a, b in pairwise(order))
    assert changes / (11 * 400) < least + 0.03
