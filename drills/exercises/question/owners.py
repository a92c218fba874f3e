"""Whose is it: one person in a picture has a thing."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from drills.core.items import Foil, Item, Target
from drills.core.kinds import Side
from drills.core.meanings import Link, Scene, State, Tense
from drills.core.words import Band, Lexicon, Noun, Sex
from drills.exercises.balance import spread
from drills.exercises.casting import Casting, Pair
from drills.exercises.cues import say
from drills.exercises.exercise import Batch
from drills.exercises.question.ladder import hint, question_ladder
from drills.exercises.question.making import item_of, placed, right, wrong
from drills.exercises.reasons import WhyWrong
from drills.language import answer_owner, ask_owner
from drills.pictures import can_draw
from drills.pictures.limits import NOT_HANDED

CONSTRUCTION = "owner"
LEVEL = "K1"
_CHILDREN = ("girl", "boy")
PROMPT = "Look at the picture."


def having(owner: str, thing: str) -> State:
    return State(subject=owner, count=1, link=Link.HAVE, complement=thing, tense=Tense.PRESENT)


@lru_cache(maxsize=16)
def owned(lexicon: Lexicon) -> tuple[Pair, ...]:
    """Owners and things that a picture shows in a hand and that are made out there."""
    return tuple(
        (noun.key, thing.key)
        for noun in _people(lexicon)
        for thing in lexicon.things
        if thing.band == Band.EVERYDAY
        and thing.key not in NOT_HANDED
        and can_draw(having(noun.key, thing.key))
    )


@lru_cache(maxsize=16)
def _people(lexicon: Lexicon) -> tuple[Noun, ...]:
    return tuple(
        noun for noun in lexicon.people if noun.band == Band.EVERYDAY and noun.sex is not None
    )


def others(owner: str, lexicon: Lexicon) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """People of the other sex, then of the same one, that nobody takes for the owner."""
    noun = lexicon.nouns[owner]
    # Man and boy, woman and girl may be said of anyone: they stand against each other alone.
    apart = [
        each
        for each in _people(lexicon)
        if each.key != owner and (each.size == noun.size or each.sex is not noun.sex)
    ]
    plain = ("woman", "man", "girl", "boy")
    other_sex = tuple(each.key for each in apart if each.sex is not noun.sex)
    same_sex = tuple(
        each.key
        for each in apart
        if each.sex is noun.sex and each.key not in plain and owner not in plain
    )
    return other_sex, same_sex


def _sort_of(owner: Noun) -> str:
    if owner.key in _CHILDREN:
        return f"A {owner.singular}"
    return "A woman" if owner.sex is Sex.FEMALE else "A man"


def make_owners(batch: Batch, answers: Sequence[int]) -> tuple[Item, ...]:
    """answers: where each right one stands."""
    rng, lexicon = batch.rng, batch.material.lexicon
    names = [target.name for target in batch.targets]
    sides = spread(rng, names, (Side.LEFT, Side.RIGHT), crossed=answers)
    casting = Casting(rng, lambda _name, _act: owned(lexicon))
    items = []
    for target, answer, side in zip(batch.targets, answers, sides, strict=True):
        _, (owner, thing) = casting.choose(target.name, (CONSTRUCTION,))
        items.append(_item(batch, target, having(owner, thing), side, answer))
    return tuple(items)


def _item(batch: Batch, target: Target, state: State, side: Side, answer: int) -> Item:
    lexicon, rng = batch.material.lexicon, batch.rng
    nouns = lexicon.nouns
    owner = nouns[state.subject]
    question = ask_owner(state, lexicon)
    other_sex, same_sex = others(owner.key, lexicon)
    named = [rng.choice(other_sex), *rng.sample(same_sex, min(len(same_sex), batch.options - 2))]
    spare = [key for key in other_sex if key not in named]
    named += rng.sample(spare, batch.options - 1 - len(named))
    foils = [wrong(answer_owner(nouns[key]), Foil.NOUN, WhyWrong.FALSE_NOUN) for key in named]
    options = placed(right(answer_owner(owner)), foils, answer, rng.shuffle)
    thing = nouns[state.complement].singular
    plain = say(f"It is {answer_owner(owner)} {thing}.")
    return item_of(
        batch,
        target,
        construction=CONSTRUCTION,
        level=LEVEL,
        sentence=question.text,
        question=PROMPT,
        spoken=question.spoken,
        restated=plain,
        options=options,
        answer=answer,
        cues=question_ladder(
            asked=question.spoken,
            turns=hint(4, f"Find the {thing}.", f"Who has the {thing}?"),
            options=options,
            told=hint(6, f"{_sort_of(owner)} has it."),
            answer_text=plain.text,
            answer=answer,
        ),
        meaning=state,
        picture=Scene(meaning=state, side=side),
        words=(owner.singular, thing),
    )
