"""Rows of one names file: bytes in, rows and findings out."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache
from sys import intern

from .model import COLUMNS, Row


@dataclass(frozen=True, slots=True, order=True)
class Finding:
    """One fault at its place; reads as `file:line:column: what, and what to do`."""

    file: str
    line: int
    column: int
    what: str

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}: {self.what}"


def read_rows(file: str, data: bytes) -> tuple[list[Row], list[Finding]]:
    """The rows of a names file and what is wrong with its shape; a bad row is left out."""
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        line = data.count(b"\n", 0, error.start) + 1
        return [], [Finding(file, line, 1, "not UTF-8; save the file as UTF-8 without a mark")]
    rows: list[Row] = []
    findings: list[Finding] = []
    if "\r" in text:
        findings.append(Finding(file, 1, 1, "carriage returns; end lines with LF alone"))
    for line, cells in _cells(text):
        if line == 1:
            if tuple(cells) != COLUMNS:
                findings.append(Finding(file, 1, 1, f"the first line must be {','.join(COLUMNS)}"))
            continue
        if len(cells) != len(COLUMNS):
            what = f"{len(cells)} cells; a row has {len(COLUMNS)}, quote a text that holds a comma"
            findings.append(Finding(file, line, 1, what))
            continue
        rows.append(_row(cells, file, line))
    return rows, findings


def write_rows(rows: list[Row]) -> bytes:
    """The bytes of a names file holding these rows, in their order."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(COLUMNS)
    writer.writerows(cells_of(row) for row in rows)
    return out.getvalue().encode("utf-8")


def cells_of(row: Row) -> tuple[str, ...]:
    """The ten cells of a row, in the order of the columns."""
    agrees = " ".join(sorted(row.agrees))
    return (
        row.lang, row.script, row.kind, row.ref, row.text,
        row.use, agrees, row.status, row.source, row.note,
    )  # fmt: skip


def _cells(text: str) -> Iterator[tuple[int, list[str]]]:
    reader = csv.reader(io.StringIO(text, newline=""))
    while True:
        line = reader.line_num + 1
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error:
            cells = []
        if cells or line == 1:
            yield line, cells


def _row(cells: list[str], file: str, line: int) -> Row:
    lang, script, kind, ref, text, use, agrees, status, source, note = cells
    lang, script, kind, ref, use, status, source = map(intern, (lang, script, kind, ref, use, status, source))
    return Row(lang, script, kind, ref, text, use, _features(agrees), status, source, note, file, line)


@lru_cache(maxsize=512)
def _features(cell: str) -> frozenset[str]:
    return frozenset(cell.split())
