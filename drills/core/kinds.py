"""Kinds of exercises, of options, of cues and of targets: the small words every room uses."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    MATCH = "match"
    ACT_OUT = "act-out"
    CLOZE = "cloze"
    QUESTION = "question"
    GESTURE = "gesture"


class Foil(StrEnum):
    """Why a wrong option is wrong; a reversal is an error of syntax, the others of words."""

    REVERSAL = "reversal"
    VERB = "verb"
    NOUN = "noun"
    WORD = "word"


class CueKind(StrEnum):
    REPLAY = "replay"
    SLOW_REPLAY = "slow replay"
    TEXT = "text"
    ROLE_QUESTION = "role question"
    HINT = "hint"
    REMOVE = "remove"
    NAME_DOER = "name the doer"
    FIRST_SOUND = "first sound"
    PICTURE = "picture"
    MODEL = "model"
    WORDS = "words"
    TREE = "family tree"
    TOGETHER = "together"
    HAND = "hand"
    ANSWER = "answer"


class ItemSet(StrEnum):
    """TREATED: practised. The others are probed and never practised.

    PROBE: new exemplars of what is practised.   RELATED: of a related construction that is not.
    CONTROL: of an unrelated one.
    """

    TREATED = "treated"
    PROBE = "probe"
    RELATED = "related"
    CONTROL = "control"


@dataclass(frozen=True, slots=True, kw_only=True, order=True)
class Target:
    """What is practised, the unit of scheduling.

    name: a construction, a cloze level, a question form or a gesture key.
    group: a verb group or a word contrast; empty where there is none.
    """

    kind: Kind
    name: str
    group: str = ""

    def __str__(self) -> str:
        return "/".join(part for part in (self.kind.value, self.name, self.group) if part)

    @classmethod
    def parse(cls, text: str) -> Target:
        """The target that `str` wrote.   Raises: ValueError."""
        kind, _, rest = text.partition("/")
        name, _, group = rest.partition("/")
        if not name:
            raise ValueError(f"{text!r} names no target")
        return cls(kind=Kind(kind), name=name, group=group)


class Side(StrEnum):
    """The side of a picture on which the doer (or the located thing) stands."""

    LEFT = "left"
    RIGHT = "right"

    @property
    def other(self) -> Side:
        return Side.RIGHT if self is Side.LEFT else Side.LEFT
