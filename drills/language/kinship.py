"""Who a chain of relatives leads to: "my father's sister" is a woman, and is my aunt.

A small model of families. Everyone has a mother and a father who are married to each other and to
nobody else; brothers and sisters share both; nobody marries a relative. An aunt or uncle is the
sister or brother of a parent. A chain is walked step by step through places in the family, where a
place is how one gets there from the one who speaks; several places may remain, as a parent's child
may be oneself or one's sister. Roles only: no names, no ages beyond the generation.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping
from enum import StrEnum
from functools import cache
from itertools import product
from types import MappingProxyType

from drills.core.words import Sex

F, M = Sex.FEMALE, Sex.MALE

MOST_TERMS = 3


class Step(StrEnum):
    """One move through a family."""

    PARENT = "parent"
    SIBLING = "sibling"
    CHILD = "child"
    SPOUSE = "spouse"


Move = tuple[Step, Sex]
"""A step and the sex of the one it leads to."""

Place = tuple[Sex, tuple[Move, ...]]
"""The sex of the one who speaks, and the shortest way to someone from there."""

Terms = tuple[str, ...]
"""Words for relatives, the nearest to the one who speaks first: ("father", "sister")."""


class Sameness(StrEnum):
    """Whether two chains lead to one person."""

    ALWAYS = "always"
    SOMETIMES = "sometimes"
    NEVER = "never"


# Each word as the steps it stands for, and the sex of the one it names.
_WORDS = MappingProxyType(
    {
        "mother": ((Step.PARENT,), F),
        "father": ((Step.PARENT,), M),
        "sister": ((Step.SIBLING,), F),
        "brother": ((Step.SIBLING,), M),
        "daughter": ((Step.CHILD,), F),
        "son": ((Step.CHILD,), M),
        "wife": ((Step.SPOUSE,), F),
        "husband": ((Step.SPOUSE,), M),
        "aunt": ((Step.PARENT, Step.SIBLING), F),
        "uncle": ((Step.PARENT, Step.SIBLING), M),
        "niece": ((Step.SIBLING, Step.CHILD), F),
        "nephew": ((Step.SIBLING, Step.CHILD), M),
        "grandmother": ((Step.PARENT, Step.PARENT), F),
        "grandfather": ((Step.PARENT, Step.PARENT), M),
        "granddaughter": ((Step.CHILD, Step.CHILD), F),
        "grandson": ((Step.CHILD, Step.CHILD), M),
    }
)
_NAMES = MappingProxyType({(steps, sex): word for word, (steps, sex) in _WORDS.items()})

TERMS: Terms = tuple(_WORDS)

SELF = "self"
"""The name of the one who speaks, where a chain may lead back."""

_GENERATIONS = {Step.PARENT: 1, Step.SIBLING: 0, Step.CHILD: -1, Step.SPOUSE: 0}


def sex_of(terms: Terms) -> Sex:
    """Woman or man: the last word decides."""
    return _WORDS[terms[-1]][1]


def steps_of(term: str) -> tuple[Step, ...]:
    """The moves that one word stands for: an aunt is a parent's sister.   Raises: KeyError."""
    return _WORDS[term][0]


def is_possible(terms: Terms) -> bool:
    """Whether anyone can be so related: nobody's husband has a husband here."""
    return bool(places(terms))


def names_of(terms: Terms) -> frozenset[str]:
    """Every single word by which the one who is meant may be called; `SELF` for the speaker.

    A place for which there is no single word gives no name; see `has_one_name`.
    """
    return frozenset(name for name in map(_name, places(terms)) if name is not None)


def has_one_name(terms: Terms) -> str | None:
    """The single word that always holds: "aunt" of "father's sister"; None where none does."""
    names = {_name(place) for place in places(terms)}
    return names.pop() if len(names) == 1 else None


def generation(terms: Terms) -> int | None:
    """How many generations above the speaker, below 0 for later ones; None where it may differ."""
    found = {sum(_GENERATIONS[step] for step, _ in way) for _, way in places(terms)}
    return found.pop() if len(found) == 1 else None


def sameness(one: Terms, other: Terms) -> Sameness:
    """Whether both chains lead to one person, always, sometimes or never.

    Of two sisters either may be meant, so that a chain over brothers, sisters or children leads
    to the same person at most sometimes.   A chain that is not possible leads nowhere.
    """
    first, second = places(one), places(other)
    if not first & second:
        return Sameness.NEVER
    for sex in Sex:
        here, there = ({place for place in found if place[0] is sex} for found in (first, second))
        if here != there or len(here) > 1 or not all(map(_is_one_person, here)):
            return Sameness.SOMETIMES
    return Sameness.ALWAYS


def reversal(terms: Terms) -> Terms | None:
    """The same words the other way round, for a block of both; None where a mistake would not show.

    "Aunt's brother" and "brother's aunt" differ in the sex of the one who is meant; of "aunt's
    sister" and "sister's aunt" both are women.
    """
    back = terms[::-1]
    if sex_of(back) is sex_of(terms) or not (is_possible(terms) and is_possible(back)):
        return None
    return back


def chains(length: int, *, without: Collection[str] = ()) -> tuple[Terms, ...]:
    """Every possible chain of `length` terms, in the order of `TERMS`.

    None leads back to the speaker for sure, as "wife's husband" does, nor begins with one that
    does.   without: terms switched off: not said, and nobody is meant who may be called so.
    Raises: ValueError for a length other than 1 to 3, or a term that is not known.
    """
    if not 1 <= length <= MOST_TERMS:
        raise ValueError(f"a chain has 1 to {MOST_TERMS} terms, not {length}")
    unknown = [term for term in without if term not in TERMS]
    if unknown:
        raise ValueError(f"there is no relative {unknown[0]!r}")
    kept = [term for term in TERMS if term not in without]
    return tuple(
        terms
        for terms in product(kept, repeat=length)
        if is_possible(terms) and not _leads_to(terms, without)
    )


def _leads_to(terms: Terms, switched_off: Collection[str]) -> bool:
    """Whether a beginning of it is the speaker or may be one of them, as a father's wife is."""
    for end in range(1, len(terms) + 1):
        names = names_of(terms[:end])
        if names == {SELF} or not names.isdisjoint(switched_off):
            return True
    return False


@cache
def places(terms: Terms) -> frozenset[Place]:
    """Every place to which the chain may lead.   Raises: ValueError for an unknown term."""
    found: Iterable[Place] = ((F, ()), (M, ()))
    for term in terms:
        if term not in _WORDS:
            raise ValueError(f"there is no relative {term!r}")
        steps, sex = _WORDS[term]
        for index, step in enumerate(steps):
            sexes = (sex,) if index == len(steps) - 1 else (F, M)
            found = {
                place
                for start, each in product(found, sexes)
                for place in _moved(start, step, each)
            }
    return frozenset(found)


def _name(place: Place) -> str | None:
    way = place[1]
    if not way:
        return SELF
    return _NAMES.get((tuple(step for step, _ in way), way[-1][1]))


def _is_one_person(place: Place) -> bool:
    """Parents and spouses are one each; there may be many children."""
    return all(step in (Step.PARENT, Step.SPOUSE) for step, _ in place[1])


def _moved(place: Place, step: Step, sex: Sex) -> tuple[Place, ...]:
    """The places to which one more step leads, on the shortest ways."""
    if step is Step.SPOUSE and _sex_at(place) is sex:
        return ()
    last = place[1][-1][0] if place[1] else None
    shortened = _SHORTENED.get((last, step))
    return (_longer(place, step, sex),) if shortened is None else shortened(place, sex)


def _longer(place: Place, step: Step, sex: Sex) -> Place:
    speaker, way = place
    return (speaker, (*way, (step, sex)))


def _before(place: Place) -> Place:
    speaker, way = place
    return (speaker, way[:-1])


def _sex_at(place: Place) -> Sex:
    speaker, way = place
    return way[-1][1] if way else speaker


def _if_sex(place: Place, sex: Sex) -> tuple[Place, ...]:
    return (place,) if _sex_at(place) is sex else ()


def _child_of_parent(place: Place, sex: Sex) -> tuple[Place, ...]:
    """A parent's child is oneself or a brother or sister."""
    return (*_if_sex(_before(place), sex), _longer(_before(place), Step.SIBLING, sex))


def _sibling_of_sibling(place: Place, sex: Sex) -> tuple[Place, ...]:
    """A sister's sister is another sister, or the one who has the sister."""
    return _child_of_parent(place, sex)


def _parent_of_sibling(place: Place, sex: Sex) -> tuple[Place, ...]:
    """Brothers and sisters have the same parents."""
    return _moved(_before(place), Step.PARENT, sex)


def _sibling_of_child(place: Place, sex: Sex) -> tuple[Place, ...]:
    """A daughter's brother is another child."""
    return (_longer(_before(place), Step.CHILD, sex),)


def _parent_of_child(place: Place, sex: Sex) -> tuple[Place, ...]:
    """One of a child's two parents is the one who has the child, the other the spouse."""
    before = _before(place)
    return _if_sex(before, sex) or _moved(before, Step.SPOUSE, sex)


def _child_of_spouse(place: Place, sex: Sex) -> tuple[Place, ...]:
    """A wife's child is one's own."""
    return _moved(_before(place), Step.CHILD, sex)


def _spouse_of_spouse(place: Place, _sex: Sex) -> tuple[Place, ...]:
    return (_before(place),)


def _spouse_of_parent(place: Place, sex: Sex) -> tuple[Place, ...]:
    """A mother's husband is the father."""
    return (_longer(_before(place), Step.PARENT, sex),)


# What a step after another comes to, where that is shorter than both.
_SHORTENED: Mapping[tuple[Step | None, Step], Callable[[Place, Sex], tuple[Place, ...]]] = {
    (Step.PARENT, Step.CHILD): _child_of_parent,
    (Step.PARENT, Step.SPOUSE): _spouse_of_parent,
    (Step.SIBLING, Step.SIBLING): _sibling_of_sibling,
    (Step.SIBLING, Step.PARENT): _parent_of_sibling,
    (Step.CHILD, Step.SIBLING): _sibling_of_child,
    (Step.CHILD, Step.PARENT): _parent_of_child,
    (Step.SPOUSE, Step.CHILD): _child_of_spouse,
    (Step.SPOUSE, Step.SPOUSE): _spouse_of_spouse,
}
