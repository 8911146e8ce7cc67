"""Print a chart of pulses by languages: PDF, HTML, Markdown, CSV or a workbook."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path

from ..glossary import find
from ..glossary.model import Glossary, Pulse
from ..paper import atlas, chart
from ..paper.charts import KINDS, default_pulses
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument(
        "language", nargs="*", help="BCP 47 tags, one column each; with --atlas all where left out"
    )
    parser.add_argument(
        "--pulse", action="append", default=[], help="a pulse key; those met most where left out"
    )
    parser.add_argument("--kind", choices=KINDS, default="species")
    parser.add_argument("--title", default="")
    parser.add_argument("--atlas", action="store_true", help="all languages, six to a file, numbered")
    out.add_print(parser)


def run(args: argparse.Namespace) -> int:
    """0 where the file was written."""
    glossary = files.load(args.data)
    pulses = [find.by_key(glossary, key) for key in args.pulse] or default_pulses(glossary)
    if args.atlas:
        return _atlas(args, glossary, pulses)
    return out.print_sheet(chart(glossary, args.language, pulses, args.kind, args.title), args)


def _atlas(args: argparse.Namespace, glossary: Glossary, pulses: list[Pulse]) -> int:
    """One file after another, and how far it has come on stderr."""
    first: Path = args.out
    tags = [find.language(glossary, tag) for tag in args.language] or list(glossary.rows)
    for done, of, sheet in atlas(glossary, tags, pulses):
        args.out = first.with_stem(f"{first.stem}-{done:02}")
        out.print_sheet(sheet, args)
        print(f"{done} of {of}", file=sys.stderr)
    return 0
