"""Frames of words that a verb or an adjective asks for: "wait for", "afraid of", "wake up"."""

from __future__ import annotations

from drills.core.clauses import Clause, Determined, Party, Tie, Told
from drills.core.closed_words import AFTER_A_NOUN
from drills.core.material import Bound, ClozeWords, GoesWith
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot

PREPOSITIONS = (
    "for", "to", "of", "at", "about", "from", "with", "on", "like", "into", "over", "through",
    "around",
)  # fmt: skip
PARTICLES = ("up", "down", "off", "out")


def heads_for(
    bound: tuple[Bound, ...], word: str, others: tuple[str, ...], *, particle: bool
) -> tuple[Bound, ...]:
    """The heads that ask for the word, with which every other one is surely wrong."""
    return tuple(
        each
        for each in bound
        if each.word == word
        and (each.goes_with is GoesWith.NOTHING) == particle
        and all(other in each.wrong for other in others)
    )


def _chosen(word: str, others: tuple[str, ...], dealer: Dealer, *, particle: bool) -> Bound:
    heads = heads_for(dealer.words.bound, word, others, particle=particle)
    by_key = {each.head: each for each in heads}
    return by_key[dealer.fresh(f"bound {word}", tuple(by_key))]


def _deal_bound(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    bound = _chosen(word, others, dealer, particle=False)
    subject = Party(noun=dealer.of_kind(bound.subject))
    tie = Tie(word=word, party=_goes_with(bound.goes_with, dealer))
    if bound.head in dealer.lexicon.adjectives:
        clause = Clause(subject=subject, verb="be", state=bound.head, ties=(tie,))
    else:
        clause = Clause(subject=subject, verb=bound.head, ties=(tie,))
    return Dealt(told=Told(clause=clause))


def _goes_with(kind: GoesWith, dealer: Dealer) -> Party:
    noun = dealer.of_kind(kind)
    if kind is GoesWith.MANY:
        return Party(noun=noun, count=2, determined=Determined.BARE)
    alike = kind in (GoesWith.NOISE, GoesWith.ROLE, GoesWith.GARMENT)
    return Party(noun=noun, determined=Determined.A if alike else Determined.THE)


def _deal_particle(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    bound = _chosen(word, others, dealer, particle=True)
    clause = Clause(subject=dealer.named(), verb=bound.head, particle=word)
    return Dealt(told=Told(clause=clause))


def head_of(told: Told) -> str:
    """The key of the verb or adjective that asks for the word."""
    return told.clause.state or told.clause.verb


def _demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="head",
            value=head_of(dealt.words),
            why=WhyWrong.COLLOCATION,
            anchor=Anchor.HEAD,
        ),
    )


def bound_wrong(label: str, dealt: Dealt, words: ClozeWords) -> WhyWrong | None:
    """Wrong only where the list says so for this head; what it does not name counts as right.

    So does what can go with a noun that stands just before the gap.
    """
    if dealt.words.clause.object is not None and label in AFTER_A_NOUN:
        return None
    head = head_of(dealt.words)
    entries = [each for each in words.bound if each.head == head]
    if any(each.word == label for each in entries):
        return None
    surely = [label in each.wrong for each in entries]
    return WhyWrong.COLLOCATION if surely and all(surely) else None


BOUND = (
    Frame(
        name="bound",
        slots=(Slot.PREPOSITION,),
        traits={word: values() for word in PREPOSITIONS},
        deal=_deal_bound,
        demands=_demands,
        fits=bound_wrong,
    ),
    Frame(
        name="particle",
        slots=(Slot.PARTICLE,),
        traits={word: values() for word in PARTICLES},
        deal=_deal_particle,
        demands=_demands,
        fits=bound_wrong,
    ),
)
