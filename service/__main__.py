"""The command line: one small module of service.commands for each command."""

from __future__ import annotations

import os
import sys

from .commands import run


def main() -> None:
    """Entry point of `pulse-glossary`; exits 0, 1 for findings or bad lines, 2 for bad input."""
    try:
        code = run(sys.argv[1:])
        sys.stdout.flush()
    except BrokenPipeError:  # the reader of our output left, as `head` does
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        code = 0
    sys.exit(code)


if __name__ == "__main__":
    main()
