"""List the languages the service speaks, and what is not translated yet."""

from __future__ import annotations

import argparse

from ..talk import messages
from ..web.tongues import catalogues, own_name, untranslated
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("only", nargs="*", help="BCP 47 tags; lists their untranslated messages")


def run(args: argparse.Namespace) -> int:
    """Always 0: a missing translation is no fault, English is said instead."""
    tags = args.only or list(catalogues())
    total = len(messages())
    out.table(
        ("language", "name", "translated", "status"),
        [
            (
                tag,
                own_name(tag),
                f"{total - len(untranslated(tag))} of {total}",
                "source" if tag == "en" else "draft",
            )
            for tag in tags
        ],
    )
    for tag in args.only:
        for text in untranslated(tag):
            print(f"{tag}: {text}")
    return 0
