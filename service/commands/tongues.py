"""List the languages the service speaks, and what is not translated yet."""

from __future__ import annotations

import argparse

from ..store import files
from ..talk import messages
from ..web.tongues import READ_TWICE, catalogues, own_name, read_twice, untranslated
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("only", nargs="*", help="BCP 47 tags; lists their untranslated messages")


def run(args: argparse.Namespace) -> int:
    """Always 0: a missing translation is no fault, English is said instead."""
    tags = args.only or list(catalogues())
    glossary = files.load()
    total = len(messages(glossary))
    out.table(
        ("language", "name", "translated", "status"),
        [
            (
                tag,
                own_name(tag),
                f"{total - len(untranslated(tag, glossary))} of {total}",
                "source" if tag == "en" else f"draft, {read_twice(tag)} {READ_TWICE}",
            )
            for tag in tags
        ],
    )
    for tag in args.only:
        for text in untranslated(tag, glossary):
            print(f"{tag}: {text}")
    return 0
