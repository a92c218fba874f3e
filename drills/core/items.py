"""Exercises ready to be given."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from drills.core.clauses import Told
from drills.core.kinds import CueKind, Foil, ItemSet, Kind, Target
from drills.core.meaning_json import as_json
from drills.core.meanings import Meaning, Scene
from drills.core.told_json import told_as_json
from drills.core.utterances import Utterance

__all__ = [
    "ITEM_FORMAT",
    "Cue",
    "CueKind",
    "Foil",
    "Item",
    "ItemSet",
    "Kind",
    "Option",
    "Target",
]

ITEM_FORMAT = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One thing to choose: a picture (`scene`) or words (`text`).

    foil, why_wrong: None for the right option, both set for a wrong one.
    """

    text: str | None = None
    scene: Scene | None = None
    foil: Foil | None = None
    why_wrong: str | None = None

    def as_json(self) -> dict[str, Any]:
        row: dict[str, Any] = {}
        if self.text is not None:
            row["text"] = self.text
        if self.scene is not None:
            row["meaning"] = as_json(self.scene.meaning)
            row["side"] = self.scene.side.value
        row["foil"] = None if self.foil is None else self.foil.value
        row["why_wrong"] = self.why_wrong
        return row


@dataclass(frozen=True, slots=True, kw_only=True)
class Cue:
    """One step of help.

    level: 1 is the least; the top level of an item's ladder shows the answer.
    text: shown.   spoken: said, None for silence.   slow: said slowly.
    removes: indices of the options that are taken away.
    """

    level: int
    kind: CueKind
    text: str
    spoken: Utterance | None = None
    slow: bool = False
    removes: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One exercise ready to be given.

    prompt: what to do, in a few plain words, or the question.   sentence: with `____` for a gap.
    spoken: prompt and sentence as they are said aloud at level 0.
    answer: index of the right option; None for a gesture, which is scored and not chosen.
    effective_k: how many options are consistent with the content words; chance is 1/effective_k.
    picture: shown beside the prompt, None where the options are pictures or there is none.
    restated: the plain words after the answer.
    context: what fixes the answer and is shown with the sentence: what was said before, a small
    calendar, the answer to a question.   told: what a cloze says, where no picture could show it.
    """

    id: str
    kind: Kind
    target: Target
    construction: str
    level: str
    prompt: str
    sentence: str
    spoken: Utterance
    restated: Utterance
    options: tuple[Option, ...]
    answer: int | None
    effective_k: int
    cues: tuple[Cue, ...]
    meaning: Meaning | None = None
    picture: Scene | None = None
    gesture: str | None = None
    context: str = ""
    told: Told | None = None
    words: tuple[str, ...] = ()
    item_set: ItemSet = ItemSet.TREATED
    content_hash: str = ""

    @property
    def top_level(self) -> int:
        return self.cues[-1].level if self.cues else 0

    @property
    def is_probe(self) -> bool:
        """Asked to find out, not to practise: no help and no word on the answer."""
        return self.item_set is not ItemSet.TREATED

    def as_json(self) -> Mapping[str, Any]:
        """The documented JSON form of `drills items --format jsonl`."""
        row: dict[str, Any] = {
            "format": ITEM_FORMAT,
            "id": self.id,
            "kind": self.kind.value,
            "target": str(self.target),
            "construction": self.construction,
            "level": self.level,
            "prompt": self.prompt,
            "sentence": self.sentence,
            "meaning": None if self.meaning is None else as_json(self.meaning),
            "gesture": self.gesture,
            "options": [option.as_json() for option in self.options],
            "answer": self.answer,
            "effective_k": self.effective_k,
            "cues": [
                {"level": cue.level, "kind": cue.kind.value, "text": cue.text} for cue in self.cues
            ],
            "words": list(self.words),
            "set": self.item_set.value,
            "content": self.content_hash,
        }
        if self.context:
            row["context"] = self.context
        if self.told is not None:
            row["told"] = told_as_json(self.told)
        return row
