"""`drills plan suggestions`, `answer`, `history`: what the records speak for, and who decided."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Any

from drills import wiring
from drills.core.problems import BadInput
from drills.core.visible import visible
from drills.ledger import plan_versions

if TYPE_CHECKING:
    from drills.core.suggestions import Suggestion
    from drills.practice.home import Home

SUGGESTIONS_FORMAT = 1
ANSWERS = {"accept": "Accepted", "change": "Plan changed", "ignore": "Ignored"}


def add(parts: Any, everywhere: argparse.ArgumentParser) -> None:
    """Add the three parts to those of `drills plan`."""
    show = parts.add_parser(
        "suggestions", parents=[everywhere], help="what the answers speak for changing, numbered"
    )
    show.add_argument("--format", choices=("text", "json"), default="text")
    show.set_defaults(action=show_suggestions)
    answer = parts.add_parser(
        "answer", parents=[everywhere], help="accept, change or ignore one of them"
    )
    answer.add_argument("number", metavar="NUMBER", help="of `drills plan suggestions`, or its id")
    answer.add_argument("answer", choices=tuple(ANSWERS))
    answer.add_argument("file", metavar="FILE", nargs="?", help="your own plan, with `change`")
    answer.add_argument("--by", metavar="NAME", required=True, help="who decides")
    answer.add_argument("--why", metavar="TEXT", default="", help="the reason, kept with it")
    answer.set_defaults(action=answer_suggestion)
    history = parts.add_parser(
        "history", parents=[everywhere], help="the versions of the plan and who decided what"
    )
    history.set_defaults(action=show_history)


def show_suggestions(options: argparse.Namespace) -> int:
    home = wiring.home(wiring.practice_folder(options.folder), speak=False)
    try:
        found = _suggestions(home)
    finally:
        home.close()
    print(_as_json(found) if options.format == "json" else _as_text(found))
    return 0


def answer_suggestion(options: argparse.Namespace) -> int:
    from drills.practice.deciding import accept, change_instead, ignore  # noqa: PLC0415 - heavy

    if (options.answer == "change") != (options.file is not None):
        raise BadInput(
            "Name the plan file to put in force: drills plan answer NUMBER change FILE --by NAME."
            if options.answer == "change"
            else f"With `{options.answer}` no plan file is named; leave {options.file} out."
        )
    folder = wiring.practice_folder(options.folder)
    plan = None if options.file is None else wiring.checked_plan(Path(options.file))
    home = wiring.home(folder, speak=False)
    try:
        suggestion = _chosen(_suggestions(home), options.number)
        told = {"by": options.by, "why": options.why}
        if options.answer == "ignore":
            ignore(home, suggestion, **told)
            done = f"The plan stays at version {home.plan.version}."
        elif plan is None:
            done = f"Version {accept(home, suggestion, **told).version} of the plan is in force."
        else:
            new = change_instead(home, suggestion, plan, **told)
            done = f"Version {new.version} of the plan is in force, as in {options.file}."
    finally:
        home.close()
    print(visible(f"{ANSWERS[options.answer]}: {suggestion.says}\n{done}"))
    return 0


def show_history(options: argparse.Namespace) -> int:
    from drills.digest.suggestion_wording import decision  # noqa: PLC0415 - for this alone
    from drills.practice.deciding import decisions_of  # noqa: PLC0415

    folder = wiring.practice_folder(options.folder)
    versions = plan_versions(folder)
    home = wiring.home(folder, speak=False)
    try:
        decisions = decisions_of(home)
        notices = home.therapist_log.notices
    finally:
        home.close()
    if not versions:
        print("No plan has been put in force yet. The starter plan is used.")
    shown = set()
    for number, each in enumerate(versions):
        now = ", in force" if number == len(versions) - 1 else ""
        print(f"Version {each.version}, from {each.since:%Y-%m-%d %H:%M} UTC{now}")
        for made in decisions:
            if made.plan_version_after == each.version and made not in shown:
                shown.add(made)
                print(f"  {visible(decision(made))}")
    rest = [made for made in decisions if made not in shown]
    if rest:
        print("Other decisions")
    for made in rest:
        print(f"  {visible(decision(made))}")
    for notice in notices:
        print(visible(notice))
    return 0


def _suggestions(home: Home) -> tuple[Suggestion, ...]:
    today = home.day()
    return home.digest(today - timedelta(days=6), today).suggestions


def _chosen(found: Sequence[Suggestion], number: str) -> Suggestion:
    for place, each in enumerate(found, 1):
        if number in (str(place), each.id):
            return each
    few = {0: "there are none just now", 1: "there is only 1"}
    there = few.get(len(found), f"there are 1 to {len(found)}")
    raise BadInput(f"There is no suggestion {number!r}: {there}. See `drills plan suggestions`.")


def _as_text(found: tuple[Suggestion, ...]) -> str:
    from drills.digest.suggestion_wording import suggestion_rows  # noqa: PLC0415 - for this alone

    if not found:
        return "Nothing is suggested just now."
    lines = []
    for row in suggestion_rows(found, with_keys=True):
        lines += [f"{row.number}. {row.says}", f"   {row.evidence}", f"   Rule: {row.rule}"]
        lines.append(f"   Change: {row.change or 'none that the program can make'}.")
    lines += ["", "Only you change the plan: drills plan answer NUMBER accept --by NAME"]
    return visible("\n".join(lines))


def _as_json(found: Sequence[Suggestion]) -> str:
    from drills.digest.as_json import json_text  # noqa: PLC0415 - for this alone

    return json_text(
        {
            "format": SUGGESTIONS_FORMAT,
            "suggestions": [
                {
                    "number": number,
                    "id": each.id,
                    "says": each.says,
                    "rule": each.rule,
                    "evidence": each.evidence,
                    "changes": [
                        {"part": one.part.value, "block": one.block, "value": one.value}
                        for one in each.changes
                    ],
                }
                for number, each in enumerate(found, 1)
            ],
        }
    ).rstrip()
