"""From the parts of a question to an item that holds its rules."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from drills.core.items import Cue, Foil, Item, Kind, Option, Target
from drills.core.meanings import Meaning, Scene
from drills.core.question_words import NO, YES
from drills.core.utterances import Utterance
from drills.core.words import Sentence
from drills.exercises.choices import kept
from drills.exercises.exercise import Batch, with_id
from drills.exercises.question.form import form_of
from drills.exercises.question.rules import QUESTION_RULES, guesses
from drills.exercises.reasons import WhyWrong

YES_OR_NO = (YES, NO)
"""In this order always: to look for yes would be one more thing to do."""


def item_of(
    batch: Batch,
    target: Target,
    *,
    construction: str,
    sentence: str,
    question: Sentence | str,
    spoken: Utterance,
    restated: Utterance,
    options: Sequence[Option],
    answer: int,
    cues: tuple[Cue, ...],
    words: tuple[str, ...],
    level: str = "",
    meaning: Meaning | None = None,
    picture: Scene | None = None,
) -> Item:
    """The item.   level: the form's name where it has no level of its own.

    Raises: BadInput with every rule that it breaks.
    """
    form = form_of(target)
    item = Item(
        id="",
        kind=Kind.QUESTION,
        target=target,
        construction=construction,
        level=level or form,
        prompt=question if isinstance(question, str) else question.text,
        sentence=sentence,
        spoken=spoken,
        restated=restated,
        options=tuple(options),
        answer=answer,
        effective_k=guesses(options, picture),
        cues=cues,
        meaning=meaning,
        picture=picture,
        words=words,
        item_set=batch.item_set,
        content_hash=batch.material.content_hash,
    )
    return with_id(kept(item, batch.material, QUESTION_RULES))


def said(*parts: Utterance) -> Utterance:
    """All the parts, one after the other."""
    return Utterance(phrases=tuple(phrase for part in parts for phrase in part.phrases))


def right(text: str) -> Option:
    return Option(text=text)


def wrong(text: str, foil: Foil, why: WhyWrong) -> Option:
    return Option(text=text, foil=foil, why_wrong=why.value)


def yes_or_no(*, is_so: bool, foil: Foil, why: WhyWrong) -> tuple[tuple[Option, ...], int]:
    """Both answers and the place of the right one.   foil, why: of the wrong one."""
    answer = YES_OR_NO.index(YES if is_so else NO)
    options = tuple(
        right(text) if index == answer else wrong(text, foil, why)
        for index, text in enumerate(YES_OR_NO)
    )
    return options, answer


def placed(
    key: Option, foils: Sequence[Option], answer: int, shuffle: Callable[[list[Option]], None]
) -> tuple[Option, ...]:
    """The foils in any order, the key at `answer`."""
    options = list(foils)
    shuffle(options)
    options.insert(answer, key)
    return tuple(options)
