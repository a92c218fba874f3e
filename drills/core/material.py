"""Everything that content files say, checked and ready."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from drills.core.gestures import Gesture
from drills.core.words import Lexicon


@dataclass(frozen=True, slots=True, kw_only=True)
class ClozeLevel:
    """Settings of one cloze level.

    contrasts: group name -> the words that share one closed class ("is", "are").
    hint: the hint cue, in general words.
    """

    key: str
    name: str
    contrasts: Mapping[str, tuple[str, ...]]
    hint: str


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
