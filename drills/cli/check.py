"""`drills check`: what works here, what does not, how to mend it."""

from __future__ import annotations

import argparse
import os
import shutil
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from drills import wiring
from drills.cli.practising import COLUMNS, LINES
from drills.core.plans import LOCALES
from drills.core.problems import DrillsError
from drills.ledger import open_ledger, prepare, verify
from drills.speech import try_voice


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """fatal: practice cannot run without it."""

    name: str
    works: bool
    text: str
    fatal: bool = True


def add(check: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    check.set_defaults(action=check_all)


def check_all(options: argparse.Namespace) -> int:
    folder = wiring.practice_folder(options.folder)
    findings = list(find(folder))
    for finding in findings:
        mark = "works" if finding.works else ("MEND" if finding.fatal else "note")
        print(f"{mark:<6} {finding.name:<10} {finding.text}")
    return 0 if all(finding.works or not finding.fatal for finding in findings) else 1


def find(folder: Path) -> Iterator[Finding]:
    """Each finding, in the order in which a person would mend them."""
    yield _tried("content", _content)
    yield _tried("plan", lambda: _plan(folder))
    yield _tried("folder", lambda: _folder(folder))
    yield _tried("voice", _voice, fatal=False)
    yield _terminal()


def _tried(name: str, attempt: Callable[[], str], *, fatal: bool = True) -> Finding:
    try:
        return Finding(name=name, works=True, text=attempt(), fatal=fatal)
    except DrillsError as error:
        text = str(error).replace("\n", "\n" + " " * 18)
        return Finding(name=name, works=False, text=text, fatal=fatal)


def _content() -> str:
    counts = []
    for locale in LOCALES:
        words = wiring.material(locale)
        counts.append(
            f"{locale}: {len(words.lexicon.nouns)} nouns, {len(words.lexicon.verbs)} verbs, "
            f"{len(words.gestures)} gestures"
        )
    return f"{'; '.join(counts)}; {len(wiring.guide())} chapters of the guide"


def _plan(folder: Path) -> str:
    plan = wiring.plan_in_force(folder)
    return f"{plan.name}, version {plan.version}"


def _folder(folder: Path) -> str:
    prepare(folder)
    ledger = open_ledger(folder)
    try:
        notes = [*(str(problem) for problem in verify(folder)), *ledger.notices]
    finally:
        ledger.close()
    return f"{folder}" + "".join(f"\n{' ' * 18}{note}" for note in notes)


def _voice() -> str:
    return try_voice()


def _terminal() -> Finding:
    size = shutil.get_terminal_size((0, 0))
    colours = "24-bit colour" if os.environ.get("COLORTERM") else os.environ.get("TERM", "no TERM")
    if not sys.stdout.isatty():
        return Finding(name="terminal", works=False, fatal=False, text="this is no terminal window")
    text = f"{size.columns} x {size.lines}, {colours}, pictures by {wiring.encoding_of().value}"
    if size.columns < COLUMNS or size.lines < LINES:
        return Finding(
            name="terminal",
            works=False,
            text=f"{text}. Make the window at least {COLUMNS} x {LINES}.",
        )
    return Finding(name="terminal", works=True, text=text)
