"""How commands speak: small tables for people, JSON for programs, batches line by line."""

from __future__ import annotations

import argparse
import json
import os
import shutil
import sys
import textwrap
import unicodedata
from collections.abc import Callable, Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any, TextIO

from ..errors import BadInput, PulseError
from ..paper import Sheet
from ..press import FORMATS, pressed
from ..store import files

Record = Mapping[str, Any]


def add_output(parser: argparse.ArgumentParser, batch: bool = True) -> None:
    """The words every answering command takes."""
    how = parser.add_mutually_exclusive_group()
    how.add_argument("--json", action="store_true", help="print JSON")
    if batch:
        how.add_argument(
            "--jsonl", action="store_true", help="read JSON lines from stdin, answer each on a line"
        )
    parser.add_argument("--data", help="another glossary_data folder")


def add_print(parser: argparse.ArgumentParser) -> None:
    """The words every printing command takes."""
    parser.add_argument("--out", type=Path, required=True, help=f"file to write: .{', .'.join(FORMATS)}")
    parser.add_argument("--paper", default="a4", help="a4, a5 or us-letter")
    parser.add_argument("--data", help="another glossary_data folder")


def print_sheet(sheet: Sheet, args: argparse.Namespace) -> int:
    """Write a sheet, whole or not at all, in the format its name asks for."""
    path: Path = args.out
    data = pressed(sheet, path.suffix.lstrip(".").lower(), args.paper)
    files.write(path.parent, {path.name: data})
    print(f"{path}: {len(data)} bytes")
    return 0


def print_json(value: Any) -> None:
    """One JSON document, readable."""
    print(json.dumps(value, ensure_ascii=False, indent=2))


def run_batch(answer: Callable[[Record], Record], lines: TextIO | None = None) -> int:
    """Answer each JSON line in order; a bad line costs only itself and makes the exit code 1."""
    failed = False
    for line in lines or sys.stdin:
        if not line.strip():
            continue
        record: Any = None
        try:
            record = json.loads(line)
            if not isinstance(record, dict):
                raise BadInput("line", line[:40], "is no JSON object")
            result = dict(answer(record))
        except (PulseError, ValueError, RecursionError) as error:
            failed = True
            result = {"id": record.get("id") if isinstance(record, dict) else None, "error": problem(error)}
        print(json.dumps(result, ensure_ascii=False))
    return 1 if failed else 0


def problem(error: Exception) -> dict[str, Any]:
    """An error as plain values."""
    if isinstance(error, PulseError):
        return {"type": type(error).__name__, "title": error.title, "detail": str(error), **error.facts()}
    return {"type": "BadInput", "title": BadInput.title, "detail": f"not a JSON line: {error}"}


def table(head: Sequence[str], rows: Iterable[Sequence[str]], out: TextIO | None = None) -> None:
    """A small table with columns as wide as they look, the head in bold on a terminal."""
    stream = out or sys.stdout
    lines = [list(map(str, row)) for row in rows]
    widths = [max([width(head[at]), *(width(line[at]) for line in lines)]) for at in range(len(head))]
    bold, plain = ("\033[1m", "\033[0m") if on_terminal(stream) else ("", "")
    print(bold + _line(head, widths) + plain, file=stream)
    for line in lines:
        print(_line(line, widths), file=stream)


def facts(rows: Iterable[tuple[str, str]], out: TextIO | None = None) -> None:
    """Two columns: what, and text folded to the width of the terminal."""
    stream = out or sys.stdout
    lines = list(rows)
    wide = max(width(name) for name, _ in lines)
    room = max(40, shutil.get_terminal_size((100, 24)).columns - wide - 2)
    bold, plain = ("\033[1m", "\033[0m") if on_terminal(stream) else ("", "")
    for name, text in lines:
        folded = textwrap.wrap(text, room) or [""]
        print(f"{bold}{name}{plain}{' ' * (wide - width(name))}  {folded[0]}", file=stream)
        for line in folded[1:]:
            print(f"{' ' * wide}  {line}", file=stream)


def on_terminal(stream: TextIO) -> bool:
    """Colour only where a person looks."""
    return stream.isatty() and not os.environ.get("NO_COLOR")


def width(text: str) -> int:
    """Columns a text takes on a terminal."""
    wide = {"W", "F"}
    return sum(
        0
        if unicodedata.category(char) in ("Mn", "Me", "Cf")
        else 2
        if unicodedata.east_asian_width(char) in wide
        else 1
        for char in text
    )


def _line(cells: Sequence[str], widths: Sequence[int]) -> str:
    padded = [cell + " " * (wide - width(cell)) for cell, wide in zip(cells, widths, strict=True)]
    return "  ".join(padded).rstrip()
