"""Sets matched together, to be written into a plan, and items of a set that is written there."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from random import Random

from drills.core.items import Item, ItemSet
from drills.core.kinds import Side
from drills.core.plans import Probed
from drills.core.probe_sets import ProbeSet, SetExemplar
from drills.core.words import Lexicon
from drills.exercises.probes.choosing import (
    Chosen,
    Exemplar,
    as_row,
    differences,
    each_once,
    exemplars_of,
    halves_of,
    quotas_for,
    references,
    spares_of,
)
from drills.exercises.probes.matching import choose_together
from drills.exercises.reserve import Exemplar as Reserved
from drills.exercises.reserve import exemplar_key


def matched(
    asked: Sequence[Probed],
    lexicon: Lexicon,
    *,
    items: int,
    seed: int,
    without: Collection[tuple[str, Reserved]] = (),
) -> Mapping[str, Chosen]:
    """Construction -> exemplars of the reserve, like each other, treated ones like practice.

    items: of each, an even number.   without: a construction and what it is not to ask.
    Raises: ValueError when the reserve has too few.
    """
    rng = Random(f"{seed} sets")
    practised = practised_for(asked, lexicon)
    pools = [
        [
            one
            for one in each_once(exemplars_of(each.construction, lexicon, reserved=True))
            if (each.construction, exemplar_key(one.act, one.pair)) not in without
        ]
        for each in asked
    ]
    taken = []
    for each, pool in zip(asked, pools, strict=True):
        strata = {exemplar.stratum for exemplar in pool}
        alike = [exemplar for exemplar in practised if exemplar.stratum in strata]
        own = alike or exemplars_of(each.construction, lexicon, reserved=False)
        taken.append(quotas_for(own, pool, items))
    rows = [[as_row(exemplar) for exemplar in pool] for pool in pools]
    treated = [each.item_set is ItemSet.PROBE for each in asked]
    chosen = choose_together(
        rows,
        references(practised),
        taken,
        rng,
        anchored=treated if any(treated) else [True] * len(asked),
    )
    picked = [
        [pool[index] for index in indices] for pool, indices in zip(pools, chosen, strict=True)
    ]
    used = {exemplar_key(each.act, each.pair) for some in picked for each in some}
    found: dict[str, Chosen] = {}
    for each, pool, own_picked in zip(asked, pools, picked, strict=True):
        rest = [one for one in pool if exemplar_key(one.act, one.pair) not in used]
        spares = spares_of(rest, rng)
        used |= {exemplar_key(one.act, one.pair) for one in spares}
        found[each.construction] = Chosen(
            construction=each.construction, halves=halves_of(own_picked, rng), spares=spares
        )
    return found


def practised_for(asked: Sequence[Probed], lexicon: Lexicon) -> tuple[Exemplar, ...]:
    """What all sets should be like: whatever practice deals of the treated constructions."""
    treated = [each for each in asked if each.item_set is ItemSet.PROBE] or list(asked)
    return tuple(
        exemplar
        for each in treated
        for exemplar in exemplars_of(each.construction, lexicon, reserved=False)
    )


def written(exemplar: Exemplar) -> SetExemplar:
    return SetExemplar(act=str(exemplar.act), first=exemplar.pair[0], second=exemplar.pair[1])


def faults_of(probe_set: ProbeSet, lexicon: Lexicon) -> tuple[tuple[SetExemplar, str], ...]:
    """The exemplars that the construction cannot be checked with, and why, as half a sentence."""
    pools = {
        reserved: {
            (str(each.act), each.pair)
            for each in exemplars_of(probe_set.construction, lexicon, reserved=reserved)
        }
        for reserved in (True, False)
    }
    found = []
    for each in probe_set.exemplars:
        key = (each.act, (each.first, each.second))
        if key in pools[False]:
            found.append((each, "practice may give this pair, so it is not new in a check."))
        elif key not in pools[True]:
            found.append((each, "the content has no such pair that could trade parts."))
    return tuple(found)


def read_exemplars(asked: Probed, lexicon: Lexicon) -> tuple[Exemplar, ...]:
    """The exemplars of a set, in its order.   Raises: KeyError for what
    `faults_of` tells."""
    known = {
        (str(each.act), each.pair): each
        for each in exemplars_of(asked.construction, lexicon, reserved=True)
    }
    return tuple(known[each.act, (each.first, each.second)] for each in asked.exemplars)


@dataclass(frozen=True, slots=True, kw_only=True)
class SetReport:
    """How a set came out.

    words: of a sentence, mean.   doer_left: items whose doer stands left in the right picture.
    from_practice: standardised mean differences from all that is practised.
    between: from each other set, by its construction.
    """

    construction: str
    item_set: ItemSet
    items: int
    words: float
    doer_left: int
    from_practice: Mapping[str, float]
    between: Mapping[str, Mapping[str, float]]

    @property
    def furthest(self) -> float:
        """The largest difference that matters: from each other set, and from practice if treated.

        Letters and frequency count, and verb groups where both sets have them.
        """
        compared = [*self.between.values()]
        if self.item_set is ItemSet.PROBE:
            compared.append(self.from_practice)
        return max((abs(value) for each in compared for value in each.values()), default=0.0)


def reports(
    asked: Sequence[Probed],
    items: Sequence[Item],
    exemplars: Mapping[str, Sequence[Exemplar]],
    lexicon: Lexicon,
) -> tuple[SetReport, ...]:
    """How like practice and each other sets are.   exemplars: of each construction."""
    practised = practised_for(asked, lexicon)
    found = []
    for each in asked:
        own = exemplars[each.construction]
        of_set = [item for item in items if item.construction == each.construction]
        found.append(
            SetReport(
                construction=each.construction,
                item_set=each.item_set,
                items=len(of_set),
                words=sum(len(item.sentence.split()) for item in of_set) / max(1, len(of_set)),
                doer_left=sum(_side(item) is Side.LEFT for item in of_set),
                from_practice=_compared(own, practised),
                between={
                    other: _compared(own, theirs)
                    for other, theirs in exemplars.items()
                    if other != each.construction
                },
            )
        )
    return tuple(found)


def _compared(own: Sequence[Exemplar], other: Sequence[Exemplar]) -> Mapping[str, float]:
    """Standardised differences; of verb groups where both have the same ones to compare."""
    apart = differences(own, other)
    if {each.stratum for each in own} <= {each.stratum for each in other}:
        return apart
    return {name: apart[name] for name in ("letters", "frequency")}


def _side(item: Item) -> Side | None:
    scene = None if item.answer is None else item.options[item.answer].scene
    return None if scene is None else scene.side
