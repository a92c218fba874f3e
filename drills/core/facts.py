"""What everybody knows of the world: who does what to whom, and never the other way round."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from drills.core.words import Sort, Verb


@dataclass(frozen=True, slots=True, kw_only=True)
class FactNoun:
    """A noun that is known and not drawn.   band, zipf: as of any noun."""

    key: str
    singular: str
    sort: Sort
    band: str
    zipf: float
    zipf_source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Fact:
    """`doer` does `verb` to `done_to`: true as it stands, false the other way round.

    Both nouns are of one sort and one band, so that neither the sort nor one known word tells.
    """

    doer: str
    verb: str
    done_to: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """nouns, verbs: words that the rest of the lexicon lacks.   known: the facts, in file order."""

    nouns: Mapping[str, FactNoun] = field(default_factory=dict)
    verbs: Mapping[str, Verb] = field(default_factory=dict)
    known: tuple[Fact, ...] = ()
