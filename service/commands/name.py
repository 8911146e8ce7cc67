"""Write a pulse's name in a language: native script, romanised, and as packs print it."""

from __future__ import annotations

import argparse

from ..contracts import name_line, name_record
from ..errors import BadInput
from ..glossary import find
from ..naming import compose
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument(
        "pulse", nargs="?", help="species[/class[/form[/colour]]], species as slug or Latin name"
    )
    parser.add_argument("language", nargs="*", help="BCP 47 tags; every language where left out")
    parser.add_argument("--script", default="", help="ISO 15924 code")
    out.add_output(parser)


def run(args: argparse.Namespace) -> int:
    """0 where the pulse and the languages are known."""
    glossary = files.load(args.data)
    if args.jsonl:
        return out.run_batch(lambda record: name_line(record, glossary))
    if not args.pulse:
        raise BadInput("pulse", "", "is missing; give species[/class[/form[/colour]]]")
    pulse = find.by_key(glossary, args.pulse)
    tags = [find.language(glossary, tag) for tag in args.language] or list(glossary.rows)
    found = {tag: compose(glossary, pulse, tag, args.script) for tag in tags}
    if args.json:
        out.print_json({tag: [name_record(one) for one in names] for tag, names in found.items()})
        return 0
    rows = [
        (tag, one.script, one.text, one.romanised, one.use, one.status)
        for tag, names in found.items()
        for one in names
    ]
    if len(tags) > 1:
        rows = [row for row in rows if row[4] == "preferred"]
    out.table(("language", "script", "name", "romanised", "use", "status"), rows)
    return 0
