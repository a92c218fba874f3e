"""More and less: who has more of something, or less of it."""

from __future__ import annotations

from functools import lru_cache

from drills.core.items import Foil, Item, Target
from drills.core.material import Material
from drills.core.meanings import Aspect, Comparison, Tense
from drills.core.words import Band, Lexicon
from drills.exercises.balance import spread, without_runs
from drills.exercises.casting import Casting, Pair
from drills.exercises.exercise import Batch
from drills.exercises.question.acts import LONGEST_RUN
from drills.exercises.question.form import Form
from drills.exercises.question.ladder import hint, question_ladder, stressed
from drills.exercises.question.making import item_of, placed, right, said, wrong
from drills.exercises.reasons import WhyWrong
from drills.language import answer_name, ask_less, ask_more, meanings_of, realise, restated

NAME = "comparison"
CONSTRUCTION = "comparative"
MORE, LESS = "more", "less"

_NOW = ((Tense.PRESENT, Aspect.SIMPLE),)


@lru_cache(maxsize=16)
def compared(lexicon: Lexicon) -> dict[str, tuple[Pair, ...]]:
    """Quality -> who may have more of it than whom."""
    found: dict[str, list[Pair]] = {}
    for meaning in meanings_of(CONSTRUCTION, lexicon, Band.EVERYDAY, _NOW):
        if isinstance(meaning, Comparison):
            found.setdefault(meaning.quality, []).append((meaning.more, meaning.less))
    return {quality: tuple(pairs) for quality, pairs in found.items()}


def _make(batch: Batch) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    names = [target.name for target in batch.targets]
    answers = without_runs(rng, names, lambda: spread(rng, names, (0, 1)), longest=LONGEST_RUN)
    asked = spread(rng, names, (MORE, LESS), crossed=answers)
    pairs = compared(lexicon)
    casting = Casting(rng, lambda _name, quality: pairs[quality])
    items = []
    for target, answer, which in zip(batch.targets, answers, asked, strict=True):
        quality, (more, less) = casting.choose(target.name, tuple(pairs))
        meaning = Comparison(quality=quality, more=more, less=less)
        items.append(_item(batch, target, meaning, which, answer))
    return tuple(items)


def _item(batch: Batch, target: Target, meaning: Comparison, which: str, answer: int) -> Item:
    lexicon = batch.material.lexicon
    sentence = realise(meaning, CONSTRUCTION, lexicon)
    ask, ask_other = (ask_more, ask_less) if which == MORE else (ask_less, ask_more)
    question = ask(meaning, lexicon)
    key, other = meaning.more, meaning.less
    if which == LESS:
        key, other = other, key
    foil = wrong(answer_name(lexicon.nouns[other]), Foil.REVERSAL, WhyWrong.FALSE_ROLE)
    options = placed(right(answer_name(lexicon.nouns[key])), [foil], answer, batch.rng.shuffle)
    spoken = said(sentence.spoken, question.spoken)
    is_more = ask_other(meaning, lexicon).text.removeprefix("Who ").removeprefix("Which ")
    return item_of(
        batch,
        target,
        construction=CONSTRUCTION,
        sentence=sentence.text,
        question=question,
        spoken=spoken,
        restated=restated(meaning, lexicon),
        options=options,
        answer=answer,
        cues=question_ladder(
            asked=spoken,
            text=stressed(sentence),
            turns=ask_other(meaning, lexicon).text,
            # Help tells of the one who is not asked for.
            told=hint(6, f"The {lexicon.nouns[other].singular} {is_more.rstrip('?')}."),
            answer_text=sentence.plain,
            answer=answer,
        ),
        meaning=meaning,
        words=(
            lexicon.nouns[meaning.more].singular,
            lexicon.adjectives[meaning.quality].base,
            lexicon.nouns[meaning.less].singular,
        ),
    )


def _is_there(material: Material, _part: str) -> bool:
    return bool(compared(material.lexicon))


COMPARISON = Form(name=NAME, is_there=_is_there, make=_make)
