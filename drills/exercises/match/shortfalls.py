"""Which acts of a construction fall short: too like their twin at the size they are shown.

A deal passes them over by itself, meaning by meaning; here they are counted and listed.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from random import Random

from drills.core.kinds import Side
from drills.core.meanings import Scene
from drills.core.words import Lexicon
from drills.exercises.match.families import FAMILIES
from drills.exercises.match.family import Case, Wish
from drills.exercises.scenes import verb_groups
from drills.exercises.showing import are_unlike, lines_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Shortfall:
    """Of `asked` meanings of an act, `told` can be told from their twin.

    keeps: all stand in the same place in both pictures, so that the twin is turned round.
    """

    construction: str
    act: str
    options: int
    keeps: bool
    told: int
    asked: int

    @property
    def is_whole(self) -> bool:
        """Nothing of this act can be used like this."""
        return self.told == 0


def shortfalls(
    construction: str, lexicon: Lexicon, rng: Random, *, options: int, sample: int
) -> Iterator[Shortfall]:
    """Every act with a meaning that cannot be told from its twin, of `sample` pairs by chance."""
    family = FAMILIES[construction]
    groups = verb_groups(lexicon) if family.grouped else ("",)
    acts = [
        act for group in groups for act in family.acts(lexicon, construction, group, options > 2)
    ]
    for act in dict.fromkeys(acts):
        pairs = family.pairs(lexicon, construction, act)
        chosen = rng.sample(pairs, min(sample, len(pairs)))
        cases = [
            case
            for pair in chosen
            for turn in (0, 1)
            for case in _first(
                Wish(construction=construction, act=act, pair=pair, turn=turn, options=options),
                lexicon,
                rng,
            )
        ]
        for keeps in (True, False):
            told = sum(_is_told(case, keeps=keeps, options=options) for case in cases)
            if told < len(cases):
                yield Shortfall(
                    construction=construction,
                    act=act,
                    options=options,
                    keeps=keeps,
                    told=told,
                    asked=len(cases),
                )


def _first(wish: Wish, lexicon: Lexicon, rng: Random) -> list[Case]:
    case = next(iter(FAMILIES[wish.construction].cases(wish, lexicon, rng)), None)
    return [] if case is None else [case]


def _is_told(case: Case, *, keeps: bool, options: int) -> bool:
    return are_unlike(
        Scene(meaning=case.right, side=Side.LEFT),
        Scene(meaning=case.twin.shown, side=Side.RIGHT if keeps else Side.LEFT),
        lines=lines_for(options),
    )
