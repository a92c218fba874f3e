"""Events to be acted out: what a sentence tells, who can play in it, and how parts are exchanged.

An event has two parts to be given out: the doer, and the one it is done to; of giving, the giver
and the receiver, while what is given stays.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from itertools import permutations
from random import Random
from typing import Any

from drills.core.acts import Role as Asked
from drills.core.items import Item
from drills.core.kinds import Side
from drills.core.meanings import Act, Described, Meaning, Scene, Transfer, Undergone
from drills.core.words import Band, Lexicon, Sentence
from drills.exercises.casting import Pair
from drills.exercises.scenes import act_pairs
from drills.exercises.showing import COLUMNS, LARGE_LINES, Showing
from drills.language import CONSTRUCTIONS, realise
from drills.pictures import can_draw, tells_apart

Event = Act | Transfer

WHO_DOES_IT = "Who does it?"
DONE_TO = "Who is it done to?"

CONSTRUCTIONS_ACTED = (
    "active",
    "subject-cleft",
    "subject-relative",
    "short-passive",
    "full-passive",
    "dative",
    "object-cleft",
    "object-relative-right",
    "object-relative-centre",
)
"""From the easiest to the hardest; common practice, no source."""


def is_of_giving(construction: str) -> bool:
    return CONSTRUCTIONS[construction].meaning_type is Transfer


def names_both(construction: str) -> bool:
    """Whether the sentence names both; "The baker was pushed" leaves the doer to be found."""
    return CONSTRUCTIONS[construction].meaning_type is not Undergone


def parts(event: Event) -> Pair:
    """Keys of the two who play, the doer first."""
    return event.doer, event.receiver if isinstance(event, Transfer) else event.done_to


def recast(event: Event, first: str, second: str) -> Event:
    """The same event, played by these two."""
    if isinstance(event, Transfer):
        return Transfer(verb=event.verb, doer=first, given=event.given, receiver=second)
    return Act(verb=event.verb, doer=first, done_to=second)


def pairs(lexicon: Lexicon, construction: str, verb: str) -> tuple[Pair, ...]:
    """Those who could as well play the one part as the other."""
    return _giving_pairs(lexicon) if is_of_giving(construction) else act_pairs(lexicon, verb)


@lru_cache(maxsize=8)
def _giving_pairs(lexicon: Lexicon) -> tuple[Pair, ...]:
    people = [noun for noun in lexicon.people if noun.band == Band.EVERYDAY]
    things = gifts(lexicon)
    return tuple(
        (a.key, b.key)
        for a, b in permutations(people, 2)
        if a.size == b.size
        and things
        and can_draw(Transfer(verb="show", doer=a.key, given=things[0], receiver=b.key))
    )


@lru_cache(maxsize=8)
def gifts(lexicon: Lexicon) -> tuple[str, ...]:
    """Keys of things that can be seen to be given, by whichever two people can be drawn."""
    a, b = _any_two(lexicon)
    return tuple(
        thing.key
        for thing in lexicon.things
        if thing.band == Band.EVERYDAY
        and all(
            can_draw(Transfer(verb=verb, doer=a, given=thing.key, receiver=b))
            for verb in lexicon.transfers
        )
    )


def _any_two(lexicon: Lexicon) -> Pair:
    grown = [noun.key for noun in lexicon.people if noun.size == 2]
    return (grown[0], grown[1]) if len(grown) > 1 else ("", "")


def others(lexicon: Lexicon, construction: str, verb: str, pair: Pair) -> tuple[str, ...]:
    """Who could play with either of `pair`, in either part, and looks like neither."""
    return _company(lexicon, "dative" if is_of_giving(construction) else "active", verb)[pair]


@lru_cache(maxsize=128)
def _company(lexicon: Lexicon, construction: str, verb: str) -> Mapping[Pair, tuple[str, ...]]:
    every = pairs(lexicon, construction, verb)
    known, keys = frozenset(every), tuple(dict.fromkeys(first for first, _ in every))
    looks = {key: figure_of(key, lexicon) for key in keys}
    return {
        (a, b): tuple(
            key
            for key in keys
            if looks[key] not in (looks[a], looks[b])
            and all({(key, one), (one, key)} <= known for one in (a, b))
        )
        for a, b in every
    }


def figure_of(key: str, lexicon: Lexicon) -> str:
    """The figure by which a noun is drawn: two nouns may share one."""
    return lexicon.nouns[key].drawn_as or key


def told(event: Event, construction: str, lexicon: Lexicon, rng: Random) -> Meaning:
    """What the sentence means: the event, or one in which it is told of."""
    kind = CONSTRUCTIONS[construction].meaning_type
    if isinstance(event, Transfer) or kind is Act:
        return event
    if kind is Undergone:
        return Undergone(verb=event.verb, done_to=event.done_to)
    states = (None, *(each.key for each in lexicon.adjectives.values() if each.passing))
    every = [Described(act=event, who=who, state=state) for who in Asked for state in states]
    return rng.choice(
        [each for each in every if not CONSTRUCTIONS[construction].refuses(each, lexicon)]
    )


def event_told(meaning: Meaning) -> tuple[Any, ...]:
    """What the sentence fixes of the event: verb, doer, what is given, done-to; None for open."""
    match meaning:
        case Described(act=act):
            return event_told(act)
        case Act(verb=verb, doer=doer, done_to=done_to):
            return (verb, doer, None, done_to)
        case Undergone(verb=verb, done_to=done_to):
            return (verb, None, None, done_to)
        case Transfer(verb=verb, doer=doer, given=given, receiver=receiver):
            return (verb, doer, given, receiver)
        case _:
            raise TypeError(f"nobody can act out {meaning}")


def tells(event: Event, side: Side) -> bool:
    """Whether the event and its reversal can be told apart as it is performed."""
    if isinstance(event, Act):
        return Showing(options=2, side=side, reversed_side=side).tells(event)
    back = recast(event, *reversed(parts(event)))
    one, other = Scene(meaning=event, side=side), Scene(meaning=back, side=side)
    return tells_apart(one, other, columns=COLUMNS, lines=LARGE_LINES)


# Words


def said(event: Event, lexicon: Lexicon) -> Sentence:
    """What happens, in the plainest order."""
    return realise(event, "dative" if isinstance(event, Transfer) else "active", lexicon)


def words_of(event: Event, lexicon: Lexicon) -> tuple[str, ...]:
    """Lemmas of the verb and of all who and what is in the event."""
    nouns = lexicon.nouns
    if isinstance(event, Transfer):
        verb, given = lexicon.transfers[event.verb].base, nouns[event.given].singular
        return (verb, nouns[event.doer].singular, given, nouns[event.receiver].singular)
    verb = lexicon.verbs[event.verb].base
    return (verb, nouns[event.doer].singular, nouns[event.done_to].singular)


# An item as it is played


def figures_of(item: Item) -> tuple[str, ...]:
    """Keys of the figures offered, in their places."""
    return tuple(dict.fromkeys(parts(event)[0] for event in events_of(item)))


def events_of(item: Item) -> tuple[Event, ...]:
    """What can be built, one event an option.   Raises: TypeError for an item of another kind."""
    events: list[Event] = []
    for option in item.options:
        meaning = None if option.scene is None else option.scene.meaning
        if not isinstance(meaning, Act | Transfer):
            raise TypeError(f"item {item.id} is not to be acted out")
        events.append(meaning)
    return tuple(events)


def option_of(item: Item, doer: int, other: int) -> int:
    """The option in which the figures in these places play, the doer first.

    Raises: ValueError where nobody or the same one plays both parts.
    """
    figures = figures_of(item)
    return [parts(event) for event in events_of(item)].index((figures[doer], figures[other]))


def places_of(item: Item, index: int) -> tuple[int, int]:
    """Where doer and done-to of option `index` stand among the figures."""
    figures = figures_of(item)
    doer, other = parts(events_of(item)[index])
    return figures.index(doer), figures.index(other)


def questions(item: Item) -> tuple[str, str]:
    """What is asked in turn: for the doer, then for the other."""
    return WHO_DOES_IT, item.prompt.removeprefix(f"{WHO_DOES_IT} ")


def second_question(event: Event, lexicon: Lexicon) -> str:
    """ "Who is it done to?"; of giving, "Who is it given to?"."""
    if isinstance(event, Transfer):
        return f"Who is it {lexicon.transfers[event.verb].past_participle} to?"
    return DONE_TO
