"""Serve the page and the API."""

from __future__ import annotations

import argparse
import os

import uvicorn

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
    app = create_app(chosen, files.load(chosen.glossary or None))
    uvicorn.run(app, host=chosen.host, port=chosen.port, access_log=False, server_header=False)
    return 0
