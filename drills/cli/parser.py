"""What the command line takes."""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence
from importlib import import_module
from types import MappingProxyType
from typing import NoReturn

from drills import __version__
from drills.core.problems import BadInput

# Only the module of the command that was given is loaded: the first screen must come soon.
COMMANDS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        "practice": ("practising", "straight into today's session"),
        "probe": ("probing", "a check: no help, no feedback"),
        "plan": ("plans", "the therapist's plan"),
        "digest": ("telling", "the weekly digest"),
        "unseal": ("unsealing", "open a sealed digest"),
        "caseload": ("caseload", "many people's digests, most urgent first"),
        "items": ("showing", "see what would be asked"),
        "picture": ("drawing", "draw a meaning, or the cast and the verbs"),
        "rehearse": ("rehearsing", "a simulated patient, for demos and training"),
        "records": ("records", "look after the records"),
        "check": ("check", "what works here and how to mend the rest"),
        "guide": ("learning", "the caregiver guide"),
    }
)
"""Command -> its module in this package, and what it does."""


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one sentence, where the standard parser prints its usage as well."""

    def error(self, message: str) -> NoReturn:
        sentence = message[0].upper() + message[1:]
        raise BadInput(f"{sentence.rstrip('.')}. See `{self.prog} --help`.")


def parse(arguments: Sequence[str]) -> argparse.Namespace:
    """The options of one command, with `action` to call on them.

    Raises: BadInput.
    """
    # The folder may stand before or after the command; a default would undo the earlier one.
    everywhere = _Parser(add_help=False)
    everywhere.add_argument(
        "--folder",
        metavar="PATH",
        default=argparse.SUPPRESS,
        help="the practice folder (else DRILLS_HOME, else the user's data folder)",
    )
    parser = _Parser(
        prog="drills",
        description="Home practice for aphasia: open the program, or one of these for scripts.",
        parents=[everywhere],
    )
    parser.add_argument("--version", action="version", version=f"drills {__version__}")
    commands = parser.add_subparsers(metavar="COMMAND", parser_class=_Parser)
    chosen = _command_in(arguments)
    for name, (module, does) in COMMANDS.items():
        command = commands.add_parser(name, parents=[everywhere], help=does)
        if name == chosen:
            import_module(f"drills.cli.{module}").add(command, everywhere)
    if chosen is None:
        import_module("drills.cli.practising").add_first_screen(parser)
    options = parser.parse_args(arguments)
    if not hasattr(options, "folder"):
        options.folder = None
    options.opens_screens = chosen in (None, "practice", "probe")
    return options


def _command_in(arguments: Sequence[str]) -> str | None:
    words = iter(arguments)
    for word in words:
        if word == "--folder":
            next(words, None)
        elif not word.startswith("-"):
            return word if word in COMMANDS else None
    return None
