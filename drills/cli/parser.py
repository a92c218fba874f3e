"""What the command line takes."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import NoReturn

from drills import __version__
from drills.cli import check, learning, practising, records, rehearsing, showing, telling
from drills.cli import plans as plan_commands
from drills.core.problems import BadInput


class _Parser(argparse.ArgumentParser):
    """Says what is wrong in one sentence, where the standard parser prints its usage as well."""

    def error(self, message: str) -> NoReturn:
        sentence = message[0].upper() + message[1:]
        raise BadInput(f"{sentence.rstrip('.')}. See `{self.prog} --help`.")


def parse(arguments: Sequence[str]) -> argparse.Namespace:
    """The options of one command, with `action` to call on them.

    Raises: BadInput.
    """
    # Built anew for both places, so that `drills --folder X digest` and
    # `drills digest --folder X` mean the same and the later one does not undo the earlier.
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
    parser.set_defaults(action=practising.open_home_screen)
    commands = parser.add_subparsers(metavar="COMMAND", parser_class=_Parser)
    for module in (
        practising,
        plan_commands,
        telling,
        showing,
        rehearsing,
        records,
        check,
        learning,
    ):
        module.add(commands, everywhere)
    options = parser.parse_args(arguments)
    if not hasattr(options, "folder"):
        options.folder = None
    return options
