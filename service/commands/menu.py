"""Print a menu in up to three languages from a JSON or TOML file."""

from __future__ import annotations

import argparse
import json
import tomllib
from pathlib import Path
from typing import Any

from ..errors import BadInput
from ..label import Reader
from ..paper import menu
from ..store import files
from . import out


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("file", type=Path, help="title, languages, sections with dishes and their pulses")
    out.add_print(parser)


def run(args: argparse.Namespace) -> int:
    """0 where the file was written; nothing is written where a dish is unsure."""
    glossary = files.load(args.data)
    return out.print_sheet(menu(_given(args.file), glossary, Reader(glossary).read), args)


def _given(path: Path) -> dict[str, Any]:
    try:
        data = path.read_bytes()
    except OSError as error:
        raise BadInput("file", str(path), f"cannot be read: {error.strerror}") from None
    try:
        found = tomllib.loads(data.decode()) if path.suffix == ".toml" else json.loads(data)
    except (ValueError, UnicodeDecodeError) as error:
        raise BadInput("file", str(path), f"is neither JSON nor TOML: {error}") from None
    if not isinstance(found, dict):
        raise BadInput("file", str(path), "must hold one menu")
    return found
