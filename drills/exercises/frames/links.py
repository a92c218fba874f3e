"""Frames of two clauses, of pairs and of comparing."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Party, Told
from drills.core.material import ClozeWords
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.verbs import clause_of, subject_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot


def _same(party: Party) -> Party:
    return Party(noun=party.noun, is_pronoun=True)


def _deal_logic(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    """Never so that another link only makes less sense.

    "Because" and "so" against each other by the order that was told; "but", "or", "if" and
    "because" against others by the word that they go with: not only, either, only.
    """
    if word == "but":
        pair = Party(noun=dealer.person(), also=Party(noun=dealer.person()), pair=word)
        return Dealt(told=Told(clause=Clause(subject=pair, verb="be", state=dealer.state())))
    if word == "or":
        first = Clause(subject=dealer.named(), verb=dealer.alone("either"), either=True)
        second = Clause(subject=dealer.named(), verb=dealer.alone("either"))
        return Dealt(told=Told(clause=first, link=word, second=second))
    state, act = dealer.cause()
    who = dealer.named()
    is_so, does = Clause(subject=who, verb="be", state=state), Clause(subject=who, verb=act)
    if word == "so" or "so" in others:
        order = (
            replace(is_so, when="first"),
            replace(does, subject=_same(who), when="then"),
        )
        one, other = (is_so, does) if word == "so" else (does, is_so)
        other = replace(other, subject=_same(who))
        return Dealt(told=Told(clause=one, link=word, second=other, before=order))
    first = replace(does, modal="will" if word == "if" else "")
    second = replace(is_so, subject=_same(who), only=True)
    return Dealt(told=Told(clause=first, link=word, second=second))


def _relation(told: Told) -> str:
    """How the two parts go together, read from what is told of them and before them."""
    first, second = told.clause, told.second
    if first.subject is not None and first.subject.pair == "but":
        return "contrast"
    if first.either:
        return "choice"
    if second is not None and second.only:
        return "condition" if first.modal else "reason"
    if second is not None and told.before:
        earlier = told.before[0]
        return "result" if (first.verb, first.state) == (earlier.verb, earlier.state) else "reason"
    return "none"


def _logic_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    ordered = bool(dealt.words.before)
    return (
        Demand(
            feature="relation",
            value=_relation(dealt.words),
            why=WhyWrong.LOGIC if ordered else WhyWrong.COLLOCATION,
            anchor=Anchor.CONTEXT if ordered else Anchor.PAIR_WORD,
        ),
    )


# Both ... and, either ... or.


def _deal_pair(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    subject = Party(noun=dealer.person(), also=Party(noun=dealer.person()), pair=word)
    return Dealt(told=Told(clause=Clause(subject=subject, verb="be", state=dealer.state())))


def _pair_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="pair",
            value=subject_of(dealt).pair,
            why=WhyWrong.COLLOCATION,
            anchor=Anchor.PAIR_WORD,
        ),
    )


_JOINED = {"both": "and", "either": "or"}


def _pair_opener_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="pair",
            value=subject_of(dealt).pair,
            why=WhyWrong.COLLOCATION,
            anchor=Anchor.WORD_AFTER,
        ),
    )


# As tall as, taller than.


def _deal_compared(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    adjectives = dealer.material.lexicon.adjectives
    quality = dealer.fresh(
        "compared", [key for key, each in adjectives.items() if each.comparative]
    )
    clause = Clause(
        subject=dealer.named(),
        verb="be",
        state=quality,
        than=Party(noun=dealer.person()),
        equal=word == "as",
    )
    return Dealt(told=Told(clause=clause))


def _compared_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="degree",
            value="equal" if clause_of(dealt).equal else "more",
            why=WhyWrong.COLLOCATION,
            anchor=Anchor.WORD_BEFORE,
        ),
    )


LINKS = (
    Frame(
        name="logic",
        slots=(Slot.LINK, Slot.PAIR),
        traits={
            "because": values(relation="reason"),
            "so": values(relation="result"),
            "but": values(relation="contrast"),
            "or": values(relation="choice"),
            "if": values(relation="condition"),
        },
        deal=_deal_logic,
        demands=_logic_demands,
    ),
    Frame(
        name="pair",
        slots=(Slot.PAIR,),
        traits={"and": values(pair="and"), "or": values(pair="or")},
        deal=_deal_pair,
        demands=_pair_demands,
    ),
    Frame(
        name="pair-opener",
        slots=(Slot.PAIR_OPENER,),
        traits={"both": values(pair="and"), "either": values(pair="or")},
        deal=lambda word, others, dealer: _deal_pair(_JOINED[word], others, dealer),
        demands=_pair_opener_demands,
        surface=lambda label, _dealt, _lexicon: label.capitalize(),
    ),
    Frame(
        name="compared",
        slots=(Slot.COMPARED,),
        traits={"as": values(degree="equal"), "than": values(degree="more")},
        deal=_deal_compared,
        demands=_compared_demands,
    ),
)
