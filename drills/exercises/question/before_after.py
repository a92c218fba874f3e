"""Before and after: what came first or last, told in the order of events or against it."""

from __future__ import annotations

from functools import lru_cache

from drills.core.items import Foil, Item, Option, Target
from drills.core.material import Material
from drills.core.meanings import Activity, Aspect, Order, Tense
from drills.core.words import Band, Lexicon, Sort
from drills.exercises.balance import spread, without_runs
from drills.exercises.casting import Casting, Pair
from drills.exercises.exercise import Batch
from drills.exercises.question.acts import LONGEST_RUN
from drills.exercises.question.form import Form, part_of
from drills.exercises.question.ladder import hint, question_ladder, stressed
from drills.exercises.question.making import item_of, placed, right, said, wrong
from drills.exercises.reasons import WhyWrong
from drills.language import ask_first, ask_last, realise, restated

NAME = "before-after"
PARTS = ("before-in-order", "after-in-order", "before-reversed", "after-reversed")
FIRST, LAST = "first", "last"


@lru_cache(maxsize=16)
def verb_pairs(lexicon: Lexicon) -> tuple[Pair, ...]:
    """Two acts of one alone, the earlier first, whose clauses show that they are past."""
    plain = [verb for verb in lexicon.alone.values() if verb.past not in (verb.base, "")]
    return tuple((one.key, other.key) for one in plain for other in plain if one is not other)


@lru_cache(maxsize=16)
def doers(lexicon: Lexicon) -> tuple[str, ...]:
    """People who are a she or a he."""
    return tuple(
        noun.key
        for noun in lexicon.people
        if noun.sex is not None and noun.band == Band.EVERYDAY and noun.sort is Sort.PERSON
    )


def event(doer: str, verb: str, lexicon: Lexicon) -> str:
    """One of the two events as a short clause: "The sailor waved."."""
    done = Activity(verb=verb, doer=doer, tense=Tense.PAST, aspect=Aspect.SIMPLE)
    return realise(done, "number", lexicon).text


def _make(batch: Batch) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    names = [target.name for target in batch.targets]
    answers = without_runs(
        rng, names, lambda: spread(rng, names, range(batch.options)), longest=LONGEST_RUN
    )
    asked = spread(rng, names, (FIRST, LAST), crossed=answers)
    casting = Casting(rng, lambda _name, _doer: verb_pairs(lexicon))
    items = []
    for target, answer, which in zip(batch.targets, answers, asked, strict=True):
        doer, (earlier, later) = casting.choose(target.name, doers(lexicon))
        order = Order(doer=doer, earlier=earlier, later=later)
        items.append(_item(batch, target, order, which, answer))
    return tuple(items)


def _item(batch: Batch, target: Target, order: Order, which: str, answer: int) -> Item:
    lexicon = batch.material.lexicon
    construction = part_of(target.name)
    sentence = realise(order, construction, lexicon)
    ask, ask_other = (ask_first, ask_last) if which == FIRST else (ask_last, ask_first)
    question = ask(order, lexicon)
    key, other = order.earlier, order.later
    if which == LAST:
        key, other = other, key
    foils = [
        wrong(event(order.doer, other, lexicon), Foil.WORD, WhyWrong.FALSE_ORDER),
        *_never_told(batch, order),
    ]
    options = placed(right(event(order.doer, key, lexicon)), foils, answer, batch.rng.shuffle)
    spoken = said(sentence.spoken, question.spoken)
    plain = restated(order, lexicon)
    first, then = sentence.plain.split(". ")
    return item_of(
        batch,
        target,
        construction=construction,
        sentence=sentence.text,
        question=question,
        spoken=spoken,
        restated=plain,
        options=options,
        answer=answer,
        cues=question_ladder(
            asked=spoken,
            text=stressed(sentence),
            turns=ask_other(order, lexicon).text,
            options=options,
            # Help tells the event that is not asked for.
            told=hint(6, then if which == FIRST else f"{first}."),
            answer_text=sentence.plain,
            answer=answer,
        ),
        meaning=order,
        words=(
            lexicon.nouns[order.doer].singular,
            *(lexicon.alone[verb].base for verb in (order.earlier, order.later)),
        ),
    )


def _never_told(batch: Batch, order: Order) -> list[Option]:
    """Clauses with acts that are nowhere in the sentence."""
    lexicon = batch.material.lexicon
    told = (order.earlier, order.later)
    others = sorted({verb for verb, _ in verb_pairs(lexicon) if verb not in told})
    return [
        wrong(event(order.doer, verb, lexicon), Foil.VERB, WhyWrong.FALSE_ACT)
        for verb in batch.rng.sample(others, batch.options - 2)
    ]


def _is_there(material: Material, _part: str) -> bool:
    enough = len(verb_pairs(material.lexicon)) >= len(PARTS) * len(PARTS)
    return enough and bool(doers(material.lexicon))


BEFORE_AFTER = Form(name=NAME, parts=PARTS, is_there=_is_there, make=_make)
