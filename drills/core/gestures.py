"""Gestures as they are asked for and scored."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class GestureClass(StrEnum):
    TOOL = "tool"
    SIGNAL = "signal"
    POSITION = "position"
    MOUTH = "mouth"


class Tick(StrEnum):
    """What went wrong in a gesture, in the caregiver's words; all that apply are ticked."""

    NOTHING = "nothing"
    OTHER_ACT = "other act"
    OLD_ACT = "old act"
    PART_MISSING = "part missing"
    EXTRA = "extra"
    HAND_AS_TOOL = "hand as tool"
    GRIP = "grip"
    FACING = "facing"
    PLACE = "place"
    PATH = "path"
    SIZE = "size"
    TEMPO = "tempo"
    SEARCH = "search"
    VOICE = "voice"
    BODY = "body"


@dataclass(frozen=True, slots=True, kw_only=True)
class Gesture:
    """One gesture: what is asked, what a right one looks like, which drawing shows it.

    prompt: what the patient reads and hears.   hold: the "show me how you hold it" cue.
    right: one line for each thing that the caregiver looks for.   still: has no movement.
    drawing: key of the animation.
    """

    key: str
    gesture_class: GestureClass
    name: str
    prompt: str
    hold: str
    right: tuple[str, ...]
    drawing: str
    still: bool = False
