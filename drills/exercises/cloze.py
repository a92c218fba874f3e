"""Cloze: a sentence with one small word missing; exactly one of the words offered is right."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Cue, Foil, Item, Kind, Option, Target
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Meaning, Place, Relation, Scene, State
from drills.core.plans import BlockPlan
from drills.core.problems import Problem
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Part, Sentence
from drills.exercises.balance import spread
from drills.exercises.casting import Casting
from drills.exercises.choices import content_words, kept
from drills.exercises.contrasts import AUXILIARIES, Holders, open_places, positions_of, right_words
from drills.exercises.cues import cloze_ladder, say
from drills.exercises.exercise import Batch, Exercise, with_id
from drills.exercises.reasons import WhyWrong
from drills.exercises.rules import CLOZE_RULES, GAP, contrast_faults
from drills.language import CONSTRUCTIONS, Role, ask_about, realise

PROMPT = "Choose the missing word."


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
    words = right_words(rng, groups, contrasts)
    counts = [min(batch.options, len(contrast)) for contrast in contrasts]
    positions = positions_of(rng, groups, words, counts)
    sides = spread(rng, groups, (Side.LEFT, Side.RIGHT), crossed=words)
    offered = dict(zip(groups, contrasts, strict=True))
    places = Casting(rng, lambda group, _word: open_places(material.lexicon, offered[group]))
    states = Holders(rng, material.lexicon)
    items = []
    for target, contrast, word, count, position, side in zip(
        batch.targets, contrasts, words, counts, positions, sides, strict=True
    ):
        foils = [other for other in contrast if other != word]
        rng.shuffle(foils)
        texts = foils[: count - 1]
        texts.insert(position, word)
        meaning: Place | State
        if word in AUXILIARIES:
            meaning = states.choose(word)
        else:
            relation, (thing, landmark) = places.choose(str(target), (word,))
            meaning = Place(relation=Relation(relation), thing=thing, landmark=landmark)
        items.append(_item(batch, target, meaning, texts=tuple(texts), answer=position, side=side))
    return tuple(items)


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
        start_spoken=say("The word starts with", f"{word[0].upper()}."),
        answer_text=sentence.text,
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
