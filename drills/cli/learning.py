"""`drills guide`: the caregiver guide in the terminal."""

from __future__ import annotations

import argparse

from drills import wiring
from drills.cli.names import nearest
from drills.core.problems import BadInput


def add(guide: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    guide.add_argument("chapter", nargs="?", metavar="CHAPTER")
    guide.set_defaults(action=show_guide)


def show_guide(options: argparse.Namespace) -> int:
    chapters = {chapter.key: chapter for chapter in wiring.guide()}
    if options.chapter is None:
        print("The caregiver guide. Read a chapter: drills guide CHAPTER\n")
        for chapter in chapters.values():
            print(f"  {chapter.key:<20}{chapter.title}")
        return 0
    if options.chapter not in chapters:
        raise BadInput(
            f"There is no chapter {options.chapter!r}. {nearest(options.chapter, chapters)}"
        )
    print(chapters[options.chapter].text.rstrip())
    return 0
