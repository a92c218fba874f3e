"""What knowledge of the world says of a meaning, and whom a picture shows for it."""

from __future__ import annotations

from dataclasses import fields, replace

from drills.core.meanings import (
    Act,
    Asked,
    Chain,
    Comparison,
    Described,
    Meaning,
    Place,
    Report,
    Transfer,
    Undergone,
)
from drills.core.words import Lexicon, Plausibility


def plausibility(meaning: Meaning, lexicon: Lexicon) -> Plausibility:
    """Whether the parts could as well be traded; only `EVEN` items count for accuracy.

    A meaning with one part is as likely of anyone who is not marked as leaning in its verb.
    """
    nouns = lexicon.nouns
    match meaning:
        case Act(verb=verb, doer=one, done_to=other) | Chain(verb=verb, outer=one, middle=other):
            return lexicon.plausibility(lexicon.verbs[verb], nouns[one], nouns[other])
        case Described(act=act):
            return plausibility(act, lexicon)
        case Report(speaker=speaker, act=act):
            return plausibility(replace(act, done_to=speaker), lexicon)
        case Undergone(verb=verb, done_to=named) | Asked(verb=verb, known=named):
            leans = named in lexicon.verbs[verb].leaning
            return Plausibility.LEANING if leans else Plausibility.EVEN
        case (
            Place(thing=one, landmark=other)
            | Comparison(more=one, less=other)
            | Transfer(doer=one, receiver=other)
        ):
            first, second = nouns[one], nouns[other]
            alike = first.sort is second.sort and first.size == second.size
            return Plausibility.EVEN if alike else Plausibility.LEANING
        case _:
            return Plausibility.EVEN


def as_drawn(meaning: Meaning, lexicon: Lexicon) -> Meaning:
    """The meaning with each word whose figure is another's exchanged for that one.

    Two meanings that are alike after this look alike, and are never offered against each other.
    """
    changed: dict[str, object] = {}
    for field in fields(meaning):
        value = getattr(meaning, field.name)
        if isinstance(value, Act):
            changed[field.name] = as_drawn(value, lexicon)
        elif field.name == "verb":
            verb = lexicon.verbs.get(value)
            if verb is not None and verb.drawn_as is not None:
                changed[field.name] = verb.drawn_as
        elif isinstance(value, str) and field.name in _NOUN_PARTS:
            noun = lexicon.nouns.get(value)
            if noun is not None and noun.drawn_as is not None:
                changed[field.name] = noun.drawn_as
    return replace(meaning, **changed) if changed else meaning  # type: ignore[arg-type]


_NOUN_PARTS = frozenset(
    (
        "doer",
        "done_to",
        "known",
        "thing",
        "landmark",
        "subject",
        "complement",
        "speaker",
        "given",
        "receiver",
        "more",
        "less",
        "outer",
        "middle",
    )
)
