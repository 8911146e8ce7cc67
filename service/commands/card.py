"""Print pocket shopping cards: what to ask for, how to say it, what it is not."""

from __future__ import annotations

import argparse
from urllib.parse import quote

from ..glossary import find
from ..paper import cards
from ..press import code
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("pulse", nargs="+", help="pulse keys")
    parser.add_argument("--language", action="append", required=True, help="BCP 47 tag; may be repeated")
    parser.add_argument("--address", default="", help="address of the page, printed as a QR code")
    out.add_print(parser)


def run(args: argparse.Namespace) -> int:
    """0 where the file was written."""
    glossary = files.load(args.data)
    pulses = [find.by_key(glossary, key) for key in args.pulse]
    codes = [code(f"{args.address}#read={quote(pulse.key)}") for pulse in pulses] if args.address else ()
    return out.print_sheet(cards(glossary, pulses, args.language, codes), args)
