"""caregiver_guide/NN-key.md -> the chapters of the guide, in order."""

from __future__ import annotations

import re
from pathlib import Path

from drills.catalogue.toml_lines import read_text
from drills.core.material import Chapter
from drills.core.problems import BadInput, Problem

_NAME = re.compile(r"(\d\d)-([a-z0-9]+(?:-[a-z0-9]+)*)")
_HEADING = re.compile(r"#+\s+(.+?)\s*#*")


def load_guide(folder: Path) -> tuple[Chapter, ...]:
    """Every chapter; its title is its first heading.   Raises: BadInput with every fault."""
    problems: list[Problem] = []
    chapters: dict[str, Chapter] = {}
    for path in sorted(folder.glob("*.md")):
        name = _NAME.fullmatch(path.stem)
        if name is None:
            mend = 'Name it like "03-first-session.md".'
            problems.append(
                Problem(where=path.name, message="This is no name for a chapter.", mend=mend)
            )
            continue
        chapter = _chapter(path, name[2], problems)
        if chapter.key in chapters:
            message = f"There are two chapters `{chapter.key}`."
            problems.append(Problem(where=path.name, message=message, mend="Rename one."))
        chapters[chapter.key] = chapter
    if not chapters and not problems:
        problems.append(
            Problem(
                where=folder.name,
                message="The guide has no chapters.",
                mend="Install the program again.",
            )
        )
    if problems:
        raise BadInput(problems)
    return tuple(chapters.values())


def _chapter(path: Path, key: str, problems: list[Problem]) -> Chapter:
    try:
        text = read_text(path, path.name)
    except BadInput as bad:
        problems.extend(bad.problems)
        return Chapter(key=key, title=key, text="")
    heading = next(filter(None, map(_HEADING.fullmatch, text.splitlines())), None)
    if heading is None:
        mend = "Begin it with a line such as `# First session`."
        problems.append(
            Problem(where=path.name, line=1, message="This chapter has no heading.", mend=mend)
        )
    return Chapter(key=key, title="" if heading is None else heading[1], text=text)
