"""Everything that content files say, checked and ready."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from enum import StrEnum
from functools import lru_cache

from drills.core.gestures import Gesture
from drills.core.words import Lexicon


@dataclass(frozen=True, slots=True, kw_only=True)
class ClozeSet:
    """Contrasts of one frame.

    frame: the kind of sentence that holds the gap.   hint: the hint cue, in general words.
    contrasts: group name -> the words, or names of endings, of one closed class ("is", "are").
    """

    frame: str
    hint: str
    contrasts: Mapping[str, tuple[str, ...]]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClozeLevel:
    """One cloze level; no two of its sets have a group of one name."""

    key: str
    name: str
    sets: tuple[ClozeSet, ...]

    @property
    def contrasts(self) -> Mapping[str, tuple[str, ...]]:
        """Group name -> its words, over all sets."""
        return {group: words for each in self.sets for group, words in each.contrasts.items()}

    def set_of(self, group: str) -> ClozeSet:
        """The set that has the group.   Raises: KeyError."""
        for each in self.sets:
            if group in each.contrasts:
                return each
        raise KeyError(group)


class GoesWith(StrEnum):
    """What a head and its preposition go with; NOTHING: the word ends the sentence."""

    PERSON = "person"
    ANIMAL = "animal"
    THING = "thing"
    MANY = "many"
    TOY = "toy"
    NOISE = "noise"
    ROLE = "role"
    GARMENT = "garment"
    VEHICLE = "vehicle"
    LARGE = "large"
    CONTAINER = "container"
    NOTHING = "nothing"


@dataclass(frozen=True, slots=True, kw_only=True)
class Bound:
    """A verb or an adjective that asks for one small word: "wait for", "afraid of", "wake up".

    head: key of a verb or of an adjective.   wrong: words that are surely wrong here, checked one
    by one; any other might be right and is never offered.   subject: who or what does it or is so.
    """

    head: str
    word: str
    wrong: tuple[str, ...]
    goes_with: GoesWith
    subject: GoesWith = GoesWith.PERSON


@dataclass(frozen=True, slots=True, kw_only=True)
class Cause:
    """Who is in `state` (an adjective's key) does `act` (a verb's key), and not the other way."""

    state: str
    act: str


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class ClozeWords:
    """Words that sentences with a gap need beside the lexicon; they are drawn nowhere.

    lexicon: the lexicon with them.
    """

    lexicon: Lexicon
    bound: tuple[Bound, ...] = ()
    causes: tuple[Cause, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Chapter:
    """One chapter of the caregiver guide; `text` is Markdown."""

    key: str
    title: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Material:
    """content_hash: of every content file, so that a record says what it was made from."""

    lexicon: Lexicon
    cloze: Mapping[str, ClozeLevel]
    cloze_words: ClozeWords
    gestures: Mapping[str, Gesture]
    content_hash: str

    def without_kin(self, terms: tuple[str, ...]) -> Material:
        """The same without these words for relatives."""
        return replace(self, lexicon=_without_kin(self.lexicon, terms)) if terms else self


# One lexicon for one wish: what is worked out from a lexicon is kept by which one it is.
@lru_cache(maxsize=8)
def _without_kin(lexicon: Lexicon, terms: tuple[str, ...]) -> Lexicon:
    kin = {key: term for key, term in lexicon.kin.items() if key not in terms}
    return replace(lexicon, kin=kin)
