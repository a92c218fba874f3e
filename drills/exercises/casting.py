"""Who plays in a batch of meanings: fresh pairs, each word as often in one part as in the other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from random import Random

Pair = tuple[str, str]
"""Keys of two nouns: the doer and the done-to, or the located thing and its landmark."""


class Casting:
    """Chooses act and pair for one item after another, and remembers what the batch has had.

    pairs: the pairs that suit an act (a verb or a relation) in a group of items.
    """

    def __init__(self, rng: Random, pairs: Callable[[str, str], Sequence[Pair]]) -> None:
        self._rng = rng
        self._make_pairs = pairs
        self._known_pairs: dict[tuple[str, str], Sequence[Pair]] = {}
        self._act_uses: Counter[str] = Counter()
        self._noun_uses: Counter[str] = Counter()
        self._lead: Counter[str] = Counter()
        self._lead_in: Counter[tuple[str, str]] = Counter()
        self._had: Counter[tuple[str, Pair]] = Counter()
        self._last_act = ""
        self._last_pair: Pair = ("", "")

    def choose(self, group: str, acts: Sequence[str]) -> tuple[str, Pair]:
        """An act of `acts` and a pair for it; the two parts are balanced within `group`.

        No word of the item before comes again where that can be. Raises: ValueError when no pair
        suits any of the acts.
        """
        for act in self._acts_in_turn(acts):
            pairs = list(self._pairs(group, act))
            if all(self._shares_noun(pair) for pair in pairs):
                continue
            return self._taken(group, act, self._best(group, act, pairs))
        for act in self._acts_in_turn(acts):
            if pairs := list(self._pairs(group, act)):
                return self._taken(group, act, self._best(group, act, pairs))
        raise ValueError(f"no two words suit {', '.join(acts)}")

    def _pairs(self, group: str, act: str) -> Sequence[Pair]:
        if (group, act) not in self._known_pairs:
            self._known_pairs[group, act] = self._make_pairs(group, act)
        return self._known_pairs[group, act]

    def _acts_in_turn(self, acts: Sequence[str]) -> list[str]:
        order = list(acts)
        self._rng.shuffle(order)
        return sorted(order, key=lambda act: (act == self._last_act, self._act_uses[act]))

    def _shares_noun(self, pair: Pair) -> bool:
        return pair[0] in self._last_pair or pair[1] in self._last_pair

    def _best(self, group: str, act: str, pairs: list[Pair]) -> Pair:
        self._rng.shuffle(pairs)
        return min(pairs, key=lambda pair: self._cost(group, act, pair))

    def _cost(self, group: str, act: str, pair: Pair) -> tuple[int, ...]:
        """Least first: no repeat, parts even in the group and in all, not had, words even."""
        first, second = pair
        here = (self._lead_in[group, first] + 1, self._lead_in[group, second] - 1)
        everywhere = (self._lead[first] + 1, self._lead[second] - 1)
        return (
            int(self._shares_noun(pair)),
            max(0, here[0], -here[1]) > 1,
            max(0, everywhere[0], -everywhere[1]) > 1,
            self._had[act, pair],
            self._noun_uses[first] + self._noun_uses[second],
            here[0] - here[1],
            everywhere[0] - everywhere[1],
        )

    def _taken(self, group: str, act: str, pair: Pair) -> tuple[str, Pair]:
        first, second = pair
        self._act_uses[act] += 1
        self._noun_uses.update(pair)
        self._lead[first] += 1
        self._lead[second] -= 1
        self._lead_in[group, first] += 1
        self._lead_in[group, second] -= 1
        self._had[act, pair] += 1
        self._last_act, self._last_pair = act, pair
        return act, pair
