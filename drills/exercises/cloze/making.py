"""Cloze items from targets: the right word, what is said so that it is right, and its foils."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Foil, Item, Kind, Option, Target
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Place, Scene
from drills.core.plans import BlockPlan
from drills.core.problems import Problem
from drills.exercises.balance import spread
from drills.exercises.choices import content_words, kept
from drills.exercises.cloze.help import ladder
from drills.exercises.contrasts import contrast_faults, foils_of, positions_of, right_words
from drills.exercises.cues import say
from drills.exercises.exercise import Batch, Exercise, with_id
from drills.exercises.frames.dealing import Dealer, content_keys
from drills.exercises.frames.dealing import content_words as told_words
from drills.exercises.frames.frame import Dealt, Frame, context_of
from drills.exercises.frames.table import FRAMES
from drills.exercises.gaps import GAP
from drills.exercises.rules import CLOZE_RULES

PROMPT = "Choose the missing word."


def _names(material: Material) -> tuple[str, ...]:
    return tuple(material.cloze)


def _groups(material: Material, names: Sequence[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(group for name in names for group in material.cloze[name].contrasts))


def _faults(block: BlockPlan, material: Material) -> tuple[Problem, ...]:
    return tuple(
        problem
        for name in block.names
        for each in material.cloze[name].sets
        for group, words in each.contrasts.items()
        if not block.groups or group in block.groups
        for problem in contrast_faults(
            f"cloze level {name}, {group}", words, each, material.cloze_words
        )
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
    dealer = Dealer(rng, material)
    items = []
    for target, contrast, word, count, position, side in zip(
        batch.targets, contrasts, words, counts, positions, sides, strict=True
    ):
        frame = FRAMES[material.cloze[target.name].set_of(target.group).frame]
        foils = foils_of(rng, word, contrast, count)
        offered = [*foils[:position], word, *foils[position:]]
        # Of all its words, not of those offered alone, or what is told would give some away.
        others = tuple(other for other in contrast if other != word)
        dealer.begin()
        dealt = frame.deal(word, others if frame.name in _WHOLE else foils, dealer)
        if dealt.told is not None:
            dealer.note(*content_keys(dealt.told))
        items.append(
            _item(batch, target, frame, dealt, offered=offered, answer=position, side=side)
        )
    return tuple(items)


_WHOLE = ("place",)
"""Frames whose meaning is to suit every word of the contrast, offered or not."""


def _item(
    batch: Batch,
    target: Target,
    frame: Frame,
    dealt: Dealt,
    *,
    offered: Sequence[str],
    answer: int,
    side: Side,
) -> Item:
    material = batch.material
    words = material.cloze_words
    if dealt.told is not None:
        dealt = Dealt(told=dealt.told, meaning=frame.picture_of(dealt.told))
    gapped = frame.gapped(dealt, words.lexicon)
    context = context_of(dealt, words.lexicon)
    options = tuple(
        _option(frame, dealt, label, material, is_right=index == answer)
        for index, label in enumerate(offered)
    )
    shown = dealt.meaning if dealt.told is not None or isinstance(dealt.meaning, Place) else None
    item = Item(
        id="",
        kind=Kind.CLOZE,
        target=target,
        construction=_construction(frame),
        level=target.name,
        prompt=PROMPT,
        sentence=gapped.sentence.gapped(gapped.gap, GAP),
        spoken=say(PROMPT, *context.said),
        restated=gapped.sentence.spoken,
        options=options,
        answer=answer,
        effective_k=len(options),
        cues=ladder(
            dealt,
            gapped,
            context,
            options=options,
            answer=answer,
            hint=material.cloze[target.name].set_of(target.group).hint,
            lexicon=words.lexicon,
        ),
        context=context.text,
        told=dealt.told,
        meaning=dealt.meaning,
        picture=None if shown is None else Scene(meaning=shown, side=side),
        words=_content_words(dealt, material),
        item_set=batch.item_set,
        content_hash=material.content_hash,
    )
    return with_id(kept(item, material, CLOZE_RULES))


def _option(
    frame: Frame, dealt: Dealt, label: str, material: Material, *, is_right: bool
) -> Option:
    text = frame.surface(label, dealt, material.cloze_words.lexicon)
    if is_right:
        return Option(text=text)
    why = frame.why_wrong(label, dealt, material.cloze_words)
    return Option(text=text, foil=Foil.WORD, why_wrong=None if why is None else why.value)


_CONSTRUCTIONS = {"place": "locative", "number": "agreement"}
"""Frames that a construction of the language already says; the others bear their own name."""


def _construction(frame: Frame) -> str:
    return _CONSTRUCTIONS.get(frame.name, frame.name)


def _content_words(dealt: Dealt, material: Material) -> tuple[str, ...]:
    if dealt.told is not None:
        return told_words(dealt.told, material.cloze_words.lexicon)
    if dealt.meaning is None:
        return ()
    return content_words(dealt.meaning, material.lexicon)


CLOZE = Exercise(
    kind=Kind.CLOZE,
    names=_names,
    groups=_groups,
    faults=_faults,
    targets=_targets,
    make=_make,
)
