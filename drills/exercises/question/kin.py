"""Relatives: six levels, from "whose hat" to three relatives in a chain.

K1: whose is it, by a picture.   K2: "my aunt's brother": a woman or a man?   K3: the same by "of"
as well, which turns the nouns round, so that order alone fails.   K4: one word for two ("my
father's sister" is my aunt).   K5: both ways round in one block.   K6: three relatives, only where
a plan names it. Levels and their order: common practice, no source.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from random import Random

from drills.core.items import Cue, CueKind, Foil, Item, Option, Target
from drills.core.material import Material
from drills.core.meanings import Kin
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Sentence, Sex
from drills.exercises.balance import runs, spread, without_runs
from drills.exercises.exercise import Batch
from drills.exercises.question.acts import LONGEST_RUN
from drills.exercises.question.family_tree import family_tree
from drills.exercises.question.form import Form, part_of
from drills.exercises.question.kin_pools import (
    asked_by_name,
    asked_by_sex,
    possessor,
    unrelated,
)
from drills.exercises.question.ladder import hint, question_ladder
from drills.exercises.question.making import item_of, placed, right, said, wrong
from drills.exercises.question.owners import make_owners, owned
from drills.exercises.reasons import WhyWrong
from drills.language import (
    answer_relation,
    answer_sex,
    ask_relation,
    ask_sex_of_this,
    realise,
    restated,
)
from drills.language.kinship import Terms, sex_of

NAME = "kin"
LEVELS = ("K1", "K2", "K3", "K4", "K5")
LONGEST_CHAIN = "K6"
BY_ENDING, BY_OF = "possessive-kinship", "of-kinship"

_SEXES = (Sex.FEMALE, Sex.MALE)
_WITH_MORE_ANSWERS = ("K1", "K4")
_DEALS = 40
_PRONOUNS = {Sex.FEMALE: "She", Sex.MALE: "He"}


def _make(batch: Batch) -> tuple[Item, ...]:
    made: dict[int, Item] = {}
    levels = [part_of(target.name) for target in batch.targets]
    answers = _answers(batch, levels)
    for level in dict.fromkeys(levels):
        indices = [index for index, other in enumerate(levels) if other == level]
        of_level = Batch(
            targets=[batch.targets[index] for index in indices],
            options=batch.options,
            material=batch.material,
            rng=batch.rng,
            item_set=batch.item_set,
        )
        maker = {"K1": make_owners, "K4": _by_name}.get(level, _by_sex)
        items = maker(of_level, [answers[index] for index in indices])
        made.update(zip(indices, items, strict=True))
    return tuple(made[index] for index in range(len(levels)))


def _answers(batch: Batch, levels: Sequence[str]) -> list[int]:
    """Where each right answer stands: even in each level, nowhere long in the whole."""

    def deal() -> list[int]:
        dealt = [0] * len(levels)
        for level in dict.fromkeys(levels):
            indices = [index for index, other in enumerate(levels) if other == level]
            places = batch.options if level in _WITH_MORE_ANSWERS else 2
            of_level = spread(batch.rng, [level] * len(indices), range(places))
            for index, place in zip(indices, of_level, strict=True):
                dealt[index] = place
        return dealt

    return without_runs(batch.rng, levels, deal, longest=LONGEST_RUN)


class _Chains:
    """Chains in turn, none that shares a word with the one before where that can be."""

    def __init__(self, rng: Random, chains: Sequence[Terms]) -> None:
        self._rng = rng
        self._chains = chains
        self._uses: Counter[object] = Counter()
        self._last: Terms = ()

    def next(self, sex: Sex | None = None) -> Terms:
        chains = [each for each in self._chains if sex is None or sex_of(each) is sex]
        self._rng.shuffle(chains)

        def cost(terms: Terms) -> tuple[int, ...]:
            stale = not set(terms).isdisjoint(self._last)
            return stale, self._uses[terms], sum(self._uses[term] for term in terms)

        chosen = min(chains, key=cost)
        self._uses.update([chosen, *chosen])
        self._last = chosen
        return chosen


def _by_sex(batch: Batch, answers: Sequence[int]) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    level = part_of(batch.targets[0].name)
    chains = _Chains(rng, asked_by_sex(lexicon, 3 if level == LONGEST_CHAIN else 2))
    if level == "K5":
        told = _both_ways(rng, chains, answers)
    else:
        sexes = without_runs(
            rng, answers, lambda: spread(rng, answers, _SEXES), longest=LONGEST_RUN
        )
        told = [chains.next(sex) for sex in sexes]
    mixed = level in ("K3", LONGEST_CHAIN)
    orders = spread(
        rng,
        [level] * len(told),
        (BY_ENDING, BY_OF) if mixed else (BY_ENDING,),
        crossed=[sex_of(terms) for terms in told],
    )
    return tuple(
        _sex_item(batch, target, Kin(terms=terms), order, answer)
        for target, terms, order, answer in zip(batch.targets, told, orders, answers, strict=True)
    )


def _both_ways(rng: Random, chains: _Chains, answers: Sequence[int]) -> list[Terms]:
    """Chains and their reversals, each pair somewhere in the block; an odd one is alone."""
    told: list[Terms] = []
    while len(told) < len(answers):
        terms = chains.next()
        told += [terms, terms[::-1]]
    del told[len(answers) :]

    def cost(order: list[Terms]) -> int:
        """One sex for long, or oftener in one place."""
        sexes = [sex_of(terms) for terms in order]
        long = len(runs(sexes, longest=LONGEST_RUN))
        first = [sex for sex, answer in zip(sexes, answers, strict=True) if answer == 0]
        return long + max(0, abs(2 * first.count(Sex.FEMALE) - len(first)) - 1)

    return min((rng.sample(told, len(told)) for _ in range(_DEALS)), key=cost)


def _sex_item(batch: Batch, target: Target, kin: Kin, order: str, answer: int) -> Item:
    lexicon = batch.material.lexicon
    question = ask_sex_of_this(kin, lexicon)
    other = Kin(terms=(possessor(kin.terms),))
    foil = wrong(answer_sex(other), Foil.REVERSAL, WhyWrong.FALSE_ROLE)
    options = placed(right(answer_sex(kin)), [foil], answer, batch.rng.shuffle)
    return _kin_item(
        batch, target, kin, order=order, question=question, options=options, answer=answer
    )


def _by_name(batch: Batch, answers: Sequence[int]) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    names = [target.name for target in batch.targets]
    orders = spread(rng, names, (BY_ENDING, BY_OF), crossed=answers)
    chains = _Chains(rng, asked_by_name(lexicon))
    return tuple(
        _name_item(batch, target, Kin(terms=chains.next()), order, answer)
        for target, order, answer in zip(batch.targets, orders, answers, strict=True)
    )


def _name_item(batch: Batch, target: Target, kin: Kin, order: str, answer: int) -> Item:
    lexicon, rng = batch.material.lexicon, batch.rng
    question = ask_relation(kin, lexicon, of=order == BY_OF)
    foils = [wrong(my(possessor(kin.terms), lexicon), Foil.REVERSAL, WhyWrong.FALSE_ROLE)]
    for term in _strangers(rng, lexicon, kin.terms, batch.options - 2):
        foils.append(wrong(my(term, lexicon), Foil.NOUN, WhyWrong.FALSE_NOUN))
    place = min(answer, len(foils))
    options = placed(right(answer_relation(kin, lexicon)), foils, place, rng.shuffle)
    return _kin_item(
        batch, target, kin, order=order, question=question, options=options, answer=place
    )


def _strangers(rng: Random, lexicon: Lexicon, terms: Terms, count: int) -> list[str]:
    """Relatives from outside the chain, of the answer's sex as far as there are any."""
    free = unrelated(lexicon, terms)
    alike = [term for term in free if sex_of((term,)) is sex_of(terms)]
    rest = [term for term in free if term not in alike]
    chosen = rng.sample(alike, min(count, len(alike)))
    return chosen + rng.sample(rest, min(count - len(chosen), len(rest)))


def my(term: str, lexicon: Lexicon) -> str:
    """ "my father"."""
    return f"my {lexicon.kin[term].singular}"


def _kin_item(
    batch: Batch,
    target: Target,
    kin: Kin,
    *,
    order: str,
    question: Sentence,
    options: tuple[Option, ...],
    answer: int,
) -> Item:
    lexicon = batch.material.lexicon
    sentence = realise(kin, order, lexicon)
    told = _in_phrases(sentence)
    spoken = said(told, question.spoken)
    plain = restated(kin, lexicon)
    key = options[answer].text or ""
    so = Utterance(phrases=(f"{_PRONOUNS[sex_of(kin.terms)]} is {key}.",))
    return item_of(
        batch,
        target,
        construction=order,
        level=part_of(target.name),
        sentence=sentence.text,
        question=question,
        spoken=spoken,
        restated=said(plain, so),
        options=options,
        answer=answer,
        cues=question_ladder(
            asked=spoken,
            text=_linked(sentence, told),
            turns=hint(4, *plain.text.replace(". ", ".\n").split("\n")),
            options=options,
            told=_tree(kin, plain),
            answer_text=so.text,
            answer=answer,
        ),
        meaning=kin,
        words=tuple(lexicon.kin[term].singular for term in kin.terms),
    )


def _in_phrases(sentence: Sentence) -> Utterance:
    """A pause may stand before each "of": a chain of three is too long for one breath."""
    text = " ".join(sentence.spoken.phrases).replace(" of ", "\nof ")
    return Utterance(phrases=tuple(text.split("\n")))


def _linked(sentence: Sentence, told: Utterance) -> Cue:
    """Level 3: what links the relatives, the ending or the small word, in capitals."""
    text = sentence.text.replace("'s ", "'S ").replace(" of ", " OF ")
    return Cue(level=3, kind=CueKind.TEXT, text=text, spoken=told, slow=True)


def _tree(kin: Kin, plain: Utterance) -> Cue:
    tree = "\n".join(family_tree(kin.terms))
    return Cue(level=6, kind=CueKind.TREE, text=tree, spoken=plain)


def _is_there(material: Material, part: str) -> bool:
    lexicon = material.lexicon
    if part == "K1":
        return bool(owned(lexicon))
    if part == "K4":
        return bool(asked_by_name(lexicon))
    chains = asked_by_sex(lexicon, 3 if part == LONGEST_CHAIN else 2)
    return {sex_of(terms) for terms in chains} == set(Sex)


KIN = Form(name=NAME, parts=LEVELS, only_named=(LONGEST_CHAIN,), is_there=_is_there, make=_make)
