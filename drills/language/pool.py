"""All that a construction can say with the words there are.

Only pairs as likely one way as the other come in here, and only words of one band together, so
that what a construction is practised or tested on is told by its grammar alone.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import lru_cache
from itertools import permutations, product
from typing import Any

from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Aspect,
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
    Tense,
    Transfer,
    Undergone,
)
from drills.core.words import Band, Lexicon, Noun, Sort
from drills.language.constructions import CONSTRUCTIONS
from drills.language.kinship import chains

Forms = tuple[tuple[Tense, Aspect], ...]

EVERY_FORM: Forms = tuple(product(Tense, Aspect))

_NUMBERS = (1, 2, 3)


@lru_cache(maxsize=256)
def meanings_of(
    construction: str,
    lexicon: Lexicon,
    band: Band = Band.EVERYDAY,
    forms: Forms = EVERY_FORM,
) -> tuple[Meaning, ...]:
    """Every balanced meaning of the construction in these tenses and aspects, without adjuncts.

    Raises: ValueError for an unknown construction.
    """
    if construction not in CONSTRUCTIONS:
        raise ValueError(f"there is no construction {construction!r}")
    chosen = CONSTRUCTIONS[construction]
    return tuple(
        meaning
        for meaning in _SOURCES[chosen.meaning_type](construction, lexicon, band, forms)
        if not chosen.refuses(meaning, lexicon)
    )


def _tenses(forms: Forms) -> tuple[Tense, ...]:
    return tuple(dict.fromkeys(tense for tense, _ in forms))


def _acts(construction: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Act]:
    negated = construction == "negation"
    one_way = construction == "irreversible-active"
    for verb in lexicon.verbs.values():
        if verb.band != band:
            continue
        pairs = [(a.key, b.key) for a, b in lexicon.partners(verb)]
        if one_way:
            doers = [noun.key for noun in _cast(lexicon, band) if noun.sort is Sort.PERSON]
            pairs = list(product(doers, verb.things))
        for (doer, done_to), (tense, aspect) in product(pairs, forms):
            yield Act(
                verb=verb.key,
                doer=doer,
                done_to=done_to,
                tense=tense,
                aspect=aspect,
                negated=negated,
            )


def _live_acts(lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Act]:
    return _acts("active", lexicon, band, forms)


def _undergone(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Undergone]:
    for act in _one_each(lexicon, band, forms):
        yield Undergone(verb=act.verb, done_to=act.done_to, tense=act.tense, aspect=act.aspect)


def _asked(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Asked]:
    for act, asked in product(_one_each(lexicon, band, forms), Role):
        yield Asked(
            verb=act.verb, known=act.done_to, asked=asked, tense=act.tense, aspect=act.aspect
        )


def _one_each(lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Act]:
    """An act of each verb and each one it could be done to, in each form."""
    met: dict[tuple[str, str, str, str], Act] = {}
    for act in _live_acts(lexicon, band, forms):
        met.setdefault((act.verb, act.done_to, act.tense, act.aspect), act)
    return iter(met.values())


def _chain(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Chain]:
    simple = tuple((tense, Aspect.SIMPLE) for tense in _tenses(forms))
    for act in _live_acts(lexicon, band, simple):
        yield Chain(verb=act.verb, outer=act.doer, middle=act.done_to, tense=act.tense)


def _described(
    construction: str, lexicon: Lexicon, band: Band, forms: Forms
) -> Iterator[Described]:
    who = Role.DOER if construction == "subject-relative" else Role.DONE_TO
    states: list[str | None] = [None]
    if construction != "object-relative-right":
        states = [each.key for each in lexicon.adjectives.values() if each.passing]
    for act, state in product(_live_acts(lexicon, band, forms), states):
        yield Described(act=act, who=who, state=state)


def _report(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Report]:
    for act in _live_acts(lexicon, band, forms):
        for done_to in (act.done_to, act.doer):
            yield Report(speaker=act.done_to, act=replace(act, done_to=done_to))


def _activity(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Activity]:
    for verb, noun, count, (tense, aspect) in product(
        lexicon.alone.values(), _cast(lexicon, band), _NUMBERS, forms
    ):
        if noun.sort in verb.sorts:
            yield Activity(verb=verb.key, doer=noun.key, count=count, tense=tense, aspect=aspect)


def _state(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[State]:
    complements = [(Link.BE, each.key) for each in lexicon.adjectives.values() if each.passing]
    complements += [(Link.HAVE, each.key) for each in lexicon.things]
    people = [noun for noun in _cast(lexicon, band) if noun.sort is Sort.PERSON]
    for noun, count, (link, word), tense in product(people, _NUMBERS, complements, _tenses(forms)):
        yield State(subject=noun.key, count=count, link=link, complement=word, tense=tense)


def _place(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Place]:
    things = [noun for noun in lexicon.things if noun.band == band]
    for (a, b), relation, tense in product(permutations(things, 2), Relation, _tenses(forms)):
        inside = relation is Relation.IN
        if a.size == b.size and (not inside or (a.container and b.container)):
            yield Place(relation=relation, thing=a.key, landmark=b.key, tense=tense)


def _transfer(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Transfer]:
    people = [noun for noun in _cast(lexicon, band) if noun.sort is Sort.PERSON]
    given = [noun for noun in lexicon.nouns.values() if noun.band == band]
    for verb, (doer, receiver), gift, tense in product(
        lexicon.transfers, permutations(people, 2), given, _tenses(forms)
    ):
        if doer.size == receiver.size and gift not in (doer, receiver):
            yield Transfer(
                verb=verb, doer=doer.key, given=gift.key, receiver=receiver.key, tense=tense
            )


def _order(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Order]:
    for noun, (earlier, later), tense in product(
        _cast(lexicon, band), permutations(lexicon.alone, 2), _tenses(forms)
    ):
        sorts = lexicon.alone[earlier].sorts & lexicon.alone[later].sorts
        if noun.sort in sorts:
            yield Order(doer=noun.key, earlier=earlier, later=later, tense=tense)


def _comparison(_: str, lexicon: Lexicon, band: Band, forms: Forms) -> Iterator[Comparison]:
    """Things are bigger or smaller; who has feelings may be happier as well."""
    nouns = [noun for noun in lexicon.nouns.values() if noun.band == band]
    for adjective, (more, less), tense in product(
        lexicon.adjectives.values(), permutations(nouns, 2), _tenses(forms)
    ):
        alike = more.sort is less.sort and more.size == less.size
        fits = more.sort is not Sort.THING or adjective.key in _OF_THINGS
        if adjective.comparative and alike and fits:
            yield Comparison(quality=adjective.key, more=more.key, less=less.key, tense=tense)


# The qualities that a thing can have. Common practice.
_OF_THINGS = ("wet", "cold", "dirty", "tall", "short", "big", "small")


def _kin(_: str, lexicon: Lexicon, _band: Band, forms: Forms) -> Iterator[Kin]:
    for length in (2, 3):
        for terms, tense in product(chains(length), _tenses(forms)):
            if all(term in lexicon.kin for term in terms):
                yield Kin(terms=terms, tense=tense)


def _cast(lexicon: Lexicon, band: Band) -> list[Noun]:
    return [
        noun for noun in lexicon.nouns.values() if noun.sort is not Sort.THING and noun.band == band
    ]


_SOURCES: Mapping[type[Meaning], Callable[[str, Lexicon, Band, Forms], Iterator[Any]]] = {
    Act: _acts,
    Undergone: _undergone,
    Asked: _asked,
    Activity: _activity,
    Place: _place,
    State: _state,
    Described: _described,
    Report: _report,
    Transfer: _transfer,
    Order: _order,
    Comparison: _comparison,
    Chain: _chain,
    Kin: _kin,
}
