"""Frames of pronouns: case by the slot, person by the verb, whose by "own"."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Determined, Party, Person, Told
from drills.core.material import ClozeWords
from drills.core.meanings import Aspect, Tense
from drills.core.words import Sex
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.verbs import clause_of, person_value, subject_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot
from drills.language.small_words import Case, be

PERSONS = {
    "I": (Person.FIRST, 1), "me": (Person.FIRST, 1), "my": (Person.FIRST, 1),
    "we": (Person.FIRST, 2), "us": (Person.FIRST, 2), "our": (Person.FIRST, 2),
    "you": (Person.SECOND, 1), "your": (Person.SECOND, 1),
    "he": (Person.THIRD, 1), "him": (Person.THIRD, 1), "his": (Person.THIRD, 1),
    "she": (Person.THIRD, 1), "her": (Person.THIRD, 1),
    "it": (Person.THIRD, 1), "its": (Person.THIRD, 1),
    "they": (Person.THIRD, 2), "them": (Person.THIRD, 2), "their": (Person.THIRD, 2),
}  # fmt: skip
MALE, FEMALE = ("he", "him", "his"), ("she", "her")
_SUBJECTS = ("I", "we", "he", "she", "they")
_POSSESSIVES = ("my", "our", "his", "their", "your", "its")


def _party(word: str, dealer: Dealer) -> Party:
    """Whom the pronoun stands for."""
    person, count = PERSONS[word]
    noun = ""
    if word in MALE:
        noun = dealer.sexed(Sex.MALE)
    elif word in FEMALE:
        noun = dealer.sexed(Sex.FEMALE)
    elif word in ("it", "its"):
        noun = dealer.thing() if word == "it" else dealer.animal()
    elif person is Person.THIRD:
        noun = dealer.person()
    return Party(noun=noun, person=person, count=count, is_pronoun=True)


_TO_PEOPLE = ("help", "watch", "wake", "film", "feed")

# Case, by the place in the sentence.


def _deal_case(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    who = _party(word, dealer)
    verb, thing = dealer.act_on_thing("case")
    if word in _SUBJECTS:
        clause = Clause(
            subject=who,
            verb=verb,
            object=Party(noun=thing),
            aspect=Aspect.PROGRESSIVE,
            when="now",
        )
    elif word in _POSSESSIVES:
        mine = Party(noun=thing, owner=who)
        clause = Clause(subject=dealer.named(), verb=verb, object=mine, aspect=Aspect.PROGRESSIVE)
    else:
        helper = dealer.named()
        act = dealer.fresh("case act", _TO_PEOPLE)
        clause = Clause(subject=helper, verb=act, object=who, aspect=Aspect.PROGRESSIVE)
    return Dealt(told=Told(clause=clause))


def _case_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    clause = clause_of(dealt)
    named = clause.object
    if named is not None and named.owner is not None:
        case = Case.POSSESSIVE
    else:
        case = Case.SUBJECT if subject_of(dealt).is_pronoun else Case.OBJECT
    return (Demand(feature="case", value=case.value, why=WhyWrong.CASE, anchor=Anchor.WORD_ORDER),)


_CASES = {
    **{word: values(case="subject") for word in ("I", "we", "he", "she", "they")},
    **{word: values(case="object") for word in ("me", "us", "him", "them")},
    **{word: values(case="possessive") for word in ("my", "our", "their", "your")},
    "her": values(case="object|possessive"),
    "you": values(case="subject|object"),
}


# My hat, and a hat that is mine.


def _deal_mine(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    owner = _party(word.removesuffix("s") if word == "yours" else _WHOSE.get(word, word), dealer)
    this = Party(determined=Determined.NEAR)
    thing = dealer.thing()
    if word in _ALONE:
        subject = Party(noun=thing, determined=Determined.NEAR)
        clause = Clause(subject=subject, verb="be", object=Party(owner=owner))
    else:
        clause = Clause(subject=this, verb="be", object=Party(noun=thing, owner=owner))
    return Dealt(told=Told(clause=clause))


_ALONE = ("mine", "yours")
_WHOSE = {"mine": "my"}


def _mine_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    named = clause_of(dealt).object
    alone = named is not None and not named.noun
    return (
        Demand(
            feature="case",
            value="alone" if alone else "before noun",
            why=WhyWrong.CASE,
            anchor=Anchor.WORD_BEFORE if alone else Anchor.WORD_AFTER,
        ),
    )


# By the form of "be" that follows.


def _deal_by_verb(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    # Only the small verb after the gap tells who it is.
    clause = Clause(
        subject=_party(word, dealer), verb="be", state=dealer.state("by verb"), when="now"
    )
    return Dealt(told=Told(clause=clause))


def _by_verb_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="be",
            value=be(subject_of(dealt), Tense.PRESENT),
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.WORD_AFTER,
        ),
    )


# Whose own.


def _deal_own(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    owner = _party(word, dealer)
    determined = Determined.COUNTED if owner.noun and owner.count > 1 else Determined.THE
    named = replace(owner, is_pronoun=not owner.noun, determined=determined)
    if word == "its":
        clause = Clause(subject=named, verb="have", object=_own(dealer.fresh("bed", _BEDS), owner))
    else:
        verb, thing = dealer.act_on_thing("own")
        clause = Clause(
            subject=named, verb=verb, object=_own(thing, owner), aspect=Aspect.PROGRESSIVE
        )
    return Dealt(told=Told(clause=replace(clause, when="now" if named.is_pronoun else "")))


_BEDS = ("basket", "blanket", "pillow", "box")


def _own(thing: str, owner: Party) -> Party:
    # Several have several: "two bakers are carrying their own bags".
    return Party(noun=thing, count=owner.count, owner=replace(owner, is_pronoun=True), own=True)


def _own_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    subject = subject_of(dealt)
    value = person_value(subject)
    if value == "3s":
        sex = words.lexicon.nouns[subject.noun].sex
        value += "n" if sex is None else sex.value[0]
    return (Demand(feature="owner", value=value, why=WhyWrong.AGREEMENT, anchor=Anchor.OWN),)


# Me, myself.


def _deal_self(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    me = Party(person=Person.FIRST, is_pronoun=True)
    verb = dealer.fresh("self", ("wash", "dry", "comb", "measure", "weigh"))
    alone = word == "myself"
    clause = Clause(
        subject=me if alone else dealer.named(),
        verb=verb,
        object=replace(me, is_reflexive=alone),
        aspect=Aspect.PROGRESSIVE,
        when="now",
    )
    return Dealt(told=Told(clause=clause))


def _self_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    alone = subject_of(dealt).person is Person.FIRST
    return (
        Demand(
            feature="doer",
            value="speaker" if alone else "other",
            why=WhyWrong.CASE,
            anchor=Anchor.WORD_BEFORE,
        ),
    )


PRONOUNS = (
    Frame(
        name="case",
        slots=(Slot.SUBJECT, Slot.OBJECT, Slot.OBJECT_DETERMINER),
        traits=_CASES,
        deal=_deal_case,
        demands=_case_demands,
    ),
    Frame(
        name="mine",
        slots=(Slot.OBJECT, Slot.OBJECT_DETERMINER),
        traits={
            "my": values(case="before noun"),
            "your": values(case="before noun"),
            "mine": values(case="alone"),
            "yours": values(case="alone"),
        },
        deal=_deal_mine,
        demands=_mine_demands,
    ),
    Frame(
        name="by-verb",
        slots=(Slot.SUBJECT,),
        traits={
            "I": values(be="am"),
            **{word: values(be="is") for word in ("he", "she", "it")},
            **{word: values(be="are") for word in ("you", "we", "they")},
        },
        deal=_deal_by_verb,
        demands=_by_verb_demands,
    ),
    Frame(
        name="own",
        slots=(Slot.OBJECT_DETERMINER,),
        traits={
            "my": values(owner="1s"),
            "our": values(owner="1p"),
            "your": values(owner="2s|2p"),
            "his": values(owner="3sm"),
            "her": values(owner="3sf"),
            "its": values(owner="3sn"),
            "their": values(owner="3p"),
        },
        deal=_deal_own,
        demands=_own_demands,
    ),
    Frame(
        name="self",
        slots=(Slot.OBJECT,),
        traits={"me": values(doer="other"), "myself": values(doer="speaker")},
        deal=_deal_self,
        demands=_self_demands,
    ),
)
