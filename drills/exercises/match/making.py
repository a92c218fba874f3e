"""A batch of match items: balanced, told apart as they are shown, with one right answer."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from random import Random

from drills.core.items import Item, Kind, Option, Target
from drills.core.kinds import Side
from drills.core.meanings import Meaning, Scene
from drills.core.problems import BadInput, Problem
from drills.core.words import Lexicon
from drills.exercises.balance import spread, without_runs
from drills.exercises.casting import Casting, Pair
from drills.exercises.choices import chance_choices, content_words, kept
from drills.exercises.cues import comprehension_ladder
from drills.exercises.exercise import Batch, with_id
from drills.exercises.match.families import FAMILIES
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import plainly
from drills.exercises.match.rules import LONGEST_RUN, MATCH_RULES
from drills.exercises.reserve import open_pairs
from drills.exercises.showing import alike, are_unlike, lines_for
from drills.language import lengths, placed, realise, restate, restated
from drills.language.padding import FEWEST_WORDS, Adjuncts
from drills.pictures import can_draw

_TRIES = 6
"""How often foils that fall short are dealt anew before the meaning is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Draw:
    """What chance has dealt to one item.

    side: of the right picture.   keeps: the twin shows everyone in the same place, so it is
    turned round.   turn: as in `Wish`.   first, base: 0 or 1 each: which kind of other foil comes
    first, and whether it is made from the right meaning (0) or from the twin's (1); the next is
    made from the other.
    """

    answer: int
    side: Side
    keeps: bool
    turn: int
    first: int
    base: int


@dataclass(frozen=True, slots=True, kw_only=True)
class _Built:
    case: Case
    wrongs: tuple[Wrong, ...]
    scenes: tuple[Scene, ...]


def make(batch: Batch) -> tuple[Item, ...]:
    """Raises: BadInput when the words do not give that many pictures that can be told apart."""
    lexicon = batch.material.lexicon

    def pairs(name: str, act: str) -> Sequence[Pair]:
        return open_pairs(
            FAMILIES[name].pairs(lexicon, name, act), act, lexicon, item_set=batch.item_set
        )

    casting = Casting(batch.rng, pairs)
    return tuple(
        _item(batch, target, _cast(batch, target, draw, casting), draw)
        for target, draw in zip(batch.targets, _draws(batch), strict=True)
    )


def make_of(batch: Batch, wanted: Sequence[tuple[Target, str, Pair]]) -> tuple[Item, ...]:
    """As many items as the batch has targets, each of the first of `wanted` that its draw suits.

    wanted: target, act and pair, each asked once at most; more than targets are spares. What fits
    one draw alone may be taken by another first, so spares can come in for it.
    Raises: BadInput when none of what is left can be told apart.
    """
    left = list(wanted)
    items = []
    for draw in _draws(batch):
        for place, (target, act, pair) in enumerate(left):
            built = _first_built(batch, target, act, pair, draw)
            if built is not None:
                items.append(_item(batch, target, built, draw))
                del left[place]
                break
        else:
            raise _too_few(batch.targets[0], batch.options)
    return tuple(items)


def _draws(batch: Batch) -> list[_Draw]:
    rng = batch.rng
    names = [target.name for target in batch.targets]
    answers = without_runs(
        rng, names, lambda: spread(rng, names, range(batch.options)), longest=LONGEST_RUN
    )
    sides = spread(rng, names, (Side.LEFT, Side.RIGHT), crossed=answers)
    keeps = spread(rng, names, (True, False), crossed=list(zip(answers, sides, strict=True)))
    turns = spread(rng, names, (0, 1), crossed=answers)
    firsts = spread(rng, names, (0, 1), crossed=answers)
    bases = spread(rng, names, (0, 1), crossed=list(zip(answers, firsts, strict=True)))
    return [
        _Draw(answer=answer, side=side, keeps=keep, turn=turn, first=first, base=base)
        for answer, side, keep, turn, first, base in zip(
            answers, sides, keeps, turns, firsts, bases, strict=True
        )
    ]


def _cast(batch: Batch, target: Target, draw: _Draw, casting: Casting) -> _Built:
    """An act, a pair and pictures for them; what cannot be told apart is dealt anew."""
    family, lexicon = FAMILIES[target.name], batch.material.lexicon
    found: dict[tuple[str, Pair], _Built] = {}

    def suits(act: str, pair: Pair) -> bool:
        built = _first_built(batch, target, act, pair, draw)
        if built is not None:
            found[act, pair] = built
        return built is not None

    acts = family.acts(lexicon, target.name, target.group, batch.options > 2)
    try:
        return found[casting.choose(target.name, acts, suits, must_suit=True)]
    except ValueError as error:
        raise _too_few(target, batch.options) from error


def _too_few(target: Target, options: int) -> BadInput:
    return BadInput(
        [
            Problem(
                where=str(target),
                message=f"the lexicon has too few words for {options} pictures "
                "that can be told apart.",
                mend="Add words, or offer fewer pictures.",
            )
        ]
    )


def _first_built(batch: Batch, target: Target, act: str, pair: Pair, draw: _Draw) -> _Built | None:
    """The first case of an act and a pair whose pictures can be told apart; None for none."""
    family = FAMILIES[target.name]
    wish = Wish(construction=target.name, act=act, pair=pair, turn=draw.turn, options=batch.options)
    for case in family.cases(wish, batch.material.lexicon, batch.rng):
        built = _built(case, family, batch, draw)
        if built is not None:
            return built
    return None


def _built(case: Case, family: Family, batch: Batch, draw: _Draw) -> _Built | None:
    """The case with as many foils as are asked for, each told from the right picture, or None."""
    rng, count = batch.rng, batch.options - 1
    lines = lines_for(batch.options)
    if not all(
        can_draw(each, lines=lines)
        for each in (case.right, *(wrong.shown for wrong in (case.twin, *case.square)))
    ):
        return None
    mirrored = lines in family.mirrored_at
    twin_side = draw.side.other if draw.keeps or mirrored else draw.side
    sides = [twin_side, *_other_sides(rng, draw.side, twin_side, count - 1)]
    right = Scene(meaning=case.right, side=draw.side)
    fixed = (case.twin, *case.square)
    pools = [_pool(case, family, batch, draw, number) for number in range(count - len(fixed))]
    others: list[Wrong] = []
    stale = set(range(len(pools)))
    for turn in range(_TRIES):
        for index in sorted(stale):
            shown = [case.right, *(each.shown for each in (*fixed, *others))]
            # Two are drawn in half the time of four, so what falls short alone goes first.
            beside = None if turn == 0 else (right, sides[len(fixed) + index])
            fresh = _next_unlike(pools[index], shown, beside, lines)
            if fresh is None:
                return None
            others[index : index + 1] = [fresh]
        wrongs = (*fixed, *others)
        scenes = tuple(
            Scene(meaning=each.shown, side=side) for each, side in zip(wrongs, sides, strict=True)
        )
        short = alike(right, scenes)
        if not short:
            return _Built(case=case, wrongs=wrongs, scenes=scenes)
        if min(short) < len(fixed):
            return None
        stale = {index - len(fixed) for index in short}
    return None


def _pool(case: Case, family: Family, batch: Batch, draw: _Draw, number: int) -> list[Wrong]:
    """What other foil `number` can be, in the order in which it is tried, the first last."""
    base = (case.right, case.twin.shown)[(draw.base + number) % 2]
    preferred = (draw.first + number) % len(family.others)
    pool: list[Wrong] = []
    for kind in (*family.others[preferred:], *family.others[:preferred]):
        found = list(kind(case.told, base, batch.material.lexicon))
        batch.rng.shuffle(found)
        pool += found
    return pool[::-1]


def _next_unlike(
    pool: list[Wrong], shown: Sequence[Meaning], beside: tuple[Scene, Side] | None, lines: int
) -> Wrong | None:
    """The next of the pool that can be drawn and looks like none of those shown.

    beside: the right picture and the side of this one, if the two are to be compared first.
    """
    looks = [meaning.drawn for meaning in shown]
    while pool:
        wrong = pool.pop()
        if wrong.shown.drawn in looks or not can_draw(wrong.shown, lines=lines):
            continue
        if beside is None:
            return wrong
        right, side = beside
        if are_unlike(right, Scene(meaning=wrong.shown, side=side), lines=lines):
            return wrong
    return None


def _other_sides(rng: Random, side: Side, twin_side: Side, count: int) -> list[Side]:
    """Sides of the other foils, such that each side is shown as often as can be."""
    shown = [side, twin_side]
    for _ in range(count):
        left = shown.count(Side.LEFT)
        right = len(shown) - left
        if left == right:
            shown.append(rng.choice((Side.LEFT, Side.RIGHT)))
        else:
            shown.append(Side.LEFT if left < right else Side.RIGHT)
    return shown[2:]


def _item(batch: Batch, target: Target, built: _Built, draw: _Draw) -> Item:
    rng, lexicon, case = batch.rng, batch.material.lexicon, built.case
    family = FAMILIES[target.name]
    adjuncts = _adjuncts(case.told, target.name, lexicon, rng)
    told = placed(case.told, adjuncts)
    right = placed(case.right, adjuncts)
    options = [
        Option(
            scene=Scene(meaning=placed(wrong.shown, adjuncts), side=scene.side),
            foil=wrong.foil,
            why_wrong=wrong.why.value,
        )
        for wrong, scene in zip(built.wrongs, built.scenes, strict=True)
    ]
    # The last is the one furthest from the sentence: wrong in a word, or in two ways.
    last = options[-1] if len(options) > 1 else None
    rng.shuffle(options)
    options.insert(draw.answer, Option(scene=Scene(meaning=right, side=draw.side)))
    sentence = realise(told, target.name, lexicon)
    helps = family.helps(case.told, case.right, lexicon)
    item = Item(
        id="",
        kind=Kind.MATCH,
        target=target,
        construction=target.name,
        level="",
        prompt=family.prompt,
        sentence=sentence.text,
        spoken=sentence.spoken,
        restated=restated(plainly(case), lexicon),
        options=tuple(options),
        answer=draw.answer,
        effective_k=chance_choices(told, options, target.name),
        cues=comprehension_ladder(
            sentence=sentence,
            asked=sentence.spoken,
            role_question=helps.role_question,
            removes=None if last is None else options.index(last),
            named=helps.named,
            named_is_doer=helps.named_is_doer,
            answer_text=restate(plainly(case), lexicon),
            answer=draw.answer,
        ),
        meaning=told,
        words=content_words(told, lexicon, target.name),
        item_set=batch.item_set,
        content_hash=batch.material.content_hash,
    )
    return with_id(kept(item, batch.material, MATCH_RULES))


def _adjuncts(meaning: Meaning, construction: str, lexicon: Lexicon, rng: Random) -> Adjuncts:
    """A where and when that bring a sentence shorter than the others up to their length."""
    reached = lengths(meaning, construction, lexicon)
    words = next((each for each in reached if each >= FEWEST_WORDS), max(reached))
    return rng.choice(reached[words])
