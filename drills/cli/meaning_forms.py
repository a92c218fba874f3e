"""Plain words on the command line to a meaning: `nurse push baker`, `cup behind box`."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from functools import cache, partial
from types import MappingProxyType
from typing import Any

from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Comparison,
    Described,
    Kin,
    Link,
    Meaning,
    Order,
    Place,
    Relation,
    Report,
    Role,
    State,
    Transfer,
    Undergone,
)
from drills.core.problems import BadInput
from drills.core.words import Lexicon, Verb

EXAMPLES: Mapping[str, str] = MappingProxyType(
    {
        "nurse push baker": "an act; or: push nurse baker, baker is pushed by nurse",
        "nurse not push baker": "no such act",
        "someone push baker": "an act, its doer not named",
        "who push baker": "a question; or: nurse push whom",
        "nurse who push baker is wet": "one of the two and a state; or: without is wet",
        "baker whom nurse push is wet": "the same for the other one",
        "nurse push baker push nurse": "three in a row",
        "2 nurse wave": "what one to three do",
        "2 nurse are wet": "how one to three are",
        "nurse has cup": "what one to three have",
        "baker say sailor tap him": "what is told; or: himself, or a name",
        "sailor show nurse to judge": "giving, showing, bringing",
        "farmer wave before sit": "one after the other; or: farmer sit after wave",
        "nurse taller judge": "more and less; or: nurse more tall than judge",
        "cup in front of box": "a place: " + ", ".join(Relation),
        "brother of aunt": "relatives, which no picture shows",
    }
)
"""One example of each form, and what it says."""

_DROPPED = frozenset({"a", "an", "the", "than"})
_NUMBERS = {"1": 1, "2": 2, "3": 3, "one": 1, "two": 2, "three": 3}
_SMALL: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "not": ("not",),
        "by": ("by",),
        "of": ("of",),
        "to": ("to",),
        "more": ("more",),
        "who": ("who", "whom"),
        "whom": ("who", "whom"),
        "that": ("who",),
        "someone": ("someone",),
        "somebody": ("someone",),
        "before": ("before",),
        "then": ("before",),
        "after": ("after",),
        **dict.fromkeys(("is", "are", "was", "were", "be"), ("be",)),
        **dict.fromkeys(("has", "have", "had"), ("have",)),
        **dict.fromkeys(("say", "says", "said"), ("say",)),
        **dict.fromkeys(("him", "her"), ("him",)),
        **dict.fromkeys(("himself", "herself"), ("himself",)),
    }
)
_LONGEST = max(len(relation.split()) for relation in Relation)

Readings = Mapping[str, Any]
"""What a word can be, by slot, with the key that it stands for."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Form:
    """slots: what each word must be; those in capitals are handed on to `make`, in order."""

    slots: tuple[str, ...]
    make: Callable[..., Meaning]


def parse(words: Sequence[str], lexicon: Lexicon) -> Meaning:
    """The meaning of `words`, in any form of `EXAMPLES`; articles are left out.

    Raises: BadInput that names the word and the nearest known one, or every form.
    """
    terms = tuple(_terms(" ".join(words).lower().split(), _vocabulary(lexicon)))
    for form in _FORMS:
        if len(form.slots) == len(terms):
            found = [term.get(slot.lower()) for slot, term in zip(form.slots, terms, strict=True)]
            if all(each is not None for each in found):
                handed = zip(form.slots, found, strict=True)
                return form.make(*(each for slot, each in handed if slot.isupper()))
    forms = "; ".join(EXAMPLES)
    raise BadInput(f"{' '.join(words)!r} makes no meaning. Write as in one of: {forms}.")


def _terms(words: Sequence[str], vocabulary: Mapping[str, Readings]) -> Iterator[Readings]:
    """What each word, or phrase that is known as one, can be."""
    place = 0
    while place < len(words):
        if words[place] in _DROPPED:
            place += 1
            continue
        for length in range(_LONGEST, 0, -1):
            phrase = " ".join(words[place : place + length])
            if phrase in vocabulary:
                yield vocabulary[phrase]
                place += length
                break
        else:
            (close,) = get_close_matches(words[place], vocabulary, n=1, cutoff=0.0)
            raise BadInput(f"There is no word {words[place]!r}. Did you mean {close}?")


@cache
def _vocabulary(lexicon: Lexicon) -> Mapping[str, Readings]:
    found: dict[str, dict[str, Any]] = {}

    def add(slot: str, key: Any, *forms: str) -> None:
        for form in forms:
            if form:
                found.setdefault(form, {})[slot] = key

    for noun in lexicon.nouns.values():
        add("noun", noun.key, noun.key, noun.singular, noun.plural)
    for slot, verbs in (
        ("verb", lexicon.verbs), ("alone", lexicon.alone), ("transfer", lexicon.transfers),
    ):  # fmt: skip
        for verb in verbs.values():
            add(slot, verb.key, *_forms_of(verb))
            add("doing", (slot, verb.key), verb.ing)
            add("done", verb.key, verb.past_participle)
    for adjective in lexicon.adjectives.values():
        add("adjective", adjective.key, adjective.key, adjective.base)
        add("comparative", adjective.key, adjective.comparative)
    for term in lexicon.kin.values():
        add("kin", term.key, term.key, term.singular, term.plural)
    for relation in Relation:
        add("relation", relation, relation.value)
    for word, number in _NUMBERS.items():
        add("number", number, word)
    for word, slots in _SMALL.items():
        for slot in slots:
            add(slot, word, word)
    return found


def _forms_of(verb: Verb) -> tuple[str, ...]:
    return (verb.key, verb.base, verb.third_person, verb.past, verb.past_participle, verb.ing)


def _act(doer: str, verb: str, done_to: str, *, negated: bool = False) -> Act:
    return Act(verb=verb, doer=doer, done_to=done_to, negated=negated)


def _is(count: int, subject: str, complement: str) -> State:
    return State(subject=subject, count=count, link=Link.BE, complement=complement)


def _has(count: int, subject: str, complement: str) -> State:
    return State(subject=subject, count=count, link=Link.HAVE, complement=complement)


def _order(doer: str, earlier: str, later: str) -> Order:
    return Order(doer=doer, earlier=earlier, later=later)


def _order_of_two(doer: str, earlier: str, other: str, later: str) -> Order:
    if doer != other:
        raise BadInput(f"One alone does both, as in: {doer} {earlier} before {later}.")
    return _order(doer, earlier, later)


def _chain(first: str, verb: str, middle: str, second: str, last: str) -> Chain:
    if (first, verb) != (last, second):
        raise BadInput(
            "In a row the first does to the next what that one does to another like the first, "
            f"as in: {first} {verb} {middle} {verb} {first}."
        )
    return Chain(verb=verb, outer=first, middle=middle)


def _described(act: Act, who: Role, state: str | None = None) -> Described:
    return Described(act=act, who=who, state=state)


def _form(pattern: str, make: Callable[..., Meaning]) -> _Form:
    return _Form(slots=tuple(pattern.split()), make=make)


def _forms() -> Iterator[_Form]:
    yield _form("NOUN VERB NOUN", _act)
    yield _form("VERB NOUN NOUN", lambda verb, doer, done_to: _act(doer, verb, done_to))
    yield _form("NOUN be DOING NOUN", _under_way)
    yield _form("NOUN be DONE by NOUN", lambda done_to, verb, doer: _act(doer, verb, done_to))
    for pattern in ("NOUN not VERB NOUN", "NOUN be not VERB NOUN"):
        yield _form(pattern, lambda doer, verb, done_to: _act(doer, verb, done_to, negated=True))
    yield _form("someone VERB NOUN", lambda verb, it: Undergone(verb=verb, done_to=it))
    yield _form("NOUN be DONE", lambda it, verb: Undergone(verb=verb, done_to=it))
    yield _form("who VERB NOUN", lambda verb, it: Asked(verb=verb, known=it, asked=Role.DOER))
    yield _form("NOUN VERB whom", lambda it, verb: Asked(verb=verb, known=it, asked=Role.DONE_TO))
    for be, state in (("", ""), (" be", " ADJECTIVE")):
        yield _form(
            f"NOUN who VERB NOUN{be}{state}",
            lambda doer, verb, other, *how: _described(_act(doer, verb, other), Role.DOER, *how),
        )
        yield _form(
            f"NOUN who NOUN VERB{be}{state}",
            lambda it, doer, verb, *how: _described(_act(doer, verb, it), Role.DONE_TO, *how),
        )
    yield _form("NOUN VERB NOUN VERB NOUN", _chain)
    for pattern, make in (
        ("NOUN ALONE", _activity), ("NOUN be ALONE", _activity), ("NOUN be ADJECTIVE", _is),
        ("NOUN have NOUN", _has),
    ):  # fmt: skip
        yield _form(f"NUMBER {pattern}", make)
        # Where no number is said, it is one.
        yield _form(pattern, partial(make, 1))
    yield from _reports()
    yield _form(
        "NOUN TRANSFER NOUN to NOUN",
        lambda doer, verb, gift, to: Transfer(verb=verb, doer=doer, given=gift, receiver=to),
    )
    yield _form("NOUN ALONE before ALONE", _order)
    yield _form("NOUN ALONE before NOUN ALONE", _order_of_two)
    yield _form("NOUN ALONE after ALONE", lambda doer, later, first: _order(doer, first, later))
    yield _form(
        "NOUN ALONE after NOUN ALONE",
        lambda doer, later, other, first: _order_of_two(doer, first, other, later),
    )
    for pattern in ("NOUN COMPARATIVE NOUN", "NOUN be COMPARATIVE NOUN",
                    "NOUN more ADJECTIVE NOUN", "NOUN be more ADJECTIVE NOUN"):  # fmt: skip
        yield _form(pattern, lambda more, how, less: Comparison(quality=how, more=more, less=less))
    for pattern in ("NOUN RELATION NOUN", "NOUN be RELATION NOUN"):
        yield _form(pattern, lambda it, where, by: Place(relation=where, thing=it, landmark=by))
    for pattern in ("KIN", "KIN of KIN", "KIN of KIN of KIN"):
        yield _form(pattern, lambda *terms: Kin(terms=terms[::-1]))


def _reports() -> Iterator[_Form]:
    for between, negated in (("", False), ("not ", True)):
        for whom in ("NOUN", "him", "himself"):

            def made(
                speaker: str, doer: str, verb: str, *other: str, w: str = whom, no: bool = negated
            ) -> Report:
                done_to = {"him": speaker, "himself": doer}.get(w) or other[0]
                return Report(speaker=speaker, act=_act(doer, verb, done_to, negated=no))

            yield _form(f"NOUN say NOUN {between}VERB {whom}", made)


def _under_way(doer: str, doing: tuple[str, str], done_to: str) -> Act:
    slot, verb = doing
    if slot != "verb":
        raise BadInput(f"{verb} is done to nobody. Write as in: {doer} {verb}.")
    return _act(doer, verb, done_to)


def _activity(count: int, doer: str, verb: str) -> Activity:
    return Activity(verb=verb, doer=doer, count=count)


_FORMS = tuple(_forms())
