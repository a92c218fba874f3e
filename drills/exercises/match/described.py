"""Sentences that single one of two out: relatives, and questions that ask for one.

A question's pictures point at who is asked for; the sentence is answered by the arrow.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random
from typing import Any

from drills.core.meanings import Act, Asked, Chain, Described, Meaning, Role
from drills.core.words import Lexicon
from drills.exercises.choices import content_keys
from drills.exercises.match.acts import act_of, exchanged, other_act, other_actor, pairs, verbs
from drills.exercises.match.family import PROMPT_WHO, Case, Family, Others, Wish, Wrong
from drills.exercises.match.helping import help_of_described, help_of_question
from drills.exercises.showing import lines_for
from drills.pictures import can_draw

_CASES = 3


def _of_act(change: Others) -> Others:
    """The change of an act, told of the one who has the same part in it."""

    def made(told: Meaning, base: Described, lexicon: Lexicon) -> Iterator[Wrong]:
        for wrong in change(told, base.act, lexicon):
            act: Any = wrong.shown
            yield replace(wrong, shown=replace(base, act=act))

    return made


def _cases(wish: Wish, lexicon: Lexicon, rng: Random) -> Iterator[Case]:
    act = act_of(wish)
    who = Role.DOER if wish.construction == "subject-relative" else Role.DONE_TO
    if wish.construction == "object-relative-right":
        pointed = Described(act=act, who=who)
        yield Case(told=pointed, right=pointed, twin=exchanged(pointed.reversed()))
        return
    lines = lines_for(wish.options)
    states = [
        each.key
        for each in lexicon.adjectives.values()
        if each.passing and can_draw(Described(act=act, who=who, state=each.key), lines=lines)
    ]
    rng.shuffle(states)
    for state in states[:_CASES]:
        told = Described(act=act, who=who, state=state)
        yield Case(told=told, right=told, twin=exchanged(told.reversed()))


RELATIVES = Family(
    constructions=("subject-relative", "object-relative-right", "object-relative-centre"),
    acts=verbs,
    pairs=pairs,
    cases=_cases,
    others=(_of_act(other_actor), _of_act(other_act)),
    helps=help_of_described,
)


def _question_cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    act = act_of(wish)
    asks_doer = wish.construction.startswith("subject")
    who = Role.DOER if asks_doer else Role.DONE_TO
    wanted, known = (act.doer, act.done_to) if asks_doer else (act.done_to, act.doer)
    told: Asked | Chain = Asked(verb=act.verb, known=known, asked=who)
    if wish.construction.endswith("which"):
        told = Chain(verb=act.verb, outer=wanted, middle=known)
    right = Described(act=act, who=who)
    yield Case(told=told, right=right, twin=exchanged(right.reversed()))


def _other_than_known(told: Asked | Chain, base: Act, lexicon: Lexicon) -> Iterator[Wrong]:
    """The one who is named gives way; whoever is asked for could be anyone."""
    known = told.known if isinstance(told, Asked) else told.middle
    for wrong in other_actor(told, base, lexicon):
        if known not in content_keys(wrong.shown):
            yield wrong


QUESTIONS = Family(
    constructions=(
        "subject-question",
        "subject-question-which",
        "object-question-who",
        "object-question-which",
    ),
    acts=verbs,
    pairs=pairs,
    cases=_question_cases,
    others=(_of_act(_other_than_known), _of_act(other_act)),
    helps=help_of_question,
    prompt=PROMPT_WHO,
)
