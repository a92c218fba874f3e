"""Match: hear a sentence, choose its picture.

Two pictures, the right one and its reversal, cannot be told apart without the sentence. With
three or four, another verb or noun is put in the right picture in half of the items and in the
reversal in the other half; with four, one foil is made from each. So whoever compares the
pictures finds the right doer oftener as often as the reversed one, and learns nothing by it.

A reversal too like its target at the size it is shown is not offered: its meaning is dealt anew.
With three or four, pictures are small, and verbs that small pictures do not show are left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from drills.core.items import Foil, Item, Kind, Option, Target
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meaning_json import as_json
from drills.core.meanings import Act, Place, Relation, Scene, Tense
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput, Problem
from drills.core.words import Lexicon
from drills.exercises.balance import spread, without_runs
from drills.exercises.casting import Casting, Pair
from drills.exercises.choices import MATCH_RULES, chance_choices, content_words, kept
from drills.exercises.cues import comprehension_ladder
from drills.exercises.exercise import Batch, Exercise, with_id
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import (
    REVERSIBLE,
    act_pairs,
    other_doer,
    other_done_to,
    other_landmark,
    other_relation,
    other_thing,
    other_verb,
    reversible_places,
    verb_groups,
    verbs_of,
)
from drills.exercises.showing import Showing
from drills.language import CONSTRUCTIONS, Role, ask_about, realise

PROMPT = "Which picture fits?"
LONGEST_RUN = 3
"""Most times that the right picture may stand in one place running. Common practice."""

_TRIES = 24

_PLACE_NAMES = {
    Relation.IN: "inside",
    Relation.ON: "on top",
    Relation.UNDER: "underneath",
    Relation.BEHIND: "behind",
    Relation.IN_FRONT_OF: "in front",
}

Wrong = tuple[Act | Place, Foil, WhyWrong]


_OFFERED = ("active", "locative", "subject-cleft", "full-passive", "object-cleft")
"""The constructions for which foils are made here."""


def act_constructions() -> tuple[str, ...]:
    return tuple(name for name in _OFFERED if CONSTRUCTIONS[name].meaning_type is Act)


def _names(_material: Material) -> tuple[str, ...]:
    return _OFFERED


def _groups(material: Material, names: Sequence[str]) -> tuple[str, ...]:
    acts = any(CONSTRUCTIONS[name].meaning_type is Act for name in names)
    return verb_groups(material.lexicon) if acts else ()


def _targets(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    found: list[Target] = []
    for name in block.names:
        if CONSTRUCTIONS[name].meaning_type is Act:
            groups = [
                group
                for group in verb_groups(material.lexicon)
                if not block.groups or group in block.groups
            ]
            found += [Target(kind=Kind.MATCH, name=name, group=group) for group in groups]
        else:
            found.append(Target(kind=Kind.MATCH, name=name))
    return tuple(found)


def _make(batch: Batch) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    names = [target.name for target in batch.targets]
    answers = without_runs(
        rng, names, lambda: spread(rng, names, range(batch.options)), longest=LONGEST_RUN
    )
    sides = spread(rng, names, (Side.LEFT, Side.RIGHT), crossed=answers)
    kept_places = spread(rng, names, (True, False), crossed=list(zip(answers, sides, strict=True)))
    first_extras = spread(rng, names, (0, 1), crossed=answers)
    bases = spread(rng, names, (0, 1), crossed=list(zip(answers, first_extras, strict=True)))

    def pairs(_name: str, act: str) -> tuple[Pair, ...]:
        if act in lexicon.verbs:
            return act_pairs(lexicon, act)
        return reversible_places(lexicon, act)

    casting = Casting(rng, pairs)
    items = []
    for target, answer, side, keeps, first, base in zip(
        batch.targets, answers, sides, kept_places, first_extras, bases, strict=True
    ):
        shown = Showing(
            options=batch.options, side=side, reversed_side=side.other if keeps else side
        )
        meaning = _meaning(target, casting, lexicon, shown)
        kinds = (_first_kind(meaning, first), base)
        wrong = _wrong(meaning, lexicon, rng, batch.options, kinds)
        scenes = [shown.reversed_side, *_extra_sides(rng, side, keeps, len(wrong) - 1)]
        options = [
            Option(scene=Scene(meaning=other, side=where), foil=foil, why_wrong=why.value)
            for (other, foil, why), where in zip(wrong, scenes, strict=True)
        ]
        rng.shuffle(options)
        options.insert(answer, Option(scene=Scene(meaning=meaning, side=side)))
        items.append(_item(batch, target, meaning, tuple(options), answer))
    return tuple(items)


def _meaning(target: Target, casting: Casting, lexicon: Lexicon, shown: Showing) -> Act | Place:
    if CONSTRUCTIONS[target.name].meaning_type is Act:
        verbs = verbs_of(lexicon, target.group, small=shown.is_small)
        verb, pair = casting.choose(
            target.name, verbs, lambda verb, pair: shown.tells(_act(verb, pair))
        )
        return _act(verb, pair)
    relation, pair = casting.choose(
        target.name, REVERSIBLE, lambda relation, pair: shown.tells(_place(relation, pair))
    )
    return _place(relation, pair)


def _act(verb: str, pair: Pair) -> Act:
    return Act(verb=verb, doer=pair[0], done_to=pair[1])


def _place(relation: str, pair: Pair) -> Place:
    return Place(relation=Relation(relation), thing=pair[0], landmark=pair[1])


def _wrong(
    meaning: Act | Place, lexicon: Lexicon, rng: Random, options: int, kinds: tuple[int, int]
) -> list[Wrong]:
    """The reversal, then the two other kinds of foil by turns until there are enough.

    kinds: 0 or 1 each: which of the two other kinds comes first, and whether the first foil is
    made from the meaning (0) or from its reversal (1); the next is made from the other.
    Raises: BadInput when the words do not give that many pictures that look different.
    """
    back = meaning.reversed()
    acts = isinstance(meaning, Act)
    wrong: list[Wrong] = [
        (back, Foil.REVERSAL, WhyWrong.FALSE_ROLE if acts else WhyWrong.FALSE_PLACE)
    ]
    first, base = kinds
    for turn in range(first, first + _TRIES):
        if len(wrong) == options - 1:
            return wrong
        shown = (meaning, *(other for other, _, _ in wrong))
        made_from = (meaning, back)[(base + len(wrong) - 1) % 2]
        extra = _extra(made_from, lexicon, rng, turn % 2, shown)
        if extra is not None and extra[0].drawn not in [other.drawn for other in shown]:
            wrong.append(extra)
    raise BadInput(
        [
            Problem(
                where="lexicon",
                message=f"has too few words for {options} pictures of {as_json(meaning)}.",
                mend="Add words, or offer fewer pictures.",
            )
        ]
    )


def _first_kind(meaning: Act | Place, dealt: int) -> int:
    """The other preposition is what a locative is for, so it goes before the other noun."""
    return dealt if isinstance(meaning, Act) else 0


def _extra(
    meaning: Act | Place,
    lexicon: Lexicon,
    rng: Random,
    turn: int,
    shown: tuple[Act | Place, ...],
) -> Wrong | None:
    if isinstance(meaning, Act):
        if turn == 0:
            act = other_verb(meaning, lexicon, rng)
            return None if act is None else (act, Foil.VERB, WhyWrong.FALSE_ACT)
        actor = rng.choice((other_doer, other_done_to))(meaning, lexicon, rng)
        return None if actor is None else (actor, Foil.NOUN, WhyWrong.FALSE_NOUN)
    if turn == 0:
        place = other_relation(meaning, lexicon, rng, unlike=shown)
        return None if place is None else (place, Foil.WORD, WhyWrong.FALSE_PLACE)
    thing = rng.choice((other_thing, other_landmark))(meaning, lexicon, rng)
    return None if thing is None else (thing, Foil.NOUN, WhyWrong.FALSE_NOUN)


def _extra_sides(rng: Random, side: Side, keeps: bool, count: int) -> list[Side]:
    """Sides of the other foils, such that each side is shown as often as can be."""
    shown = [side, side.other if keeps else side]
    sides: list[Side] = []
    for _ in range(count):
        left = shown.count(Side.LEFT)
        right = len(shown) - left
        if left == right:
            chosen = rng.choice((Side.LEFT, Side.RIGHT))
        else:
            chosen = Side.LEFT if left < right else Side.RIGHT
        shown.append(chosen)
        sides.append(chosen)
    return sides


def _item(
    batch: Batch,
    target: Target,
    meaning: Act | Place,
    options: tuple[Option, ...],
    answer: int,
) -> Item:
    lexicon = batch.material.lexicon
    sentence = realise(meaning, target.name, lexicon)
    role = Role.DOER if isinstance(meaning, Act) else Role.THING
    removable = [
        index for index, option in enumerate(options) if option.foil not in (None, Foil.REVERSAL)
    ]
    plain = realise(meaning, "active" if isinstance(meaning, Act) else "locative", lexicon)
    item = Item(
        id="",
        kind=Kind.MATCH,
        target=target,
        construction=target.name,
        level="",
        prompt=PROMPT,
        sentence=sentence.text,
        spoken=sentence.spoken,
        restated=plain.spoken,
        options=options,
        answer=answer,
        effective_k=chance_choices(meaning, options),
        cues=comprehension_ladder(
            sentence=sentence,
            asked=sentence.spoken,
            role_question=ask_about(meaning, role, lexicon).text,
            removes=removable[0] if removable else None,
            named=named_doer(meaning, lexicon),
            answer_text=sentence.plain,
            answer=answer,
        ),
        meaning=meaning,
        words=content_words(meaning, lexicon),
        item_set=batch.item_set,
        content_hash=batch.material.content_hash,
    )
    return with_id(kept(item, batch.material, MATCH_RULES))


def named_doer(meaning: Act | Place, lexicon: Lexicon) -> str:
    """Who does it, or what is there, and no more: "The sailor pushed."."""
    if isinstance(meaning, Place):
        verb = "is" if meaning.tense is Tense.PRESENT else "was"
        where = _PLACE_NAMES[meaning.relation]
        return f"The {lexicon.nouns[meaning.thing].singular} {verb} {where}."
    word = lexicon.verbs[meaning.verb]
    does = word.past if meaning.tense is Tense.PAST else f"is {word.ing}"
    return f"The {lexicon.nouns[meaning.doer].singular} {does}."


MATCH = Exercise(
    kind=Kind.MATCH,
    names=_names,
    groups=_groups,
    targets=_targets,
    make=_make,
)
