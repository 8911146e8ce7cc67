"""Bring a backup back into an empty database, all of it or nothing."""

from __future__ import annotations

import argparse
import os
from pathlib import Path

from ..errors import BadInput
from ..store import copies, repository
from ..web import settings


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("file", type=Path)
    parser.add_argument("--database")


def run(args: argparse.Namespace) -> int:
    """0 where everything was restored."""
    if not args.file.is_file():
        raise BadInput("file", str(args.file), "is no file")
    engine = repository.engine(settings(os.environ, database=args.database).database)
    try:
        with args.file.open(encoding="utf-8") as lines:
            print(f"{copies.restore(engine, lines)} rows restored")
    finally:
        engine.dispose()
    return 0
