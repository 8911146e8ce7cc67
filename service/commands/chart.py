"""Print a chart of pulses by languages: PDF, HTML, Markdown, CSV or a workbook."""

from __future__ import annotations

import argparse

from ..glossary import find
from ..paper import chart
from ..paper.charts import KINDS, default_pulses
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("language", nargs="+", help="BCP 47 tags, one column each")
    parser.add_argument(
        "--pulse", action="append", default=[], help="a pulse key; those met most where left out"
    )
    parser.add_argument("--kind", choices=KINDS, default="species")
    parser.add_argument("--title", default="")
    out.add_print(parser)


def run(args: argparse.Namespace) -> int:
    """0 where the file was written."""
    glossary = files.load(args.data)
    pulses = [find.by_key(glossary, key) for key in args.pulse] or default_pulses(glossary)
    return out.print_sheet(chart(glossary, args.language, pulses, args.kind, args.title), args)
