"""Cloze: a sentence with one small word missing; exactly one of the words offered is right."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from random import Random

from drills.core.items import Cue, Foil, Item, Kind, Option, Target
from drills.core.material import Material
from drills.core.meanings import Link, Meaning, Place, Relation, Scene, Side, State, Tense
from drills.core.plans import BlockPlan
from drills.core.problems import Problem
from drills.core.words import Lexicon, Part, Sentence, Sort, Utterance, phrases_of
from drills.exercises.balance import runs, spread, without_runs
from drills.exercises.casting import Casting, Pair
from drills.exercises.cues import cloze_ladder, say
from drills.exercises.exercise import Batch, Exercise, with_id
from drills.exercises.reasons import WhyWrong
from drills.exercises.rules import (
    CLOZE_RULES,
    GAP,
    LONGEST_ANSWER_RUN,
    content_words,
    contrast_faults,
    kept,
    shows_number,
)
from drills.language import CONSTRUCTIONS, Role, ask_about, realise

PROMPT = "Choose the missing word."

_AUXILIARIES: dict[str, tuple[Link, Tense, bool]] = {
    "is": (Link.BE, Tense.PRESENT, True),
    "are": (Link.BE, Tense.PRESENT, False),
    "was": (Link.BE, Tense.PAST, True),
    "were": (Link.BE, Tense.PAST, False),
    "has": (Link.HAVE, Tense.PRESENT, True),
    "have": (Link.HAVE, Tense.PRESENT, False),
}
"""Link, tense and whether it goes with one."""

_MANY = (2, 3)
_DEALS = 8


def _names(material: Material) -> tuple[str, ...]:
    return tuple(material.cloze)


def _groups(material: Material, names: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(group for name in names for group in material.cloze[name].contrasts))


def _faults(block: BlockPlan, material: Material) -> tuple[Problem, ...]:
    return tuple(
        problem
        for name in block.names
        for group, words in material.cloze[name].contrasts.items()
        if not block.groups or group in block.groups
        for problem in contrast_faults(f"cloze level {name}, {group}", words)
    )


def _targets(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    return tuple(
        Target(kind=Kind.CLOZE, name=name, group=group)
        for name in block.names
        for group in material.cloze[name].contrasts
        if not block.groups or group in block.groups
    )


def _make(batch: Batch) -> tuple[Item, ...]:
    rng, material = batch.rng, batch.material
    groups = [str(target) for target in batch.targets]
    contrasts = [material.cloze[target.name].contrasts[target.group] for target in batch.targets]
    words = _right_words(rng, groups, contrasts)
    counts = [min(batch.options, len(contrast)) for contrast in contrasts]
    positions = _positions(rng, groups, words, counts)
    sides = spread(rng, groups, (Side.LEFT, Side.RIGHT), crossed=words)
    offered = dict(zip(groups, contrasts, strict=True))
    places = Casting(rng, lambda group, _word: _places(material.lexicon, offered[group]))
    states = _Holders(rng, material.lexicon)
    items = []
    for target, contrast, word, count, position, side in zip(
        batch.targets, contrasts, words, counts, positions, sides, strict=True
    ):
        foils = [other for other in contrast if other != word]
        rng.shuffle(foils)
        texts = foils[: count - 1]
        texts.insert(position, word)
        meaning: Place | State
        if word in _AUXILIARIES:
            meaning = states.choose(word)
        else:
            relation, (thing, landmark) = places.choose(str(target), (word,))
            meaning = Place(relation=Relation(relation), thing=thing, landmark=landmark)
        items.append(_item(batch, target, meaning, texts=tuple(texts), answer=position, side=side))
    return tuple(items)


def _right_words(
    rng: Random, groups: Sequence[str], contrasts: Sequence[Sequence[str]]
) -> list[str]:
    """The right word of each item: each of a contrast equally often, none three times running.

    Of several such deals the one that is most even over the whole batch, since a batch may hold
    one item of each contrast.
    """

    def deal() -> list[str]:
        words = [""] * len(groups)
        for group in dict.fromkeys(groups):
            indices = [index for index, other in enumerate(groups) if other == group]
            dealt = spread(rng, [group] * len(indices), contrasts[indices[0]])
            for index, word in zip(indices, dealt, strict=True):
                words[index] = word
        return words

    deals = [without_runs(rng, groups, deal, longest=LONGEST_ANSWER_RUN) for _ in range(_DEALS)]
    return min(
        deals,
        key=lambda words: (
            len(runs(words, longest=LONGEST_ANSWER_RUN)),
            _unevenness(words, contrasts),
        ),
    )


def _unevenness(words: Sequence[str], contrasts: Sequence[Sequence[str]]) -> int:
    """How far words, and one against many, are from being right as often as they are offered.

    In whole numbers, so that no machine rounds otherwise than another.
    """
    scale = math.lcm(*(len(contrast) for contrast in contrasts)) if contrasts else 1
    lead: Counter[str] = Counter()
    for word, contrast in zip(words, contrasts, strict=True):
        lead[word] += scale
        for other in contrast:
            lead[other] -= scale // len(contrast)
    number = sum(lead[word] if one else -lead[word] for word, (_, _, one) in _AUXILIARIES.items())
    return sum(value * value for value in lead.values()) + number * number


def _positions(
    rng: Random, groups: Sequence[str], words: Sequence[str], counts: Sequence[int]
) -> list[int]:
    """Where the right word stands: each place equally often, for each word too."""
    positions = [0] * len(groups)
    for count in dict.fromkeys(counts):
        indices = [index for index, other in enumerate(counts) if other == count]
        dealt = spread(
            rng,
            [groups[index] for index in indices],
            range(count),
            crossed=[words[index] for index in indices],
        )
        for index, position in zip(indices, dealt, strict=True):
            positions[index] = position
    return positions


def _places(lexicon: Lexicon, contrast: Sequence[str]) -> tuple[Pair, ...]:
    """Things that could be in any of the places offered, so that only the picture decides."""
    inside = Relation.IN.value in contrast
    return tuple(
        (a.key, b.key)
        for a in lexicon.things
        for b in lexicon.things
        if a is not b and a.size == b.size and (b.container or not inside)
    )


class _Holders:
    """Chooses who is or has something: every noun and complement in turn, none twice running."""

    def __init__(self, rng: Random, lexicon: Lexicon) -> None:
        self._rng = rng
        self._subjects = [
            noun.key
            for noun in lexicon.nouns.values()
            if noun.sort is Sort.PERSON and shows_number(noun)
        ]
        self._complements = {
            Link.BE: list(lexicon.adjectives),
            Link.HAVE: [noun.key for noun in lexicon.things if shows_number(noun)],
        }
        self._uses: Counter[str] = Counter()
        self._last: tuple[str, str] = ("", "")

    def choose(self, word: str) -> State:
        link, tense, one = _AUXILIARIES[word]
        subject = self._fresh(f"{one}", self._subjects)
        complement = self._fresh(link.value, self._complements[link])
        self._last = (subject, complement)
        count = 1 if one else self._rng.choice(_MANY)
        return State(subject=subject, count=count, link=link, complement=complement, tense=tense)

    def _fresh(self, slot: str, keys: Sequence[str]) -> str:
        """The key used least in this slot, so that no noun goes with one number only."""
        order = list(keys)
        self._rng.shuffle(order)
        chosen = min(order, key=lambda key: (key in self._last, self._uses[f"{slot} {key}"]))
        self._uses[f"{slot} {chosen}"] += 1
        return chosen


def _item(
    batch: Batch,
    target: Target,
    meaning: Place | State,
    *,
    texts: tuple[str, ...],
    answer: int,
    side: Side,
) -> Item:
    material = batch.material
    construction = _construction(meaning)
    sentence = realise(meaning, construction, material.lexicon)
    gap = _gap(sentence, meaning)
    why = WhyWrong.FALSE_PLACE if isinstance(meaning, Place) else WhyWrong.AGREEMENT
    options = tuple(
        Option(text=text)
        if index == answer
        else Option(text=text, foil=Foil.WORD, why_wrong=why.value)
        for index, text in enumerate(texts)
    )
    item = Item(
        id="",
        kind=Kind.CLOZE,
        target=target,
        construction=construction,
        level=target.name,
        prompt=PROMPT,
        sentence=sentence.gapped(gap, GAP),
        spoken=say(PROMPT),
        restated=sentence.spoken,
        options=options,
        answer=answer,
        effective_k=len(options),
        cues=_cues(
            meaning,
            sentence,
            gap,
            options=options,
            answer=answer,
            hint=material.cloze[target.name].hint,
            lexicon=material.lexicon,
        ),
        meaning=meaning,
        picture=Scene(meaning=meaning, side=side) if isinstance(meaning, Place) else None,
        words=content_words(meaning, material.lexicon),
        item_set=batch.item_set,
        content_hash=material.content_hash,
    )
    return with_id(kept(item, material, CLOZE_RULES))


def _construction(meaning: Meaning) -> str:
    return next(each.name for each in CONSTRUCTIONS.values() if each.meaning_type is type(meaning))


def _gap(sentence: Sentence, meaning: Place | State) -> int:
    part = Part.PREPOSITION if isinstance(meaning, Place) else Part.AUXILIARY
    return next(index for index, token in enumerate(sentence.tokens) if token.part is part)


def _cues(
    meaning: Place | State,
    sentence: Sentence,
    gap: int,
    *,
    options: tuple[Option, ...],
    answer: int,
    hint: str,
    lexicon: Lexicon,
) -> tuple[Cue, ...]:
    tokens = sentence.tokens
    before = " ".join(token.text for token in tokens[:gap])
    after = " ".join(token.text for token in tokens[gap + 1 :]) + sentence.end
    if isinstance(meaning, Place):
        detail = ask_about(meaning, Role.THING, lexicon).text
    else:
        detail = f"{tokens[0].text} {tokens[1].text}."
    foils = [index for index in range(len(options)) if index != answer]
    word = tokens[gap].text
    others = [options[index].text or "" for index in foils]
    start = first_letters(word, others)
    return cloze_ladder(
        around=Utterance(phrases=(before, after)),
        hint=(hint, detail),
        removes=foils[0] if len(foils) > 1 else None,
        start=start,
        start_spoken=say("The first letter is", f"{word[0].upper()}."),
        answer_text=" ".join(phrases_of(tokens, sentence.end)),
        answer=answer,
    )


def first_letters(word: str, others: Sequence[str]) -> str:
    """The least beginning of `word`, with its length, that no other word has: "i_", "w___"."""
    shown = word[:1]
    for length in range(1, len(word) + 1):
        shown = _masked(word, length)
        if all(_masked(other, length) != shown for other in others):
            break
    return shown


def _masked(word: str, length: int) -> str:
    return word[:length] + "".join(" " if letter == " " else "_" for letter in word[length:])


CLOZE = Exercise(
    kind=Kind.CLOZE,
    names=_names,
    groups=_groups,
    faults=_faults,
    targets=_targets,
    make=_make,
)
