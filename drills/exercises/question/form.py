"""What every form of question gives to the rest."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from drills.core.items import Item, Target
from drills.core.material import Material
from drills.exercises.exercise import Batch

BETWEEN = ":"
"""Between form and part in a target's name: "who-did-what:full-passive"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Form:
    """One form of question.

    parts: what the form's name alone spreads over; none where the form has no parts.
    only_named: parts that are practised only where a plan names them.
    by_verbs: each part is practised by verb groups.
    make: items of targets of this form, balanced against each other.
    """

    name: str
    parts: tuple[str, ...] = ()
    only_named: tuple[str, ...] = ()
    by_verbs: bool = False
    is_there: Callable[[Material, str], bool]
    make: Callable[[Batch], tuple[Item, ...]]

    @property
    def names(self) -> tuple[str, ...]:
        every = (*self.parts, *self.only_named)
        return (self.name, *(f"{self.name}{BETWEEN}{part}" for part in every))

    def spread(self, name: str, material: Material) -> tuple[str, ...]:
        """The names of targets that `name` stands for, those that there are words for."""
        if name != self.name:
            names: tuple[str, ...] = (name,)
        elif self.parts:
            names = tuple(f"{self.name}{BETWEEN}{part}" for part in self.parts)
        else:
            names = (self.name,)
        return tuple(each for each in names if self.is_there(material, part_of(each)))


def part_of(name: str) -> str:
    """ "full-passive" of "who-did-what:full-passive"; empty where the name has no part."""
    return name.partition(BETWEEN)[2]


def form_of(target: Target) -> str:
    return target.name.partition(BETWEEN)[0]
