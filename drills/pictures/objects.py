"""Every thing that can be somewhere, and how it is turned when its usual way would mislead."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import cache
from types import MappingProxyType

from drills.pictures import belongings, carriers, household, outdoors, vessels
from drills.pictures.thing import Thing

# Each is made once: they never change, and many places are tried for one item.
THINGS: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {
        "cup": cache(vessels.cup),
        "bell": cache(household.bell),
        "box": cache(vessels.box),
        "ball": cache(outdoors.ball),
        "book": cache(household.book),
        "hat": cache(vessels.hat),
        "shoe": cache(vessels.shoe),
        "bucket": cache(vessels.bucket),
        "chair": cache(household.chair),
        "table": cache(household.table),
        "lamp": cache(household.lamp),
        "clock": cache(household.clock),
        "key": cache(household.key),
        "spoon": cache(household.spoon),
        "plate": cache(belongings.plate),
        "brush": cache(belongings.brush),
        "coat": cache(belongings.coat),
        "glove": cache(belongings.glove),
        "pillow": cache(belongings.pillow),
        "blanket": cache(belongings.blanket),
        "ladder": cache(belongings.ladder),
        "phone": cache(belongings.phone),
        "letter": cache(belongings.letter),
        "drum": cache(belongings.drum),
        "basket": cache(carriers.basket),
        "bag": cache(carriers.bag),
        "pot": cache(carriers.pot),
        "jug": cache(carriers.jug),
        "barrel": cache(carriers.barrel),
        "boot": cache(carriers.boot),
        "boat": cache(carriers.boat),
        "car": cache(carriers.car),
        "tent": cache(carriers.tent),
        "umbrella": cache(outdoors.umbrella),
        "kite": cache(outdoors.kite),
        "tree": cache(outdoors.tree),
        "flower": cache(outdoors.flower),
        "apple": cache(outdoors.apple),
        "cake": cache(outdoors.cake),
        "bread": cache(outdoors.bread),
    }
)

# How a thing is put when its usual way would hide it or close it.
UPRIGHT: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {**THINGS, "book": cache(household.standing_book)}
)
OPEN: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {
        **THINGS,
        "hat": cache(vessels.turned_hat),
        "box": cache(vessels.open_box),
        "car": cache(carriers.open_car),
    }
)
# What stands on an open vessel looks to be in it, so it is turned over or has a lid.
CLOSED: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {
        **THINGS,
        "cup": cache(carriers.turned_cup),
        "bucket": cache(carriers.lidded_bucket),
        "pot": cache(carriers.lidded_pot),
        "barrel": cache(carriers.lidded_barrel),
    }
)
