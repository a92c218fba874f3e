"""From the arguments of one command to its exit code."""

from __future__ import annotations

import gc
import sys
from collections.abc import Sequence

from drills.cli.parser import parse
from drills.core.problems import DrillsError
from drills.core.visible import visible


def run(arguments: Sequence[str]) -> int:
    """Carry out one command: 0 when done, 2 for bad input, 1 for what could not be done."""
    try:
        options = parse(arguments)
        if not options.opens_screens:
            gc.enable()
        code: int = options.action(options)
        sys.stdout.flush()
    except DrillsError as error:
        print(f"drills: {visible(str(error))}", file=sys.stderr)
        return error.exit_code
    except OSError as error:
        if isinstance(error, BrokenPipeError):
            # The reader (`| head`) has seen enough; a second error at shutdown would only confuse.
            sys.stderr.close()
            return 0
        print(f"drills: {error.strerror or error}: {error.filename or 'output'}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        return 1
    return code
