"""Rewrite the names files in the standard order and spelling."""

from __future__ import annotations

import argparse

from ..glossary.rows import write_rows
from ..glossary.tidy import tidy
from ..store import files


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("only", nargs="*", help="language tags; every file where left out")
    parser.add_argument("--dry-run", action="store_true", help="say what would change, change nothing")
    parser.add_argument("--data", help="another glossary_data folder")


def run(args: argparse.Namespace) -> int:
    """0 where nothing had to change, or all was rewritten; with --dry-run 1 where something would."""
    folder = files.folder(args.data)
    before = files.read(folder)
    glossary = files.load(args.data)
    after = {
        f"names/{tag}.csv": write_rows(tidy(rows))
        for tag, rows in glossary.rows.items()
        if not args.only or tag in args.only
    }
    changed = {name: data for name, data in after.items() if data != before[name]}
    for name in changed:
        print(name)
    if not args.dry_run:
        files.write(folder, changed)
    print(f"{len(changed)} of {len(after)} files {'would change' if args.dry_run else 'rewritten'}")
    return 1 if args.dry_run and changed else 0
