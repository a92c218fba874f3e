"""Frames of articles and of how many."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Determined, Party, Person, Rank, Thing, Told
from drills.core.material import ClozeWords
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.verbs import clause_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot
from drills.language.spelling import indefinite_article
from drills.language.times import RATES

_VOWEL = "an"


def _starts(text: str, article: str) -> bool:
    return indefinite_article(text) == article


def _object(dealt: Dealt) -> Party:
    named = clause_of(dealt).object
    if named is None:
        raise TypeError("the clause has no object")
    return named


# By sound.


def _deal_sound(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    lexicon = dealer.lexicon
    if dealer.rng.random() < 0.5:
        # The letter misleads as often as not: "a uniform", "an honest judge".
        quality = dealer.fresh(
            f"sound {word}",
            [key for key in _BEFORE_NOUNS if key in lexicon.adjectives and _starts(key, word)],
        )
        noun = dealer.person() if quality in _OF_PEOPLE else dealer.thing()
        party = Party(noun=noun, determined=Determined.A, quality=quality)
    else:
        nouns = [
            each.key
            for each in lexicon.things
            if _starts(each.singular, word) and each.size < 3 and each.key not in _NOT_HAD
        ]
        party = Party(noun=dealer.fresh(f"sound of {word}", nouns), determined=Determined.A)
    subject = dealer.named()
    clause = (
        Clause(subject=Party(determined=Determined.NEAR), verb="be", object=party)
        if party.quality in _OF_PEOPLE
        else Clause(subject=subject, verb="have", object=party)
    )
    return Dealt(told=Told(clause=clause))


_OF_PEOPLE = ("honest", "tired", "hungry", "happy")
_BEFORE_NOUNS = (
    *_OF_PEOPLE,
    *("wet", "dirty", "big", "small", "old", "empty", "ugly", "useful", "unusual"),
)
_NOT_HAD = ("ball", "letter")


def _sound_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    party = _object(dealt)
    following = (
        words.lexicon.adjectives[party.quality].base
        if party.quality
        else words.lexicon.nouns[party.noun].singular
    )
    return (
        Demand(
            feature="sound",
            value=indefinite_article(following),
            why=WhyWrong.COLLOCATION,
            anchor=Anchor.WORD_AFTER,
        ),
    )


# The, where no other article can be; a and an, where "the" cannot.


def _deal_article(word: str, others: tuple[str, ...], dealer: Dealer) -> Dealt:
    if word != "the":
        rates = [rate for rate in RATES if _starts(rate, word)]
        clause = Clause(
            subject=dealer.named(),
            verb=dealer.alone(),
            rate=dealer.rng.choice(rates),
            times=dealer.rng.choice((1, 2)),
        )
        return Dealt(told=Told(clause=clause))
    article = others[0] if others else "a"
    if article == _VOWEL:
        return _again(article, dealer)
    forced = dealer.rng.choice((_again, _most, _same))
    return forced(article, dealer)


def _again(article: str, dealer: Dealer) -> Dealt:
    """ "I have a cup and a bell. Only the cup is wet." """
    lexicon = dealer.lexicon
    nouns = [
        each.key for each in lexicon.things if _starts(each.singular, article) and each.size < 3
    ]
    one = Party(noun=dealer.fresh(f"again {article}", nouns), determined=Determined.A)
    other = Party(noun=dealer.thing("again"), determined=Determined.A)
    first = Clause(
        subject=Party(person=Person.FIRST, is_pronoun=True),
        verb="have",
        object=replace(one, also=other, pair="and"),
    )
    state = dealer.fresh("again state", ("wet", "dirty", "big", "small"))
    clause = Clause(subject=Party(noun=one.noun), verb="be", state=state, only=True)
    return Dealt(told=Told(clause=clause, before=(first,)))


def _most(_article: str, dealer: Dealer) -> Dealt:
    """ "The nurse is the tallest of all." """
    adjectives = dealer.material.lexicon.adjectives
    qualities = [key for key, each in adjectives.items() if each.comparative]
    most = Party(quality=dealer.fresh("most", qualities), rank=Rank.MOST)
    return Dealt(told=Told(clause=Clause(subject=dealer.named(), verb="be", object=most)))


def _same(_article: str, dealer: Dealer) -> Dealt:
    """ "The two nurses have the same hat." """
    same = Party(noun=dealer.thing(), rank=Rank.SAME)
    subject = dealer.counted(2)
    return Dealt(told=Told(clause=Clause(subject=subject, verb="have", object=same)))


def _article_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    clause = clause_of(dealt)
    if clause.rate:
        return (
            Demand(
                feature="known",
                value="rate",
                why=WhyWrong.COLLOCATION,
                anchor=Anchor.WORD_BEFORE,
            ),
        )
    told_before = bool(dealt.words.before)
    return (
        Demand(
            feature="known",
            value="again" if told_before else "ranked",
            why=WhyWrong.LOGIC if told_before else WhyWrong.COLLOCATION,
            anchor=Anchor.CONTEXT if told_before else Anchor.WORD_AFTER,
        ),
    )


# How many.

_OF_ONE = ("every", "each", "another")


def _deal_quantity(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    verb, thing = dealer.act_on_thing()
    party = Party(noun=thing, determined=Determined(word), count=1 if word in _OF_ONE else 2)
    return Dealt(told=Told(clause=Clause(subject=dealer.named(), verb=verb, object=party)))


def quantity_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    return (
        Demand(
            feature="number",
            value="one" if _object(dealt).count == 1 else "many",
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.NOUN_FORM,
        ),
    )


# Some, no, any: by what was told before.


def _deal_some_no(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    """ "The nurse has nothing. The nurse does not have any keys." """
    owner, thing = dealer.named(), dealer.thing()
    has = word == "some"
    told = Party(noun=thing, count=3, determined=Determined.COUNTED)
    first = Clause(subject=owner, verb="have", object=told if has else Party(thing=Thing.NOTHING))
    clause = Clause(
        subject=owner,
        verb="have",
        object=Party(noun=thing, count=2, determined=Determined(word)),
        negated=word == "any",
    )
    return Dealt(told=Told(clause=clause, before=(first,)))


def _some_no_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    had = dealt.words.before[0].object
    return (
        Demand(
            feature="had",
            value="some" if had is not None and had.noun else "none",
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


_ONE, _MANY = values(number="one"), values(number="many")

DETERMINERS = (
    Frame(
        name="article-sound",
        slots=(Slot.OBJECT_DETERMINER,),
        traits={"a": values(sound="a"), "an": values(sound="an")},
        deal=_deal_sound,
        demands=_sound_demands,
    ),
    Frame(
        name="article",
        slots=(Slot.RATE, Slot.OBJECT_DETERMINER, Slot.SUBJECT_DETERMINER),
        traits={
            "a": values(known="rate"),
            "an": values(known="rate"),
            "the": values(known="again|ranked"),
        },
        deal=_deal_article,
        demands=_article_demands,
    ),
    Frame(
        name="quantity",
        slots=(Slot.OBJECT_DETERMINER,),
        traits={"every": _ONE, "each": _ONE, "another": _ONE, "all": _MANY},
        deal=_deal_quantity,
        demands=quantity_demands,
    ),
    Frame(
        name="some-no",
        slots=(Slot.OBJECT_DETERMINER,),
        traits={
            "some": values(had="some", polarity="so"),
            "no": values(had="none", polarity="so"),
            "any": values(polarity="not"),
        },
        deal=_deal_some_no,
        demands=_some_no_demands,
    ),
)
