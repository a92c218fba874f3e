"""Frames of endings: -ing, plural -s, -ed, 's and the -s of the third person."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Determined, Party, Told
from drills.core.material import ClozeWords
from drills.core.meanings import Aspect, Tense
from drills.core.words import Lexicon, Noun, Verb
from drills.exercises.frames.dealing import Dealer, shows_tense
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.verbs import clause_of, number_demand, subject_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot
from drills.language.small_words import is_many
from drills.language.times import FUTURE_TIMES, HABITS, PAST_TIMES


def is_regular(verb: Verb) -> bool:
    """Its past is its base with -ed, and nothing hides that."""
    return shows_tense(verb) and verb.past == verb.past_participle and verb.past.endswith("ed")


def _verb_of(dealt: Dealt, lexicon: Lexicon) -> Verb:
    key = clause_of(dealt).verb
    for verbs in (lexicon.verbs, lexicon.alone):
        if key in verbs:
            return verbs[key]
    raise KeyError(key)


def _verb_form(label: str, dealt: Dealt, lexicon: Lexicon) -> str:
    verb = _verb_of(dealt, lexicon)
    forms = {
        "base": verb.base,
        "bare": verb.base,
        "ing": verb.ing,
        "ed": verb.past,
        "s": verb.third_person,
    }
    return forms[label]


def _acting(subject: Party, dealer: Dealer, pool: str, *, regular: bool = False) -> Clause:
    """Somebody does something, alone or to a thing."""
    suits = is_regular if regular else shows_tense
    if dealer.rng.random() < 0.5:
        return Clause(subject=subject, verb=dealer.alone(f"{pool} alone", suits))
    verb, thing = dealer.act_on_thing(pool, suits)
    return Clause(subject=subject, verb=verb, object=Party(noun=thing))


# C1


def _deal_ing(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    clause = _acting(dealer.counted(dealer.rng.choice((1, 2))), dealer, "ing")
    if word == "ing":
        return Dealt(told=Told(clause=replace(clause, aspect=Aspect.PROGRESSIVE)))
    return Dealt(told=Told(clause=replace(clause, modal="can")))


def _ing_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    after_be = clause_of(dealt).aspect is Aspect.PROGRESSIVE
    return (
        Demand(
            feature="after",
            value="be" if after_be else "modal",
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.WORD_BEFORE,
        ),
    )


# C2


def _deal_plural(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    count = 1 if word == "one" else dealer.many()
    had = Party(noun=dealer.thing(f"had {word}"), count=count, determined=Determined.COUNTED)
    return Dealt(told=Told(clause=Clause(subject=dealer.named(), verb="have", object=had)))


def _counted(dealt: Dealt) -> Party:
    named = clause_of(dealt).object
    if named is None:
        raise TypeError("the clause has no object")
    return named


def _plural_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="number",
            value="many" if is_many(_counted(dealt)) else "one",
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.NUMERAL,
        ),
    )


def _plural_form(label: str, dealt: Dealt, lexicon: Lexicon) -> str:
    noun = lexicon.nouns[_counted(dealt).noun]
    return noun.singular if label == "one" else noun.plural


# C8


def _deal_past(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    clause = _acting(dealer.named(), dealer, "past", regular=True)
    if word == "bare" and dealer.rng.random() < 0.5:
        when = dealer.rng.choice(tuple(FUTURE_TIMES))
        return Dealt(told=Told(clause=replace(clause, modal="will", when=when)))
    # "Every day they walk" could as well be told of then; after "did not" the bare form is sure.
    when = dealer.rng.choice(tuple(PAST_TIMES))
    past = replace(clause, tense=Tense.PAST, when=when, negated=word == "bare")
    return Dealt(told=Told(clause=past))


def _past_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    """Past by the time word, unless a small verb before it tells the time already."""
    clause = clause_of(dealt)
    told = bool(clause.modal) or clause.negated
    return (
        Demand(
            feature="tense",
            value="told before" if told else clause.tense.value,
            why=WhyWrong.TENSE,
            anchor=Anchor.TIME_WORD,
        ),
    )


# C9


def _deal_possessive(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    thing, who = dealer.thing(), dealer.person()
    if word == "'s":
        mine = Party(noun=thing, owner=Party(noun=who))
        clause = Clause(subject=Party(determined=Determined.NEAR), verb="be", object=mine)
    else:
        count = 1 if word == "bare" else dealer.many()
        subject = Party(noun=who, count=count, determined=Determined.COUNTED)
        had = Party(noun=thing, determined=Determined.A)
        clause = Clause(subject=subject, verb="have", object=had)
    return Dealt(told=Told(clause=clause))


def _possessive_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    named = clause_of(dealt).object
    owned = named is not None and named.owner is not None
    case = Demand(
        feature="case",
        value="owner" if owned else "subject",
        why=WhyWrong.CASE,
        anchor=Anchor.WORD_AFTER,
    )
    return (case,) if owned else (case, number_demand(dealt))


def _possessive_form(label: str, dealt: Dealt, lexicon: Lexicon) -> str:
    named = clause_of(dealt).object
    owner = named.owner if named is not None else None
    noun: Noun = lexicon.nouns[(owner or subject_of(dealt)).noun]
    return {"bare": noun.singular, "'s": f"{noun.singular}'s", "s": noun.plural}[label]


# C10


def _deal_third(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    count = 1 if word == "s" else dealer.many()
    clause = _acting(dealer.counted(count, f"third {word}"), dealer, "third")
    when = dealer.rng.choice(tuple(HABITS))
    return Dealt(told=Told(clause=replace(clause, when=when)))


ENDINGS = (
    Frame(
        name="ing",
        slots=(Slot.VERB,),
        traits={"base": values(after="modal"), "ing": values(after="be")},
        deal=_deal_ing,
        demands=_ing_demands,
        surface=_verb_form,
    ),
    Frame(
        name="plural",
        slots=(Slot.OBJECT_NOUN,),
        traits={"one": values(number="one"), "many": values(number="many")},
        deal=_deal_plural,
        demands=_plural_demands,
        surface=_plural_form,
    ),
    Frame(
        name="past",
        slots=(Slot.VERB,),
        traits={"bare": values(tense="told before"), "ed": values(tense="past")},
        deal=_deal_past,
        demands=_past_demands,
        surface=_verb_form,
    ),
    Frame(
        name="possessive",
        slots=(Slot.OBJECT_OWNER, Slot.SUBJECT_NOUN),
        traits={
            "bare": values(case="subject", number="one"),
            "'s": values(case="owner", number="one"),
            "s": values(case="subject", number="many"),
        },
        deal=_deal_possessive,
        demands=_possessive_demands,
        surface=_possessive_form,
    ),
    Frame(
        name="third-person",
        slots=(Slot.VERB,),
        traits={"bare": values(number="many"), "s": values(number="one")},
        deal=_deal_third,
        demands=lambda dealt, _: (number_demand(dealt),),
        surface=_verb_form,
    ),
)
