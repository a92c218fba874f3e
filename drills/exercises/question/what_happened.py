"""What happened: choose what happened to one of the two, as a short clause.

The question itself says that something happened *to* the one it names. Whoever has lost such small
words learns nothing from that, which is who this is for; whoever understands the question alone can
be right. So it is for practice, and who-did-what for telling what was understood.
"""

from __future__ import annotations

from drills.core.items import Foil, Item, Option, Target
from drills.core.meanings import Act
from drills.exercises.balance import spread, without_runs
from drills.exercises.exercise import Batch
from drills.exercises.question.acts import (
    LONGEST_RUN,
    TELLING,
    Told,
    act_of,
    clause,
    has_verbs,
    item_of_act,
    told_acts,
)
from drills.exercises.question.form import Form
from drills.exercises.question.making import placed, right, wrong
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import other_verb
from drills.language import Role, ask_what_happened

NAME = "what-happened"


def _make(batch: Batch) -> tuple[Item, ...]:
    rng = batch.rng
    names = [target.name for target in batch.targets]
    answers = without_runs(
        rng, names, lambda: spread(rng, names, range(batch.options)), longest=LONGEST_RUN
    )
    # Another verb goes with the right parts in half of the items and with the traded ones in the
    # other half, so that whoever compares the answers learns nothing.
    bases = spread(rng, names, (0, 1), crossed=answers)
    return tuple(
        _item(batch, target, told, answer, base)
        for target, told, answer, base in zip(
            batch.targets, told_acts(batch), answers, bases, strict=True
        )
    )


def _item(batch: Batch, target: Target, told: Told, answer: int, base: int) -> Item:
    lexicon, act = batch.material.lexicon, act_of(told)
    back = act.reversed()
    foils = [wrong(clause(back, lexicon), Foil.REVERSAL, WhyWrong.FALSE_ROLE)]
    for number in range(batch.options - 2):
        foils += _other_verb(batch, (act, back)[(base + number) % 2], foils)
    place = min(answer, len(foils))
    return item_of_act(
        batch,
        target,
        told,
        question=ask_what_happened(act, lexicon),
        options=placed(right(clause(act, lexicon)), foils, place, batch.rng.shuffle),
        answer=place,
        turns_to=Role.DOER,
    )


def _other_verb(batch: Batch, act: Act, foils: list[Option]) -> list[Option]:
    """A clause with another verb; none where the words give no new one."""
    other = other_verb(act, batch.material.lexicon, batch.rng)
    if other is None:
        return []
    text = clause(other, batch.material.lexicon)
    if text in [foil.text for foil in foils]:
        return []
    return [wrong(text, Foil.VERB, WhyWrong.FALSE_ACT)]


WHAT_HAPPENED = Form(name=NAME, parts=TELLING, by_verbs=True, is_there=has_verbs, make=_make)
