"""Serve the page and the API."""

from __future__ import annotations

import argparse
import os
import sys

import uvicorn

from ..glossary.build import build
from ..store import files
from ..web import create_app, settings


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes; the rest is set by the environment, see README."""
    parser.add_argument("--host")
    parser.add_argument("--port", type=int)
    parser.add_argument("--database")
    parser.add_argument("--data", dest="glossary", help="another glossary_data folder")


def run(args: argparse.Namespace) -> int:
    """Serves until stopped."""
    chosen = settings(
        os.environ, host=args.host, port=args.port, database=args.database, glossary=args.glossary
    )
    held = files.read(files.folder(chosen.glossary or None))
    app = create_app(chosen, build(held), held)
    print(f"pulse-glossary on http://{chosen.host}:{chosen.port}", file=sys.stderr)
    uvicorn.run(
        app,
        host=chosen.host,
        port=chosen.port,
        access_log=False,
        server_header=False,
        log_level="warning",
        timeout_graceful_shutdown=10,
        limit_concurrency=2000,
    )
    return 0
