"""Every thing that can be somewhere, and how it is turned when its usual way would mislead."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from drills.pictures import belongings, carriers, household, outdoors, vessels
from drills.pictures.thing import Thing

THINGS: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {
        "cup": vessels.cup,
        "bell": household.bell,
        "box": vessels.box,
        "ball": outdoors.ball,
        "book": household.book,
        "hat": vessels.hat,
        "shoe": vessels.shoe,
        "bucket": vessels.bucket,
        "chair": household.chair,
        "table": household.table,
        "lamp": household.lamp,
        "clock": household.clock,
        "key": household.key,
        "spoon": household.spoon,
        "plate": belongings.plate,
        "brush": belongings.brush,
        "coat": belongings.coat,
        "glove": belongings.glove,
        "pillow": belongings.pillow,
        "blanket": belongings.blanket,
        "ladder": belongings.ladder,
        "phone": belongings.phone,
        "letter": belongings.letter,
        "drum": belongings.drum,
        "basket": carriers.basket,
        "bag": carriers.bag,
        "pot": carriers.pot,
        "jug": carriers.jug,
        "barrel": carriers.barrel,
        "boot": carriers.boot,
        "boat": carriers.boat,
        "car": carriers.car,
        "tent": carriers.tent,
        "umbrella": outdoors.umbrella,
        "kite": outdoors.kite,
        "tree": outdoors.tree,
        "flower": outdoors.flower,
        "apple": outdoors.apple,
        "cake": outdoors.cake,
        "bread": outdoors.bread,
    }
)

# How a thing is put when its usual way would hide it or close it.
UPRIGHT: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {**THINGS, "book": household.standing_book}
)
OPEN: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {**THINGS, "hat": vessels.turned_hat, "box": vessels.open_box, "car": carriers.open_car}
)
# What stands on an open vessel looks to be in it, so it is turned over or has a lid.
CLOSED: Mapping[str, Callable[[], Thing]] = MappingProxyType(
    {
        **THINGS,
        "cup": carriers.turned_cup,
        "bucket": carriers.turned_bucket,
        "pot": carriers.lidded_pot,
        "barrel": carriers.lidded_barrel,
    }
)
