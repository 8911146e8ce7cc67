"""Print every fault of the glossary files as `file:line:column: what, and what to do`."""

from __future__ import annotations

import argparse

from ..glossary.checks import check
from ..store import files


def register(parser: argparse.ArgumentParser) -> None:
    """The words this command takes."""
    parser.add_argument("only", nargs="*", help="language tags or file names to keep to")
    parser.add_argument("--data", help="another glossary_data folder")


def run(args: argparse.Namespace) -> int:
    """0 where nothing was found, else 1."""
    glossary = files.load(args.data)
    findings = check(glossary)
    if args.only:
        findings = [one for one in findings if any(word in one.file for word in args.only)]
    for finding in findings:
        print(finding)
    rows = sum(len(rows) for rows in glossary.rows.values())
    print(
        f"{len(glossary.species)} species, {len(glossary.rows)} languages, {rows} rows: {len(findings)} findings"
    )
    return 1 if findings else 0
