"""Which exemplars a construction is probed with: a few of the reserve, like all the practised."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from random import Random

from drills.core.items import Item
from drills.core.meanings import Act, Described, Place
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.match import FAMILIES
from drills.exercises.probes.matching import (
    Row,
    Spread,
    choose,
    difference,
    quotas,
    spread_of,
)
from drills.exercises.reserve import exemplar_key, is_reserved
from drills.exercises.scenes import verb_groups

BALANCED = 0.1
"""Standardised differences up to this count as none (Austin 2009, see `matching.difference`)."""

SPARES = 4
"""Further exemplars for each half of a list, should pictures be too alike on either side."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Exemplar:
    """One sentence of a construction, apart from where and when.

    group: its verb group, "" where a target has none.   stratum: what it counts as when verbs
    are shared out: the group, else the act itself.
    letters: of its content words.   zipf: their mean frequency.
    """

    act: str
    pair: Pair
    group: str
    stratum: str
    letters: int
    zipf: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """The exemplars of one construction.

    halves: two of one size, each even in acts and in who does it.   spares: for each half.
    """

    construction: str
    halves: tuple[tuple[Exemplar, ...], tuple[Exemplar, ...]]
    spares: tuple[Exemplar, ...]

    @property
    def exemplars(self) -> tuple[Exemplar, ...]:
        return (*self.halves[0], *self.halves[1])


@lru_cache(maxsize=64)
def exemplars_of(construction: str, lexicon: Lexicon, *, reserved: bool) -> tuple[Exemplar, ...]:
    """All that can be asked of a construction: what is kept for probes, or what is practised.

    Both orders of a pair are in it.   Raises: KeyError for a construction without pictures.
    """
    family = FAMILIES[construction]
    groups = verb_groups(lexicon) if family.grouped else ("",)
    return tuple(
        _exemplar(act, pair, group, lexicon)
        for group in groups
        for act in family.acts(lexicon, construction, group, False)
        for pair in family.pairs(lexicon, construction, act)
        if is_reserved(exemplar_key(act, pair), lexicon) is reserved
    )


@lru_cache(maxsize=64)
def chosen_for(
    construction: str, lexicon: Lexicon, *, items: int, seed: int, after: tuple[str, ...] = ()
) -> Chosen:
    """The exemplars that a construction is probed with, always the same for the same words.

    items: how many, an even number.   after: constructions whose exemplars it must not share.
    Raises: ValueError when the reserve has too few.
    """
    used = {
        exemplar_key(each.act, each.pair)
        for number, name in enumerate(after)
        for each in _taken(chosen_for(name, lexicon, items=items, seed=seed, after=after[:number]))
    }
    practised = exemplars_of(construction, lexicon, reserved=False)
    # A pair once, in one order; which word does it is settled below.
    fresh = [
        each
        for each in each_once(exemplars_of(construction, lexicon, reserved=True))
        if exemplar_key(each.act, each.pair) not in used
    ]
    rng = Random(f"{seed} {construction} probes")
    taken = quotas_for(practised, fresh, items)
    rows = [as_row(each) for each in fresh]
    picked = [fresh[index] for index in choose(rows, references(practised), taken, rng)]
    halves = halves_of(picked, rng)
    spares = spares_of([each for each in fresh if each not in picked], rng)
    return Chosen(construction=construction, halves=halves, spares=spares)


def spares_of(rest: Sequence[Exemplar], rng: Random) -> tuple[Exemplar, ...]:
    return tuple(rng.sample(rest, min(len(rest), 2 * SPARES)))


def quotas_for(
    practised: Sequence[Exemplar], fresh: Sequence[Exemplar], items: int
) -> dict[str, int]:
    """How many of each stratum: shared out as in practice, as far as the fresh ones go.

    Raises: ValueError when there are too few.
    """
    return _fitting(quotas(Counter(each.stratum for each in practised), items), fresh)


def each_once(exemplars: Sequence[Exemplar]) -> list[Exemplar]:
    """Each pair in one order; of two acts that look the same, behind and in front, by turns one."""
    found: dict[tuple[str, frozenset[str]], list[Exemplar]] = {}
    for each in exemplars:
        if each.pair[0] < each.pair[1]:
            found.setdefault(exemplar_key(each.act, each.pair), []).append(each)
    return [acts[turn % len(acts)] for turn, acts in enumerate(found.values())]


def references(practised: Sequence[Exemplar]) -> tuple[Spread, ...]:
    """What the chosen ones should be like: letters and frequency of what is practised."""
    return (
        spread_of([each.letters for each in practised]),
        spread_of([each.zipf for each in practised]),
    )


def differences(chosen: Sequence[Exemplar], practised: Sequence[Exemplar]) -> dict[str, float]:
    """Standardised mean differences of letters, of frequency and of the share of each stratum."""
    found = {
        "letters": _apart([each.letters for each in chosen], [each.letters for each in practised]),
        "frequency": _apart([each.zipf for each in chosen], [each.zipf for each in practised]),
    }
    for name in dict.fromkeys(each.stratum for each in practised):
        found[name] = _apart(
            [float(each.stratum == name) for each in chosen],
            [float(each.stratum == name) for each in practised],
        )
    return found


def asked_in(items: Sequence[Item], lexicon: Lexicon) -> tuple[Exemplar, ...]:
    """The exemplars of probe items of one construction, spares that came in included.

    The word that leads, who does it or what is there, is the first of the pair.
    """
    known = {
        (each.act, each.pair): each
        for each in exemplars_of(items[0].construction, lexicon, reserved=True)
    }
    return tuple(known[_act_and_words(item)] for item in items)


def _act_and_words(item: Item) -> tuple[str, Pair]:
    right = None if item.answer is None else item.options[item.answer].scene
    meaning = None if right is None else right.meaning
    if isinstance(meaning, Described):
        meaning = meaning.act
    if isinstance(meaning, Act):
        return meaning.verb, (meaning.doer, meaning.done_to)
    if isinstance(meaning, Place):
        return str(meaning.relation), (meaning.thing, meaning.landmark)
    raise TypeError(f"no probe shows {meaning}")


def _apart(one: Sequence[float], other: Sequence[float]) -> float:
    return difference(spread_of(one), spread_of(other))


def _taken(chosen: Chosen) -> tuple[Exemplar, ...]:
    return (*chosen.exemplars, *chosen.spares)


def _exemplar(act: str, pair: Pair, group: str, lexicon: Lexicon) -> Exemplar:
    nouns = [lexicon.nouns[key] for key in pair]
    letters = sum(len(noun.singular) for noun in nouns)
    frequencies = [noun.zipf for noun in nouns]
    if act in lexicon.verbs:
        letters += len(lexicon.verbs[act].past)
        frequencies.append(lexicon.verbs[act].zipf)
    else:
        letters += len(act.replace(" ", ""))
    return Exemplar(
        act=act,
        pair=pair,
        group=group,
        stratum=group or act,
        letters=letters,
        zipf=sum(frequencies) / len(frequencies),
    )


def as_row(exemplar: Exemplar) -> Row:
    return Row(
        stratum=exemplar.stratum,
        figures=(exemplar.letters, exemplar.zipf),
        tags=(exemplar.act, *exemplar.pair),
    )


def _fitting(shares: dict[str, int], fresh: Sequence[Exemplar]) -> dict[str, int]:
    """The shares, with what one stratum cannot give moved to those that can.

    Raises: ValueError when all together have too few.
    """
    held = Counter(each.stratum for each in fresh)
    if sum(held.values()) < sum(shares.values()):
        raise ValueError(f"there are {sum(held.values())} exemplars for probes")
    fitting = {name: min(share, held[name]) for name, share in shares.items()}
    for _ in range(sum(shares.values()) - sum(fitting.values())):
        roomiest = max(fitting, key=lambda name: (held[name] - fitting[name], name))
        fitting[roomiest] += 1
    return fitting


def halves_of(
    picked: Sequence[Exemplar], rng: Random
) -> tuple[tuple[Exemplar, ...], tuple[Exemplar, ...]]:
    """Two halves, each with as much of every act, and each word as often doer as done-to."""
    ordered = sorted(picked, key=lambda each: (each.stratum, each.act, each.pair))
    # One by one to either half keeps groups and acts even; the odd ones of a group alternate.
    one, other = ordered[::2], ordered[1::2]
    return _turned(one, rng), _turned(other, rng)


def _turned(half: Sequence[Exemplar], rng: Random) -> tuple[Exemplar, ...]:
    """Each pair turned so that every word leads as often as it follows, within one.

    A walk along pairs that share a word turns each the way it is passed (such a walk exists in any
    graph: Euler); where a walk ends, its word is one ahead or behind, and no word ends two.
    """
    open_ones = list(half)
    rng.shuffle(open_ones)
    turned: list[Exemplar] = []
    while open_ones:
        uses = Counter(word for each in open_ones for word in each.pair)
        odd = sorted(word for word, count in uses.items() if count % 2)
        word = odd[0] if odd else open_ones[0].pair[0]
        while step := next((each for each in open_ones if word in each.pair), None):
            open_ones.remove(step)
            follower = step.pair[1] if step.pair[0] == word else step.pair[0]
            turned.append(_led_by(step, word, follower))
            word = follower
    return tuple(turned)


def _led_by(exemplar: Exemplar, leader: str, follower: str) -> Exemplar:
    return replace(exemplar, pair=(leader, follower))
