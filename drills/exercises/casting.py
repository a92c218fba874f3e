"""Who plays in a batch of meanings: fresh pairs, each word as often in one part as in the other."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from random import Random

Pair = tuple[str, str]
"""Keys of two nouns: the doer and the done-to, or the located thing and its landmark."""

_ANEW = 8
"""Most pairs of one act that are asked about before the next act has its turn."""


_EVEN = 3
"""How many terms of a pair's cost say whether the parts stay even."""


def _any_suits(_act: str, _pair: Pair) -> bool:
    return True


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

    def choose(
        self,
        group: str,
        acts: Sequence[str],
        suits: Callable[[str, Pair], bool] = _any_suits,
        *,
        must_suit: bool = False,
    ) -> tuple[str, Pair]:
        """An act of `acts` and a pair for it; the two parts are balanced within `group`.

        suits: asked of the act and the pair; what it turns down is dealt anew while something is
        left to deal. No word of the item before comes again where that can be.
        must_suit: rather nothing than what was turned down.
        Raises: ValueError when no pair suits any of the acts.
        """
        first: tuple[str, Pair] | None = None
        for act, order in self._deals(group, acts):
            first = first or (act, order[0])
            for pair in order[:_ANEW]:
                if suits(act, pair):
                    return self._taken(group, act, pair)
        if first is None or must_suit:
            raise ValueError(f"no two words suit {', '.join(acts)}")
        return self._taken(group, *first)

    def _deals(self, group: str, acts: Sequence[str]) -> Iterator[tuple[str, list[Pair]]]:
        """Each act with its pairs, best first; acts that must repeat a word come last."""
        stale = []
        for act in self._acts_in_turn(acts):
            pairs = list(self._pairs(group, act))
            if pairs and all(self._shares_noun(pair) for pair in pairs):
                stale.append((act, pairs))
            elif pairs:
                yield act, self._best(group, act, pairs)
        for act, pairs in stale:
            yield act, self._best(group, act, pairs)

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

    def _best(self, group: str, act: str, pairs: list[Pair]) -> list[Pair]:
        """The best pair, then those that keep the parts as even as it does."""
        self._rng.shuffle(pairs)
        costs = {pair: self._cost(group, act, pair) for pair in pairs}
        order = sorted(pairs, key=lambda pair: costs[pair])
        return [pair for pair in order if costs[pair][:_EVEN] == costs[order[0]][:_EVEN]]

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
