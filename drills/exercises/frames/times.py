"""Frames of questions with their answers, of clocks, days and months."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Day, Party, Tie, Told, Wanted
from drills.core.material import ClozeWords
from drills.core.meanings import Relation
from drills.core.words import Sort
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.pictured import open_places
from drills.exercises.frames.verbs import clause_of
from drills.exercises.reasons import WhyWrong
from drills.exercises.reserve import exemplar_key, is_reserved, open_pairs
from drills.language.clauses import Slot
from drills.language.times import HOURS, MONTHS, WEEKDAYS

# Questions


def _deal_question(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    wanted = _WANTED[word]
    match word:
        case "who" | "what":
            clause = _of_people_or_things(word, dealer)
            wanted = Wanted.OBJECT
        case "where":
            relations = (Relation.ON.value, Relation.UNDER.value)
            pairs = open_places(dealer.material.lexicon, relations)
            for relation in relations:
                pairs = tuple(open_pairs(pairs, relation, dealer.material.lexicon))
            thing, landmark = dealer.fresh("where", pairs)
            tie = Tie(word=dealer.rng.choice(relations), party=Party(noun=landmark))
            clause = Clause(subject=Party(noun=thing), verb="be", ties=(tie,))
        case "when":
            clause = Clause(
                subject=dealer.named(), verb=dealer.alone(), ties=(_time_tie("on", dealer),)
            )
        case "why":
            state, act = dealer.cause()
            who = dealer.named()
            reason = Clause(subject=replace(who, is_pronoun=True), verb="be", state=state)
            clause = Clause(subject=who, verb=act)
            return Dealt(told=Told(clause=clause, second=reason, link="because", wanted=wanted))
        case _:
            quality = dealer.fresh("which", ("big", "small", "old", "wet"))
            thing = dealer.thing()
            states = ("dirty", "empty") if dealer.lexicon.nouns[thing].container else ("dirty",)
            state = dealer.fresh("which is", states)
            clause = Clause(subject=Party(noun=thing, quality=quality), verb="be", state=state)
    return Dealt(told=Told(clause=clause, wanted=wanted))


def _of_people_or_things(word: str, dealer: Dealer) -> Clause:
    """An act, whose done-to is a person for "who" and a thing for "what"."""
    doers = dealer.named()
    verb, thing = dealer.act_on_thing(
        "asked", lambda each: bool(each.things) and each.key in _TO_BOTH
    )

    def is_open(person: str) -> bool:
        return not is_reserved(exemplar_key(verb, (doers.noun, person)), dealer.material.lexicon)

    done_to = dealer.person(suits=is_open) if word == "who" else thing
    return Clause(subject=doers, verb=verb, object=Party(noun=done_to))


_TO_BOTH = ("push", "pull", "lift", "carry", "wash", "dry", "cover", "measure", "paint", "film")
"""What is done to people and to things."""

_WANTED = {
    "who": Wanted.OBJECT,
    "what": Wanted.OBJECT,
    "where": Wanted.PLACE,
    "when": Wanted.TIME,
    "why": Wanted.REASON,
    "which": Wanted.WHICH,
}


def _question_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    """Read from the answer: a person, a thing, a place, a time, a reason, one of several."""
    told = dealt.words
    match told.wanted:
        case Wanted.OBJECT if told.clause.object is not None:
            thing = words.lexicon.nouns[told.clause.object.noun].sort is Sort.THING
            value = "thing" if thing else "person"
        case Wanted.WHICH:
            value = "one of several"
        case Wanted.PLACE:
            value = "place"
        case Wanted.TIME:
            value = "time"
        case _:
            value = "reason"
    return (Demand(feature="asks", value=value, why=WhyWrong.LOGIC, anchor=Anchor.CONTEXT),)


# Clock, day, month


def _time_tie(word: str, dealer: Dealer) -> Tie:
    times = {"at": HOURS, "on": WEEKDAYS, "in": MONTHS}[word]
    return Tie(word=word, time=dealer.fresh(f"time {word}", times))


def _deal_time(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    clause = Clause(
        subject=dealer.named(), verb=dealer.alone(), modal="will", ties=(_time_tie(word, dealer),)
    )
    return Dealt(told=Told(clause=clause))


def _time_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    time = clause_of(dealt).ties[-1].time
    value = "day" if time in WEEKDAYS else "month"
    if time in HOURS:
        value = "clock"
    return (Demand(feature="time", value=value, why=WhyWrong.COLLOCATION, anchor=Anchor.TIME_NOUN),)


# Before, on, after: by the days


def _deal_calendar(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    """Two days with what is done on each; the sentence places one act by a day."""
    # A week begins on one day here and on another there, so no two of its ends stand together.
    first = dealer.rng.randrange(4)
    step = dealer.rng.choice((1, 2))
    date = dealer.rng.randrange(2, 24)
    verbs = (dealer.alone("calendar"), dealer.alone("calendar"))
    days = (
        Day(weekday=WEEKDAYS[first], date=date, verb=verbs[0]),
        Day(weekday=WEEKDAYS[first + step], date=date + step, verb=verbs[1]),
    )
    told, by = {
        "before": (days[0], days[1]),
        "after": (days[1], days[0]),
        "on": dealer.rng.choice(((days[0], days[0]), (days[1], days[1]))),
    }[word]
    clause = Clause(
        subject=dealer.named(),
        verb=told.verb,
        modal="will",
        ties=(Tie(word=word, time=by.weekday),),
    )
    return Dealt(told=Told(clause=clause, calendar=days))


def _calendar_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    told = dealt.words
    dates = {day.weekday: day.date for day in told.calendar}
    done = next(day.date for day in told.calendar if day.verb == told.clause.verb)
    by = dates[told.clause.ties[-1].time]
    value = "earlier" if done < by else "later"
    if done == by:
        value = "same"
    return (Demand(feature="order", value=value, why=WhyWrong.LOGIC, anchor=Anchor.CONTEXT),)


TIMES = (
    Frame(
        name="question",
        slots=(Slot.WH,),
        traits={
            "who": values(asks="person"),
            "what": values(asks="thing"),
            "where": values(asks="place"),
            "when": values(asks="time"),
            "why": values(asks="reason"),
            # "Which does he push?" and "Which is the cup?" can be asked as well.
            "which": values(asks="one of several|person|thing|place"),
        },
        deal=_deal_question,
        demands=_question_demands,
        surface=lambda label, _dealt, _lexicon: label.capitalize(),
    ),
    Frame(
        name="time",
        slots=(Slot.PREPOSITION,),
        traits={
            "at": values(time="clock"),
            "on": values(time="day"),
            "in": values(time="month"),
        },
        deal=_deal_time,
        demands=_time_demands,
    ),
    Frame(
        name="calendar",
        slots=(Slot.PREPOSITION,),
        traits={
            "before": values(order="earlier"),
            "on": values(order="same"),
            "after": values(order="later"),
        },
        deal=_deal_calendar,
        demands=_calendar_demands,
    ),
)
