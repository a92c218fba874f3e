"""What people do to each other, by the lexicon's keys."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from drills.pictures import moving_acts, tending_acts, tool_acts
from drills.pictures.cast import Person
from drills.pictures.skeleton import Build
from drills.pictures.stage import Stage

ACTS: Mapping[str, Callable[[Person, Person, Build], Stage]] = MappingProxyType(
    {
        "push": moving_acts.push,
        "pull": moving_acts.pull,
        "lift": moving_acts.lift,
        "carry": moving_acts.carry,
        "chase": moving_acts.chase,
        "follow": moving_acts.follow,
        "wash": tending_acts.wash,
        "feed": tending_acts.feed,
        "kiss": tending_acts.kiss,
        "tickle": tending_acts.tickle,
        "film": tool_acts.film,
        "splash": tool_acts.splash,
        "tap": tending_acts.tap,
        "measure": tool_acts.measure,
    }
)
