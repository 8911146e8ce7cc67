"""Change a recipe: another pulse in place of one, with amounts, soak and times for your kitchen."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from ..errors import BadInput
from ..glossary import find
from ..kitchen import kitchen_of
from ..label import Reader
from ..recipe import rewrite
from ..store import files
from . import cook, out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("file", nargs="?", help="a text file; stdin where left out")
    parser.add_argument("--target", help="the pulse to use instead: species[/class[/form[/colour]]]")
    parser.add_argument("--source", help="the pulse to replace; the first in the recipe where left out")
    cook.add_kitchen(parser)
    out.add_output(parser, batch=False)


def run(args: argparse.Namespace) -> int:
    """0 where the recipe named a pulse."""
    glossary = files.load(args.data)
    target = find.by_key(glossary, args.target) if args.target else None
    source = find.by_key(glossary, args.source) if args.source else None
    found = rewrite(_text(args.file), Reader(glossary), kitchen_of(vars(args)), target, source)
    if args.json:
        out.print_json(
            {
                "text": found.text,
                "source": found.source.key,
                "target": found.target.key,
                "differences": found.differences,
                "warnings": found.warnings,
                "cautions": [one.text for one in found.cautions],
            }
        )
        return 0
    print(found.text)
    print()
    rows = [("different", text) for text in found.differences] + [
        ("warning", text) for text in found.warnings
    ]
    rows += [(one.severity, one.text) for one in found.cautions if one.text not in found.warnings]
    out.facts(rows)
    return 0


def _text(path: str | None) -> str:
    if path is None:
        return sys.stdin.read()
    try:
        return Path(path).read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise BadInput("file", path, f"cannot be read: {error}") from None
