"""What people do to each other, by the lexicon's keys."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from drills.pictures import caring_acts, dealing_acts, moving_acts, tending_acts, tool_acts
from drills.pictures.cast import Person
from drills.pictures.skeleton import Build
from drills.pictures.stage import Stage

Staging = Callable[[Person, Person, Build, float], Stage]
"""Doer, done-to, proportions, and how far into one round of its movement, 0 to 1."""

ACTS: Mapping[str, Staging] = MappingProxyType(
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
        "comb": caring_acts.comb,
        "cover": caring_acts.cover,
        "dry": caring_acts.dry,
        "fan": caring_acts.fan,
        "wake": caring_acts.wake,
        "shelter": caring_acts.shelter,
        "bandage": caring_acts.bandage,
        "weigh": dealing_acts.weigh,
        "lead": dealing_acts.lead,
        "stop": dealing_acts.stop,
        "pay": dealing_acts.pay,
        "paint": dealing_acts.paint,
    }
)
