"""Items for readers who are not to see the key: rule 8, that they all choose the same word."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Item
from drills.exercises.gaps import right_text


def blind_text(items: Sequence[Item], *, picture_names: Sequence[str] = ()) -> str:
    """Every item with its number, what is shown with it and its words; nothing tells the answer.

    picture_names: one for each item, empty where there is no picture.
    """
    return "\n\n".join(
        "\n".join(_lines(number, item, picture_names[number - 1] if picture_names else ""))
        for number, item in enumerate(items, start=1)
    )


def _lines(number: int, item: Item, picture_name: str) -> list[str]:
    context = [f"   {line}" for line in item.context.split("\n") if line]
    sentence = [f"   {item.sentence}"]
    shown = [*sentence, *context] if item.sentence.endswith("?") else [*context, *sentence]
    picture = [f"   picture: {picture_name}"] if picture_name else []
    words = [f"      {index}  {option.text}" for index, option in enumerate(item.options, start=1)]
    return [f"{number:03d}", *picture, *shown, *words]


def key_of(items: Sequence[Item]) -> list[dict[str, object]]:
    """The key to `blind_text`: what is right, counted from one, and why the others are wrong."""
    return [
        {
            "number": number,
            "id": item.id,
            "target": str(item.target),
            "answer": None if item.answer is None else item.answer + 1,
            "word": right_text(item),
            "why_wrong": [option.why_wrong for option in item.options],
        }
        for number, item in enumerate(items, start=1)
    ]
