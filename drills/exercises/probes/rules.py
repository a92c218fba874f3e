"""The law of probes: what is practised is never probed, and what is probed never practised."""

from __future__ import annotations

from collections.abc import Iterable

from drills.core.items import Item, ItemSet
from drills.core.problems import Problem
from drills.core.words import Lexicon
from drills.exercises.reserve import exemplar_in, is_reserved


def broken_law(items: Iterable[Item], lexicon: Lexicon) -> tuple[Problem, ...]:
    """Items that are practised out of the reserve, or probed out of what is practised.

    Holds for all that is ever dealt, since the reserve is the same at all times.
    """
    problems = []
    for item in items:
        exemplar = exemplar_in(item)
        reserved = exemplar is not None and is_reserved(exemplar, lexicon)
        if reserved is (item.item_set is not ItemSet.TREATED):
            continue
        what = "is kept for probes and practised" if reserved else "is practised and probed"
        problems.append(Problem(where=f"item of {item.target}", message=f"{item.sentence} {what}."))
    return tuple(problems)


def shared(practised: Iterable[Item], probed: Iterable[Item]) -> tuple[Problem, ...]:
    """Probe items whose two words were met in the same act in practice, in either order."""
    known = {exemplar for item in practised if (exemplar := exemplar_in(item)) is not None}
    return tuple(
        Problem(where=f"item of {item.target}", message=f"{item.sentence} was practised.")
        for item in probed
        if exemplar_in(item) in known
    )
