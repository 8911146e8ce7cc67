"""Accepted suggestions laid over the files: the same rows, the same checks, and an exact diff to land them by."""

from __future__ import annotations

import difflib
from collections.abc import Mapping, Sequence

from .build import build
from .checks import check
from .model import Glossary, Row
from .rows import Finding, read_rows, write_rows


def overlaid(files: Mapping[str, bytes], rows: Sequence[Row]) -> dict[str, bytes]:
    """The files with these rows added, each beside the rows of its kind and ref; twins are left out."""
    out = dict(files)
    for tag in dict.fromkeys(file_of(row) for row in rows):
        path = f"names/{tag}.csv"
        known, _ = read_rows(
            path, files.get(path, b"lang,script,kind,ref,text,use,agrees,status,source,note\n")
        )
        have = {(row.lang, row.script, row.kind, row.ref, row.text) for row in known}
        for row in rows:
            slot = (row.lang, row.script, row.kind, row.ref, row.text)
            if file_of(row) == tag and slot not in have:
                have.add(slot)
                known.insert(_place(known, row), row)
        out[path] = write_rows(known)
    return out


def file_of(row: Row) -> str:
    """The tag of the file a row belongs to: its language without region, with script where the file has one."""
    parts = row.lang.split("-")
    return "-".join(part for part in parts if not (len(part) == 2 and part.isupper()))


def _place(rows: Sequence[Row], row: Row) -> int:
    """After the last row of the same kind and ref, else of the same kind, else at the end."""
    same = [at for at, one in enumerate(rows) if one.kind == row.kind and one.ref == row.ref]
    kin = [at for at, one in enumerate(rows) if one.kind == row.kind]
    return (same or kin or [len(rows) - 1])[-1] + 1


def diff(files: Mapping[str, bytes], rows: Sequence[Row]) -> str:
    """A unified diff of glossary_data that adds these rows and nothing else."""
    after = overlaid(files, rows)
    out: list[str] = []
    for path in sorted(after):
        if after[path] != files.get(path):
            before = files.get(path, b"").decode("utf-8").splitlines(keepends=True)
            now = after[path].decode("utf-8").splitlines(keepends=True)
            out += difflib.unified_diff(before, now, f"a/glossary_data/{path}", f"b/glossary_data/{path}")
    return "".join(out)


def judged(files: Mapping[str, bytes], row: Row) -> tuple[Glossary, list[Finding]]:
    """The glossary with one row more, and the findings that the row itself brings."""
    path = f"names/{file_of(row)}.csv"
    glossary = build(overlaid(files, [row]))
    new = [
        one
        for one in glossary.rows.get(file_of(row), ())
        if one._replace(file="", line=0) == row._replace(file="", line=0)
    ]
    lines = {one.line for one in new}
    return glossary, [one for one in check(glossary) if one.file == path and one.line in lines]
