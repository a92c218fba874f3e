"""Act out: hear a sentence, build what happens: who does it, and who it is done to.

What is built is then performed, right or wrong. The options of an item are all events that the
figures offered can play, so that to build one is to choose one: two figures give two events,
three give six, four give twelve. Figures that the sentence does not name ask more of the words;
whoever knows the words still guesses the roles one time in two, which `effective_k` says.
The doer stands on one side in all events of an item, on either side equally often in a batch.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import partial
from itertools import permutations
from random import Random

from drills.core.items import Foil, Item, Kind, Option, Target
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Scene, Transfer
from drills.core.plans import BlockPlan
from drills.core.problems import Problem
from drills.core.utterances import Utterance
from drills.core.words import Lexicon
from drills.exercises.act_rules import ACT_OUT_RULES
from drills.exercises.balance import spread, without_runs
from drills.exercises.casting import Casting, Pair
from drills.exercises.choices import kept
from drills.exercises.cues import comprehension_ladder
from drills.exercises.events import (
    CONSTRUCTIONS_ACTED,
    WHO_DOES_IT,
    Event,
    gifts,
    is_of_giving,
    names_both,
    others,
    pairs,
    parts,
    recast,
    said,
    second_question,
    tells,
    told,
    words_of,
)
from drills.exercises.exercise import Batch, Exercise, with_id
from drills.exercises.match import LONGEST_RUN
from drills.exercises.reasons import WhyWrong
from drills.exercises.reserve import open_pairs
from drills.exercises.scenes import verb_groups, verbs_of
from drills.language import Role, ask_about, realise, restated, tell_doer

ONE_GOES = "One goes away."
FEWEST = 2


# Targets


def _names(_material: Material) -> tuple[str, ...]:
    return CONSTRUCTIONS_ACTED


def _groups(material: Material, names: Sequence[str]) -> tuple[str, ...]:
    return verb_groups(material.lexicon) if not all(map(is_of_giving, names)) else ()


def _targets(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    lexicon = material.lexicon
    found: list[Target] = []
    for name in block.names:
        if is_of_giving(name):
            playable = any(pairs(lexicon, name, verb) for verb in lexicon.transfers)
            found += [Target(kind=Kind.ACT_OUT, name=name)] if playable else []
            continue
        found += [
            Target(kind=Kind.ACT_OUT, name=name, group=group)
            for group in verb_groups(lexicon)
            if not block.groups or group in block.groups
        ]
    return tuple(found)


def _faults(block: BlockPlan, material: Material) -> tuple[Problem, ...]:
    """Groups in which nobody else could stand beside the two."""
    return tuple(
        Problem(
            where=f"{block.kind.value} block",
            message=f"{target} has too few words for {block.options} figures.",
            mend="Add words, or offer fewer figures.",
        )
        for target in _targets(block, material)
        if not any(
            _cast(material.lexicon, target.name, verb, figures_in(target.name, block.options))
            for verb in _verbs(material.lexicon, target)
        )
    )


def figures_in(construction: str, options: int) -> int:
    """How many figures are offered: two where one of them is not named, since any could be."""
    return options if names_both(construction) else FEWEST


def _verbs(lexicon: Lexicon, target: Target) -> tuple[str, ...]:
    if is_of_giving(target.name):
        return tuple(lexicon.transfers)
    return verbs_of(lexicon, target.group)


def _cast(lexicon: Lexicon, name: str, verb: str, figures: int) -> tuple[Pair, ...]:
    """Pairs beside whom as many others can stand as are wanted."""
    return tuple(
        pair
        for pair in open_pairs(pairs(lexicon, name, verb), verb, lexicon)
        if len(others(lexicon, name, verb, pair)) >= figures - FEWEST
    )


# Items


def _make(batch: Batch) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    counts = [figures_in(target.name, batch.options) for target in batch.targets]
    places = _places(rng, batch.targets, counts)
    names = [target.name for target in batch.targets]
    sides = spread(rng, names, (Side.LEFT, Side.RIGHT), crossed=places)
    things = spread(rng, names, gifts(lexicon) or ("",))
    casting = Casting(
        rng, lambda name, verb: _cast(lexicon, name, verb, figures_in(name, batch.options))
    )
    beside: Counter[str] = Counter()
    items = []
    for target, count, place, side, thing in zip(
        batch.targets, counts, places, sides, things, strict=True
    ):
        event = _event(target, casting, lexicon, side, thing)
        figures = _figures(batch, target, event, beside, count)
        items.append(_item(batch, target, event, _placed(figures, place), side))
    return tuple(items)


def _places(rng: Random, targets: Sequence[Target], counts: Sequence[int]) -> list[tuple[int, int]]:
    """Where the doer and the other stand: each place equally often, whatever the construction."""
    places: list[tuple[int, int]] = [(0, 0)] * len(targets)
    for count in dict.fromkeys(counts):
        own = [index for index, each in enumerate(counts) if each == count]
        names = [targets[index].name for index in own]
        doers = without_runs(
            rng, names, partial(spread, rng, names, range(count)), longest=LONGEST_RUN
        )
        # The same steps in turn from every place, so that done-tos come out even as well.
        turns: Counter[int] = Counter()
        steps: list[int] = []
        for index, doer in zip(own, doers, strict=True):
            if turns[doer] == len(steps):
                steps.extend(rng.sample(range(1, count), count - 1))
            places[index] = (doer, (doer + steps[turns[doer]]) % count)
            turns[doer] += 1
    return places


def _event(target: Target, casting: Casting, lexicon: Lexicon, side: Side, thing: str) -> Event:
    def made(verb: str, pair: Pair) -> Event:
        if is_of_giving(target.name):
            return Transfer(verb=verb, doer=pair[0], given=thing, receiver=pair[1])
        return Act(verb=verb, doer=pair[0], done_to=pair[1])

    verb, pair = casting.choose(
        target.name, _verbs(lexicon, target), lambda verb, pair: tells(made(verb, pair), side)
    )
    return made(verb, pair)


def _figures(
    batch: Batch, target: Target, event: Event, beside: Counter[str], count: int
) -> tuple[str, ...]:
    """Doer, the other, then those who only stand beside them: whoever did so least."""
    pair = parts(event)
    able = list(others(batch.material.lexicon, target.name, event.verb, pair))
    batch.rng.shuffle(able)
    able.sort(key=lambda key: beside[key])
    chosen = able[: count - FEWEST]
    beside.update(chosen)
    return (*pair, *chosen)


def _placed(figures: Sequence[str], places: tuple[int, int]) -> tuple[str, ...]:
    """The figures in order: the first two in these places, the rest where there is room."""
    played, beside = dict(zip(places, figures, strict=False)), list(figures[FEWEST:])
    return tuple(played[at] if at in played else beside.pop(0) for at in range(len(figures)))


def _item(batch: Batch, target: Target, event: Event, figures: Sequence[str], side: Side) -> Item:
    lexicon, right = batch.material.lexicon, parts(event)
    casts = list(permutations(figures, 2))
    meaning = told(event, target.name, lexicon, batch.rng)
    sentence = realise(meaning, target.name, lexicon)
    plain = restated(meaning if names_both(target.name) else event, lexicon)
    item = Item(
        id="",
        kind=Kind.ACT_OUT,
        target=target,
        construction=target.name,
        level="",
        prompt=f"{WHO_DOES_IT} {second_question(event, lexicon)}",
        sentence=sentence.text,
        spoken=Utterance(phrases=(*sentence.spoken.phrases, WHO_DOES_IT)),
        restated=plain,
        options=tuple(_option(recast(event, *pair), event, side, lexicon) for pair in casts),
        answer=casts.index(right),
        effective_k=sum(set(pair) == set(right) for pair in casts),
        cues=comprehension_ladder(
            sentence=sentence,
            asked=sentence.spoken,
            role_question=ask_about(event, Role.DOER, lexicon).text,
            removes=_without_one(batch, casts, figures, right),
            removal=ONE_GOES,
            named=tell_doer(event, lexicon).text,
            answer_text=said(event, lexicon).text,
            answer=figures.index(right[1]),
        ),
        meaning=meaning,
        words=words_of(event, lexicon),
        item_set=batch.item_set,
        content_hash=batch.material.content_hash,
    )
    return with_id(kept(item, batch.material, ACT_OUT_RULES))


def _option(built: Event, event: Event, side: Side, lexicon: Lexicon) -> Option:
    foil, why = None, None
    if parts(built) == parts(event)[::-1]:
        foil, why = Foil.REVERSAL, WhyWrong.FALSE_ROLE.value
    elif parts(built) != parts(event):
        foil, why = Foil.NOUN, WhyWrong.FALSE_NOUN.value
    return Option(
        text=said(built, lexicon).text,
        scene=Scene(meaning=built, side=side),
        foil=foil,
        why_wrong=why,
    )


def _without_one(
    batch: Batch, casts: Sequence[Pair], figures: Sequence[str], right: Pair
) -> tuple[int, ...]:
    """The options in which one who only stands beside would play; none with two figures."""
    beside = [key for key in figures if key not in right]
    if not beside:
        return ()
    gone = batch.rng.choice(beside)
    return tuple(index for index, pair in enumerate(casts) if gone in pair)


ACT_OUT = Exercise(
    kind=Kind.ACT_OUT,
    names=_names,
    groups=_groups,
    targets=_targets,
    make=_make,
    faults=_faults,
)
