"""How a sentence comes to its length: by saying where and when, and by nothing else.

Every construction can be said in seven to eleven words, so that none is hard for being long or
easy for being short. What a length was reached by stands in the meaning, as its `where` and `when`.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from random import Random
from typing import Any, TypeVar

from drills.core.meanings import Described, Kin, Meaning, Order, Report
from drills.core.words import AdjunctKind, Lexicon
from drills.language.constructions import CONSTRUCTIONS, realise
from drills.language.roles import can_stand

FEWEST_WORDS, MOST_WORDS = 7, 11
"""How long sentences are. Common practice."""

Adjuncts = tuple[str | None, str | None]
"""Keys of a where and a when, or None for saying neither."""

Padded = TypeVar("Padded", bound=Meaning)


def adjunct_choices(meaning: Meaning, construction: str, lexicon: Lexicon) -> tuple[Adjuncts, ...]:
    """Every where and when that the construction can add to the meaning, nothing first."""
    chosen = CONSTRUCTIONS[construction]
    fitting = {
        kind: [
            each.key
            for each in lexicon.adjuncts.values()
            if each.kind is kind and can_stand(each, meaning, lexicon)
        ]
        for kind in AdjunctKind
    }
    wheres = _choices(chosen.where, fitting[AdjunctKind.WHERE])
    whens = _choices(chosen.when, fitting[AdjunctKind.WHEN])
    return tuple(
        (where, when)
        for where in wheres
        for when in whens
        if not _is_too_much(meaning, where, when)
    )


def _is_too_much(meaning: Meaning, where: str | None, when: str | None) -> bool:
    match meaning:
        case Kin():
            # "This is my aunt today" says nothing: a relative has a when only with a where.
            return where is None and when is not None
        case Order():
            # Both would stand in front and put off what the sentence is about.
            return where is not None and when is not None
        case _:
            return False


def placed(meaning: Padded, adjuncts: Adjuncts) -> Padded:
    """The meaning with this where and when; in a report or a description, those of its act."""
    where, when = adjuncts
    holder = _holder(meaning)
    values: dict[str, Any] = {"when": when} if hasattr(holder, "when") else {}
    if hasattr(holder, "where"):
        values["where"] = where
    moved = replace(holder, **values) if values else holder
    if isinstance(meaning, Described | Report):
        return replace(meaning, act=moved)
    return moved  # type: ignore[no-any-return]


def lengths(
    meaning: Meaning, construction: str, lexicon: Lexicon
) -> Mapping[int, tuple[Adjuncts, ...]]:
    """Number of words -> the choices that reach it, for every length that can be reached."""
    bare = realise(placed(meaning, (None, None)), construction, lexicon).word_count
    found: dict[int, list[Adjuncts]] = {}
    for adjuncts in adjunct_choices(meaning, construction, lexicon):
        added = sum(len(lexicon.adjuncts[key].text.split()) for key in adjuncts if key is not None)
        if isinstance(meaning, Kin) and adjuncts[0] is not None:
            # "This is my aunt" gives way to "My aunt is ...".
            added -= 1
        found.setdefault(bare + added, []).append(adjuncts)
    return {words: tuple(found[words]) for words in sorted(found)}


def padded(
    meaning: Padded, construction: str, lexicon: Lexicon, *, words: int, rng: Random
) -> Padded:
    """The meaning with a where and a when by which its sentence has `words` words.

    Raises: ValueError when no choice reaches that length.
    """
    reached = lengths(meaning, construction, lexicon)
    if words not in reached:
        shown = ", ".join(str(each) for each in reached)
        raise ValueError(f"{construction!r} says this in {shown} words, not in {words}")
    return placed(meaning, rng.choice(reached[words]))


def _choices(takes: bool, keys: list[str]) -> tuple[str | None, ...]:
    return (None, *keys) if takes else (None,)


def _holder(meaning: Meaning) -> Any:
    """What has the where and when: the act that is told of, or the meaning itself."""
    return meaning.act if isinstance(meaning, Described | Report) else meaning
