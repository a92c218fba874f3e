"""Frames of pronouns that stand for what was named and seen before."""

from __future__ import annotations

from dataclasses import replace

from drills.core.clauses import Clause, Determined, Party, Thing, Tie, Told
from drills.core.material import ClozeWords
from drills.core.meanings import Activity, Aspect, Meaning
from drills.core.words import Sex
from drills.exercises.frames.dealing import Dealer
from drills.exercises.frames.frame import Anchor, Dealt, Demand, Frame, values
from drills.exercises.frames.pronouns import MALE, PERSONS
from drills.exercises.frames.verbs import clause_of
from drills.exercises.reasons import WhyWrong
from drills.language.clauses import Slot
from drills.language.small_words import is_many

# He, she, they: whom the picture and the first sentence show.


def _shown(word: str, dealer: Dealer) -> Party:
    sex = Sex.MALE if word in MALE else Sex.FEMALE
    if PERSONS[word][1] > 1:
        sex = dealer.rng.choice(tuple(Sex))
        return Party(noun=dealer.sexed(sex), count=dealer.many(), determined=Determined.COUNTED)
    return Party(noun=dealer.sexed(sex))


def _deal_who_does(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    shown = _shown(word, dealer)
    # Of one, "The queen is here"; of several, "Two queens are here".
    first = Clause(subject=shown, verb="be", place="here")
    clause = Clause(
        subject=replace(shown, is_pronoun=True),
        verb=dealer.alone("who does"),
        aspect=Aspect.PROGRESSIVE,
        when="now",
    )
    return Dealt(told=Told(clause=clause, before=(first,)))


def _deal_done_to(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    shown = _shown(word, dealer)
    first = Clause(subject=shown, verb=dealer.alone("done to"), aspect=Aspect.PROGRESSIVE)
    clause = Clause(
        subject=Party(noun=dealer.fresh("watcher", ("nurse", "baker", "judge", "farmer"))),
        verb=dealer.fresh("watch", ("watch", "film", "help", "measure")),
        object=replace(shown, is_pronoun=True),
        aspect=Aspect.PROGRESSIVE,
    )
    return Dealt(told=Told(clause=clause, before=(first,)))


def _activity_of(told: Told) -> Meaning | None:
    """What the picture shows: the ones who are named first, at what they do."""
    first = told.before[0]
    verb = told.clause.verb if first.verb == "be" else first.verb
    if first.subject is None:
        return None
    return Activity(verb=verb, doer=first.subject.noun, count=first.subject.count)


def _referent(dealt: Dealt) -> Party:
    named = dealt.words.before[0].subject
    if named is None:
        raise TypeError("nobody is named first")
    return named


def _sex_demands(dealt: Dealt, words: ClozeWords) -> tuple[Demand, ...]:
    who = _referent(dealt)
    sex = words.lexicon.nouns[who.noun].sex
    return (
        Demand(
            feature="number",
            value="many" if is_many(who) else "one",
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.CONTEXT,
        ),
        Demand(
            feature="sex",
            value="none" if sex is None else sex.value,
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.PICTURE,
        ),
    )


_FEMALE_ONE = values(number="one", sex="female")
_MALE_ONE = values(number="one", sex="male")
_SEVERAL = values(number="many")


# It, them: by the number in the first sentence.


def _deal_it_them(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    count = 1 if word == "it" else dealer.many()
    verb, thing = dealer.act_on_thing("it")
    owner = dealer.named()
    first = Clause(
        subject=owner,
        verb="have",
        object=Party(noun=thing, count=count, determined=Determined.COUNTED),
    )
    clause = Clause(
        subject=replace(owner),
        verb=verb,
        object=Party(noun=thing, count=count, is_pronoun=True),
        aspect=Aspect.PROGRESSIVE,
    )
    return Dealt(told=Told(clause=clause, before=(first,)))


def _it_them_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    had = dealt.words.before[0].object
    many = had is not None and is_many(had)
    return (
        Demand(
            feature="number",
            value="many" if many else "one",
            why=WhyWrong.AGREEMENT,
            anchor=Anchor.CONTEXT,
        ),
    )


# There, it.


def _deal_there_it(word: str, _others: tuple[str, ...], dealer: Dealer) -> Dealt:
    if word == "there":
        found = Party(noun=dealer.thing(), count=dealer.many(), determined=Determined.COUNTED)
        place = Party(noun=dealer.fresh("on", ("table", "chair", "box")))
        clause = Clause(
            subject=Party(thing=Thing.THERE),
            verb="be",
            object=found,
            ties=(Tie(word="on", party=place),),
            when="now",
        )
        return Dealt(told=Told(clause=clause))
    thing = dealer.thing()
    first = Clause(subject=Party(), verb="be", object=Party(noun=thing, determined=Determined.A))
    first = replace(first, subject=Party(determined=Determined.NEAR))
    clause = Clause(
        subject=Party(noun=thing, is_pronoun=True),
        verb="be",
        state=dealer.fresh("it state", ("wet", "dirty", "big", "small")),
        when="now",
    )
    return Dealt(told=Told(clause=clause, before=(first,)))


def _there_it_demands(dealt: Dealt, _words: ClozeWords) -> tuple[Demand, ...]:
    value = "thing" if clause_of(dealt).object is not None else "state"
    why = WhyWrong.AGREEMENT if value == "thing" else WhyWrong.COLLOCATION
    return (Demand(feature="before", value=value, why=why, anchor=Anchor.WORD_AFTER),)


REFERENTS = (
    Frame(
        name="who-does",
        slots=(Slot.SUBJECT,),
        traits={"he": _MALE_ONE, "she": _FEMALE_ONE, "they": _SEVERAL},
        deal=_deal_who_does,
        demands=_sex_demands,
        picture_of=_activity_of,
    ),
    Frame(
        name="done-to",
        slots=(Slot.OBJECT,),
        traits={"him": _MALE_ONE, "her": _FEMALE_ONE, "them": _SEVERAL},
        deal=_deal_done_to,
        demands=_sex_demands,
        picture_of=_activity_of,
    ),
    Frame(
        name="it-them",
        slots=(Slot.OBJECT,),
        traits={"it": values(number="one"), "them": values(number="many")},
        deal=_deal_it_them,
        demands=_it_them_demands,
    ),
    Frame(
        name="there-it",
        slots=(Slot.SUBJECT,),
        traits={"there": values(before="thing"), "it": values(before="state")},
        deal=_deal_there_it,
        demands=_there_it_demands,
    ),
)
