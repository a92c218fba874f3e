"""The command line: arguments to one call, errors to one line.

May import everything; loads the screens only for `drills` and `drills practice`. Errors go to
stderr: exit 2 for bad input, 1 for what the machine could not do. Tested in tests/cli.
"""

from drills.cli.run import run

__all__ = ["run"]
