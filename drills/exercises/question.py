"""Question: hear or read a sentence, say who did it or who it was done to."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Cue, Foil, Item, Kind, Option, Target
from drills.core.material import Material
from drills.core.meanings import Act
from drills.core.plans import BlockPlan
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Sentence
from drills.exercises.balance import spread, without_runs
from drills.exercises.casting import Casting
from drills.exercises.choices import CHOICE_RULES, content_words, kept
from drills.exercises.cues import comprehension_ladder
from drills.exercises.exercise import Batch, Exercise, with_id
from drills.exercises.match import LONGEST_RUN, act_constructions, named_doer
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import act_pairs, verb_groups, verbs_of
from drills.language import Role, answer_name, ask_about, ask_doer, ask_done_to, realise

WHO_DID_WHAT = "who-did-what"
"""The question form; a target names it with a construction: "who-did-what:full-passive"."""

CHOICES = 2


def _names(_material: Material) -> tuple[str, ...]:
    """The form alone spreads over every construction; a construction alone means this form."""
    constructions = act_constructions()
    return (
        WHO_DID_WHAT,
        *(f"{WHO_DID_WHAT}:{construction}" for construction in constructions),
        *constructions,
    )


def _groups(material: Material, _names: Sequence[str]) -> tuple[str, ...]:
    return verb_groups(material.lexicon)


def construction_of(target: Target) -> str:
    return target.name.partition(":")[2]


def _targets(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    constructions: list[str] = []
    for name in block.names:
        if name == WHO_DID_WHAT:
            constructions += act_constructions()
        else:
            constructions.append(name.removeprefix(f"{WHO_DID_WHAT}:"))
    return tuple(
        Target(kind=Kind.QUESTION, name=f"{WHO_DID_WHAT}:{construction}", group=group)
        for construction in dict.fromkeys(constructions)
        for group in verb_groups(material.lexicon)
        if not block.groups or group in block.groups
    )


def _make(batch: Batch) -> tuple[Item, ...]:
    rng, lexicon = batch.rng, batch.material.lexicon
    names = [target.name for target in batch.targets]
    answers = without_runs(
        rng, names, lambda: spread(rng, names, range(CHOICES)), longest=LONGEST_RUN
    )
    asked = spread(rng, names, (Role.DOER, Role.DONE_TO), crossed=answers)
    casting = Casting(rng, lambda _name, verb: act_pairs(lexicon, verb))
    items = []
    for target, answer, role in zip(batch.targets, answers, asked, strict=True):
        verb, (doer, done_to) = casting.choose(target.name, verbs_of(lexicon, target.group))
        act = Act(verb=verb, doer=doer, done_to=done_to)
        items.append(_item(batch, target, act, role, answer))
    return tuple(items)


def _item(batch: Batch, target: Target, act: Act, role: Role, answer: int) -> Item:
    lexicon = batch.material.lexicon
    construction = construction_of(target)
    sentence = realise(act, construction, lexicon)
    ask = ask_doer if role is Role.DOER else ask_done_to
    question = ask(act, lexicon)
    right, wrong = (act.doer, act.done_to) if role is Role.DOER else (act.done_to, act.doer)
    options = [
        Option(
            text=answer_name(lexicon.nouns[wrong]),
            foil=Foil.REVERSAL,
            why_wrong=WhyWrong.FALSE_ROLE.value,
        )
    ]
    options.insert(answer, Option(text=answer_name(lexicon.nouns[right])))
    spoken = Utterance(phrases=(*sentence.spoken.phrases, *question.spoken.phrases))
    item = Item(
        id="",
        kind=Kind.QUESTION,
        target=target,
        construction=construction,
        level=WHO_DID_WHAT,
        prompt=question.text,
        sentence=sentence.text,
        spoken=spoken,
        restated=realise(act, "active", lexicon).spoken,
        options=tuple(options),
        answer=answer,
        effective_k=len(options),
        cues=_cues(act, role, sentence, spoken, answer=answer, lexicon=lexicon),
        meaning=act,
        words=content_words(act, lexicon),
        item_set=batch.item_set,
        content_hash=batch.material.content_hash,
    )
    return with_id(kept(item, batch.material, CHOICE_RULES))


def _cues(
    act: Act,
    role: Role,
    sentence: Sentence,
    spoken: Utterance,
    *,
    answer: int,
    lexicon: Lexicon,
) -> tuple[Cue, ...]:
    """Help turns to the one who is *not* asked about, since the other would be the answer."""
    other = Role.DONE_TO if role is Role.DOER else Role.DOER
    if other is Role.DOER:
        named = named_doer(act, lexicon)
    else:
        # The passive without its doer says of the done-to what `named_doer` says of the doer.
        passive = realise(act, "full-passive", lexicon)
        named = f"{' '.join(passive.spoken.phrases[:2])}."
    return comprehension_ladder(
        sentence=sentence,
        asked=spoken,
        role_question=ask_about(act, other, lexicon).text,
        removes=None,
        named=named,
        named_is_doer=other is Role.DOER,
        answer_text=sentence.plain,
        answer=answer,
    )


QUESTION = Exercise(
    kind=Kind.QUESTION,
    names=_names,
    groups=_groups,
    targets=_targets,
    make=_make,
)
