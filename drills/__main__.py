"""The program's one entry: `drills` and `python -m drills`."""

from __future__ import annotations

import sys

from drills.cli import run


def main() -> int:
    """Run the command line of this process and give its exit code."""
    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
