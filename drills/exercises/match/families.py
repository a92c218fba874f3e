"""Every construction that is asked with pictures, and why the others are not."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drills.exercises.match.acts import ACTS, PRONOUNS, UNDERGONE
from drills.exercises.match.comparisons import COMPARISONS
from drills.exercises.match.described import QUESTIONS, RELATIVES
from drills.exercises.match.family import Family
from drills.exercises.match.negation import NEGATION
from drills.exercises.match.numbers import NUMBERS, STATES
from drills.exercises.match.orders import ORDERS
from drills.exercises.match.places import PLACES
from drills.exercises.match.reports import REPORTS
from drills.exercises.match.transfers import TRANSFERS
from drills.language import CONSTRUCTIONS

_EVERY_FAMILY = (
    ACTS,
    UNDERGONE,
    PRONOUNS,
    NEGATION,
    RELATIVES,
    QUESTIONS,
    PLACES,
    NUMBERS,
    STATES,
    REPORTS,
    ORDERS,
    COMPARISONS,
    TRANSFERS,
)

_FAMILY_OF = {name: family for family in _EVERY_FAMILY for name in family.constructions}

FAMILIES: Mapping[str, Family] = MappingProxyType(
    {name: _FAMILY_OF[name] for name in CONSTRUCTIONS if name in _FAMILY_OF}
)
"""In the order of the language room: from the easiest to the hardest."""

NOT_SHOWN: Mapping[str, str] = MappingProxyType(
    {
        "irreversible-active": "no act on a thing is drawn",
        "possessive-kinship": "kinship cannot be seen; the question exercise asks it",
        "of-kinship": "kinship cannot be seen; the question exercise asks it",
    }
)
"""Constructions that no picture can show, and why."""
