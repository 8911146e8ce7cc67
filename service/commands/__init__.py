"""The commands, each a module with `register(parser)` and `run(args) -> int`."""

from __future__ import annotations

import argparse
import importlib
import sys
from collections.abc import Sequence

from ..errors import PulseError

COMMANDS = (
    "serve", "read", "name", "cook", "pot", "schedule", "recipe", "menu", "chart", "card", "chat", "tongues", "check", "new", "gaps", "tidy", "export", "keys",
    "backup", "restore",
)  # fmt: skip


def run(words: Sequence[str]) -> int:
    """Run one command line; a bad input is one line on stderr and 2."""
    parser = argparse.ArgumentParser(prog="pulse-glossary", description="Dried pulses: read, name, cook.")
    commands = parser.add_subparsers(dest="command", required=True, metavar="command")
    for name in COMMANDS:
        module = importlib.import_module(f".{name}", __name__)
        one = commands.add_parser(
            name, help=(module.__doc__ or "").splitlines()[0], description=module.__doc__
        )
        module.register(one)
        one.set_defaults(run=module.run)
    args = parser.parse_args(words)
    try:
        return int(args.run(args))
    except PulseError as error:
        print(f"pulse-glossary: {error}", file=sys.stderr)
        return error.exit_code
