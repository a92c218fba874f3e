"""Frames of two clauses, of pairs and of comparing."""

from __future__ import annotations

from drills.core.clauses import Clause, Party, Told
from drills.core.material import ClozeWords
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.verbs import clause_of, subject_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot

_OPPOSED = (("tall", "short"), ("big", "small"))


def _same(party: Party) -> Party:
    return Party(noun=party.noun, is_pronoun=True)


def _cause(dealer: Dealer) -> tuple[Party, Clause, Clause]:
    """Who it is, why, and what comes of it."""
    state, act = dealer.cause()
    who = dealer.named()
    return (
        who,
        Clause(subject=_same(who), verb="be", state=state),
        Clause(subject=who, verb=act),
    )


def _deal_logic(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    if word == "but":
        one, other = dealer.fresh("opposed", _OPPOSED)
        if dealer.rng.random() < 0.5:
            one, other = other, one
        first = Clause(subject=dealer.named(), verb="be", state=one)
        second = Clause(subject=dealer.named(), verb="be", state=other)
        return Dealt(told=Told(clause=first, link=word, second=second))
    if word == "or":
        first = Clause(subject=dealer.named(), verb=dealer.alone("either"), either=True)
        second = Clause(subject=dealer.named(), verb=dealer.alone("either"))
        return Dealt(told=Told(clause=first, link=word, second=second))
    who, why, what = _cause(dealer)
    if word == "so":
        reason = Clause(subject=who, verb="be", state=why.state)
        result = Clause(subject=_same(who), verb=what.verb)
        return Dealt(told=Told(clause=reason, link=word, second=result))
    if word == "if":
        what = Clause(subject=who, verb=what.verb, modal="will")
    return Dealt(told=Told(clause=what, link=word, second=why))


def _relation(told: Told, causes: set[tuple[str, str]]) -> str:
    """How the second clause follows from the first, read from what the two say."""
    first, second = told.clause, told.second
    if second is None:
        raise TypeError("there is one clause only")
    if first.either:
        return "choice"
    if (first.state, second.state) in _OPPOSED or (second.state, first.state) in _OPPOSED:
        return "contrast"
    if (first.state, second.verb) in causes:
        return "result"
    if (second.state, first.verb) in causes:
        return "condition" if first.modal else "reason"
    return "none"


def _logic_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    causes = {(cause.state, cause.act) for cause in words.causes}
    return (
        Demand(
            feature="relation",
            value=_relation(dealt.words, causes),
            why=WhyWrong.LOGIC,
            anchor=Anchor.CLAUSES,
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
        slots=(Slot.LINK,),
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
