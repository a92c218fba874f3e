"""content/cloze_words.toml -> words that sentences with a gap need beside the lexicon."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from drills.catalogue.fields import Fields, nearest
from drills.catalogue.lexicon import adjective_of, noun_of, verb_alone_of
from drills.catalogue.sections import read_sections
from drills.core.closed_words import (
    LOCALE_WORDS,
    ONE_FORM_FOR_MANY,
    ONE_FORM_FOR_THEN,
    REGIONAL,
    UNCLEAR_NUMBER,
    UNCOUNTED,
    near_pairs,
)
from drills.core.material import Bound, Cause, ClozeWords, GoesWith
from drills.core.problems import Problem
from drills.core.words import Adjective, Lexicon, Noun, Verb

FILE = "cloze_words.toml"

_REFUSED: Mapping[str, frozenset[str]] = {
    "is counted as one or as many": UNCLEAR_NUMBER,
    "is not counted": UNCOUNTED,
    "has one form for one and many": ONE_FORM_FOR_MANY,
    "is said otherwise from region to region": REGIONAL,
    "belongs to one region": frozenset().union(*LOCALE_WORDS.values()),
    "has one form for now and then": ONE_FORM_FOR_THEN,
}


def read_cloze_words(folder: Path, lexicon: Lexicon, problems: list[Problem]) -> ClozeWords:
    """The words, with the lexicon they are added to; faults are added to `problems`."""
    nouns: dict[str, Noun] = {}
    verbs: dict[str, Verb] = {}
    adjectives: dict[str, Adjective] = {}
    heads: list[tuple[Fields, Bound]] = []
    causes: list[tuple[Fields, Cause]] = []
    sections = read_sections(
        folder / FILE,
        f"{folder.name}/{FILE}",
        problems,
        many=("noun", "verb", "adjective", "bound", "cause"),
    )
    for fields in sections:
        match fields.block.name:
            case "noun":
                _keep(fields, nouns, lexicon.nouns, noun_of(fields))
            case "verb":
                known = {**lexicon.verbs, **lexicon.alone, **lexicon.transfers}
                _keep(fields, verbs, known, verb_alone_of(fields))
            case "adjective":
                _keep(fields, adjectives, lexicon.adjectives, adjective_of(fields))
            case "bound":
                heads.append((fields, _bound(fields)))
            case _:
                causes.append((fields, Cause(state=fields.text("state"), act=fields.text("act"))))
        fields.close()
    whole = replace(
        lexicon,
        nouns={**lexicon.nouns, **nouns},
        alone={**lexicon.alone, **verbs},
        adjectives={**lexicon.adjectives, **adjectives},
    )
    if not problems:
        _check_names(heads, causes, whole)
    return ClozeWords(
        lexicon=whole,
        bound=tuple(bound for _, bound in heads),
        causes=tuple(cause for _, cause in causes),
    )


def _keep(
    fields: Fields,
    entries: dict[str, Noun] | dict[str, Verb] | dict[str, Adjective],
    known: Mapping[str, object],
    entry: Noun | Verb | Adjective,
) -> None:
    if entry.key in entries or entry.key in known:
        fields.note(f"`{entry.key}` is already a word.", "Remove one.", key="key")
    for why, words in _REFUSED.items():
        if entry.key in words:
            fields.note(f"`{entry.key}` {why}.", "Use another word.", key="key")
    entries[entry.key] = entry  # type: ignore[assignment]


def _bound(fields: Fields) -> Bound:
    bound = Bound(
        head=fields.text("head"),
        word=fields.text("word"),
        wrong=fields.texts("wrong"),
        goes_with=fields.choice("goes_with", GoesWith),
        subject=fields.choice("subject", GoesWith) if fields.has("subject") else GoesWith.PERSON,
    )
    for other in bound.wrong:
        if other == bound.word or near_pairs((other, bound.word)):
            message = f"`{other}` can be right where `{bound.word}` is."
            fields.note(message, "Take it out.", key="wrong")
    return bound


def _check_names(
    heads: list[tuple[Fields, Bound]], causes: list[tuple[Fields, Cause]], lexicon: Lexicon
) -> None:
    verbs = {**lexicon.alone, **lexicon.verbs, **lexicon.transfers}
    for fields, bound in heads:
        _require(fields, "head", bound.head, {**verbs, **lexicon.adjectives})
    for fields, cause in causes:
        _require(fields, "state", cause.state, lexicon.adjectives)
        _require(fields, "act", cause.act, lexicon.alone)


def _require(fields: Fields, key: str, name: str, known: Mapping[str, object]) -> None:
    if name not in known:
        fields.note(f"There is no `{name}`.", nearest(name, known), key=key)
