"""Yes or no: say whether what is asked is what was told.

Half of what is asked of each construction is so. What is not so has the two in each other's parts,
in one of four another act; the digest tells from these how well true is told from false, whatever
someone's liking for yes.
"""

from __future__ import annotations

from drills.core.items import Foil, Item, Target
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
from drills.exercises.question.form import Form
from drills.exercises.question.making import yes_or_no
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import other_verb
from drills.language import Role, ask_whether, holds

NAME = "yes-no"

_WAYS_TO_BE_FALSE = (Foil.REVERSAL, Foil.REVERSAL, Foil.REVERSAL, Foil.VERB)


def _make(batch: Batch) -> tuple[Item, ...]:
    rng = batch.rng
    names = [target.name for target in batch.targets]
    truths = without_runs(
        rng, names, lambda: spread(rng, names, (True, False)), longest=LONGEST_RUN
    )
    ways = spread(rng, truths, _WAYS_TO_BE_FALSE, crossed=names)
    return tuple(
        _item(batch, target, told, is_so=is_so, way=way)
        for target, told, is_so, way in zip(
            batch.targets, told_acts(batch), truths, ways, strict=True
        )
    )


def _item(batch: Batch, target: Target, told: Told, *, is_so: bool, way: Foil) -> Item:
    lexicon, act = batch.material.lexicon, act_of(told)
    asked, foil, why = act, Foil.REVERSAL, WhyWrong.FALSE_ROLE
    if not is_so:
        changed = other_verb(act, lexicon, batch.rng) if way is Foil.VERB else None
        if changed is None:
            asked = act.reversed()
        else:
            asked, foil, why = changed, Foil.VERB, WhyWrong.FALSE_ACT
    options, answer = yes_or_no(is_so=holds(asked, act), foil=foil, why=why)
    return item_of_act(
        batch,
        target,
        told,
        question=ask_whether(asked, act, lexicon),
        options=options,
        answer=answer,
        turns_to=Role.DOER,
    )


YES_NO = Form(name=NAME, parts=TELLING, by_verbs=True, is_there=has_verbs, make=_make)
