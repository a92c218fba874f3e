"""content/cloze.toml -> the settings of each cloze level."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from drills.catalogue.fields import Fields, nearest
from drills.catalogue.sections import read_sections
from drills.core.closed_words import near_pairs
from drills.core.material import ClozeLevel, ClozeSet
from drills.core.problems import Problem

FILE = "cloze.toml"

_FEWEST_WORDS = 2


def group_name(words: tuple[str, ...]) -> str:
    """The name of a contrast, as targets and plans use it: "behind-in_front_of"."""
    return "-".join(word.replace(" ", "_") for word in words)


def read_cloze(folder: Path, problems: list[Problem]) -> dict[str, ClozeLevel]:
    """Levels by key, in the order of the file; faults are added to `problems`.

    A level is `[[level]]` with `key` and `name`; its sets follow as `[[set]]` with `level`,
    `frame`, `hint` and `contrasts = [["in", "on"], ["behind", "in front of"]]`.
    """
    levels: dict[str, ClozeLevel] = {}
    where = f"{folder.name}/{FILE}"
    for fields in read_sections(folder / FILE, where, problems, many=("level", "set")):
        if fields.block.name == "level":
            level = ClozeLevel(key=fields.text("key"), name=fields.text("name"), sets=())
            if level.key in levels:
                fields.note(f"There are two levels `{level.key}`.", "Remove one.", key="key")
            levels[level.key] = level
        else:
            _add_set(fields, levels)
        fields.close()
    return levels


def _add_set(fields: Fields, levels: dict[str, ClozeLevel]) -> None:
    key = fields.text("level")
    made = ClozeSet(
        frame=fields.text("frame"), hint=fields.text("hint"), contrasts=_contrasts(fields)
    )
    if key not in levels:
        fields.note(f"There is no level `{key}` above.", nearest(key, levels), key="level")
        return
    level = levels[key]
    for group in made.contrasts:
        if group in level.contrasts:
            fields.note(f"There are two contrasts `{group}`.", "Remove one.", key="contrasts")
    levels[key] = replace(level, sets=(*level.sets, made))


def _contrasts(fields: Fields) -> dict[str, tuple[str, ...]]:
    rows = fields.raw("contrasts")
    if rows is None:
        return {}
    if not isinstance(rows, list) or not rows or not all(_is_contrast(row) for row in rows):
        mend = 'Write a list of lists, such as [["in", "on"], ["is", "are"]].'
        fields.note("`contrasts` is not a list of contrasts.", mend, key="contrasts")
        return {}
    contrasts: dict[str, tuple[str, ...]] = {}
    for row in rows:
        name = group_name(tuple(row))
        if len(set(row)) != len(row):
            fields.note(f"`{name}` has a word twice.", "Remove one.", key="contrasts")
        for one, other in near_pairs(row):
            message = f"`{name}`: `{one}` and `{other}` can both be right."
            fields.note(message, "Choose words of which only one can fit.", key="contrasts")
        if name in contrasts:
            fields.note(f"There are two contrasts `{name}`.", "Remove one.", key="contrasts")
        contrasts[name] = tuple(row)
    return contrasts


def _is_contrast(row: object) -> bool:
    return (
        isinstance(row, list)
        and len(row) >= _FEWEST_WORDS
        and all(isinstance(word, str) and word.strip() for word in row)
    )
