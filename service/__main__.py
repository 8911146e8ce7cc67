"""The command line: one small module of service.commands for each command."""

from __future__ import annotations

import sys

from .commands import run


def main() -> None:
    """Entry point of `pulse-glossary`; exits 0, 1 for findings or bad lines, 2 for bad input."""
    sys.exit(run(sys.argv[1:]))


if __name__ == "__main__":
    main()
