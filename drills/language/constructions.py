"""Every construction by name, and the walk from meaning to sentence."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from drills.core.meanings import Act, Meaning, Place, State
from drills.core.words import Lexicon, Sentence
from drills.language.abstract import Phrase
from drills.language.clefts import object_cleft, subject_cleft
from drills.language.places import locative
from drills.language.roles import check_roles
from drills.language.states import agreement
from drills.language.steps import finish
from drills.language.voices import active, full_passive


@dataclass(frozen=True, slots=True, kw_only=True)
class Construction:
    """One sentence type.

    label: for the therapist.   canonical: the doer comes first.
    rank: 1 (easiest) to 10; common practice, a default order that a person's own results replace.
    order: puts the parts of a meaning of `meaning_type` in their order, as phrases.
    """

    name: str
    label: str
    example: str
    meaning_type: type[Act] | type[Place] | type[State]
    canonical: bool
    rank: int
    order: Callable[[Any], tuple[Phrase, ...]] = field(repr=False)


_ALL = (
    Construction(
        name="active",
        label="Active: the doer comes first",
        example="The nurse pulled the baker.",
        meaning_type=Act,
        canonical=True,
        rank=2,
        order=active,
    ),
    Construction(
        name="agreement",
        label="Number: is or are, was or were, has or have",
        example="Two sailors are wet.",
        meaning_type=State,
        canonical=True,
        rank=3,
        order=agreement,
    ),
    Construction(
        name="locative",
        label="Place: where one thing is to another",
        example="The cup is behind the bell.",
        meaning_type=Place,
        canonical=True,
        rank=4,
        order=locative,
    ),
    Construction(
        name="subject-cleft",
        label="It was ... that, with the doer first",
        example="It was the nurse that pulled the baker.",
        meaning_type=Act,
        canonical=True,
        rank=4,
        order=subject_cleft,
    ),
    Construction(
        name="full-passive",
        label="Passive with by: the doer comes last",
        example="The baker was pulled by the nurse.",
        meaning_type=Act,
        canonical=False,
        rank=7,
        order=full_passive,
    ),
    Construction(
        name="object-cleft",
        label="It was ... that, with the doer second",
        example="It was the baker that the nurse pulled.",
        meaning_type=Act,
        canonical=False,
        rank=8,
        order=object_cleft,
    ),
)

CONSTRUCTIONS: Mapping[str, Construction] = MappingProxyType({each.name: each for each in _ALL})

_PLAIN: dict[type[Meaning], Callable[[Any], tuple[Phrase, ...]]] = {
    Act: active,
    Place: locative,
    State: agreement,
}


def realise(meaning: Meaning, construction: str, lexicon: Lexicon) -> Sentence:
    """The sentence of `meaning` in `construction`.

    Raises: ValueError for an unknown construction, one that cannot say this meaning, or a
    meaning with a word that the lexicon lacks.
    """
    if construction not in CONSTRUCTIONS:
        raise ValueError(f"there is no construction {construction!r}")
    chosen = CONSTRUCTIONS[construction]
    if not isinstance(meaning, chosen.meaning_type):
        raise ValueError(f"{construction!r} cannot say a meaning of {type(meaning).__name__}")
    check_roles(meaning, lexicon)
    plain = finish(_PLAIN[type(meaning)](meaning), lexicon)
    return Sentence(
        tokens=finish(chosen.order(meaning), lexicon),
        plain=" ".join(token.text for token in plain) + ".",
    )
