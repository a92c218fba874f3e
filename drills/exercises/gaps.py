"""What a cloze item is about: its frame, its contrast, and which word each option stands for."""

from __future__ import annotations

from drills.core.items import Item
from drills.core.material import Material
from drills.exercises.frames.frame import Dealt, Frame
from drills.exercises.frames.table import FRAMES

GAP = "____"


def frame_of(item: Item, material: Material) -> Frame:
    """The kind of sentence that the item is made in."""
    return FRAMES[material.cloze[item.level].set_of(item.target.group).frame]


def item_words(item: Item) -> tuple[str, ...]:
    """The words, or names of endings, of the item's contrast."""
    return tuple(word.replace("_", " ") for word in item.target.group.split("-"))


def dealt_of(item: Item) -> Dealt:
    return Dealt(told=item.told, meaning=item.meaning)


def labels_of(item: Item, material: Material) -> tuple[str | None, ...]:
    """The word or ending of each option; None for a text that is none of its contrast."""
    frame, dealt = frame_of(item, material), dealt_of(item)
    lexicon = material.cloze_words.lexicon
    by_text = {frame.surface(each, dealt, lexicon): each for each in item_words(item)}
    return tuple(by_text.get(option.text or "") for option in item.options)


def right_text(item: Item) -> str:
    """The right option's text; empty where the right option is no word."""
    return "" if item.answer is None else item.options[item.answer].text or ""


def right_label(item: Item, material: Material) -> str:
    """The right word, or the name of the right ending."""
    labels = labels_of(item, material)
    return "" if item.answer is None else labels[item.answer] or ""
