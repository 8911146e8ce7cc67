"""Talk with the glossary in the terminal; an empty line or the end of input ends it."""

from __future__ import annotations

import argparse
import sys

from ..errors import PulseError
from ..label import Reader
from ..store import files
from ..talk import State, turn
from ..web.tongues import tongue


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("--language", default="en", help="BCP 47 tag of the replies")
    parser.add_argument("--place", default="", help="ISO 3166 country of the shop")
    parser.add_argument("--data", help="another glossary_data folder")


def run(args: argparse.Namespace) -> int:
    """0 at the end of the talk."""
    reader, speaks = Reader(files.load(args.data)), tongue(args.language)
    state = State()
    for line in sys.stdin:
        if not line.strip():
            break
        try:
            state, reply = turn(state, line, reader, speaks, args.place)
        except PulseError as error:
            print(error)
            continue
        print(reply.text)
        if reply.quick:
            print(f"[{' | '.join(reply.quick)}]")
    return 0
