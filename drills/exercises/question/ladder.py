"""The steps of help to a question; levels keep the number they have in every ladder."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Cue, CueKind, Foil, Option
from drills.core.utterances import Utterance
from drills.core.words import Sentence
from drills.exercises.cues import answer_cue, removal_cue, say

REMOVAL = "One answer goes away."


def question_ladder(
    *,
    asked: Utterance,
    text: Cue | None = None,
    turns: str | Cue | None = None,
    options: Sequence[Option] = (),
    told: Cue | None = None,
    answer_text: str,
    answer: int,
) -> tuple[Cue, ...]:
    """Levels 1 to 7.

    asked: what was said at level 0.   text: the sentence with its small words stressed.
    turns: the question that turns the mind to the other part.   options: one that words alone
    rule out goes away.   told: part of the answer.
    """
    cues = [
        Cue(level=1, kind=CueKind.REPLAY, text="Listen again.", spoken=asked),
        Cue(level=2, kind=CueKind.SLOW_REPLAY, text="Listen slowly.", spoken=asked, slow=True),
    ]
    if text is not None:
        cues.append(text)
    if isinstance(turns, str):
        turns = Cue(level=4, kind=CueKind.ROLE_QUESTION, text=turns, spoken=say(turns))
    if turns is not None:
        cues.append(turns)
    gone = removable(options)
    if gone is not None:
        cues.append(removal_cue(5, gone, REMOVAL))
    if told is not None:
        cues.append(told)
    cues.append(answer_cue(7, answer_text, answer))
    return tuple(cues)


def stressed(sentence: Sentence) -> Cue:
    """Level 3: the sentence in writing, its small words in capitals, said slowly."""
    return Cue(
        level=3, kind=CueKind.TEXT, text=sentence.stressed, spoken=sentence.spoken, slow=True
    )


def hint(level: int, *lines: str) -> Cue:
    return Cue(level=level, kind=CueKind.HINT, text="\n".join(lines), spoken=say(*lines))


def removable(options: Sequence[Option]) -> int | None:
    """An option that the words alone rule out, where two others stay; None where there is none."""
    if len(options) < 3:
        return None
    ruled_out = [
        index for index, option in enumerate(options) if option.foil in (Foil.VERB, Foil.NOUN)
    ]
    return ruled_out[-1] if ruled_out else None
