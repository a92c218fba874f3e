"""Frames of small verbs: by person, by time, by the form of the verb that follows."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Determined, Party, Person, Told
from drills.core.material import ClozeWords
from drills.core.meanings import Aspect, Tense
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot
from drills.language.small_words import MODALS, is_many
from drills.language.times import PAST_TIMES

_I = Party(person=Person.FIRST, is_pronoun=True)
_WE = Party(person=Person.FIRST, count=2, is_pronoun=True)
_YOU = Party(person=Person.SECOND, is_pronoun=True)


def person_value(party: Party) -> str:
    """Person and number in short: "1s", "3p"."""
    digit = {Person.FIRST: "1", Person.SECOND: "2", Person.THIRD: "3"}[party.person]
    return digit + ("p" if is_many(party) else "s")


def subject_of(dealt: Dealt) -> Party:
    subject = dealt.words.clause.subject
    if subject is None:
        raise TypeError("the clause has no subject")
    return subject


def clause_of(dealt: Dealt) -> Clause:
    return dealt.words.clause


# Am, is, are.


def _deal_be_person(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    if word == "am":
        subject = _I
    elif word == "is":
        subject = dealer.named()
    else:
        subject = dealer.rng.choice((_YOU, _WE, dealer.counted(dealer.many())))
    clause = Clause(
        subject=subject, verb="be", state=dealer.state(), when="now" if subject.is_pronoun else ""
    )
    return Dealt(told=Told(clause=clause))


def _be_person_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="person",
            value=person_value(subject_of(dealt)),
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.WORD_BEFORE,
        ),
    )


# By time and number.

_TIMED = {
    "is": (Tense.PRESENT, True),
    "are": (Tense.PRESENT, False),
    "was": (Tense.PAST, True),
    "were": (Tense.PAST, False),
    "has": (Tense.PRESENT, True),
    "have": (Tense.PRESENT, False),
    "had": (Tense.PAST, None),
    "does": (Tense.PRESENT, True),
    "do": (Tense.PRESENT, False),
    "did": (Tense.PAST, None),
}


_LASTING = ("agree", "care", "help", "listen", "smile", "wait", "worry")
"""What one can be said to do, or not to do, now."""


def _deal_timed(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    tense, one = _TIMED[word]
    if one is None:
        # A past form fits one and many, so the others are to be wrong by time alone.
        one = dealer.rng.random() < 0.5 if len(others) != 1 else _TIMED[others[0]][1] is True
    subject = dealer.counted(1 if one else dealer.many(), f"timed {one}")
    past = tense is Tense.PAST
    when = dealer.rng.choice(tuple(PAST_TIMES)) if past else "right-now"
    if word in ("is", "are", "was", "were"):
        clause = Clause(subject=subject, verb="be", state=dealer.state(), tense=tense)
    elif word in ("has", "have", "had"):
        had = Party(noun=dealer.thing(), determined=Determined.A)
        clause = Clause(subject=subject, verb="have", object=had, tense=tense)
    else:
        # "Every day they did not" can be said as well; of now only the present can.
        clause = Clause(
            subject=subject, verb=dealer.fresh("do", _LASTING), negated=True, tense=tense
        )
    return Dealt(told=Told(clause=replace(clause, when=when)))


def time_demand(dealt: Dealt) -> Demand:
    clause = clause_of(dealt)
    return Demand(
        feature="tense",
        value="later" if clause.modal == "will" else clause.tense.value,
        why=WhyWrong.TENSE,
        anchor=Anchor.TIME_WORD,
    )


def number_demand(dealt: Dealt) -> Demand:
    return Demand(
        feature="number",
        value="many" if is_many(subject_of(dealt)) else "one",
        why=WhyWrong.AGREEMENT,
        anchor=Anchor.NUMERAL,
    )


def _timed_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (time_demand(dealt), number_demand(dealt))


_PRESENT_ONE = values(tense="present", number="one")
_PRESENT_MANY = values(tense="present", number="many")
_PAST_ANY = values(tense="past")


def _deal_will_did(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    verb = dealer.alone()
    if word == "will":
        when = dealer.rng.choice(("tomorrow", "next-week"))
        clause = Clause(subject=dealer.named(), verb=verb, negated=True, modal="will", when=when)
    else:
        when = dealer.rng.choice(tuple(PAST_TIMES))
        clause = Clause(
            subject=dealer.named(), verb=verb, negated=True, tense=Tense.PAST, when=when
        )
    return Dealt(told=Told(clause=clause))


# By the form of the verb.


def _form_differs(verb: object) -> bool:
    return getattr(verb, "base", "") not in (
        getattr(verb, "past_participle", ""),
        getattr(verb, "past", ""),
    )


def _deal_verb_form(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    verb, thing = dealer.act_on_thing(suits=_form_differs)
    clause = Clause(subject=dealer.named(), verb=verb, object=Party(noun=thing))
    if word == "is":
        clause = replace(clause, aspect=Aspect.PROGRESSIVE)
    elif word == "has":
        clause = replace(clause, perfect=True)
    else:
        clause = replace(clause, modal=word)
    return Dealt(told=Told(clause=clause))


def _verb_form_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    clause = clause_of(dealt)
    value = "participle" if clause.perfect else "ing"
    if clause.modal:
        value = "base"
    return (
        Demand(feature="before", value=value, why=WhyWrong.AGREEMENT, anchor=Anchor.WORD_AFTER),
    )


def _deal_be_form(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    if word == "being":
        verb, thing = dealer.act_on_thing("being")
        clause = Clause(
            subject=Party(noun=thing), verb=verb, passive=True, aspect=Aspect.PROGRESSIVE
        )
    else:
        clause = Clause(subject=dealer.named(), verb="be", state=dealer.state())
        changed = {"modal": "will"} if word == "be" else {}
        clause = replace(clause, perfect=word == "been", **changed)  # type: ignore[arg-type]
    return Dealt(told=Told(clause=clause))


def _be_form_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    clause = clause_of(dealt)
    value = "have" if clause.perfect else "be"
    if clause.modal:
        value = "modal"
    return (
        Demand(feature="after", value=value, why=WhyWrong.AGREEMENT, anchor=Anchor.WORD_BEFORE),
    )


# Not, no.


def _deal_not_no(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    subject = dealer.named()
    if word == "not":
        clause = Clause(subject=subject, verb="be", state=dealer.state(), negated=True)
    else:
        none = Party(noun=dealer.thing(), determined=Determined.NO)
        clause = Clause(subject=subject, verb="have", object=none)
    return Dealt(told=Told(clause=clause))


def _not_no_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    value = "other" if clause_of(dealt).negated else "noun"
    return (
        Demand(feature="before", value=value, why=WhyWrong.COLLOCATION, anchor=Anchor.WORD_AFTER),
    )


VERBS = (
    Frame(
        name="be-person",
        slots=(Slot.AUXILIARY,),
        traits={
            "am": values(person="1s"),
            "is": values(person="3s"),
            "are": values(person="2s|1p|2p|3p"),
        },
        deal=_deal_be_person,
        demands=_be_person_demands,
    ),
    Frame(
        name="be-time",
        slots=(Slot.AUXILIARY,),
        traits={
            "is": _PRESENT_ONE,
            "are": _PRESENT_MANY,
            "was": values(tense="past", number="one"),
            "were": values(tense="past", number="many"),
        },
        deal=_deal_timed,
        demands=_timed_demands,
    ),
    Frame(
        name="have-time",
        slots=(Slot.AUXILIARY,),
        traits={"has": _PRESENT_ONE, "have": _PRESENT_MANY, "had": _PAST_ANY},
        deal=_deal_timed,
        demands=_timed_demands,
    ),
    Frame(
        name="do-time",
        slots=(Slot.AUXILIARY,),
        traits={"does": _PRESENT_ONE, "do": _PRESENT_MANY, "did": _PAST_ANY},
        deal=_deal_timed,
        demands=_timed_demands,
    ),
    Frame(
        name="will-did",
        slots=(Slot.AUXILIARY,),
        traits={"will": values(tense="later"), "did": values(tense="past")},
        deal=_deal_will_did,
        demands=lambda dealt, _: (time_demand(dealt),),
    ),
    Frame(
        name="verb-form",
        slots=(Slot.AUXILIARY,),
        traits={
            **{modal: values(before="base") for modal in MODALS},
            "is": values(before="ing"),
            "has": values(before="participle"),
        },
        deal=_deal_verb_form,
        demands=_verb_form_demands,
    ),
    Frame(
        name="be-form",
        slots=(Slot.INNER_AUXILIARY,),
        traits={
            "be": values(after="modal"),
            "been": values(after="have"),
            "being": values(after="be"),
        },
        deal=_deal_be_form,
        demands=_be_form_demands,
    ),
    Frame(
        name="not-no",
        slots=(Slot.NEGATION, Slot.OBJECT_DETERMINER),
        traits={"not": values(before="other"), "no": values(before="noun")},
        deal=_deal_not_no,
        demands=_not_no_demands,
    ),
)
