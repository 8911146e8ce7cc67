"""Copy people's data out to a file of JSON lines."""

from __future__ import annotations

import argparse
import os
from pathlib import Path

from ..store import copies, repository
from ..web import settings


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("file", type=Path)
    parser.add_argument("--database")


def run(args: argparse.Namespace) -> int:
    """Writes beside the file first, so that a full disk leaves no half copy behind."""
    engine = repository.engine(settings(os.environ, database=args.database).database)
    part = args.file.with_name(args.file.name + ".part")
    try:
        with part.open("w", encoding="utf-8") as out:
            count = sum(1 for line in copies.backup(engine) if out.write(line))
            out.flush()
            os.fsync(out.fileno())
        os.replace(part, args.file)
    finally:
        part.unlink(missing_ok=True)
        engine.dispose()
    print(f"{count - 1} rows in {args.file}")
    return 0
