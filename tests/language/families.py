"""Random families, and a search of them that knows nothing of chains or steps."""

from __future__ import annotations

from random import Random

from drills.core.words import Sex

_MARRIED = 0.8


class Person:
    """Someone in a family without end, of which each part is drawn by lot when first looked at.

    Whoever is met for the first time is a new person, so nobody marries a relative.
    """

    def __init__(self, sex: Sex, rng: Random, parents: tuple[Person, Person] | None = None) -> None:
        self.sex = sex
        self._rng = rng
        self._parents = parents
        self._children: list[Person] | None = None
        self._spouse: Person | None = None
        self._is_settled = False

    @property
    def parents(self) -> tuple[Person, Person]:
        if self._parents is None:
            self._parents = (Person(Sex.FEMALE, self._rng), Person(Sex.MALE, self._rng))
            _marry(*self._parents)
            born = [Person(_any_sex(self._rng), self._rng, self._parents) for _ in range(2)]
            born = born[: self._rng.randint(0, 2)]
            born.insert(self._rng.randint(0, len(born)), self)
            for parent in self._parents:
                parent._children = born
        return self._parents

    @property
    def spouse(self) -> Person | None:
        if not self._is_settled:
            self._is_settled = True
            if self._rng.random() < _MARRIED:
                sex = Sex.MALE if self.sex is Sex.FEMALE else Sex.FEMALE
                _marry(self, Person(sex, self._rng))
        return self._spouse

    @property
    def children(self) -> list[Person]:
        spouse = self.spouse
        if spouse is None:
            return []
        if self._children is None:
            parents = (self, spouse) if self.sex is Sex.FEMALE else (spouse, self)
            born = [
                Person(_any_sex(self._rng), self._rng, parents)
                for _ in range(self._rng.randint(0, 3))
            ]
            self._children = spouse._children = born
        return self._children


def _any_sex(rng: Random) -> Sex:
    return rng.choice((Sex.FEMALE, Sex.MALE))


def _marry(one: Person, other: Person) -> None:
    one._spouse, other._spouse = other, one
    one._is_settled = other._is_settled = True


def random_person(rng: Random) -> Person:
    return Person(_any_sex(rng), rng)


def relatives(person: Person, word: str) -> list[Person]:
    """All whom `person` calls so, by the dictionary meaning of the word, searched one by one."""
    sex, kind = _KINDS[word]
    return [each for each in kind(person) if each.sex is sex]


def _parents(person: Person) -> list[Person]:
    return list(person.parents)


def _siblings(person: Person) -> list[Person]:
    return [each for each in person.parents[0].children if each is not person]


def _spouse(person: Person) -> list[Person]:
    return [] if person.spouse is None else [person.spouse]


def _parents_siblings(person: Person) -> list[Person]:
    return [each for parent in _parents(person) for each in _siblings(parent)]


def _siblings_children(person: Person) -> list[Person]:
    return [each for sibling in _siblings(person) for each in sibling.children]


def _grandparents(person: Person) -> list[Person]:
    return [each for parent in _parents(person) for each in _parents(parent)]


def _grandchildren(person: Person) -> list[Person]:
    return [each for child in person.children for each in child.children]


_KINDS = {
    "mother": (Sex.FEMALE, _parents),
    "father": (Sex.MALE, _parents),
    "sister": (Sex.FEMALE, _siblings),
    "brother": (Sex.MALE, _siblings),
    "daughter": (Sex.FEMALE, lambda person: person.children),
    "son": (Sex.MALE, lambda person: person.children),
    "wife": (Sex.FEMALE, _spouse),
    "husband": (Sex.MALE, _spouse),
    "aunt": (Sex.FEMALE, _parents_siblings),
    "uncle": (Sex.MALE, _parents_siblings),
    "niece": (Sex.FEMALE, _siblings_children),
    "nephew": (Sex.MALE, _siblings_children),
    "grandmother": (Sex.FEMALE, _grandparents),
    "grandfather": (Sex.MALE, _grandparents),
    "granddaughter": (Sex.FEMALE, _grandchildren),
    "grandson": (Sex.MALE, _grandchildren),
}


def walked(person: Person, terms: tuple[str, ...]) -> list[Person]:
    """All to whom the chain leads from `person`."""
    found = [person]
    for term in terms:
        found = [each for start in found for each in relatives(start, term)]
    return list(dict.fromkeys(found))
