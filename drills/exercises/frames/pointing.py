"""Frames of this and that, of here and there, of something and nothing."""

from __future__ import annotations

from drills.core.clauses import Clause, Determined, Party, Person, Thing, Tie, Told
from drills.core.material import ClozeWords
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.determiners import quantity_demands
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.verbs import clause_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot

# This and that, here and there.

_POINTED = {
    "this": (Determined.NEAR, 1),
    "these": (Determined.NEAR, 2),
    "that": (Determined.FAR, 1),
    "those": (Determined.FAR, 2),
}
_I = Party(person=Person.FIRST, is_pronoun=True)
_I_AM_HERE = Clause(subject=_I, verb="be", place="here")


def _deal_pointing(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    determined, count = _POINTED[word]
    near = determined is Determined.NEAR
    party = Party(noun=dealer.thing(), determined=determined, count=count)
    other = Party(determined=Determined.FAR if near else Determined.NEAR, count=count)
    clause = Clause(subject=_I, verb="see", object=party, rather_than=other)
    return Dealt(told=Told(clause=clause))


def _pointing_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    """Near where the far ones are not meant, and the other way round."""
    other = clause_of(dealt).rather_than
    near = other is not None and other.determined is Determined.FAR
    distance = Demand(
        feature="distance",
        value="near" if near else "far",
        why=WhyWrong.FALSE_PLACE,
        anchor=Anchor.PLACE_WORD,
    )
    return (*quantity_demands(dealt, words), distance)


def _deal_here_there(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    near = word == "here"
    determined = Determined.NEAR if near else Determined.FAR
    clause = Clause(
        subject=Party(noun=dealer.thing(), determined=determined),
        verb="be",
        place=word,
        ties=(Tie(word="with", party=_I),) if near else (),
        far_away=not near,
    )
    # "There with me" could be said of me on a photograph.
    return Dealt(told=Told(clause=clause, before=(_I_AM_HERE,)))


def _here_there_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="distance",
            value="far" if clause_of(dealt).far_away else "near",
            why=WhyWrong.FALSE_PLACE,
            anchor=Anchor.PLACE_WORD,
        ),
    )


# Is there something, or nothing?


def _deal_something(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    box = dealer.fresh("box", ("box", "bag", "basket", "bucket", "pot", "jug", "barrel"))
    full = word == "something"
    first = Clause(subject=Party(noun=box), verb="be", state="full" if full else "empty")
    clause = Clause(
        subject=Party(thing=Thing.THERE),
        verb="be",
        object=Party(thing=Thing(word)),
        negated=word == "anything",
        ties=(Tie(word="in", party=Party(noun=box)),),
    )
    return Dealt(told=Told(clause=clause, before=(first,)))


def _something_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="inside",
            value=dealt.words.before[0].state,
            why=WhyWrong.LOGIC,
            anchor=Anchor.CONTEXT,
        ),
        Demand(
            feature="polarity",
            value="not" if clause_of(dealt).negated else "so",
            why=WhyWrong.COLLOCATION,
            anchor=Anchor.WORD_BEFORE,
        ),
    )


POINTING = (
    Frame(
        name="pointing",
        slots=(Slot.OBJECT_DETERMINER,),
        traits={
            "this": values(number="one", distance="near"),
            "these": values(number="many", distance="near"),
            "that": values(number="one", distance="far"),
            "those": values(number="many", distance="far"),
        },
        deal=_deal_pointing,
        demands=_pointing_demands,
    ),
    Frame(
        name="here-there",
        slots=(Slot.PLACE,),
        traits={"here": values(distance="near"), "there": values(distance="far")},
        deal=_deal_here_there,
        demands=_here_there_demands,
    ),
    Frame(
        name="thing-nothing",
        slots=(Slot.OBJECT,),
        traits={
            "something": values(inside="full", polarity="so"),
            "nothing": values(inside="empty", polarity="so"),
            "anything": values(polarity="not"),
        },
        deal=_deal_something,
        demands=_something_demands,
    ),
)
