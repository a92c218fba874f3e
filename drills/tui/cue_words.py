"""Help in words: what is shown of it, and what is said."""

from __future__ import annotations

from drills.core.items import Cue, CueKind, Item, Kind
from drills.core.plans import CueDirection
from drills.practice.steps import Ask
from drills.tui.layout import short_lines
from drills.tui.speaker import Line

_SENTENCE_AGAIN = (CueKind.REPLAY, CueKind.SLOW_REPLAY)
# What these say stands on the screen as the sentence.
_SAID_ON_SCREEN = (*_SENTENCE_AGAIN, CueKind.TEXT)


HELP_OFFERED = ("Take your time.", "H: help.")


def is_help_due(ask: Ask, waiting_ms: float | None, wait_seconds: float) -> bool:
    """Whether an answer has been waited for so long that help is to be thought of; 0 is never."""
    return (
        bool(wait_seconds)
        and waiting_ms is not None
        and waiting_ms >= wait_seconds * 1000
        and not ask.item.is_probe
        and ask.direction is not CueDirection.MOST_TO_LEAST
        and ask.item.kind is not Kind.GESTURE
    )


def cue_lines(cue: Cue | None) -> tuple[str, ...]:
    """The help in writing, with what is said where that is put in other words."""
    if cue is None:
        return ()
    if cue.kind is CueKind.TREE and cue.spoken is not None:
        # The tree stands with the question, since it needs its lines one under the other.
        return short_lines(cue.spoken.text)
    lines = tuple(line for told in cue.text.split("\n") for line in short_lines(told))
    if cue.spoken is None or cue.kind in _SAID_ON_SCREEN or cue.spoken.text == " ".join(lines):
        return lines
    return (*lines, *short_lines(cue.spoken.text))


def tree_lines(item: Item, cue: Cue | None) -> tuple[str, ...]:
    """The family tree, from the help on that brings it."""
    for step in item.cues:
        if step.kind is CueKind.TREE and cue is not None and step.level <= cue.level:
            return tuple(step.text.split("\n"))
    return ()


def cue_said(ask: Ask) -> tuple[Line, ...]:
    """The help that is showing, aloud; nothing where it is silent."""
    cue = ask.cue
    if cue is None or (cue.spoken is None and cue.kind not in _SENTENCE_AGAIN):
        return ()
    slow = cue.slow or cue.kind is CueKind.SLOW_REPLAY
    return (Line(utterance=cue.spoken or ask.item.spoken, slow=slow),)


def opening(ask: Ask) -> tuple[Line, ...]:
    """What a trial begins with: the prompt, and the help that it begins with."""
    spoken = Line(utterance=ask.item.spoken)
    if ask.cue is not None and ask.cue.kind in _SENTENCE_AGAIN:
        return cue_said(ask)
    return (spoken, *cue_said(ask))
