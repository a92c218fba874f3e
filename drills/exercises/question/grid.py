"""The grid: everyday or rare words, in easy or in hard grammar; is it true?

Each statement pairs two of one sort of whom everybody knows which does it to the other, and is true
or false by its roles alone: whoever lacks the words and whoever lacks the grammar is right half the
time. The same facts come in easy and in hard grammar, all in nine words, so that the two rows and
two columns of the digest tell words and grammar apart.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import lru_cache
from itertools import product
from random import Random

from drills.core.facts import Fact
from drills.core.items import Foil, Item, Target
from drills.core.material import Material
from drills.core.question_words import GRID, NO, YES, Grammar, level_of
from drills.core.words import Band, Lexicon
from drills.exercises.balance import spread, without_runs
from drills.exercises.cues import say
from drills.exercises.exercise import Batch
from drills.exercises.question.acts import LONGEST_RUN
from drills.exercises.question.form import Form
from drills.exercises.question.kin_pools import switched_off
from drills.exercises.question.ladder import hint, question_ladder, stressed
from drills.exercises.question.making import item_of, said, yes_or_no
from drills.exercises.reasons import WhyWrong
from drills.language import EASY, HARD, restate_fact, state_fact

QUESTION_TEXT = "Is this true?"
CELLS = tuple(product(Band, Grammar))
FORMS = {Grammar.EASY: tuple(EASY), Grammar.HARD: tuple(HARD)}


def turned(fact: Fact) -> Fact:
    """The same words the other way round, which is false."""
    return replace(fact, doer=fact.done_to, done_to=fact.doer)


@lru_cache(maxsize=16)
def facts_of(lexicon: Lexicon, band: Band) -> tuple[Fact, ...]:
    """Facts whose nouns are all of one band and known here."""
    return tuple(
        fact
        for fact in lexicon.facts.known
        if all(_band(key, lexicon) == band for key in (fact.doer, fact.done_to))
        # A relative who is switched off is not told of here either.
        and not {fact.doer, fact.done_to} & set(switched_off(lexicon))
    )


def _band(key: str, lexicon: Lexicon) -> str | None:
    noun = lexicon.facts.nouns.get(key) or lexicon.nouns.get(key)
    return None if noun is None else noun.band


class _Facts:
    """Facts and forms in turn, no noun twice running."""

    def __init__(self, rng: Random, lexicon: Lexicon) -> None:
        self._rng = rng
        self._lexicon = lexicon
        self._uses: Counter[object] = Counter()
        self._last: tuple[str, ...] = ()

    def next(self, band: Band, grammar: Grammar) -> tuple[Fact, str]:
        facts = list(facts_of(self._lexicon, band))
        self._rng.shuffle(facts)

        def cost(fact: Fact) -> tuple[bool, int]:
            stale = fact.doer in self._last or fact.done_to in self._last
            return stale, self._uses[fact]

        fact = min(facts, key=cost)
        forms = list(FORMS[grammar])
        self._rng.shuffle(forms)
        form = min(forms, key=lambda each: self._uses[band, each])
        self._uses.update([fact, (band, form)])
        self._last = (fact.doer, fact.done_to)
        return fact, form


def _make(batch: Batch) -> tuple[Item, ...]:
    rng = batch.rng
    names = [target.name for target in batch.targets]
    cells = without_runs(rng, names, lambda: spread(rng, names, CELLS), longest=1)
    truths = without_runs(
        rng, cells, lambda: spread(rng, cells, (True, False)), longest=LONGEST_RUN
    )
    facts = _Facts(rng, batch.material.lexicon)
    items = []
    for target, (band, grammar), is_so in zip(batch.targets, cells, truths, strict=True):
        fact, form = facts.next(band, grammar)
        items.append(_item(batch, target, fact, form, (band, grammar), is_so=is_so))
    return tuple(items)


def _item(
    batch: Batch,
    target: Target,
    fact: Fact,
    form: str,
    cell: tuple[Band, Grammar],
    *,
    is_so: bool,
) -> Item:
    lexicon = batch.material.lexicon
    stated = fact if is_so else turned(fact)
    sentence = state_fact(stated, form, lexicon)
    options, answer = yes_or_no(is_so=is_so, foil=Foil.REVERSAL, why=WhyWrong.FALSE_ROLE)
    spoken = said(sentence.spoken, say(QUESTION_TEXT))
    truth = restate_fact(fact, lexicon)
    verdict = f"{(YES if is_so else NO).capitalize()}."
    return item_of(
        batch,
        target,
        construction=form,
        level=level_of(*cell),
        sentence=sentence.text,
        question=QUESTION_TEXT,
        spoken=spoken,
        restated=truth,
        options=options,
        answer=answer,
        cues=question_ladder(
            asked=spoken,
            text=stressed(sentence),
            # What is said, in the easiest grammar; then what is so.
            turns=hint(4, f"In short: {_lowered(sentence.plain)}", QUESTION_TEXT),
            told=hint(6, truth.text),
            answer_text=f"{verdict} {truth.text}",
            answer=answer,
        ),
        words=keys_of(stated),
    )


def keys_of(fact: Fact) -> tuple[str, str, str]:
    """The words of a statement in its own order of parts: doer, verb, done-to."""
    return (fact.doer, fact.verb, fact.done_to)


def _lowered(text: str) -> str:
    return text[0].lower() + text[1:]


def _is_there(material: Material, _part: str) -> bool:
    return all(facts_of(material.lexicon, band) for band in Band)


GRID_FORM = Form(name=GRID, is_there=_is_there, make=_make)
