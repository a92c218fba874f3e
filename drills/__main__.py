"""The program's one entry: `drills` and `python -m drills`."""

from __future__ import annotations

import gc
import sys

# Little of what start-up makes is rubbish; collecting meanwhile delays the first screen. The
# collector is back as soon as a command runs or the first screen stands.
gc.disable()

from drills.cli import run  # noqa: E402 - after the collector is off


def main() -> int:
    """Run the command line of this process and give its exit code."""
    return run(sys.argv[1:])


if __name__ == "__main__":
    sys.exit(main())
