"""Frames of the passive and of relative clauses: who did it, and which one is meant."""

from __future__ import annotations

from functools import lru_cache

from drills.core.clauses import Clause, Determined, Missing, Party, Person, Relative, Tie, Told
from drills.core.material import ClozeWords
from drills.core.meanings import Act, Meaning, Relation, Transfer
from drills.core.words import Band, Lexicon, Sort
from drills.exercises.casting import Casting, Pair
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.pictured import open_places
from drills.exercises.frames.verbs import clause_of, subject_of
from drills.exercises.reasons import WhyWrong
from drills.exercises.reserve import open_pairs
from drills.language.clauses import Slot
from drills.pictures import can_draw

# By, to, with, from: who does it and who gets it is seen; a tool does nothing by itself.

_TAKE = "take"


def _deal_passive(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    match word:
        case "with":
            verb, thing, tool = dealer.fresh("tool", _WITH)
            # Who does it is told too, or "by a brush" could be said.
            doer = Tie(word="by", party=dealer.named())
            return _undergoes(thing, verb, Tie(word=word, party=_any_one(tool)), doer)
        case "from":
            thing, source = dealer.fresh("taken", _boxed(dealer.material.lexicon))
            inside = Clause(
                subject=Party(noun=thing),
                verb="be",
                ties=(Tie(word="in", party=Party(noun=source)),),
            )
            tie = Tie(word=word, party=Party(noun=source))
            clause = Clause(
                subject=Party(noun=thing, is_pronoun=True), verb=_TAKE, passive=True, ties=(tie,)
            )
            return Dealt(told=Told(clause=clause, before=(inside,)))
        case "by" if "to" not in others or "from" in others:
            return _acted_on(dealer, others)
        case _:
            return _given(word, dealer)


_WITH = (
    ("wash", "boot", "brush"),
    ("wash", "pot", "brush"),
    ("paint", "chair", "brush"),
    ("paint", "boat", "brush"),
    ("eat", "cake", "spoon"),
    ("eat", "orange", "spoon"),
)
"""What is done to what with which tool."""


def _any_one(noun: str) -> Party:
    return Party(noun=noun, determined=Determined.A)


def _boxed(lexicon: Lexicon) -> tuple[Pair, ...]:
    relation = Relation.IN.value
    return tuple(open_pairs(open_places(lexicon, (relation,)), relation, lexicon))


def _undergoes(subject: str, verb: str, *ties: Tie, seen: Clause | None = None) -> Dealt:
    clause = Clause(subject=Party(noun=subject), verb=verb, passive=True, ties=ties)
    return Dealt(told=Told(clause=clause, seen=seen))


def _acted_on(dealer: Dealer, others: tuple[str, ...]) -> Dealt:
    """ "The baker is pushed by the nurse", as the picture shows."""
    lexicon = dealer.material.lexicon

    def pairs(_group: str, verb: str) -> tuple[Pair, ...]:
        return _drawn_pairs(lexicon, verb)

    barred = (*_FROM_TOO, *(_MOVING if "from" in others else ()))
    verbs = [key for key in lexicon.verbs if key not in barred and _drawn_pairs(lexicon, key)]
    casting = dealer.casting("acted on", lambda: Casting(dealer.rng, pairs))
    verb, (doer, done_to) = casting.choose(
        "by", verbs, lambda verb, pair: dealer.is_new(verb, *pair)
    )
    dealer.note(verb, doer, done_to)
    seen = Clause(subject=Party(noun=doer), verb=verb, object=Party(noun=done_to))
    return _undergoes(done_to, verb, Tie(word="by", party=Party(noun=doer)), seen=seen)


_FROM_TOO = ("shelter", "stop")
"""One can be sheltered from somebody too."""
_MOVING = ("push", "pull", "lift", "carry", "chase", "follow", "lead", "film", "measure", "feed")
"""One can be moved, or seen, from where somebody is."""


@lru_cache(maxsize=256)
def _drawn_pairs(lexicon: Lexicon, verb: str) -> tuple[Pair, ...]:
    drawn = tuple(
        (a.key, b.key)
        for a, b in lexicon.partners(lexicon.verbs[verb])
        if a.sort is Sort.PERSON and can_draw(Act(verb=verb, doer=a.key, done_to=b.key))
    )
    return tuple(open_pairs(drawn, verb, lexicon))


def _given(word: str, dealer: Dealer) -> Dealt:
    """ "The cup is given by the nurse", or "to" her, as the picture shows."""
    lexicon = dealer.material.lexicon
    casting = dealer.casting(
        "given", lambda: Casting(dealer.rng, lambda _group, _act: _givers(lexicon))
    )
    _, (doer, receiver) = casting.choose(word, ("",), lambda _, pair: dealer.is_new(*pair))
    dealer.note(doer, receiver)
    verb = dealer.fresh("transfer", tuple(dealer.material.lexicon.transfers))
    given = dealer.thing("given", lambda noun: _can_give(verb, noun.key))
    seen = Clause(
        subject=Party(noun=doer),
        verb=verb,
        object=Party(noun=given),
        ties=(Tie(word="to", party=Party(noun=receiver)),),
    )
    shown = doer if word == "by" else receiver
    return _undergoes(given, verb, Tie(word=word, party=Party(noun=shown)), seen=seen)


@lru_cache(maxsize=8)
def _givers(lexicon: Lexicon) -> tuple[Pair, ...]:
    grown = [noun for noun in lexicon.people if noun.band == Band.EVERYDAY and noun.size == 2]
    return tuple((a.key, b.key) for a in grown for b in grown if a is not b)


@lru_cache(maxsize=512)
def _can_give(verb: str, thing: str) -> bool:
    return can_draw(Transfer(verb=verb, doer="nurse", given=thing, receiver="baker"))


def _seen_of(told: Told) -> Meaning | None:
    """The act or the giving that the picture shows."""
    seen = told.seen
    if seen is None or seen.subject is None or seen.object is None:
        return None
    doer, other = seen.subject.noun, seen.object.noun
    if not seen.ties or seen.ties[0].party is None:
        return Act(verb=seen.verb, doer=doer, done_to=other)
    return Transfer(verb=seen.verb, doer=doer, given=other, receiver=seen.ties[0].party.noun)


def _passive_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    told = dealt.words
    tied, seen = told.clause.ties[0].party, told.seen
    if tied is None:
        raise TypeError("nothing is tied to the clause")
    if told.before:
        demand = ("source", WhyWrong.LOGIC, Anchor.CONTEXT)
    elif seen is None:
        # Where nobody is told to do it, "washed by a brush" can be said.
        part = "tool" if any(tie.word == "by" for tie in told.clause.ties) else "tool alone"
        demand = (part, WhyWrong.FALSE_ROLE, Anchor.WORD_AFTER)
    elif seen.subject is not None and tied.noun == seen.subject.noun:
        demand = ("doer", WhyWrong.FALSE_ROLE, Anchor.PICTURE)
    else:
        demand = ("receiver", WhyWrong.FALSE_ROLE, Anchor.PICTURE)
    value, why, anchor = demand
    return (Demand(feature="part", value=value, why=why, anchor=anchor),)


# Who, which, that, where

_OF_THINGS = ("wet", "dirty", "big", "small")


def _deal_relative(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    speaker = Party(person=Person.FIRST, is_pronoun=True)
    if word == "where":
        verb = dealer.alone("where", lambda each: each.key in ("sleep", "sit"))
        place = dealer.fresh("place", ("tent", "boat", "car"))
        inner = Clause(subject=dealer.named(), verb=verb)
        named = Party(noun=place, relative=Relative(word=word, missing=Missing.PLACE, clause=inner))
        return Dealt(told=Told(clause=Clause(subject=speaker, verb="see", object=named)))
    if word != "who" and "where" in others:
        # "The ladder where the painter paints" can be said, "the ladder where is wet" cannot.
        inner = Clause(subject=None, verb="be", state=dealer.fresh("which state", _OF_THINGS))
        relative = Relative(word=word, missing=Missing.SUBJECT, clause=inner)
        named = Party(noun=dealer.thing("which"), relative=relative)
        return Dealt(told=Told(clause=Clause(subject=speaker, verb="see", object=named)))
    if word == "who":
        inner = Clause(subject=None, verb=dealer.alone("who"))
        subject = Party(
            noun=dealer.person(),
            relative=Relative(word=word, missing=Missing.SUBJECT, clause=inner),
        )
        state = dealer.state()
    else:
        verb, thing = dealer.act_on_thing("which")
        inner = Clause(subject=dealer.named(), verb=verb)
        subject = Party(
            noun=thing, relative=Relative(word=word, missing=Missing.OBJECT, clause=inner)
        )
        state = dealer.fresh("which state", _OF_THINGS)
    return Dealt(told=Told(clause=Clause(subject=subject, verb="be", state=state)))


def _relative_of(dealt: Dealt) -> tuple[Party, Relative]:
    named = clause_of(dealt).object
    party = named if named is not None and named.relative is not None else subject_of(dealt)
    if party.relative is None:
        raise TypeError("nothing is singled out")
    return party, party.relative


def _relative_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    lexicon = words.lexicon
    party, relative = _relative_of(dealt)
    sort = "thing" if lexicon.nouns[party.noun].sort is Sort.THING else "person"
    return (
        Demand(
            feature="stands for",
            value=relative.missing.value,
            why=WhyWrong.CASE,
            anchor=Anchor.WORD_AFTER,
        ),
        Demand(feature="follows", value=sort, why=WhyWrong.AGREEMENT, anchor=Anchor.WORD_BEFORE),
    )


_PARTS = "subject|object"

PARTS = (
    Frame(
        name="passive",
        slots=(Slot.PREPOSITION,),
        traits={
            "by": values(part="doer|tool alone"),
            "to": values(part="receiver"),
            "with": values(part="tool|tool alone"),
            "from": values(part="source"),
        },
        deal=_deal_passive,
        demands=_passive_demands,
        picture_of=_seen_of,
    ),
    Frame(
        name="relative",
        slots=(Slot.RELATIVE,),
        traits={
            "who": values(follows="person") | {"stands for": frozenset(_PARTS.split("|"))},
            "which": values(follows="thing") | {"stands for": frozenset(_PARTS.split("|"))},
            "that": values(follows="person|thing") | {"stands for": frozenset(_PARTS.split("|"))},
            # "The ladder where the painter paints" can be said.
            "where": values(follows="thing") | {"stands for": frozenset({"place", "object"})},
        },
        deal=_deal_relative,
        demands=_relative_demands,
    ),
)
