"""Help, step by step: the ladders of comprehension, cloze and gesture.

Levels keep the number that they have in the ladder; a level that does not apply is left out.
Order and levels: common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from drills.core.gestures import Gesture
from drills.core.items import Cue, CueKind
from drills.core.utterances import Utterance
from drills.core.words import Sentence


def say(*phrases: str) -> Utterance:
    return Utterance(phrases=phrases)


def say_text(text: str) -> Utterance:
    """A shown text as it is said: one phrase a sentence."""
    return say(*re.split(r"(?<=[.?])\s+", text.strip()))


def comprehension_ladder(
    *,
    sentence: Sentence,
    asked: Utterance,
    role_question: str,
    removes: int | tuple[int, ...] | None,
    named: str | None,
    answer_text: str,
    answer: int,
    named_is_doer: bool = True,
    removal: str = "One picture goes away.",
) -> tuple[Cue, ...]:
    """Levels 1 to 7.

    asked: what was said at level 0.   removes: a foil that is no reversal, or several that go
    away together, which `removal` says; None or none of them skips level 5.
    named: the plain statement of one who took part; None skips level 6.
    answer: the place of what is to be pressed at the top level.
    """
    cues = [
        Cue(level=1, kind=CueKind.REPLAY, text="Listen again.", spoken=asked),
        Cue(level=2, kind=CueKind.SLOW_REPLAY, text="Listen slowly.", spoken=asked, slow=True),
        Cue(
            level=3,
            kind=CueKind.TEXT,
            text=sentence.stressed,
            spoken=sentence.spoken,
            slow=True,
        ),
        Cue(level=4, kind=CueKind.ROLE_QUESTION, text=role_question, spoken=say(role_question)),
    ]
    if removes is not None and removes != ():
        cues.append(removal_cue(5, removes, removal))
    if named is not None:
        kind = CueKind.NAME_DOER if named_is_doer else CueKind.HINT
        cues.append(Cue(level=6, kind=kind, text=named, spoken=say(named)))
    cues.append(answer_cue(7, answer_text, answer))
    return tuple(cues)


def cloze_ladder(
    *,
    around: Utterance,
    hint: Sequence[str],
    removes: int | None,
    start: str,
    start_spoken: Utterance,
    answer_text: str,
    answer: int,
) -> tuple[Cue, ...]:
    """Levels 1 to 5.

    around: the words before and after the gap.   hint: lines.   start: the first letters shown.
    """
    cues = [
        Cue(level=1, kind=CueKind.REPLAY, text="Listen to the sentence.", spoken=around, slow=True),
        Cue(level=2, kind=CueKind.HINT, text="\n".join(hint), spoken=say(*hint)),
    ]
    if removes is not None:
        cues.append(removal_cue(3, removes, "One word goes away."))
    cues.append(
        Cue(
            level=4,
            kind=CueKind.FIRST_SOUND,
            text=f"The word starts like this:\n{start}",
            spoken=start_spoken,
        )
    )
    cues.append(answer_cue(5, answer_text, answer))
    return tuple(cues)


def gesture_ladder(gesture: Gesture) -> tuple[Cue, ...]:
    """Levels 1 to 6; the caregiver's hand comes last, and only with leave."""
    return tuple(
        Cue(level=level, kind=kind, text=text, spoken=say_text(text))
        for level, kind, text in (
            (1, CueKind.REPLAY, gesture.prompt),
            (2, CueKind.PICTURE, "Look at the picture.\nNow you do it."),
            (3, CueKind.HINT, gesture.hold),
            (4, CueKind.MODEL, "Watch this.\nThen you do it."),
            (5, CueKind.TOGETHER, "Now do it together."),
            (6, CueKind.HAND, "May your helper guide your strong hand?\nYou can say no."),
        )
    )


def removal_cue(level: int, removes: int | tuple[int, ...], text: str) -> Cue:
    """An option goes away, or several together."""
    gone = (removes,) if isinstance(removes, int) else removes
    return Cue(level=level, kind=CueKind.REMOVE, text=text, spoken=say(text), removes=gone)


def answer_cue(level: int, text: str, answer: int) -> Cue:
    """The answer in words, and what is to be pressed."""
    press = f"Now press {answer + 1}."
    spoken = say_text(f"{text} {press}")
    return Cue(level=level, kind=CueKind.ANSWER, text=f"{text}\n{press}", spoken=spoken)
