"""Who did what: name the doer or the one it was done to.

With "neither" among the answers one item in ten at most asks of a third one, who is in no part of
the sentence, to catch answers given without listening; a block of fewer than ten has none.
"""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Foil, Item, Target
from drills.core.meanings import Asked
from drills.core.meanings import Role as Part
from drills.exercises.balance import spread, without_runs
from drills.exercises.exercise import Batch
from drills.exercises.question.acts import (
    LONGEST_RUN,
    TELLING,
    Told,
    act_of,
    has_verbs,
    item_of_act,
    told_acts,
)
from drills.exercises.question.form import Form, form_of
from drills.exercises.question.keys import NEITHER
from drills.exercises.question.making import placed, right, wrong
from drills.exercises.question.rules import with_neither
from drills.exercises.reasons import WhyWrong
from drills.language import Role, answer_name, ask_doer, ask_done_to, realise

NAME = "who-did-what"
NEITHER_NAME = with_neither(NAME)
CATCH_SHARE = 10
"""One item in so many, at most, asks of a third one. Common practice."""


def _make(batch: Batch) -> tuple[Item, ...]:
    rng = batch.rng
    names = [target.name for target in batch.targets]
    answers = without_runs(rng, names, lambda: spread(rng, names, (0, 1)), longest=LONGEST_RUN)
    asked = spread(rng, names, (Role.DOER, Role.DONE_TO), crossed=answers)
    catches = _catches(batch)
    return tuple(
        _caught(batch, target, told, role, answer)
        if index in catches
        else _item(batch, target, told, role, answer)
        for index, (target, told, role, answer) in enumerate(
            zip(batch.targets, told_acts(batch), asked, answers, strict=True)
        )
    )


def _catches(batch: Batch) -> Sequence[int]:
    may = [index for index, target in enumerate(batch.targets) if form_of(target) == NEITHER_NAME]
    return batch.rng.sample(may, len(may) // CATCH_SHARE)


def _item(batch: Batch, target: Target, told: Told, role: Role, answer: int) -> Item:
    lexicon, act = batch.material.lexicon, act_of(told)
    ask = ask_doer if role is Role.DOER else ask_done_to
    key, other = (act.doer, act.done_to) if role is Role.DOER else (act.done_to, act.doer)
    foil = wrong(answer_name(lexicon.nouns[other]), Foil.REVERSAL, WhyWrong.FALSE_ROLE)
    options = placed(right(answer_name(lexicon.nouns[key])), [foil], answer, batch.rng.shuffle)
    if form_of(target) == NEITHER_NAME:
        options = (*options, wrong(NEITHER, Foil.NOUN, WhyWrong.FALSE_NOUN))
    # Help turns to the one who is not asked about, since the other would be the answer.
    turned = Role.DONE_TO if role is Role.DOER else Role.DOER
    return item_of_act(
        batch,
        target,
        told,
        question=ask(act, lexicon),
        options=options,
        answer=answer,
        turns_to=turned,
    )


def _caught(batch: Batch, target: Target, told: Told, role: Role, answer: int) -> Item:
    """Who did it to a third one, or was it done to by: neither of the two."""
    lexicon, act = batch.material.lexicon, act_of(told)
    doer = lexicon.nouns[act.doer]
    others = [
        noun.key
        for noun in lexicon.nouns.values()
        if noun.sort is doer.sort
        and noun.band == doer.band
        and noun.key not in (act.doer, act.done_to)
    ]
    part = Part.DOER if role is Role.DOER else Part.DONE_TO
    third = Asked(verb=act.verb, known=batch.rng.choice(others), asked=part, tense=act.tense)
    construction = "subject-question" if role is Role.DOER else "object-question-who"
    names = [act.doer, act.done_to] if answer == 0 else [act.done_to, act.doer]
    options = (
        *(
            wrong(answer_name(lexicon.nouns[name]), Foil.NOUN, WhyWrong.FALSE_NOUN)
            for name in names
        ),
        right(NEITHER),
    )
    return item_of_act(
        batch,
        target,
        told,
        question=realise(third, construction, lexicon),
        options=options,
        answer=len(names),
        turns_to=Role.DOER,
    )


WHO_DID_WHAT = Form(name=NAME, parts=TELLING, by_verbs=True, is_there=has_verbs, make=_make)
WITH_NEITHER = Form(name=NEITHER_NAME, parts=TELLING, by_verbs=True, is_there=has_verbs, make=_make)
