"""content/cloze.toml -> the settings of each cloze level."""

from __future__ import annotations

from pathlib import Path

from drills.catalogue.fields import Fields
from drills.catalogue.sections import read_sections
from drills.core.material import ClozeLevel
from drills.core.problems import Problem

FILE = "cloze.toml"

# Both can fit one gap, so an item would have two right answers; common practice, no source.
_TOO_CLOSE = (
    {"in", "inside"},
    {"on", "onto"},
    {"under", "below"},
    {"near", "next to"},
    {"between", "among"},
    {"who", "that"},
    {"may", "can"},
    {"since", "because"},
)
_FEWEST_WORDS = 2


def group_name(words: tuple[str, ...]) -> str:
    """The name of a contrast, as targets and plans use it: "behind-in_front_of"."""
    return "-".join(word.replace(" ", "_") for word in words)


def read_cloze(folder: Path, problems: list[Problem]) -> dict[str, ClozeLevel]:
    """Levels by key, in the order of the file; faults are added to `problems`.

    A level is `[[level]]` with `key`, `name`, `hint` and
    `contrasts = [["in", "on"], ["behind", "in front of"]]`.
    """
    levels: dict[str, ClozeLevel] = {}
    for fields in read_sections(folder / FILE, f"{folder.name}/{FILE}", problems, many=("level",)):
        level = ClozeLevel(
            key=fields.text("key"),
            name=fields.text("name"),
            contrasts=_contrasts(fields),
            hint=fields.text("hint"),
        )
        fields.close()
        if level.key in levels:
            fields.note(f"There are two levels `{level.key}`.", "Remove one.", key="key")
        levels[level.key] = level
    return levels


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
        if any(pair <= set(row) for pair in _TOO_CLOSE):
            mend = "Choose words of which only one can fit."
            fields.note(f"`{name}` has words that are too close.", mend, key="contrasts")
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
