"""The blocks of one file, each of a known name and in the right brackets."""

from __future__ import annotations

from pathlib import Path

from drills.catalogue.fields import Fields, nearest
from drills.catalogue.toml_lines import Block, read_blocks, read_text
from drills.core.problems import BadInput, Problem


def read_sections(
    path: Path,
    where: str,
    problems: list[Problem],
    *,
    many: tuple[str, ...],
    once: tuple[str, ...] = (),
    top: bool = False,
) -> list[Fields]:
    """The file's blocks in order; what does not belong is added to `problems` and left out.

    many, once: names written [[name]] and [name].   top: keys before any header belong here, and
    come first under the name "".   An unreadable file gives no blocks.
    """
    try:
        blocks = read_blocks(read_text(path, where), where)
    except BadInput as bad:
        problems.extend(bad.problems)
        return []
    kept = []
    for block in blocks:
        fields = Fields(block, where, problems)
        if block.name == "":
            if top:
                kept.append(fields)
            else:
                _note_loose(fields, many + once)
        elif block.name not in many + once:
            fields.note(
                f"There is no section {_title(block)} here.", nearest(block.name, many + once)
            )
        elif block.repeated != (block.name in many):
            right = f"[[{block.name}]]" if block.name in many else f"[{block.name}]"
            fields.note(f"This section is written {_title(block)}.", f"Write {right}.")
        else:
            kept.append(fields)
    return kept


def _title(block: Block) -> str:
    return f"[[{block.name}]]" if block.repeated else f"[{block.name}]"


def _note_loose(fields: Fields, names: tuple[str, ...]) -> None:
    for key in fields.block.values:
        mend = f"Put it under [[{names[0]}]] or remove it."
        fields.note(f"`{key}` stands before any section.", mend, key=key)
