"""Write the whole glossary as CSV, JSON, SKOS Turtle or TBX."""

from __future__ import annotations

import argparse
import sys

from ..glossary.exports import to_csv, to_json, to_skos, to_tbx
from ..store import files


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("format", choices=("csv", "json", "skos", "tbx"))
    parser.add_argument("--data", help="another glossary_data folder")


def run(args: argparse.Namespace) -> int:
    """Writes to stdout."""
    glossary = files.load(args.data)
    if args.format in ("csv", "json"):
        sys.stdout.write(to_csv(glossary) if args.format == "csv" else to_json(glossary))
    else:
        for piece in to_skos(glossary) if args.format == "skos" else to_tbx(glossary):
            sys.stdout.write(piece)
    return 0
